import { field, type FieldOptions } from './field.js';
import { textRules, textSchema, type TextLimits } from './text.js';
import { value } from './value-shape.js';

/** A query parameter is text; the command mapper turns it into a number or a flag after the pattern has passed. */
const textOf = (options: FieldOptions, limits: TextLimits): PropertyDecorator =>
  field(options, { schema: () => textSchema(limits), rules: textRules(limits), shape: value });

/** Page size, `1` to `200`, 50 where absent. */
export const PageSizeField = (): PropertyDecorator =>
  textOf(
    { description: 'Most items on a page, 1 to 200.', optional: true, default: '50' },
    { max: 3, pattern: '^(?:[1-9][0-9]?|1[0-9]{2}|200)$' },
  );

/** Place to go on from, as given by the page before. */
export const CursorField = (): PropertyDecorator =>
  textOf(
    { description: 'Where to go on, taken from `nextCursor` of the page before.', optional: true },
    { max: 2048, pattern: '^[A-Za-z0-9_-]+\\.[A-Za-z0-9_-]+$' },
  );

/** `true` or `false` in a query. */
export const QueryFlagField = (options: FieldOptions): PropertyDecorator =>
  textOf(options, { max: 5, pattern: '^(?:true|false)$' });

/** Whole number without sign in a query, with at most `digits` digits. */
export const QueryIntegerField = (options: FieldOptions & { readonly digits: number }): PropertyDecorator =>
  textOf(options, { max: options.digits, pattern: `^(?:0|[1-9][0-9]{0,${options.digits - 1}})$` });

/** Values of a fixed list in a query, separated by commas, each at most once in the pattern's length. */
export const QueryListField = (
  options: FieldOptions & { readonly values: readonly string[]; readonly max: number },
): PropertyDecorator => {
  const one = `(?:${options.values.join('|')})`;
  const longest = Math.max(...options.values.map((each) => each.length));
  return textOf(options, {
    max: options.max * (longest + 1),
    pattern: `^${one}(?:,${one}){0,${options.max - 1}}$`,
  });
};
