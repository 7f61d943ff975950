import type { CharacterRefusal } from './character-refusals.js';
import { characterRefusals, hiddenOffenceOf } from './character-refusals.js';

/** Capitals of the Cyrillic and Greek scripts that nobody can tell from a Latin one on a plate, and I and O from 1 and 0. */
const sameOnAPlate: ReadonlyMap<string, string> = new Map([
  ...pairs('АВЕЅІЈКМНОРСТУХԚԜ', 'ABES1JKMH0PCTYXQW'),
  ...pairs('ΑΒΕΖΗΙΚΜΝΟΡΤΥΧ', 'ABEZH1KMN0PTYX'),
  ...pairs('IO', '10'),
]);

function pairs(from: string, to: string): [string, string][] {
  const targets = Array.from(to);
  return Array.from(from).map((character, index) => [character, targets[index]!]);
}

const allowedScripts =
  /[\p{Script=Latin}\p{Script=Cyrillic}\p{Script=Greek}\p{Script=Arabic}\p{Script=Hebrew}\p{Script=Georgian}\p{Script=Armenian}\p{Script=Han}\p{Script=Hiragana}\p{Script=Hangul}\p{Script=Thai}\p{Script=Devanagari}\p{Script=Common}]/u;

/**
 * Key to look a registration plate up by: composed and compatibility forms folded, upper case, letters and digits only,
 * accents and look-alikes of other scripts folded onto one character, O onto 0 and I onto 1. Two plates with one key are
 * to be shown both; the key is never an identity.
 *
 * @param plate  as written, any script
 * @returns the key, possibly empty
 * @source UAX #15 (normalisation forms); UTS #39, section 4 (skeletons), reduced to what plates are written in
 * @example plateKey('abc 1o5') // => 'ABC105'
 */
export function plateKey(plate: string): string {
  const folded = plate.normalize('NFKC').toUpperCase().normalize('NFD');
  return Array.from(folded)
    .map((character) => digitValue(character) ?? sameOnAPlate.get(character) ?? character)
    .filter((character) => /[\p{L}\p{N}]/u.test(character))
    .join('');
}

/** Value of a decimal digit of any script: its place in the run of ten that begins at a multiple of its block's zero. */
function digitValue(character: string): string | null {
  if (!/\p{Nd}/u.test(character)) return null;
  let start = character.codePointAt(0)!;
  const code = start;
  while (/\p{Nd}/u.test(String.fromCodePoint(start - 1)) && code - start < 9) start -= 1;
  return String(code - start);
}

export interface ExaminedPlate {
  /** composed form (NFC), trimmed: what is stored and shown */
  readonly plate: string;
  readonly key: string;
  readonly refusals: readonly CharacterRefusal[];
}

/**
 * Looks at a registration plate: control and invisible characters and scripts no plate is written in refuse it.
 *
 * @param asWritten  any text
 * @returns composed form, key and refusals
 * @source UAX #15; UTS #39
 * @example examinePlate('AB-12 CD').key // => 'AB12CD'
 */
export function examinePlate(asWritten: string): ExaminedPlate {
  const plate = asWritten.normalize('NFC').trim();
  const refusals = characterRefusals(plate, (character) => {
    const isReadable = allowedScripts.test(character) && character.normalize('NFKC') === character;
    return hiddenOffenceOf(character) ?? (isReadable ? null : 'lookAlikeCharacter');
  });
  return { plate, key: plateKey(plate), refusals };
}
