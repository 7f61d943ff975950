import type { Characteristic, Check, CheckSheet, ComponentType } from '@endfloat/catalogue';
import type { Limit, LimitContext, Verdict as Judgement } from '@endfloat/metrology';
import type { Recorded } from '../../ports/record-store.port.js';
import type {
  CheckRemark,
  Instrument,
  NoReadingsJudgement,
  OfInspection,
  Reading,
  ReadingPhase,
  Verdict,
} from '../../ports/records/bench.records.js';
import type { WorkAction } from '../../ports/records/jobs.records.js';
import type { StudiedRepeatabilities } from '../gauge-studies/studied-repeatability.js';

export type ReadingRecord = Recorded<OfInspection, Reading>;

/** A withdrawn reading stays in the history and counts for nothing: no verdict, trend, decision or next check rests on it. */
export const counts = ({ content }: { readonly content: Pick<Reading, 'isWithdrawn'> }): boolean =>
  content.isWithdrawn !== true;

/** An instrument as the verdicts of one inspection need it. */
export interface BenchInstrument {
  readonly instrument: Instrument;
  /** true where its calibration had run out, failed or never happened on that local day */
  isOverdueOn(day: string): boolean;
}

/** Work that was done on a kind of part while the inspection's job was under way. */
export interface DoneWork {
  readonly action: WorkAction;
  readonly componentType: string;
  readonly doneAt: string;
}

/** Everything the verdicts of one inspection rest on. Plain data; the same case gives the same verdicts. */
export interface BenchCase {
  readonly sheet: CheckSheet;
  readonly componentTypes: readonly ComponentType[];
  /** by the time they were taken */
  readonly readings: readonly ReadingRecord[];
  readonly instruments: ReadonlyMap<string, BenchInstrument>;
  readonly works: readonly DoneWork[];
  readonly notDone: readonly CheckRemark[];
  /** repeatability as studies of the shop found it */
  readonly studies: StudiedRepeatabilities;
  /** what is known of the vehicle */
  readonly context: LimitContext;
  /** limits the shop set or confirmed; one with the id of a sheet's limit stands in its place */
  readonly shopLimits: readonly Limit[];
  /** local day of an instant in the shop's time zone */
  localDay(at: string): string;
}

/** Readings of one check, phase and position that belong together. */
export interface ReadingGroup {
  readonly check: Check;
  readonly phase: ReadingPhase;
  readonly position: string;
  /** those that count: since the last work on the part, under the last conditions, with the last instrument */
  readonly readings: readonly ReadingRecord[];
  readonly from: string;
  readonly until: string;
}

/** A verdict as it is to be stored. */
export interface JudgedRow {
  readonly checkId: string;
  readonly phase: ReadingPhase;
  readonly limitId: string;
  readonly content: Verdict;
}

export type BenchJudgement = Judgement | NoReadingsJudgement;

/** The characteristic a check measures. Sheets are validated when they are recorded, so it is there. */
export function characteristicOf(
  types: readonly ComponentType[],
  check: Pick<Check, 'componentTypeId' | 'characteristicId'>,
): Characteristic {
  const found = types
    .find(({ id }) => id === check.componentTypeId)
    ?.characteristics.find(({ id }) => id === check.characteristicId);
  if (found === undefined)
    throw new RangeError(`${check.componentTypeId} has no characteristic ${check.characteristicId}`);
  return found;
}

/** Places of the kind of part a check looks at. */
export function positionsOf(types: readonly ComponentType[], check: Check): readonly string[] {
  return types.find(({ id }) => id === check.componentTypeId)?.positions ?? [];
}
