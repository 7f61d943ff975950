import { troubleCodes } from './trouble-codes.js';

/** Who controls the meaning of a code, from its second character. SAE J2012, from memory. */
export const troubleCodeControls = ['standard', 'manufacturer', 'unknown'] as const;
export type TroubleCodeControl = (typeof troubleCodeControls)[number];

/** What the check of a code's form may warn of; a code is never refused. */
export const troubleCodeWarnings = ['notGenericForm', 'notInCatalogue', 'otherScheme'] as const;
export type TroubleCodeWarning = (typeof troubleCodeWarnings)[number];

export interface TroubleCodeNote {
  /** trimmed, upper case */
  readonly normalised: string;
  readonly control: TroubleCodeControl;
  /** our own words, or null where the catalogue has none */
  readonly meaning: string | null;
  readonly thinkOf: readonly string[];
  readonly warnings: readonly TroubleCodeWarning[];
}

/** One letter, a digit 0 to 3, three hexadecimal digits; a failure-type byte may follow a hyphen. */
const GENERIC_FORM = /^[PBCU][0-3][0-9A-F]{3}(?:-[0-9A-F]{2})?$/;

function controlOf(code: string): TroubleCodeControl {
  const second = code.charAt(1);
  if (second === '0') return 'standard';
  if (second === '1') return 'manufacturer';
  if (second === '2') return code.startsWith('P') ? 'standard' : 'manufacturer';
  if (!code.startsWith('P')) return 'unknown';
  return code.charAt(2) >= '4' && code.charAt(2) <= '9'
    ? 'standard'
    : code.charAt(2) <= '3'
      ? 'manufacturer'
      : 'unknown';
}

/**
 * Reads a stored trouble code: form, who controls it, and our words where we have some. It warns and never refuses.
 * Vans from before common on-board diagnosis have blink codes: their scheme is kept and nothing is translated across schemes.
 *
 * @param code  as shown by the reader; any text
 * @param scheme  'generic' for codes of the common form; any other name leaves the code as it is
 * @returns the note; no errors, an empty code is simply not of the generic form
 * @source structure SAE J2012 and ISO 15031-6, from memory
 * @example readTroubleCode(' p0510 ').meaning // => 'closed-throttle (idle) switch: fault'
 */
export function readTroubleCode(code: string, scheme = 'generic'): TroubleCodeNote {
  const normalised = code.trim().toUpperCase();
  const unread = { normalised, control: 'unknown', meaning: null, thinkOf: [] } as const;
  if (scheme !== 'generic') return { ...unread, warnings: ['otherScheme'] };
  if (!GENERIC_FORM.test(normalised)) return { ...unread, warnings: ['notGenericForm'] };
  const known = troubleCodes.find((entry) => entry.code === normalised.slice(0, 5));
  const control = controlOf(normalised);
  if (known === undefined) return { ...unread, control, warnings: ['notInCatalogue'] };
  return { normalised, control, meaning: known.meaning, thinkOf: known.thinkOf, warnings: [] };
}
