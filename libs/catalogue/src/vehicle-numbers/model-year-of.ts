import { vinLength } from './vin-check-digit.js';

/** Year letters and digits in their order: 30 codes, without I, O, Q, U, Z and 0. */
const yearCodes = 'ABCDEFGHJKLMNPRSTVWXY123456789';
const firstYear = 1980;

/** Model year coded in a number, or why none is. */
export type ModelYear =
  | {
      readonly kind: 'modelYear';
      readonly year: number;
      /** the same code in the other cycle of 30 years; a heavy vehicle is not told apart by position 7 */
      readonly otherCycleYear: number;
    }
  | { readonly kind: 'notCoded'; readonly reason: 'length' | 'code' };

/**
 * Model year by the code at position 10; position 7 tells the two cycles of 30 years apart: a digit means 1980 to 2009,
 * a letter 2010 to 2039.
 *
 * Holds for North American passenger cars, multipurpose vehicles and trucks of at most 10,000 lb gross rating. Outside
 * North America the year code is not mandatory; a heavier vehicle may belong to either cycle.
 *
 * @param number  17 characters, upper case
 * @returns the year and the year of the other cycle; `notCoded` for another length or a character that codes no year
 * @source 49 CFR 565.15, table VII; 73 FR 23367 (2008)
 * @example modelYearOf('11111111111111111') // => { kind: 'modelYear', year: 2001, otherCycleYear: 2031 }
 */
export function modelYearOf(number: string): ModelYear {
  const characters = Array.from(number);
  if (characters.length !== vinLength) return { kind: 'notCoded', reason: 'length' };
  const index = yearCodes.indexOf(characters[9]!);
  if (index < 0) return { kind: 'notCoded', reason: 'code' };
  const early = firstYear + index;
  const late = early + yearCodes.length;
  return /^[A-Z]$/.test(characters[6]!)
    ? { kind: 'modelYear', year: late, otherCycleYear: early }
    : { kind: 'modelYear', year: early, otherCycleYear: late };
}
