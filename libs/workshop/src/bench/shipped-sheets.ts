import { shippedCheckSheets } from '@endfloat/catalogue';
import type { IdSource } from '../ports/id-source.port.js';
import type { Stamp } from '../ports/record-store.port.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';

/** Gives the shop every shipped check sheet it does not have yet; editions it has are never touched. Answers how many. */
export async function addShippedSheets(tx: ShopTransaction, ids: IdSource, stamp: Stamp): Promise<number> {
  const present = await tx.checkSheets.all({});
  const missing = shippedCheckSheets.filter(
    (sheet) =>
      !present.some(({ identity }) => identity.code === sheet.id && identity.sheetVersion === sheet.edition),
  );
  for (const definition of missing) {
    const identity = { code: definition.id, sheetVersion: definition.edition };
    await tx.checkSheets.add(ids.next(), identity, { definition }, stamp);
  }
  return missing.length;
}
