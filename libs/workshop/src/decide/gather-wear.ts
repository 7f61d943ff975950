import {
  uncertaintyOfMean,
  type InstrumentProperties,
  type Quantity,
  type UncertaintyBudget,
  type UnitCode,
} from '@endfloat/metrology';
import {
  studiedFor,
  studiedRepeatabilitiesOf,
  type StudiedRepeatabilities,
  type StudiedRepeatability,
} from '../bench/gauge-studies/studied-repeatability.js';
import { counts } from '../bench/judging/bench-case.js';
import type { Recorded } from '../ports/record-store.port.js';
import type {
  InspectionIdentity,
  Inspection,
  Instrument,
  OfInspection,
  Reading,
  Verdict,
  VerdictIdentity,
} from '../ports/records/bench.records.js';
import type { FittedPart, OfVehicle } from '../ports/records/vehicles.records.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import type { WearingCase } from './component-case.js';
import { evidenceOf } from './evidence.js';
import type { MeasuredSet, ReadingDoubt } from './wear-series.js';

type ReadingRecord = Recorded<OfInspection, Reading>;
type InspectionRecord = Recorded<InspectionIdentity, Inspection>;
type VerdictRecord = Recorded<VerdictIdentity, Verdict>;

/** Where the readings are looked for. */
export interface MeasuredPart {
  readonly vehicleId: string;
  readonly position: string;
  /** null: nobody recorded which part is fitted */
  readonly part: Recorded<OfVehicle, FittedPart> | undefined;
}

/** As-found readings of one characteristic of one part, by like place, in order of time. */
export interface MeasuredPlace {
  readonly sets: readonly MeasuredSet[];
  readonly isAwaitingConfirmation: boolean;
}

/**
 * The as-found readings of the part that is fitted now. Readings before it was fitted belong to another part, as-left ones
 * to nothing that wears; a value that looks unlikely stays out until somebody confirms it.
 */
export async function gatherWear(
  tx: ShopTransaction,
  measured: MeasuredPart,
  wearing: WearingCase,
): Promise<readonly MeasuredPlace[]> {
  const readings = (await readingsOf(tx, measured, wearing.characteristic.id)).filter(counts);
  if (readings.length === 0) return [];
  const inspectionIds = [...new Set(readings.map(({ identity }) => identity.inspectionId))];
  const inspections = new Map((await tx.inspections.findMany(inspectionIds)).map((each) => [each.id, each]));
  const instrumentIds = [...new Set(readings.flatMap(({ content }) => content.instrumentId ?? []))];
  const found = instrumentIds.length === 0 ? [] : await tx.instruments.findMany(instrumentIds);
  const instruments = new Map(found.map(({ id, content }) => [id, content]));
  const studies = await studiedRepeatabilitiesOf(tx, [wearing.characteristic.id]);
  const verdicts = await tx.verdicts.all({
    inspectionId: inspectionIds,
    checkId: wearing.check.id,
    phase: 'asFound',
  });
  const places = new Map<string, ReadingRecord[]>();
  for (const reading of readings) {
    const place = reading.content.place ?? '';
    places.set(place, [...(places.get(place) ?? []), reading]);
  }
  return [...places.values()].map((all) => {
    const confirmed = all.filter(({ content }) => content.valueConfirmed && content.shown !== null);
    return {
      sets: setsOf(confirmed, inspections).map((set) =>
        measuredSet(set, { wearing, instruments, studies, verdicts, part: measured.part?.content }),
      ),
      isAwaitingConfirmation: confirmed.length === 0,
    };
  });
}

async function readingsOf(
  tx: ShopTransaction,
  { vehicleId, position, part }: MeasuredPart,
  characteristic: string,
): Promise<readonly ReadingRecord[]> {
  if (part !== undefined) return tx.readings.all({ fittedPartId: part.id, characteristic, phase: 'asFound' });
  const inspections = await tx.inspections.all({ vehicleId });
  if (inspections.length === 0) return [];
  const all = await tx.readings.all({
    inspectionId: inspections.map(({ id }) => id),
    characteristic,
    phase: 'asFound',
  });
  return all.filter(({ content }) => content.fittedPartId === null && content.position === position);
}

/** Readings of one visit by one instrument belong together: one job, or one inspection outside a job. */
function setsOf(
  readings: readonly ReadingRecord[],
  inspections: ReadonlyMap<string, InspectionRecord>,
): readonly (readonly ReadingRecord[])[] {
  const sets = new Map<string, ReadingRecord[]>();
  for (const reading of [...readings].sort((a, b) => a.content.takenAt.localeCompare(b.content.takenAt))) {
    const { inspectionId } = reading.identity;
    const visit = inspections.get(inspectionId)?.identity.jobId ?? inspectionId;
    const key = `${visit} ${reading.content.instrumentId ?? ''}`;
    sets.set(key, [...(sets.get(key) ?? []), reading]);
  }
  const lastOf = (set: readonly ReadingRecord[]): string => set.at(-1)?.content.takenAt ?? '';
  return [...sets.values()].sort((a, b) => lastOf(a).localeCompare(lastOf(b)));
}

interface SetContext {
  readonly wearing: WearingCase;
  readonly instruments: ReadonlyMap<string, Instrument>;
  readonly studies: StudiedRepeatabilities;
  readonly verdicts: readonly VerdictRecord[];
  readonly part: FittedPart | undefined;
}

function measuredSet(set: readonly ReadingRecord[], context: SetContext): MeasuredSet {
  const { verdicts, part } = context;
  const last = set.at(-1)!;
  const verdict = verdictOn(last, verdicts);
  const values = set.map(({ content }): Quantity => ({
    value: content.canonicalValue ?? '0',
    unit: content.canonicalUnit as UnitCode,
  }));
  const stated = verdict?.content.detail.uncertainty ?? null;
  const km = last.content.distanceKm;
  return {
    km: km === null ? null : Number(km) - Number(part?.fittedKm ?? '0'),
    instrument: last.content.instrumentId ?? '',
    values: values.map(({ value }) => Number(value)),
    doubt: doubtOf(stated) ?? doubtOf(freshBudget(values, last.content.instrumentId, context)),
    verdict: verdict?.content.outcome ?? 'notJudged',
    isContradictory: isContradictory(verdict),
    evidence: [
      ...set.map(({ id }) => evidenceOf('reading', id)),
      ...(verdict === undefined ? [] : [evidenceOf('verdict', verdict.id)]),
    ],
  };
}

/** Budget of readings whose verdict states none. */
function freshBudget(
  values: readonly Quantity[],
  instrumentId: string | null,
  { wearing, instruments, studies }: SetContext,
): UncertaintyBudget | null {
  const instrument = instruments.get(instrumentId ?? '') ?? null;
  const studied = studiedFor(studies, wearing.characteristic.id, instrument?.kind ?? null);
  return budgetOf(values, instrument?.properties ?? null, wearing, studied);
}

/** The verdict against the wear limit that rests on a reading; an advisory one decides nothing. */
function verdictOn(reading: ReadingRecord, verdicts: readonly VerdictRecord[]): VerdictRecord | undefined {
  return verdicts
    .filter(({ content }) => content.severity !== 'advisory' && content.readingIds.includes(reading.id))
    .at(-1);
}

function isContradictory(verdict: VerdictRecord | undefined): boolean {
  const judgement = verdict?.content.detail.judgement;
  return (
    judgement?.kind === 'notJudged' &&
    (judgement.reason === 'contradictoryPair' || judgement.reason === 'contradictsPhysicalBound')
  );
}

function budgetOf(
  readings: readonly Quantity[],
  instrument: InstrumentProperties | null,
  { characteristic: { doubt, quantityKind } }: WearingCase,
  studied: StudiedRepeatability | null,
): UncertaintyBudget | null {
  if (instrument === null || quantityKind === null) return null;
  const repeatability = doubt?.repeatability ?? null;
  const setUp = doubt?.setUp ?? null;
  return uncertaintyOfMean({
    readings,
    quantityKind,
    instrument,
    setUp: setUp === null ? null : { standardUncertainty: setUp, degreesOfFreedom: 'infinite' },
    priorRepeatability:
      studied ??
      (repeatability === null
        ? null
        : {
            standardUncertainty: repeatability,
            degreesOfFreedom: doubt?.repeatabilityDegreesOfFreedom ?? 'infinite',
          }),
  });
}

/** What of a budget averages out with repeats, what repeats share, and what is the instrument's. */
function doubtOf(budget: UncertaintyBudget | null): ReadingDoubt | null {
  if (budget?.kind !== 'known') return null;
  const sizeOf = (...sources: readonly string[]): number =>
    Math.hypot(
      0,
      ...budget.contributions
        .filter(({ source }) => sources.includes(source))
        .map(({ standardUncertainty }) => standardUncertainty),
    );
  return {
    repeat: budget.repeatability?.standardDeviation ?? 0,
    setUp: sizeOf('resolution', 'setUp', 'other'),
    bias: sizeOf('instrument'),
  };
}
