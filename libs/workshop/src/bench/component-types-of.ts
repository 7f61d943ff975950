import { shippedComponentTypes, type ComponentType } from '@endfloat/catalogue';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';

/** Kinds of part this shop knows: the shipped ones and its own. */
export async function componentTypesOf(
  tx: ShopTransaction,
  asOf?: string,
): Promise<readonly ComponentType[]> {
  const own = await tx.componentTypes.all({}, asOf);
  return [...shippedComponentTypes, ...own.map(({ content }) => content.definition)];
}
