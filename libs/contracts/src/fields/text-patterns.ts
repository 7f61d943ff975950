/** Patterns of identifying text, for `TextField({ pattern })`. ASCII only, so that no look-alike letter passes. */
export const textPatterns = {
  /** Chassis number or VIN as read: Latin capitals or small letters, digits, and the separators stamped on older plates. */
  chassisNumber: '^[A-Za-z0-9][A-Za-z0-9 */.-]*$',
  /** Kebab-case id of a catalogue entry. */
  catalogueId: '^[a-z0-9]+(?:-[a-z0-9]+)*$',
  /** Numbers printed on parts, jobs and batches. */
  printedNumber: '^[A-Za-z0-9][A-Za-z0-9 ._/#-]*$',
  /** Trouble code: a letter and four digits or hexadecimal letters (SAE J2012 form), or a blink code of 1 to 4 digits. */
  troubleCode: '^(?:[PCBU][0-9A-F]{4}|[0-9]{1,4})$',
  /** Structured language tag, e.g. `de` or `de-CH` (short form of RFC 5646). */
  languageTag: '^[a-z]{2,3}(?:-[A-Z]{2})?$',
  /** Name of an IANA time zone. */
  timeZone: '^[A-Za-z0-9_+-]+(?:/[A-Za-z0-9_+-]+){0,2}$',
  /** Version as recorded in an ETag. */
  visibleAscii: '^[\\u0021-\\u007E]+$',
} as const;
