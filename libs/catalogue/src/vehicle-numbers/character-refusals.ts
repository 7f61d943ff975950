/** Why a text is refused as an identifier: it holds a character nobody can see or tell from another. */
export const characterRefusalCodes = [
  'controlCharacter',
  'invisibleCharacter',
  'lookAlikeCharacter',
] as const;
export type CharacterRefusalCode = (typeof characterRefusalCodes)[number];

export interface CharacterRefusal {
  readonly code: CharacterRefusalCode;
  /** positions from 1, in characters, and the code points found there */
  readonly values: { readonly positions: string; readonly codePoints: string };
}

const control = /[\p{Cc}\p{Zl}\p{Zp}\p{Cs}]/u;
const invisible = /[\p{Cf}\p{Default_Ignorable_Code_Point}\u2800]/u;
const letterOrDigit = /[\p{L}\p{N}]/u;
const asciiLetterOrDigit = /[A-Za-z0-9]/;

/** A Latin letter with an accent (it decomposes) is seen as what it is; every other foreign form is not. */
function looksLikeAnother(character: string): boolean {
  if (/[\p{Co}\p{Cn}\p{M}]/u.test(character)) return true;
  if (/[\p{S}\p{P}]/u.test(character)) return asciiLetterOrDigit.test(character.normalize('NFKC'));
  if (!letterOrDigit.test(character) || asciiLetterOrDigit.test(character)) return false;
  return (
    !asciiLetterOrDigit.test(character.normalize('NFD').charAt(0)) || !/\p{Script=Latin}/u.test(character)
  );
}

/**
 * Class of an offending character: control and line characters; zero-width, joining and directional ones; letters and
 * digits of another script, compatibility forms (full width, circled, mathematical), loose combining marks.
 *
 * @param character  one code point
 * @returns the class, or null for a character that can be read for what it is
 * @source UTS #39 (Unicode security mechanisms), stricter: every letter outside the Latin script counts as a look-alike
 */
export function offenceOf(character: string): CharacterRefusalCode | null {
  return hiddenOffenceOf(character) ?? (looksLikeAnother(character) ? 'lookAlikeCharacter' : null);
}

/**
 * Class of a character that shows nothing at all, whatever the script around it.
 *
 * @param character  one code point
 * @returns `controlCharacter`, `invisibleCharacter`, or null
 * @source Unicode general categories; Default_Ignorable_Code_Point (UAX #44)
 */
export function hiddenOffenceOf(character: string): CharacterRefusalCode | null {
  if (control.test(character)) return 'controlCharacter';
  return invisible.test(character) ? 'invisibleCharacter' : null;
}

const codePointName = (character: string): string =>
  `U+${character.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}`;

/**
 * Offending characters of a text, one refusal a class.
 *
 * @param text        any text; it is looked at in its composed form (NFC)
 * @param isOffence   class of one character; default `offenceOf`
 * @returns refusals in the order of `characterRefusalCodes`, none for a clean text
 * @example characterRefusals('AB12') // => []
 */
export function characterRefusals(
  text: string,
  isOffence: (character: string) => CharacterRefusalCode | null = offenceOf,
): CharacterRefusal[] {
  const characters = Array.from(text.normalize('NFC'));
  return characterRefusalCodes.flatMap((code) => {
    const found = characters.flatMap((character, index) =>
      isOffence(character) === code ? [{ character, position: index + 1 }] : [],
    );
    if (found.length === 0) return [];
    const positions = found.map(({ position }) => position).join(',');
    const codePoints = [...new Set(found.map(({ character }) => codePointName(character)))].join(',');
    return [{ code, values: { positions, codePoints } }];
  });
}
