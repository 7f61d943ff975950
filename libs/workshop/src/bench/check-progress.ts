import { checksDownstreamOf, type Check, type CheckSheet } from '@endfloat/catalogue';
import type { CheckRemark, CheckState, ReadingPhase } from '../ports/records/bench.records.js';
import { standingOf, isLeftOut, type GroupStanding } from './judging/check-standing.js';
import type { DoneWork, JudgedRow, ReadingRecord } from './judging/bench-case.js';
import type { VerdictRecord } from './judging/store-verdicts.js';

/** Where one check of an inspection stands in one phase at one position. */
export interface PhaseProgress extends GroupStanding {
  readonly phase: ReadingPhase;
  readonly position: string;
  readonly readings: readonly ReadingRecord[];
  readonly verdicts: readonly VerdictRecord[];
  readonly lastTakenAt: string;
}

export interface CheckProgress {
  readonly check: Check;
  /** by the latest phase that was read */
  readonly state: CheckState;
  /** checks whose result is needed before this one is judged */
  readonly openPrerequisites: readonly string[];
  readonly outrankedBy: string | null;
  /** as left is due: this item, or one before it, was worked on since it was read */
  readonly asLeftDue: boolean;
  readonly asFoundNotTaken: string | null;
  readonly notDone: string | null;
  readonly phases: readonly PhaseProgress[];
}

export interface ProgressInput {
  readonly sheet: CheckSheet;
  readonly readings: readonly ReadingRecord[];
  readonly verdicts: readonly VerdictRecord[];
  readonly works: readonly DoneWork[];
  readonly notDone: readonly CheckRemark[];
  readonly asFoundNotTaken: readonly CheckRemark[];
}

/** Progress of every check of the sheet, in its order, by the verdicts as they are stored. */
export function checkProgress(input: ProgressInput): readonly CheckProgress[] {
  const { sheet, notDone, asFoundNotTaken } = input;
  const phases = new Map(sheet.checks.map((check) => [check.id, phasesOf(input, check)]));
  const due = dueAsLeft(input, phases);
  return sheet.checks.map((check) => {
    const own = phases.get(check.id) ?? [];
    const leftOut = notDone.find(({ checkId }) => checkId === check.id);
    const current = currentPhases(own);
    const last = [...current].sort((a, b) => severityOfState(b.state) - severityOfState(a.state))[0];
    return {
      check,
      state: last?.state ?? (leftOut === undefined ? 'open' : 'notDone'),
      openPrerequisites: openPrerequisites(current, check, phases, notDone),
      outrankedBy: outrankedBy(current),
      asLeftDue: due.has(check.id),
      asFoundNotTaken: asFoundNotTaken.find(({ checkId }) => checkId === check.id)?.reason ?? null,
      notDone: leftOut?.reason ?? null,
      phases: own,
    };
  });
}

/** The phase that tells how things are now: as left where it was read, else as found. */
export function currentPhases(phases: readonly PhaseProgress[]): readonly PhaseProgress[] {
  const asLeft = phases.filter(({ phase }) => phase === 'asLeft');
  return asLeft.length > 0 ? asLeft : phases;
}

const severityOfState = (state: CheckState): number =>
  ['open', 'notDone', 'recorded', 'passed', 'provisional', 'undecided', 'failed'].indexOf(state);

function phasesOf({ readings, verdicts }: ProgressInput, check: Check): readonly PhaseProgress[] {
  const own = readings.filter(({ content }) => content.checkId === check.id);
  const keys = [...new Set(own.map(({ content }) => `${content.phase} ${content.position}`))].sort();
  return keys.map((key) => {
    const here = own.filter(({ content }) => `${content.phase} ${content.position}` === key);
    const { phase, position } = (here[0] as ReadingRecord).content;
    const judged = verdicts.filter(
      ({ identity, content }) =>
        identity.checkId === check.id && identity.phase === phase && content.detail.position === position,
    );
    const rows: readonly JudgedRow[] = judged.map(({ identity, content }) => ({ ...identity, content }));
    return {
      phase,
      position,
      readings: here,
      verdicts: judged,
      lastTakenAt:
        here
          .map(({ content }) => content.takenAt)
          .sort()
          .at(-1) ?? '',
      ...standingOf(rows),
    };
  });
}

function openPrerequisites(
  current: readonly PhaseProgress[],
  check: Check,
  phases: ReadonlyMap<string, readonly PhaseProgress[]>,
  notDone: readonly CheckRemark[],
): readonly string[] {
  const named = current.flatMap(({ verdicts }) =>
    verdicts.flatMap(({ content: { detail } }) =>
      detail.judgement.kind === 'notJudged' && detail.judgement.reason === 'prerequisitesOpen'
        ? detail.judgement.details
        : [],
    ),
  );
  if (current.length > 0) return [...new Set(named)];
  return check.prerequisites.filter((id) => {
    const before = currentPhases(phases.get(id) ?? []);
    return !isLeftOut(notDone, id) && (before.length === 0 || !before.every(({ satisfies }) => satisfies));
  });
}

function outrankedBy(current: readonly PhaseProgress[]): string | null {
  const found = current.flatMap(({ verdicts }) =>
    verdicts.map(({ content }) => content.detail.outrankedBy).filter((id) => id !== null),
  );
  return found[0] ?? null;
}

/**
 * Checks to be read as left: what failed and was then worked on, and everything behind it that was read before the work;
 * after a replacement or an overhaul everything on that part.
 */
function dueAsLeft(
  { sheet, works }: ProgressInput,
  phases: ReadonlyMap<string, readonly PhaseProgress[]>,
): ReadonlySet<string> {
  const due = new Set<string>();
  const lastRead = (id: string): string =>
    (phases.get(id) ?? [])
      .map(({ lastTakenAt }) => lastTakenAt)
      .sort()
      .at(-1) ?? '';
  const wasRead = (id: string): boolean => lastRead(id) !== '';
  for (const work of works) {
    const onPart = sheet.checks.filter(({ componentTypeId }) => componentTypeId === work.componentType);
    const isNewPart = work.action === 'replace' || work.action === 'reBush';
    const touched = isNewPart
      ? onPart
      : onPart.filter(({ id }) =>
          (phases.get(id) ?? []).some(
            ({ state, lastTakenAt }) => state === 'failed' && lastTakenAt <= work.doneAt,
          ),
        );
    const behind = touched.flatMap(({ id }) => [id, ...checksDownstreamOf(sheet.checks, id)]);
    for (const id of behind) if (wasRead(id) && lastRead(id) <= work.doneAt) due.add(id);
  }
  return due;
}
