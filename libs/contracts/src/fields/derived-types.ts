import { field, membersOf, type FieldOptions } from './field.js';
import type { FieldClass } from './json-schema.js';

/** A class with the named members of another; rules and document follow the first class. */
export function PickType<T extends object, K extends keyof T & string>(
  type: FieldClass<T>,
  keys: readonly K[],
): FieldClass<Pick<T, K>> {
  return derive(type, (name) => (keys.includes(name as K) ? {} : undefined));
}

/** A class without the named members of another. */
export function OmitType<T extends object, K extends keyof T & string>(
  type: FieldClass<T>,
  keys: readonly K[],
): FieldClass<Omit<T, K>> {
  return derive(type, (name) => (keys.includes(name as K) ? undefined : {}));
}

/**
 * A class whose members may all be absent: the body of a merge patch.
 * `null` stays refused where the first class refuses it.
 */
export function PartialType<T extends object>(type: FieldClass<T>): FieldClass<Partial<T>> {
  return derive(type, () => ({ optional: true }));
}

/** A class with the members of both. */
export function JoinTypes<A extends object, B extends object>(
  first: FieldClass<A>,
  second: FieldClass<B>,
): FieldClass<A & B> {
  class Joined {}
  for (const type of [first, second]) {
    for (const { name, options, kind } of membersOf(type).values())
      field(options, kind)(Joined.prototype, name);
  }
  return Joined as FieldClass<A & B>;
}

function derive<T extends object>(
  source: FieldClass,
  change: (name: string) => Partial<FieldOptions> | undefined,
): FieldClass<T> {
  class Derived {}
  for (const { name, options, kind } of membersOf(source).values()) {
    const changed = change(name);
    if (changed !== undefined) field({ ...options, ...changed }, kind)(Derived.prototype, name);
  }
  return Derived as FieldClass<T>;
}
