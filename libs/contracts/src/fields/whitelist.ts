import { membersOf, type Shape } from './field.js';
import type { FieldClass } from './json-schema.js';

/** What is left of an answer, and the JSON Pointers of what was outside the contract. */
export interface Whitelisted {
  readonly value: unknown;
  readonly extra: readonly string[];
}

/** Copies only the members that the class declares, at every depth. Absent members stay absent. */
export function whitelist(type: FieldClass, answer: unknown): Whitelisted {
  const extra: string[] = [];
  return { value: copyObject(type, answer, '', extra), extra };
}

function copyObject(type: FieldClass, value: unknown, at: string, extra: string[]): unknown {
  if (typeof value !== 'object' || value === null) return value;
  const members = membersCached(type);
  const kept: Record<string, unknown> = {};
  for (const [name, inner] of Object.entries(value)) {
    const shape = members.get(name);
    if (shape === undefined) extra.push(`${at}/${name}`);
    else if (inner !== undefined) kept[name] = copy(shape, inner, `${at}/${name}`, extra);
  }
  return kept;
}

function copy(shape: Shape, value: unknown, at: string, extra: string[]): unknown {
  if (value === null) return value;
  switch (shape.kind) {
    case 'value':
      return value;
    case 'object':
      return copyObject(shape.type(), value, at, extra);
    case 'list':
      return Array.isArray(value)
        ? value.map((item, index) => copy(shape.item, item, `${at}/${index}`, extra))
        : value;
    case 'union': {
      const type = shape.types().get(String((value as Record<string, unknown>)[shape.property]));
      if (type !== undefined) return copyObject(type, value, at, extra);
      extra.push(at);
      return null;
    }
  }
}

const shapes = new WeakMap<FieldClass, ReadonlyMap<string, Shape>>();

function membersCached(type: FieldClass): ReadonlyMap<string, Shape> {
  const known = shapes.get(type);
  if (known !== undefined) return known;
  const made = new Map([...membersOf(type)].map(([name, { kind }]) => [name, kind.shape] as const));
  shapes.set(type, made);
  return made;
}
