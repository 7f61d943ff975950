import type { CheckSheet } from '@endfloat/catalogue';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';

/** Every check sheet of the shop in its latest version, now or as it was known at a moment. */
export async function latestSheets(tx: ShopTransaction, asOf?: string): Promise<readonly CheckSheet[]> {
  const latest = new Map<string, { readonly version: number; readonly sheet: CheckSheet }>();
  for (const { identity, content } of await tx.checkSheets.all({}, asOf)) {
    const known = latest.get(identity.code);
    if (known === undefined || known.version < identity.sheetVersion)
      latest.set(identity.code, { version: identity.sheetVersion, sheet: content.definition });
  }
  return [...latest.values()].map(({ sheet }) => sheet);
}
