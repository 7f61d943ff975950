/** What stands in one cell. Exact figures are decimal text; null is an empty cell. */
export type CsvValue = string | number | boolean | null;

const figure = /^[+-]?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?$/;
/** A spreadsheet reads what begins so as a formula, also after blanks and in the wide forms of the characters. */
const formula = /^\s*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20]|^[\t\r\n]/u;

/**
 * One cell as it is written.
 *
 * Figures stay figures, with a point and without grouping. Text that a spreadsheet would take for a formula gets an
 * apostrophe before it; text with a separator of any usual dialect is quoted.
 *
 * @param value  a finite number, a flag, text, or null for an empty cell
 * @returns the cell without its separator
 * @throws RangeError when a number is not finite: it has no text
 * @source RFC 4180, section 2 (quoting); OWASP, CSV Injection (guard of formulas)
 * @example csvCell('=1+1') // => "'=1+1"
 */
export function csvCell(value: CsvValue): string {
  if (value === null) return '';
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new RangeError(`a cell must be finite, got ${String(value)}`);
    return String(value);
  }
  if (typeof value === 'boolean') return String(value);
  const guarded = formula.test(value) && !figure.test(value) ? `'${value}` : value;
  return /[",;\t\r\n]/.test(guarded) ? `"${guarded.replaceAll('"', '""')}"` : guarded;
}
