import { ApiProperty } from '@nestjs/swagger';
import { ValidateIf } from 'class-validator';
import { compose } from './compose.js';
import type { FieldClass, JsonSchema, SchemaNames } from './json-schema.js';
import { decoratorOf, type Rule } from './rule.js';

/** What every field decorator takes. */
export interface FieldOptions {
  /** One sentence for the reader of the document. */
  readonly description: string;
  /** The member may be absent. */
  readonly optional?: boolean;
  /** The member may be `null`; absent and `null` mean different things. */
  readonly nullable?: boolean;
  readonly example?: unknown;
  /** What the server assumes when the member is absent; written to the document only. */
  readonly default?: unknown;
}

/** How the value of a member is walked when an answer is reduced to its contract. */
export type Shape =
  | { readonly kind: 'value' }
  | { readonly kind: 'object'; readonly type: () => FieldClass }
  | {
      readonly kind: 'union';
      readonly property: string;
      readonly types: () => ReadonlyMap<string, FieldClass>;
    }
  | { readonly kind: 'list'; readonly item: Shape };

/** What makes one kind of field: the rules of the validator and the schema of the document, from the same arguments. */
export interface FieldKind {
  readonly schema: (names: SchemaNames) => JsonSchema;
  readonly rules: readonly Rule[];
  readonly shape: Shape;
  /** Decorators beside the rules, such as the late type of a nested object. */
  readonly also?: readonly PropertyDecorator[];
}

/** A member as declared. */
export interface Member {
  readonly name: string;
  readonly options: FieldOptions;
  readonly kind: FieldKind;
}

const declared = new WeakMap<object, Map<string, Member>>();

/**
 * The only maker of field decorators.
 * Registers the member, and gives its rules to class-validator and its schema to the document.
 */
export function field(options: FieldOptions, kind: FieldKind): PropertyDecorator {
  return (prototype, key) => {
    const name = String(key);
    const members = declared.get(prototype) ?? new Map<string, Member>();
    declared.set(prototype, members.set(name, { name, options, kind }));
    compose(
      ...presence(options),
      ...kind.rules.map(decoratorOf),
      ...(kind.also ?? []),
      ApiProperty({ ...flatSchema(options, kind), required: options.optional !== true }),
    )(prototype, key);
  };
}

/** The members of a class in order of declaration, inherited ones first; empty for a class without fields. */
export function membersOf(type: FieldClass): ReadonlyMap<string, Member> {
  const members = new Map<string, Member>();
  const chain: object[] = [];
  for (let at = type.prototype as object | null; at !== null; at = Object.getPrototypeOf(at) as object | null)
    chain.unshift(at);
  for (const prototype of chain) {
    for (const [name, member] of declared.get(prototype) ?? []) members.set(name, member);
  }
  return members;
}

/** Schema of one member with its description, its example and `null` where allowed. */
export function memberSchema({ options, kind }: Member, names: SchemaNames): JsonSchema {
  const bare = kind.schema(names);
  const schema = options.nullable === true ? orNull(bare) : bare;
  return {
    ...schema,
    description: options.description,
    ...(options.default === undefined ? {} : { default: options.default }),
    ...(options.example === undefined ? {} : { examples: [options.example] }),
  };
}

function orNull(schema: JsonSchema): JsonSchema {
  if (typeof schema.type !== 'string' || schema.enum !== undefined)
    return { oneOf: [schema, { type: 'null' }] };
  return { ...schema, type: [schema.type, 'null'] };
}

/** Absent is skipped where the member is optional, `null` where it is nullable; otherwise each is refused by name. */
function presence({ optional = false, nullable = false }: FieldOptions): PropertyDecorator[] {
  const skipped = (value: unknown) => (optional && value === undefined) || (nullable && value === null);
  return [
    ...(optional || nullable ? [ValidateIf((_object, value) => !skipped(value))] : []),
    decoratorOf({ name: 'required', detail: 'must be present', test: (value) => value !== undefined }),
    decoratorOf({ name: 'notNull', detail: 'must not be null', test: (value) => value !== null }),
  ];
}

/**
 * What the Swagger explorer is told: enough for query and path parameters, which are plain text.
 * The schemas of bodies and answers are written by `documentSchemas` instead.
 */
function flatSchema(options: FieldOptions, kind: FieldKind): object {
  if (kind.shape.kind !== 'value') return { type: 'object', description: options.description };
  const inline: SchemaNames = { ofClass: () => ({ type: 'object' }), ofSchema: (_name, schema) => schema };
  const { examples, ...schema } = memberSchema({ name: '', options, kind }, inline);
  return { ...schema, ...(examples === undefined ? {} : { example: examples[0] }) };
}
