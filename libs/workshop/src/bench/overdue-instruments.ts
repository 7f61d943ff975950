import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import { settingsOf } from '../shop/open-shop.use-case.js';
import { instrumentsOf } from './judging/gather-bench-case.js';
import { localDay } from './local-day.js';

/** Instruments that were not in calibration on the day one of these readings was taken with them, in order of id. */
export async function overdueInstrumentsOf(
  tx: ShopTransaction,
  readingIds: readonly string[],
): Promise<readonly string[]> {
  if (readingIds.length === 0) return [];
  const readings = await tx.readings.findMany([...new Set(readingIds)]);
  const { timeZone } = await settingsOf(tx);
  const instruments = await instrumentsOf(
    tx,
    readings.flatMap(({ content }) => content.instrumentId ?? []),
  );
  const overdue = readings.flatMap(({ content: { instrumentId, takenAt } }) => {
    const instrument = instruments.get(instrumentId ?? '');
    return instrumentId !== null && instrument?.isOverdueOn(localDay(takenAt, timeZone)) === true
      ? [instrumentId]
      : [];
  });
  return [...new Set(overdue)].sort();
}
