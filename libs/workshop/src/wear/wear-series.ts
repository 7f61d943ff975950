import type { UnitCode } from '@endfloat/metrology';
import { asFoundPoints, type AsFoundPoints, type PartReading } from '@endfloat/wear';
import type { FittedPartRecord } from '../intake/fitted-parts.use-case.js';
import { budgetOf } from '../bench/judging/judge-numbers.js';
import { counts, type ReadingRecord } from '../bench/judging/bench-case.js';
import type { Instrument } from '../ports/records/bench.records.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import type { WearCase } from './wear-case.js';

/** Readings of one characteristic at one place of one fitted part, as points of a trend. */
export interface WearSeries extends AsFoundPoints {
  readonly part: FittedPartRecord;
  /** one of several like places of the part; null where there is only one */
  readonly place: string | null;
  /** readings behind the points */
  readonly readings: number;
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
): Promise<readonly WearSeries[]> {
  const readings: ReadingRecord[] = [];
  for (let from = 0; from < parts.length; from += partsAtOnce) {
    const fittedPartId = parts.slice(from, from + partsAtOnce).map(({ id }) => id);
    readings.push(
      ...(await tx.readings.all({ fittedPartId, characteristic: found.characteristic.id }, asOf)),
    );
  }
  const instruments = await instrumentsOf(tx, readings, asOf);
  const byPart = groupBy(readings, ({ content }) => content.fittedPartId ?? '');
  return parts.flatMap((part) => {
    const own = byPart.get(part.id) ?? [];
    const places = groupBy(own.filter(counts), placeOf);
    if (places.size === 0) return [seriesOf({ part, place: '', here: own }, found, instruments)];
    return [...places.keys()].map((place) => {
      const here = own.filter((reading) => placeOf(reading) === place);
      return seriesOf({ part, place, here }, found, instruments);
    });
  });
}

const placeOf = ({ content }: ReadingRecord): string => content.place ?? '';

function seriesOf(
  {
    part,
    place,
    here,
  }: { readonly part: FittedPartRecord; readonly place: string; readonly here: readonly ReadingRecord[] },
  found: WearCase,
  instruments: ReadonlyMap<string, Instrument>,
): WearSeries {
  const partReadings = partReadingsOf(here, part, found, instruments);
  const { points, leftOut } = asFoundPoints(partReadings);
  return {
    part,
    place: place === '' ? null : place,
    readings: partReadings.length - leftOut.length,
    points,
    leftOut,
  };
}

async function instrumentsOf(
  tx: ShopTransaction,
  readings: readonly ReadingRecord[],
  asOf: string | undefined,
): Promise<ReadonlyMap<string, Instrument>> {
  const ids = [...new Set(readings.flatMap(({ content }) => content.instrumentId ?? []))];
  if (ids.length === 0) return new Map();
  return new Map((await tx.instruments.findMany(ids, asOf)).map(({ id, content }) => [id, content]));
}

function groupBy<T>(items: readonly T[], keyOf: (item: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const group = groups.get(keyOf(item));
    if (group === undefined) groups.set(keyOf(item), [item]);
    else group.push(item);
  }
  return groups;
}

interface Doubt {
  readonly repeatU: number | null;
  readonly setupU: number | null;
  readonly biasU: number | null;
}

const unknownDoubt: Doubt = { repeatU: null, setupU: null, biasU: null };

function partReadingsOf(
  readings: readonly ReadingRecord[],
  part: FittedPartRecord,
  found: WearCase,
  instruments: ReadonlyMap<string, Instrument>,
): readonly PartReading[] {
  const numbers = readings.filter(({ content }) => content.shown !== null && content.canonicalValue !== null);
  const sets = groupBy(numbers, (reading) =>
    [
      reading.identity.inspectionId,
      reading.content.phase,
      reading.content.instrumentId,
      counts(reading),
    ].join(' '),
  );
  return [...sets.values()].flatMap((set) => {
    const instrument = instruments.get(set[0]?.content.instrumentId ?? '');
    const doubt = instrument === undefined ? unknownDoubt : doubtOf(set, found, instrument);
    return set.map(({ id, identity, content }) => ({
      readingId: id,
      inspectionId: identity.inspectionId,
      phase: content.phase,
      kmSinceFitted: kmSinceFitted(content.distanceKm, part),
      value: Number(content.canonicalValue),
      instrumentId: content.instrumentId,
      awaitingConfirmation: !content.valueConfirmed,
      withdrawn: content.isWithdrawn === true,
      ...doubt,
    }));
  });
}

/** Repeats of an inspection by one instrument share a budget: what averages out, what they share, what is the instrument's. */
function doubtOf(set: readonly ReadingRecord[], found: WearCase, instrument: Instrument): Doubt {
  const budget = budgetOf(
    { characteristic: found.characteristic, instrument: instrument.properties },
    set.map(({ content }) => ({ text: content.shown ?? '', unit: content.unit as UnitCode })),
  );
  if (budget.kind !== 'known') return unknownDoubt;
  const sizeOf = (...sources: readonly string[]): number =>
    Math.hypot(
      0,
      ...budget.contributions
        .filter(({ source }) => sources.includes(source))
        .map(({ standardUncertainty }) => standardUncertainty),
    );
  const repeatU = budget.repeatability?.standardDeviation ?? 0;
  const setupU = sizeOf('resolution', 'setUp', 'other');
  // A reading without any doubt of its own cannot be weighed against others: it is not known, not exact.
  return repeatU + setupU > 0 ? { repeatU, setupU, biasU: sizeOf('instrument') } : unknownDoubt;
}

/** Km at which a part's life begins on the odometer; an original part has been on since the vehicle was new. */
export function kmAtFitting({ content }: FittedPartRecord): number | null {
  if (content.fittedKm !== null) return Number(content.fittedKm);
  return content.condition === 'original' && content.fittedAt === null ? 0 : null;
}

function kmSinceFitted(distanceKm: string | null, part: FittedPartRecord): number | null {
  const start = kmAtFitting(part);
  if (distanceKm === null || start === null) return null;
  const km = Number(distanceKm) - start;
  return km >= 0 ? km : null;
}
