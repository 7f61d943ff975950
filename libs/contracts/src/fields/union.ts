import { plainToInstance, Transform } from 'class-transformer';
import { membersOf } from './field.js';
import type { FieldClass, JsonSchema, SchemaNames } from './json-schema.js';
import { isRecord, type Rule } from './rule.js';

export interface UnionChoice {
  /** One class per case, each with a `KindField`; named late. */
  readonly types: () => readonly FieldClass[];
  /** Member that tells the cases apart; `kind` unless told. */
  readonly property?: string;
}

/** The classes of a union by the value of their distinguishing member. */
export function casesOf({ types, property = 'kind' }: UnionChoice): () => ReadonlyMap<string, FieldClass> {
  let known: ReadonlyMap<string, FieldClass> | undefined;
  return () => (known ??= new Map(types().map((type) => [kindOf(type, property), type])));
}

function kindOf(type: FieldClass, property: string): string {
  const member = membersOf(type).get(property);
  const inline: SchemaNames = { ofClass: () => ({}), ofSchema: (_name, schema) => schema };
  const values = member?.kind.schema(inline).enum;
  if (values?.length !== 1) throw new RangeError(`${type.name} needs a KindField named ${property}`);
  return String(values[0]);
}

export function unionSchema(
  cases: () => ReadonlyMap<string, FieldClass>,
  property: string,
  names: SchemaNames,
): JsonSchema {
  const refs = [...cases()].map(([kind, type]) => [kind, names.ofClass(type)] as const);
  return {
    oneOf: refs.map(([, ref]) => ref),
    discriminator: {
      propertyName: property,
      mapping: Object.fromEntries(refs.map(([kind, ref]) => [kind, ref.$ref!])),
    },
  };
}

export function caseRule(cases: () => ReadonlyMap<string, FieldClass>, property: string): Rule {
  return {
    name: 'kind',
    detail: () => `must be an object whose ${property} is one of ${[...cases().keys()].join(', ')}`,
    test: (given) => isRecord(given) && typeof given[property] === 'string' && cases().has(given[property]),
  };
}

/**
 * Makes an instance of the case that each value names. A value of no case stays as it is, and its rule refuses it.
 * class-transformer's own discriminator fails on `null` in a list, so it is not used.
 */
export function caseInstances(
  cases: () => ReadonlyMap<string, FieldClass>,
  property: string,
): PropertyDecorator {
  const instance = (given: unknown): unknown => {
    const type = isRecord(given) ? cases().get(String(given[property])) : undefined;
    return type === undefined ? given : plainToInstance(type, given);
  };
  return Transform(({ obj, key }: { obj: Record<string, unknown>; key: string }) => {
    const given = obj[key];
    return Array.isArray(given) ? given.map(instance) : instance(given);
  });
}
