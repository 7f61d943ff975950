import type { TextCode } from './text-templates.js';
import { textTemplates } from './text-templates.js';

/** What may stand in a sentence; lists are joined by "and". */
export type TextValue = string | number | readonly string[];

/** `{vans}`, `{reason?}` within brackets, or a count with the words for one and for any other: `{vans|van|vans}`. */
const NAME = /\{([a-zA-Z]+)(?:\?|\|([^{}|]+)\|([^{}|]+))?\}/g;

function asText(value: TextValue): string {
  if (typeof value === 'string') return value;
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new RangeError('a sentence takes no number that is not finite');
    return String(value);
  }
  if (value.length <= 1) return value[0] ?? '';
  return `${value.slice(0, -1).join(', ')} and ${value[value.length - 1] ?? ''}`;
}

const isGiven = (value: TextValue | undefined): value is TextValue =>
  value !== undefined && asText(value) !== '';

/**
 * The sentence for a code, in plain English.
 *
 * @param code  from `textCodes`
 * @param values  what the names in the sentence stand for; names it does not use are ignored
 * @returns the sentence, counted words in the singular for 1 alone; a part in brackets whose value is missing or empty is left out
 * @throws RangeError when a value that the sentence needs is missing or empty, or a number is not finite
 * @example renderText('data.insufficient', { needed: 3, got: 1 }) // => 'Not enough data: 3 are needed, 1 is there.'
 */
export function renderText(code: TextCode, values: Readonly<Record<string, TextValue>> = {}): string {
  const template: string = textTemplates[code];
  const withoutMissing = template.replaceAll(/\[([^\]]*)\]/g, (_all, part: string) => {
    const names = [...part.matchAll(NAME)].map((match) => match[1] ?? '');
    return names.every((name) => isGiven(values[name])) ? part : '';
  });
  return withoutMissing.replaceAll(NAME, (_all, name: string, one?: string, many?: string) => {
    const value = values[name];
    if (!isGiven(value)) throw new RangeError(`the sentence ${code} needs ${name}`);
    const text = asText(value);
    return one === undefined ? text : `${text} ${text === '1' ? one : String(many)}`;
  });
}

/** Tells whether a text is a code that has a sentence. */
export function isTextCode(code: string): code is TextCode {
  return Object.hasOwn(textTemplates, code);
}
