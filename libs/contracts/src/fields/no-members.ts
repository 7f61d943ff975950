import { membersOf } from './field.js';
import type { FieldClass } from './json-schema.js';

const emptyOnPurpose = new WeakSet<object>();

/** Marks a class that has no members on purpose, such as the body of a request that needs none. */
export const NoMembers = (): ClassDecorator => (type) => void emptyOnPurpose.add(type);

export function isEmptyOnPurpose(type: FieldClass): boolean {
  return emptyOnPurpose.has(type);
}

/** Whether input can be read as the class: it declares fields, or declares that it has none. */
export function hasFields(type: FieldClass): boolean {
  return typeof type === 'function' && (isEmptyOnPurpose(type) || membersOf(type).size > 0);
}
