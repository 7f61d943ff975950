import { Transform } from 'class-transformer';
import { field, type FieldOptions } from './field.js';
import type { JsonSchema } from './json-schema.js';
import { value } from './value-shape.js';

/** UUID of version 7 in either case. */
export const idPattern =
  '^[0-9a-fA-F]{8}-[0-9a-fA-F]{4}-7[0-9a-fA-F]{3}-[89abAB][0-9a-fA-F]{3}-[0-9a-fA-F]{12}$';
const matcher = new RegExp(idPattern, 'u');

export const idSchema: JsonSchema = { type: 'string', format: 'uuid', pattern: idPattern, maxLength: 36 };

/** Id of a record: UUID version 7 (RFC 9562) in either case; handlers see it in lower case. */
export const IdField = (options: FieldOptions): PropertyDecorator =>
  field(options, {
    schema: () => idSchema,
    rules: [{ name: 'id', detail: 'must be a UUID of version 7', test: isId }],
    shape: value,
    also: [
      Transform(({ value: given }: { value: unknown }) =>
        typeof given === 'string' ? given.toLowerCase() : given,
      ),
    ],
  });

/** Whether the text is an id as the interface accepts it. */
export function isId(given: unknown): given is string {
  return typeof given === 'string' && matcher.test(given);
}
