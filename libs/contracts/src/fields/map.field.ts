import { enumRule, enumSchema, type EnumChoice } from './enum.field.js';
import { field, type FieldOptions } from './field.js';
import { mapKind } from './map.js';
import { textPatterns } from './text-patterns.js';

export interface ChoiceMapLimits {
  /** Most members. */
  readonly max: number;
  /** Pattern of their names; catalogue ids unless told. */
  readonly names?: string;
  readonly choice: EnumChoice;
}

/** Names with one value of a fixed list each, e.g. symptoms with present, absent or not asked. */
export const MapField = (options: FieldOptions & ChoiceMapLimits): PropertyDecorator => {
  const { max, names = textPatterns.catalogueId, choice } = options;
  return field(
    options,
    mapKind({ max, names, item: (schemas) => enumSchema(choice, schemas), rules: [enumRule(choice)] }),
  );
};
