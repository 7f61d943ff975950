import type { IdSource } from '../ports/id-source.port.js';
import type { Stamp } from '../ports/record-store.port.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import { addRecord } from '../recording/add-record.js';
import { dayAfter } from './local-days.js';
import type { StockMoveRecord } from './move-stock.js';

/** Most cores that one receipt makes; more pieces with a deposit come in by more than one receipt. */
export const mostCoresOfReceipt = 100;

/** For each piece that came in with a deposit, an old one is owed to the supplier. */
export async function coresOfReceipt(
  tx: ShopTransaction,
  ids: IdSource,
  { id, identity, content }: StockMoveRecord,
  day: string,
  stamp: Stamp,
): Promise<void> {
  const offer = content.offerId === null ? undefined : await tx.offers.find(content.offerId);
  const deposit = offer?.content.coreDeposit ?? null;
  if (offer === undefined || deposit === null) return;
  const { supplier, componentType } = offer.content;
  const days = offer.content.coreReturnDays ?? null;
  const core = {
    supplier,
    componentType,
    owedSince: day,
    returnBy: days === null ? null : dayAfter(day, days),
    state: 'owed',
    deposit,
    serial: null,
    steps: [],
    note: null,
  } as const;
  for (let piece = 0; piece < Math.min(content.quantity, mostCoresOfReceipt); piece += 1) {
    const { record } = await addRecord(
      tx.cores,
      'core',
      { id: ids.next(), identity: { partId: identity.partId, stockMoveId: id, jobId: null }, content: core },
      stamp,
    );
    await tx.announce({
      type: 'endfloat.core.owed.v1',
      subjectId: record.id,
      at: stamp.at,
      payload: { componentType, returnBy: core.returnBy },
    });
  }
}
