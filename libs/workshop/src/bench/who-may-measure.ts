import { invalidInput, unknownReference } from '../errors/domain.errors.js';
import type { ShopRole } from '../ports/roles.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';

/** Roles of people who measure: the staff of the workshop. */
export const measuringRoles = ['owner', 'desk', 'technician', 'parts'] as const satisfies readonly ShopRole[];

/** Roles of the people named, by id; who is unknown to the shop is not in it. */
export async function rolesOfPeople(
  tx: ShopTransaction,
  ids: readonly string[],
): Promise<ReadonlyMap<string, readonly ShopRole[]>> {
  const people = await tx.users.findMany([...new Set(ids)]);
  return new Map(people.map(({ id, content }) => [id, content.roles]));
}

/** Refuses a person whom the shop does not know, or who is not of its staff. */
export function refuseForeignHands(
  people: ReadonlyMap<string, readonly ShopRole[]>,
  userId: string,
  pointer: string,
): void {
  const roles = people.get(userId);
  if (roles === undefined) throw unknownReference(pointer, 'user');
  if (measuringRoles.some((role) => roles.includes(role))) return;
  throw invalidInput(
    pointer,
    'staffOnly',
    `Only people of the workshop measure (${measuringRoles.join(', ')}); this user is ${roles.join(', ')}. Name who held the instrument.`,
  );
}
