import { memberSchema, membersOf } from './field.js';
import type { FieldClass, JsonSchema, SchemaNames } from './json-schema.js';
import { isEmptyOnPurpose } from './no-members.js';

const prefix = '#/components/schemas/';

/** Name of a class in the document: its own, without the suffix that tells code what it is. */
export function componentName(type: FieldClass): string {
  return type.name.replace(/Dto$/, '');
}

/** Collects the components that a document refers to while it is written. */
export interface SchemaCollector {
  readonly names: SchemaNames;
  /** Schemas by component name, sorted by name; every object refuses members it does not list. */
  schemas(): Readonly<Record<string, JsonSchema>>;
}

/**
 * A collector that has seen nothing yet.
 *
 * @throws RangeError, from its methods, when two different classes or enums claim one name
 */
export function collectSchemas(): SchemaCollector {
  const written = new Map<string, JsonSchema>();
  const classes = new Map<string, FieldClass>();
  const waiting: FieldClass[] = [];
  const names: SchemaNames = {
    ofClass: (type) => {
      const name = componentName(type);
      const known = classes.get(name);
      if (known !== undefined && known !== type) throw new RangeError(`two classes are named ${name}`);
      if (known === undefined) {
        classes.set(name, type);
        waiting.push(type);
      }
      return { $ref: prefix + name };
    },
    ofSchema: (name, schema) => {
      const known = written.get(name);
      if (known !== undefined && JSON.stringify(known) !== JSON.stringify(schema)) {
        throw new RangeError(`two schemas are named ${name}`);
      }
      written.set(name, schema);
      return { $ref: prefix + name };
    },
  };
  const schemas = () => {
    for (let type = waiting.pop(); type !== undefined; type = waiting.pop()) {
      const name = componentName(type);
      if (written.has(name)) throw new RangeError(`a class and an enum are named ${name}`);
      written.set(name, objectSchema(type, names));
    }
    return Object.fromEntries([...written].sort(([a], [b]) => (a < b ? -1 : 1)));
  };
  return { names, schemas };
}

/** The component schemas of classes declared with fields, and of everything they refer to. */
export function documentSchemas(roots: Iterable<FieldClass>): Readonly<Record<string, JsonSchema>> {
  const collector = collectSchemas();
  for (const root of roots) collector.names.ofClass(root);
  return collector.schemas();
}

function objectSchema(type: FieldClass, names: SchemaNames): JsonSchema {
  const members = [...membersOf(type).values()];
  if (members.length === 0 && !isEmptyOnPurpose(type)) throw new RangeError(`${type.name} declares no field`);
  const required = members.filter(({ options }) => options.optional !== true).map(({ name }) => name);
  return {
    type: 'object',
    properties: Object.fromEntries(members.map((member) => [member.name, memberSchema(member, names)])),
    ...(required.length > 0 ? { required } : {}),
    additionalProperties: false,
  };
}
