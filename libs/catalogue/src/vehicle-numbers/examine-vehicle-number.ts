import type { CharacterRefusal } from './character-refusals.js';
import { characterRefusals } from './character-refusals.js';
import { vinCheckDigit, vinLength } from './vin-check-digit.js';

/** Where the record says the vehicle was built for. */
export const vehicleMarkets = ['northAmerica', 'elsewhere'] as const;
export type VehicleMarket = (typeof vehicleMarkets)[number];

/** What looked odd about a number; each is recorded, none refuses the vehicle. */
export const vehicleNumberWarningCodes = [
  'numberMissing',
  'illegibleCharacters',
  'unusualCharacters',
  'lettersNotUsed',
  'lengthNot17',
  'checkDigitDiffers',
] as const;
export type VehicleNumberWarningCode = (typeof vehicleNumberWarningCodes)[number];

export interface VehicleNumberWarning {
  readonly code: VehicleNumberWarningCode;
  readonly values: Readonly<Record<string, string>>;
}

export interface VehicleNumberAsRead {
  /** as stamped, read by a person; blank where none is there */
  readonly asRead: string;
  /** local date, year-month-day */
  readonly firstUsedOn?: string | null | undefined;
  readonly market?: VehicleMarket | null | undefined;
}

export interface ExaminedVehicleNumber {
  /** upper case, letters and digits only, for search; what was read is kept beside it */
  readonly normalised: string;
  readonly numberKind: 'vin' | 'chassisNumber';
  readonly warnings: readonly VehicleNumberWarning[];
  /** not empty: the text itself is refused, because what it holds cannot be seen or told apart */
  readonly refusals: readonly CharacterRefusal[];
}

const offeredFor: Readonly<Record<string, string>> = { I: '1', O: '0', Q: '0' };
const separator = /[\p{Zs}\-./‐‑–]/u;

/** Characters that count; `?` stands for one that could not be read. Stars at both ends are stamped as delimiters. */
function stampedCharacters(asRead: string): string[] {
  const trimmed = asRead.normalize('NFC').replace(/^[*\p{Zs}]+|[*\p{Zs}]+$/gu, '');
  return Array.from(trimmed)
    .filter((character) => !separator.test(character))
    .map((character) => (/[?*_]/.test(character) ? '?' : character.toUpperCase()));
}

const isFirstUsed1981OrLater = (firstUsedOn: string | null | undefined): boolean => {
  if (firstUsedOn === null || firstUsedOn === undefined) return false;
  if (!/^\d{4}-\d{2}-\d{2}$/.test(firstUsedOn))
    throw new RangeError(`not a local date: ${firstUsedOn.slice(0, 32)}`);
  return firstUsedOn >= '1981-01-01';
};

const positionsWhere = (characters: readonly string[], test: (character: string) => boolean): string =>
  characters.flatMap((character, index) => (test(character) ? [String(index + 1)] : [])).join(',');

function alphabetWarnings(characters: readonly string[]): VehicleNumberWarning[] {
  const warnings: VehicleNumberWarning[] = [];
  const illegible = positionsWhere(characters, (character) => character === '?');
  if (illegible !== '') warnings.push({ code: 'illegibleCharacters', values: { positions: illegible } });
  const unusual = positionsWhere(characters, (character) => !/[A-Z0-9?]/.test(character));
  if (unusual !== '') warnings.push({ code: 'unusualCharacters', values: { positions: unusual } });
  const notUsed = positionsWhere(characters, (character) => character in offeredFor);
  if (notUsed !== '') {
    const offered = characters.map((character) => offeredFor[character] ?? character).join('');
    const check = vinCheckDigit(offered);
    const verdict = check.kind !== 'checkDigit' ? 'none' : check.matches ? 'matches' : 'differs';
    const letters = [...new Set(characters.filter((character) => character in offeredFor))].sort().join(',');
    warnings.push({
      code: 'lettersNotUsed',
      values: { positions: notUsed, letters, offered, checkDigitOfOffered: verdict },
    });
  }
  return warnings;
}

/**
 * Looks at a vehicle identification or chassis number as a person read it. Everything odd is a warning, never a refusal,
 * and nothing is changed silently; only characters that cannot be seen or told apart refuse the text.
 *
 * - 17 characters of the valid set with another check digit: `checkDigitDiffers`, normal for many vehicles not built for
 *   North America; `advice` is `pleaseReread` only for the North American market and first use in 1981 or later.
 * - I, O or Q: `lettersNotUsed` with the reading in 1 and 0 that is offered and whether its check digit matches.
 * - another length: `lengthNot17` only where first use in 1981 or later is known; before, no common format existed.
 * - `?`, or `_` or `*` between other characters, stand for a character that could not be read.
 *
 * @param number  as read, with the first-use date and market where known
 * @returns normalised form, warnings and refusals; a number with refusals has no warnings
 * @throws RangeError on a first-use date that is not year-month-day
 * @source ISO 3779 (from memory); 49 CFR 565.15; Directive 2014/45/EU, Annex I, 0.2
 * @example examineVehicleNumber({ asRead: 'zzztest7-xza000014' }).warnings // => []
 */
export function examineVehicleNumber(number: VehicleNumberAsRead): ExaminedVehicleNumber {
  const isModern = isFirstUsed1981OrLater(number.firstUsedOn);
  const refusals = characterRefusals(number.asRead);
  const characters = refusals.length > 0 ? [] : stampedCharacters(number.asRead);
  const normalised = characters.filter((character) => /[\p{L}\p{N}]/u.test(character)).join('');
  const numberKind = characters.length === vinLength ? 'vin' : 'chassisNumber';
  if (refusals.length > 0) return { normalised, numberKind, warnings: [], refusals };
  if (normalised === '') {
    return { normalised, numberKind, warnings: [{ code: 'numberMissing', values: {} }], refusals };
  }
  const warnings = alphabetWarnings(characters);
  if (characters.length !== vinLength) {
    if (isModern) warnings.push({ code: 'lengthNot17', values: { length: String(characters.length) } });
    return { normalised, numberKind, warnings, refusals };
  }
  const check = vinCheckDigit(characters.join(''));
  if (check.kind === 'checkDigit' && !check.matches) {
    const advice =
      number.market === 'northAmerica' && isModern ? 'pleaseReread' : 'normalOutsideNorthAmerica';
    warnings.push({
      code: 'checkDigitDiffers',
      values: { read: characters[8]!, computed: check.digit, advice },
    });
  }
  return { normalised, numberKind, warnings, refusals };
}
