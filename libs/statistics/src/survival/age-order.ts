const SHORT = 1000;
/** Eleven bits: the counts of one digit stay in the processor's nearest memory. */
const DIGIT = 2048;

/** Rows, or whatever else numbers them, in rising order of their ages, and those ages. */
export interface AgeOrder {
  readonly rows: Uint32Array<ArrayBuffer>;
  readonly ages: Float64Array<ArrayBuffer>;
}

/**
 * Rows in rising order of their ages (0 or more, finite), equal ages in the order in which they are given. Short columns
 * are compared; long ones are sorted digit by digit (eleven bits) of the number as it is stored, which for numbers of 0
 * and above has the order of the numbers: O(n), where a comparison for each pair would take seconds for a million rows.
 * Digits that all ages share, as the last of whole numbers, cost nothing.
 *
 * @param rows  numbers to order; left as they are
 * @param ageAt  age of the one at a place of `rows`
 */
export function orderByAge(rows: Uint32Array<ArrayBuffer>, ageAt: (place: number) => number): AgeOrder {
  if (rows.length <= SHORT) {
    const places = Uint32Array.from(rows, (_, place) => place);
    places.sort((a, b) => ageAt(a) - ageAt(b) || a - b);
    return {
      rows: places.map((place) => rows[place]!),
      ages: Float64Array.from(places, (place) => ageAt(place) + 0),
    };
  }
  const ages = new Float64Array(rows.length);
  // Adding 0 turns −0, whose stored form would sort last, into 0.
  for (let place = 0; place < ages.length; place += 1) ages[place] = ageAt(place) + 0;
  return byDigits({ rows: rows.slice(), ages });
}

/** Sorts by one digit after the other, the least first; spends the memory of what it is given. */
function byDigits(given: AgeOrder): AgeOrder {
  let from = given;
  let to: AgeOrder = {
    rows: new Uint32Array(given.rows.length),
    ages: new Float64Array(given.ages.length),
  };
  const starts = new Uint32Array(DIGIT + 1);
  for (const word of wordsLeastFirst()) {
    for (const shift of [0, 11, 22]) {
      if (!countDigits(from.ages, word, shift, starts)) continue;
      moveByDigit(from, to, word, shift, starts);
      [from, to] = [to, from];
    }
  }
  return from;
}

/** Sets `starts` to the first place of each digit; false when all ages share one digit. */
function countDigits(
  ages: Float64Array<ArrayBuffer>,
  word: number,
  shift: number,
  starts: Uint32Array,
): boolean {
  const words = new Uint32Array(ages.buffer);
  starts.fill(0);
  for (let at = word; at < words.length; at += 2) starts[((words[at]! >>> shift) & (DIGIT - 1)) + 1]! += 1;
  if (starts[((words[word]! >>> shift) & (DIGIT - 1)) + 1] === ages.length) return false;
  for (let digit = 1; digit <= DIGIT; digit += 1) starts[digit]! += starts[digit - 1]!;
  return true;
}

function moveByDigit(from: AgeOrder, to: AgeOrder, word: number, shift: number, starts: Uint32Array): void {
  const words = new Uint32Array(from.ages.buffer);
  const { rows: fromRows, ages: fromAges } = from;
  const { rows: toRows, ages: toAges } = to;
  for (let i = 0; i < fromAges.length; i += 1) {
    const digit = (words[2 * i + word]! >>> shift) & (DIGIT - 1);
    const place = starts[digit]!;
    starts[digit] = place + 1;
    toAges[place] = fromAges[i]!;
    toRows[place] = fromRows[i]!;
  }
}

/** Places of the two words of a stored number, the lesser first, on machines of either byte order. */
function wordsLeastFirst(): readonly number[] {
  return new Uint32Array(new Float64Array([1]).buffer)[0] === 0 ? [0, 1] : [1, 0];
}
