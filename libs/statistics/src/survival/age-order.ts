const SHORT = 1000;
const DIGITS = 65_536;

/**
 * Row numbers in rising order of their ages (0 or more, finite), equal ages in the order of their rows. Short columns
 * are compared; long ones are sorted by the four 16-bit digits of the number as it is stored, which for numbers of 0 and
 * above has the order of the numbers: O(n), where a comparison for each pair would take seconds for a million rows.
 *
 * @param rows  row numbers to order; left as they are
 * @param ageOf  age of a row
 */
export function orderByAge(rows: Uint32Array, ageOf: (row: number) => number): Uint32Array {
  if (rows.length <= SHORT) return Uint32Array.from(rows).sort((a, b) => ageOf(a) - ageOf(b) || a - b);
  // Adding 0 turns −0, whose stored form would sort last, into 0.
  const digits = new Uint16Array(Float64Array.from(rows, (row) => ageOf(row) + 0).buffer);
  let order = Uint32Array.from(rows, (_, i) => i);
  let next = new Uint32Array(rows.length);
  const counts = new Uint32Array(DIGITS + 1);
  for (const place of digitPlaces()) {
    counts.fill(0);
    for (let i = 0; i < order.length; i += 1) counts[digits[4 * i + place]! + 1]! += 1;
    if (counts.includes(order.length)) continue;
    for (let digit = 1; digit <= DIGITS; digit += 1) counts[digit]! += counts[digit - 1]!;
    for (let i = 0; i < order.length; i += 1) {
      const item = order[i]!;
      const digit = digits[4 * item + place]!;
      next[counts[digit]!] = item;
      counts[digit]! += 1;
    }
    [order, next] = [next, order];
  }
  return order.map((i) => rows[i]!);
}

/** Places of the four digits of a stored number, the least first, on machines of either byte order. */
function digitPlaces(): readonly number[] {
  const leastFirst = new Uint16Array(new Float64Array([1]).buffer)[0] === 0;
  return leastFirst ? [0, 1, 2, 3] : [3, 2, 1, 0];
}
