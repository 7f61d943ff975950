import type { ShopTransaction } from '../ports/unit-of-work.port.js';

/** The name kept in a personal record; null without one, or once it was erased. */
export async function keptName(tx: ShopTransaction, personalRecordId: string | null): Promise<string | null> {
  if (personalRecordId === null) return null;
  const [record] = await tx.personal.findMany([personalRecordId]);
  return record?.content?.['name'] ?? null;
}
