import { asFoundPoints, type AsFoundPoints } from '@endfloat/wear';
import { instrumentsOf } from '../bench/judging/gather-bench-case.js';
import { counts, type ReadingRecord } from '../bench/judging/bench-case.js';
import { studiedRepeatabilitiesOf } from '../bench/gauge-studies/studied-repeatability.js';
import { localDay } from '../bench/local-day.js';
import type { FittedPartRecord } from '../intake/fitted-parts.use-case.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import { settingsOf } from '../shop/open-shop.use-case.js';
import { groupBy } from './group-by.js';
import { partReadingsOf, type ReadingGround } from './part-readings.js';
import type { WearCase } from './wear-case.js';

/** Readings of one characteristic at one place of one fitted part, as points of a trend. */
export interface WearSeries extends AsFoundPoints {
  readonly part: FittedPartRecord;
  /** one of several like places of the part; null where there is only one */
  readonly place: string | null;
  /** readings behind the points */
  readonly readings: number;
  /** studies the repeatability of the readings was taken from */
  readonly gaugeStudyIds: readonly string[];
  /** instrument of most points, of equals the one used first; null without a point */
  readonly mainInstrumentId: string | null;
}

/** Parts asked about in one query of readings. */
const partsAtOnce = 200;

/**
 * Readings of fitted parts as series, one a part and place; a part that was never read has one without points. Readings
 * belong to the part they were taken on, so that a new part begins a new series.
 */
export async function wearSeriesOf(
  tx: ShopTransaction,
  parts: readonly FittedPartRecord[],
  found: WearCase,
  asOf: string | undefined,
  /** for forecasts of many parts: which instruments were overdue is not told */
  { tellOverdue = true }: { readonly tellOverdue?: boolean } = {},
): Promise<readonly WearSeries[]> {
  const readings: ReadingRecord[] = [];
  for (let from = 0; from < parts.length; from += partsAtOnce) {
    const fittedPartId = parts.slice(from, from + partsAtOnce).map(({ id }) => id);
    readings.push(
      ...(await tx.readings.all({ fittedPartId, characteristic: found.characteristic.id }, asOf)),
    );
  }
  const ground = await groundOf(tx, readings, found, asOf, tellOverdue);
  const byPart = groupBy(readings, ({ content }) => content.fittedPartId ?? '');
  return parts.flatMap((part) => {
    const own = byPart.get(part.id) ?? [];
    const places = [...groupBy(own.filter(counts), placeOf).keys()];
    if (places.length === 0) return [seriesOf(part, '', own, ground)];
    return places.map((place) => {
      const here = places.length === 1 ? own : own.filter((reading) => placeOf(reading) === place);
      return seriesOf(part, place, here, ground);
    });
  });
}

/** What the doubt about readings is made from, read once for any number of parts. */
async function groundOf(
  tx: ShopTransaction,
  readings: readonly ReadingRecord[],
  found: WearCase,
  asOf: string | undefined,
  tellOverdue: boolean,
): Promise<ReadingGround> {
  const ids = readings.flatMap(({ content }) => content.instrumentId ?? []);
  const { timeZone } = await settingsOf(tx, asOf);
  return {
    found,
    instruments: await instrumentsOf(tx, ids, asOf),
    studies: await studiedRepeatabilitiesOf(tx, [found.characteristic.id], asOf),
    doubts: new Map(),
    localDay: tellOverdue ? (at) => localDay(at, timeZone) : null,
  };
}

const placeOf = ({ content }: ReadingRecord): string => content.place ?? '';

function seriesOf(
  part: FittedPartRecord,
  place: string,
  readings: readonly ReadingRecord[],
  ground: ReadingGround,
): WearSeries {
  const { partReadings, gaugeStudyIds } = partReadingsOf(readings, part, ground);
  const { points, leftOut } = asFoundPoints(partReadings);
  return {
    part,
    place: place === '' ? null : place,
    readings: partReadings.length - leftOut.length,
    gaugeStudyIds,
    mainInstrumentId: mainInstrumentOf(points),
    points,
    leftOut,
  };
}

function mainInstrumentOf(points: AsFoundPoints['points']): string | null {
  const byInstrument = [...groupBy(points, ({ instrumentId }) => instrumentId)];
  const most = Math.max(0, ...byInstrument.map(([, own]) => own.length));
  return byInstrument.find(([, own]) => own.length === most)?.[0] ?? null;
}
