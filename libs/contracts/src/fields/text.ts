import type { JsonSchema } from './json-schema.js';
import type { Rule } from './rule.js';

export interface TextLimits {
  /** Most code points. */
  readonly max: number;
  /** Fewest code points; 1 unless told. */
  readonly min?: number;
  /** Anchored pattern, read with the flag `u`; it replaces the refusal of control characters, so it must list what it admits. */
  readonly pattern?: string;
  /** Line breaks and tabs are admitted. */
  readonly multiline?: boolean;
}

/** Characters that turn the direction of what is written around them (UAX #9): text would not read as it is stored. */
const turning = '\\u202A-\\u202E\\u2066-\\u2069';
/** Characters of no width: two names that look the same would not be the same (UTS #39). */
const unseen = '\\u00AD\\u061C\\u180E\\u200B-\\u200F\\u2060-\\u2065\\u206A-\\u206F\\uFEFF';
const noControl = `[^\\u0000-\\u001F\\u007F-\\u009F\\u2028\\u2029\\uD800-\\uDFFF${turning}${unseen}]*`;
/** Words of several lines may hold joiners, as pictures and some scripts need them. */
const noControlButBreaks = `[^\\u0000-\\u0008\\u000B-\\u001F\\u007F-\\u009F\\uD800-\\uDFFF${turning}]*`;
const notBlank = '(?!\\s*$)';

/** Pattern of text: no control character, no lone surrogate, not blank unless it may be empty. */
export function textPattern({ min = 1, pattern, multiline = false }: TextLimits): string {
  if (pattern !== undefined) return pattern;
  return `^${min > 0 ? notBlank : ''}${multiline ? noControlButBreaks : noControl}$`;
}

export function textSchema(limits: TextLimits): JsonSchema {
  return { type: 'string', minLength: limits.min ?? 1, maxLength: limits.max, pattern: textPattern(limits) };
}

export function textRules(limits: TextLimits): Rule[] {
  const { min = 1, max } = limits;
  const matcher = new RegExp(textPattern(limits), 'u');
  return [
    { name: 'text', detail: 'must be text', test: (value) => typeof value === 'string' },
    {
      name: 'length',
      detail: `must have ${min} to ${max} characters`,
      test: (value) => typeof value === 'string' && hasLength(value, min, max),
    },
    {
      name: 'pattern',
      detail:
        limits.pattern === undefined
          ? 'must not be blank, or hold control characters or characters that cannot be seen or turn the direction of writing'
          : `must match ${limits.pattern}`,
      test: (value) => typeof value === 'string' && matcher.test(value),
    },
  ];
}

/** Whether the text has so many code points; text that cannot fit is not counted. */
export function hasLength(text: string, min: number, max: number): boolean {
  if (text.length > 2 * max) return false;
  const points = Array.from(text).length;
  return points >= min && points <= max;
}
