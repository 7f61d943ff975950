import type { Check, CheckSheet } from '@endfloat/catalogue';
import type { CaseCheck, CaseComeback, ClosedCase, SymptomState } from '@endfloat/diagnosis';
import { standingOf } from '../../bench/judging/check-standing.js';
import type { FoundCheck, ReleasedJobHistory } from '../../ports/learning-history.port.js';
import type { CheckState } from '../../ports/records/bench.records.js';
import { watchedOf } from './watched.js';

/** What the closed cases are made of. */
export interface CaseSources {
  readonly jobs: readonly ReleasedJobHistory[];
  readonly checks: readonly FoundCheck[];
  /** check sheets by record id */
  readonly sheets: ReadonlyMap<string, CheckSheet>;
  /** rows of the tables that checks may feed, and which of them are done anyway */
  readonly rows: ReadonlyMap<string, { readonly openingMove: boolean }>;
  readonly until: string;
}

/** Released jobs as the learning of the diagnosis sees them, oldest first. */
export function closedCases(sources: CaseSources): readonly ClosedCase[] {
  const byId = new Map(sources.jobs.map((job) => [job.jobId, job]));
  const checks = groupedByJob(sources.checks);
  return sources.jobs.map((job) => ({
    caseId: job.jobId,
    symptoms: mergedSymptoms(job),
    checks: checksOf(checks.get(job.jobId) ?? [], sources),
    confirmedCauseId: job.causeId,
    window: watchedOf(job, sources.until).standing,
    comeback: comebackOf(job, byId, sources.until),
    comebackOf: job.comebackOf[0] ?? null,
  }));
}

function groupedByJob(checks: readonly FoundCheck[]): ReadonlyMap<string, readonly FoundCheck[]> {
  const groups = new Map<string, FoundCheck[]>();
  for (const check of checks) {
    const group = groups.get(check.jobId);
    if (group === undefined) groups.set(check.jobId, [check]);
    else group.push(check);
  }
  return groups;
}

/** Present in one complaint is present, whatever another says; a symptom that no complaint names was not asked. */
function mergedSymptoms({ symptoms }: ReleasedJobHistory): Readonly<Record<string, SymptomState>> {
  const merged: Record<string, SymptomState> = {};
  for (const [id, answer] of symptoms.flatMap((each) => Object.entries(each)))
    if (merged[id] !== 'present') merged[id] = answer;
  return merged;
}

/** A later complaint that a person found to be an unrelated fault is no comeback of this job. */
function comebackOf(
  { comebacks }: ReleasedJobHistory,
  byId: ReadonlyMap<string, ReleasedJobHistory>,
  until: string,
): CaseComeback {
  const related = comebacks.filter(({ attribution }) => attribution !== 'newUnrelatedFault');
  const confirmed = related
    .filter(({ state }) => state === 'confirmed')
    .map(({ repeatJobId }): CaseComeback & { kind: 'confirmed' } => {
      const repeat = repeatJobId === null ? undefined : byId.get(repeatJobId);
      return {
        kind: 'confirmed',
        establishedCauseId: repeat?.causeId ?? null,
        window: repeat === undefined ? 'running' : watchedOf(repeat, until).standing,
      };
    });
  const first = confirmed.find(({ establishedCauseId }) => establishedCauseId !== null) ?? confirmed[0];
  if (first !== undefined) return first;
  return related.some(({ state }) => state === 'proposed') ? { kind: 'proposed' } : { kind: 'none' };
}

interface RowResult extends CaseCheck {
  readonly takenAt: string;
}

/** Checks by row of the tables, in the order in which they were read. */
function checksOf(found: readonly FoundCheck[], sources: CaseSources): readonly CaseCheck[] {
  return [...new Set(found.map(({ inspectionId }) => inspectionId))]
    .flatMap((id) =>
      rowsOf(
        found.filter(({ inspectionId }) => inspectionId === id),
        sources,
      ),
    )
    .sort((a, b) => (a.takenAt < b.takenAt ? -1 : a.takenAt > b.takenAt ? 1 : 0))
    .map(({ checkId, outcome, provisional, choice }) => ({ checkId, outcome, provisional, choice }));
}

type Judged = FoundCheck & { readonly firstTakenAt: string; readonly state: CheckState };

/** One result a row: one failed check is positive, all passed are negative, in between is undecided. */
function rowsOf(found: readonly FoundCheck[], { sheets, rows }: CaseSources): readonly RowResult[] {
  const sheet = sheets.get(found[0]?.checkSheetId ?? '')?.checks ?? [];
  const judged = found.flatMap((each): Judged[] =>
    each.firstTakenAt === null ? [] : [{ ...each, firstTakenAt: each.firstTakenAt, state: stateOf(each) }],
  );
  const rowIds = new Set(sheet.flatMap(({ diagnosticCheckId }) => diagnosticCheckId ?? []));
  return [...rowIds].flatMap((checkId): RowResult[] => {
    const row = rows.get(checkId);
    const members = sheet.filter((check) => check.diagnosticCheckId === checkId);
    const own = judged.filter((each) => members.some(({ id }) => id === each.checkId));
    if (row === undefined || own.length === 0) return [];
    const takenAt = own.map(({ firstTakenAt }) => firstTakenAt).sort()[0]!;
    const first = sheet.findIndex(({ id }) => id === members[0]!.id);
    const isRoutine = row.openingMove || wasReadInOrder(sheet.slice(0, first), checkId, judged, takenAt);
    return [
      {
        checkId,
        outcome: outcomeOf(own),
        provisional: own.some(({ state }) => state === 'provisional'),
        choice: isRoutine ? 'routine' : 'becauseOfEarlierResults',
        takenAt,
      },
    ];
  });
}

/**
 * Routine is a check that came when its turn came: all judged checks before it on the sheet had been read by then, and none
 * of them had found anything. Anything else was chosen, or reached, because of earlier results.
 */
function wasReadInOrder(
  before: readonly Check[],
  checkId: string,
  judged: readonly Judged[],
  takenAt: string,
): boolean {
  return before
    .filter(({ diagnosticCheckId, limits }) => diagnosticCheckId !== checkId && limits.length > 0)
    .every(({ id }) =>
      judged.some((each) => each.checkId === id && each.firstTakenAt <= takenAt && each.state !== 'failed'),
    );
}

function outcomeOf(own: readonly Judged[]): CaseCheck['outcome'] {
  if (own.some(({ state }) => state === 'failed')) return 'positive';
  return own.some(({ state }) => state === 'undecided') ? 'undecided' : 'negative';
}

function stateOf({ checkId, verdicts }: FoundCheck): CheckState {
  const rows = verdicts.map((content) => ({
    checkId,
    phase: 'asFound' as const,
    limitId: content.detail.limit.citation,
    content: { ...content, probabilityInside: null },
  }));
  return standingOf(rows).state;
}
