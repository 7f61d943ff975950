import { DomainError, invalidInput } from '../errors/domain.errors.js';

/** A column and row that a computing room names first in its refusal, such as `ages[3] must be ...`. */
const named = /^([a-zA-Z]+)(?:\[(\d+)\])?(?= )/u;

/**
 * Runs a computation whose room refuses with a RangeError what cannot be an input, and says the same with a JSON Pointer.
 *
 * @param members  members of the request that a refusal may name
 * @param compute  pure computation
 * @param inside   member of the request that holds them; the request itself where left out
 * @returns what it computes
 * @throws DomainError `input.invalid`, at the member the room names, else at the first of `members`
 */
export function refusing<T>(members: readonly [string, ...string[]], compute: () => T, inside = ''): T {
  try {
    return compute();
  } catch (error) {
    if (error instanceof DomainError || !(error instanceof RangeError) || isOfEngine(error)) throw error;
    const [, name = '', row] = named.exec(error.message) ?? [];
    const member = members.includes(name) ? name : members[0];
    const pointer = `${inside}/${member}${member === name && row !== undefined ? `/${row}` : ''}`;
    throw invalidInput(pointer, 'precondition', `${error.message}.`);
  }
}

/** A full stack or an impossible array is a bug, not a refusal. */
const isOfEngine = ({ message }: RangeError): boolean => /call stack|array (?:buffer|length)/iu.test(message);

/** Refuses columns that have not as many entries as the first. */
export function requireColumns(columns: Readonly<Record<string, ArrayLike<unknown> | undefined>>): void {
  const [first, ...others] = Object.entries(columns);
  if (first === undefined) return;
  const [firstName, { length } = []] = first;
  for (const [name, column] of others) {
    if (column === undefined || column.length === length) continue;
    throw invalidInput(
      `/${name}`,
      'length',
      `${name} has ${column.length} entries, ${firstName} has ${length}: give one for each.`,
    );
  }
}
