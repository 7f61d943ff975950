/** Characters a vehicle identification number is written in, with the value each counts; I, O and Q are not used. */
const characterValues: ReadonlyMap<string, number> = new Map([
  ...Array.from('0123456789').map((digit): [string, number] => [digit, Number(digit)]),
  ...Array.from('ABCDEFGH').map((letter, index): [string, number] => [letter, index + 1]),
  ...Array.from('JKLMN').map((letter, index): [string, number] => [letter, index + 1]),
  ['P', 7] as [string, number],
  ['R', 9] as [string, number],
  ...Array.from('STUVWXYZ').map((letter, index): [string, number] => [letter, index + 2]),
]);

const positionWeights = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2] as const;

/** Length of a vehicle identification number. */
export const vinLength = 17;

/** Check digit of a number, or why it has none. */
export type VinCheckDigit =
  | { readonly kind: 'checkDigit'; readonly sum: number; readonly digit: string; readonly matches: boolean }
  | { readonly kind: 'notAVin'; readonly reason: 'length' | 'alphabet' };

/**
 * Check character of a weighted sum: its remainder by eleven, ten written X.
 *
 * @param sum  whole number, not negative
 * @returns `0` to `9` or `X`
 * @throws RangeError on a negative number or one that is not whole
 * @source NHTSA outline for new manufacturers, worked example: 314 gives 6
 * @example checkDigitOfSum(314) // => '6'
 */
export function checkDigitOfSum(sum: number): string {
  if (!Number.isSafeInteger(sum) || sum < 0) throw new RangeError(`a weighted sum is a whole number: ${sum}`);
  const remainder = sum % 11;
  return remainder === 10 ? 'X' : String(remainder);
}

/**
 * Check digit (position 9) of a 17-character number: each character's value times its position's weight, summed, the
 * remainder by eleven. The character at position 9 has weight 0 and is only compared.
 *
 * The check digit is mandatory in North America and some other markets; elsewhere it matches by chance about once in 11.
 *
 * @param number  17 characters, upper case; position 9 may hold any character
 * @returns the sum, the digit due and whether position 9 holds it; `notAVin` where the length is not 17 or another
 *   position holds a character that is not used (I, O, Q, lower case, anything else)
 * @source 49 CFR 565.15, tables III to V
 * @example vinCheckDigit('11111111111111111') // => { kind: 'checkDigit', sum: 89, digit: '1', matches: true }
 */
export function vinCheckDigit(number: string): VinCheckDigit {
  const characters = Array.from(number);
  if (characters.length !== vinLength) return { kind: 'notAVin', reason: 'length' };
  let sum = 0;
  for (const [index, weight] of positionWeights.entries()) {
    if (weight === 0) continue;
    const value = characterValues.get(characters[index]!);
    if (value === undefined) return { kind: 'notAVin', reason: 'alphabet' };
    sum += weight * value;
  }
  const digit = checkDigitOfSum(sum);
  return { kind: 'checkDigit', sum, digit, matches: characters[8] === digit };
}
