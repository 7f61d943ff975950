import type { UnitCode } from '@endfloat/metrology';
import type { PartReading } from '@endfloat/wear';
import {
  studiedFor,
  type StudiedRepeatabilities,
  type StudiedRepeatability,
} from '../bench/gauge-studies/studied-repeatability.js';
import { counts, type BenchInstrument, type ReadingRecord } from '../bench/judging/bench-case.js';
import { budgetOf } from '../bench/judging/judge-numbers.js';
import type { FittedPartRecord } from '../intake/fitted-parts.use-case.js';
import { groupBy } from './group-by.js';
import type { WearCase } from './wear-case.js';

/** What the doubt about readings is made from. */
export interface ReadingGround {
  readonly found: WearCase;
  readonly instruments: ReadonlyMap<string, BenchInstrument>;
  readonly studies: StudiedRepeatabilities;
  /** doubts worked out before, by what they are made from: many readings of a fleet look alike */
  readonly doubts: Map<string, Doubt>;
  /** local day of an instant in the shop's time zone; null: nobody asks which instruments were overdue */
  readonly localDay: ((at: string) => string) | null;
}

export interface PartReadings {
  readonly partReadings: readonly PartReading[];
  /** studies the repeatability was taken from, in order of id */
  readonly gaugeStudyIds: readonly string[];
}

export interface Doubt {
  readonly repeatU: number | null;
  readonly setupU: number | null;
  readonly biasU: number | null;
}

const unknownDoubt: Doubt = { repeatU: null, setupU: null, biasU: null };

/** Numbers read on one part at one place with the doubt about each; repeats of an inspection by one instrument share a budget. */
export function partReadingsOf(
  readings: readonly ReadingRecord[],
  part: FittedPartRecord,
  ground: ReadingGround,
): PartReadings {
  const numbers = readings.filter(({ content }) => content.shown !== null && content.canonicalValue !== null);
  const sets = groupBy(numbers, (reading) => {
    const { phase, instrumentId } = reading.content;
    return [reading.identity.inspectionId, phase, instrumentId, counts(reading)].join(' ');
  });
  const studyIds = new Set<string>();
  const partReadings = [...sets.values()].flatMap((set) => {
    const instrument = ground.instruments.get(set[0]?.content.instrumentId ?? '');
    const studied = studiedFor(
      ground.studies,
      ground.found.characteristic.id,
      instrument?.instrument.kind ?? null,
    );
    const doubt = instrument === undefined ? unknownDoubt : doubtOf(set, ground, instrument, studied);
    if (studied !== null && doubt.repeatU !== null && counts(set[0]!)) studyIds.add(studied.studyId);
    return set.map(({ id, identity, content }) => ({
      readingId: id,
      inspectionId: identity.inspectionId,
      phase: content.phase,
      kmSinceFitted: kmSinceFitted(content.distanceKm, part),
      value: Number(content.canonicalValue),
      instrumentId: content.instrumentId,
      instrumentOverdue: isOverdue(instrument, content.takenAt, ground),
      awaitingConfirmation: !content.valueConfirmed,
      withdrawn: !counts({ content }),
      ...doubt,
    }));
  });
  return { partReadings, gaugeStudyIds: [...studyIds].sort() };
}

const isOverdue = (
  instrument: BenchInstrument | undefined,
  takenAt: string,
  { localDay }: ReadingGround,
): boolean => localDay !== null && instrument !== undefined && instrument.isOverdueOn(localDay(takenAt));

/** Doubt about a set; the same instrument, study and numbers have the same. */
function doubtOf(
  set: readonly ReadingRecord[],
  { found, doubts }: ReadingGround,
  instrument: BenchInstrument,
  studied: StudiedRepeatability | null,
): Doubt {
  const { instrumentId } = set[0]!.content;
  const shown = set.map(({ content }) => `${content.shown ?? ''} ${content.unit ?? ''}`).sort();
  const key = [instrumentId, studied?.studyId, ...shown].join('|');
  const doubt = doubts.get(key) ?? workedOutDoubt(set, found, instrument, studied);
  doubts.set(key, doubt);
  return doubt;
}

/** Of a budget: what averages out with repeats, what repeats share, and what is the instrument's. */
function workedOutDoubt(
  set: readonly ReadingRecord[],
  found: WearCase,
  { instrument }: BenchInstrument,
  studied: StudiedRepeatability | null,
): Doubt {
  const budget = budgetOf(
    { characteristic: found.characteristic, instrument: instrument.properties, studied },
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
