import { symptomNames } from '../jobs/symptom-names.js';
import type { RateDimension } from '../ports/settled-jobs.port.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';

/**
 * What people call the values of a dimension, where the shop or the catalogue has a name for them. Names of customers
 * are personal and not told here.
 */
export async function groupLabels(
  tx: ShopTransaction,
  by: RateDimension,
  values: readonly (string | null)[],
): Promise<ReadonlyMap<string, string>> {
  const given = values.filter((value) => value !== null);
  switch (by) {
    case 'symptom':
    case 'symptomFamily':
      return new Map(
        given.flatMap((id) => (symptomNames.has(id) ? [[id, symptomNames.get(id)!] as const] : [])),
      );
    case 'diagnosedBy':
    case 'fittedBy':
      return new Map((await tx.users.findMany(given)).map(({ id, content }) => [id, content.displayName]));
    case 'vehicleAge':
      return new Map(given.map((from) => [from, `${from} to ${String(Number(from) + 4)} years`]));
    default:
      return new Map();
  }
}
