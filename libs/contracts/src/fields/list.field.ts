import { Transform, Type } from 'class-transformer';
import { ValidateNested } from 'class-validator';
import { enumRule, enumSchema, type EnumChoice } from './enum.field.js';
import { field, type FieldKind, type FieldOptions } from './field.js';
import { idSchema, isId } from './id.field.js';
import type { FieldClass, JsonSchema, SchemaNames } from './json-schema.js';
import { isRecord, type Rule } from './rule.js';
import { textRules, textSchema, type TextLimits } from './text.js';
import { caseRule, casesOf, caseInstances, unionSchema, type UnionChoice } from './union.js';
import { value } from './value-shape.js';

/** What a list holds. */
export type ListItem =
  | { readonly type: () => FieldClass }
  | { readonly union: UnionChoice }
  | { readonly text: TextLimits }
  | { readonly choice: EnumChoice }
  | { readonly ids: true }
  | { readonly integers: { readonly min: number; readonly max: number } };

export interface ListLimits {
  /** Most items. */
  readonly max: number;
  /** Fewest items; 0 unless told. */
  readonly min?: number;
  /** No value twice; for lists of text, ids and enum values. */
  readonly unique?: boolean;
}

/** A list of objects, of cases of a union, of text, of enum values, of ids or of whole numbers. */
export const ListField = (options: FieldOptions & ListLimits & ListItem): PropertyDecorator => {
  const { max, min = 0, unique = false } = options;
  const item = itemOf(options);
  return field(options, {
    schema: (names) => ({
      type: 'array',
      items: item.schema(names),
      minItems: min,
      maxItems: max,
      ...(unique ? { uniqueItems: true } : {}),
    }),
    rules: [
      { name: 'list', detail: 'must be a list', test: Array.isArray },
      {
        name: 'count',
        detail: `must have ${min} to ${max} items`,
        test: (given) => Array.isArray(given) && given.length >= min && given.length <= max,
      },
      ...(unique ? [{ name: 'unique', detail: 'must not hold a value twice', test: isUnique }] : []),
      ...item.rules.map(forEach),
    ],
    shape: { kind: 'list', item: item.shape },
    ...(item.also === undefined ? {} : { also: item.also }),
  });
};

function itemOf(item: ListItem): FieldKind {
  if ('type' in item) {
    const { type } = item;
    return {
      schema: (names: SchemaNames) => names.ofClass(type()),
      rules: [{ name: 'object', detail: 'must be an object', test: isRecord }],
      shape: { kind: 'object', type },
      also: [ValidateNested({ each: true }), Type(() => type())],
    };
  }
  if ('union' in item) {
    const { property = 'kind' } = item.union;
    const cases = casesOf(item.union);
    return {
      schema: (names) => unionSchema(cases, property, names),
      rules: [caseRule(cases, property)],
      shape: { kind: 'union', property, types: cases },
      also: [ValidateNested({ each: true }), caseInstances(cases, property)],
    };
  }
  return plainItem(item);
}

function plainItem(item: Exclude<ListItem, { type: unknown } | { union: unknown }>): FieldKind {
  if ('text' in item)
    return { schema: () => textSchema(item.text), rules: textRules(item.text), shape: value };
  if ('choice' in item)
    return {
      schema: (names) => enumSchema(item.choice, names),
      rules: [enumRule(item.choice)],
      shape: value,
    };
  if ('ids' in item) {
    return {
      schema: () => idSchema,
      rules: [{ name: 'id', detail: 'must be a UUID of version 7', test: isId }],
      shape: value,
      also: [
        Transform(({ value: given }: { value: unknown }) =>
          Array.isArray(given) ? given.map(lowerCase) : given,
        ),
      ],
    };
  }
  const { min, max } = item.integers;
  return {
    schema: (): JsonSchema => ({ type: 'integer', format: 'int32', minimum: min, maximum: max }),
    rules: [
      {
        name: 'integer',
        detail: `must be a whole number from ${min} to ${max}`,
        test: (given) => Number.isSafeInteger(given) && (given as number) >= min && (given as number) <= max,
      },
    ],
    shape: value,
  };
}

/** The rule for every item; the detail names the first item that breaks it. */
function forEach(rule: Rule): Rule {
  return {
    name: rule.name,
    test: (given) => Array.isArray(given) && given.every(rule.test),
    detail: (given) => {
      const index = Array.isArray(given) ? given.findIndex((each) => !rule.test(each)) : -1;
      return `item ${index} ${typeof rule.detail === 'string' ? rule.detail : rule.detail(given)}`;
    },
  };
}

function isUnique(given: unknown): boolean {
  return Array.isArray(given) && new Set(given).size === given.length;
}

function lowerCase(given: unknown): unknown {
  return typeof given === 'string' ? given.toLowerCase() : given;
}
