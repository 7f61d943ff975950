import { shippedDiagnosisTables, type Check } from '@endfloat/catalogue';
import {
  nextCheckInOrder,
  rankNextChecks,
  type CauseProbability,
  type CheckResult,
  type Evidence,
  type NextCheckReason,
  type OrderReason,
  type SettledCheck,
  type SymptomState,
} from '@endfloat/diagnosis';
import type { Clock } from '../ports/clock.port.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { currentPhases, type CheckProgress } from './check-progress.js';
import { progressOf, visibleInspection } from './inspections.use-case.js';

export type NextCheckWhy = OrderReason | 'asLeftDue' | 'companionNowRight';

/** A check worth its time by what is known of the complaint; information, not an order. */
export interface WorthwhileCheck {
  readonly diagnosticCheckId: string;
  /** checks of the sheet that answer it and are not done */
  readonly checks: readonly Check[];
  readonly minutes: number;
  readonly reasons: readonly NextCheckReason[];
}

export type NextStep =
  | {
      readonly kind: 'next';
      readonly progress: CheckProgress;
      readonly why: NextCheckWhy;
      /** prerequisites that no further reading would settle; the result stays provisional */
      readonly unsettled: readonly string[];
    }
  | {
      readonly kind: 'correctFirst';
      readonly findings: readonly Check[];
      readonly waiting: readonly string[];
    }
  | { readonly kind: 'done' };

export interface NextCheckAnswer {
  readonly step: NextStep;
  readonly precedence: string;
  readonly worthwhile: readonly WorthwhileCheck[];
  readonly leadingCauses: readonly CauseProbability[];
  readonly tablesVersion: string | null;
}

/**
 * The next check of an inspection: safe opening moves first, then the order of the sheet, never before its
 * prerequisites. Beside it, the checks most worth their minutes by the complaints of the job.
 */
export class NextCheckUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(caller: Caller, inspectionId: string): Promise<NextCheckAnswer> {
    return this.work.read(caller.shopId, async (tx) => {
      const inspection = await visibleInspection(tx, caller, this.clock.now(), { id: inspectionId });
      const { sheet, checks } = await progressOf(tx, inspection);
      const ranked = rank(checks, await symptomsOf(tx, inspection.identity.jobId));
      return { step: nextStep(checks), precedence: sheet.precedence, ...ranked };
    });
  }
}

function nextStep(checks: readonly CheckProgress[]): NextStep {
  const settled = new Map(
    checks.flatMap((progress) => {
      const standing = settledStanding(progress, checks);
      return standing === null ? [] : [[progress.check.id, standing] as const];
    }),
  );
  const next = nextCheckInOrder(
    checks.map(({ check }) => check),
    settled,
  );
  const byId = (id: string): CheckProgress => {
    const found = checks.find(({ check }) => check.id === id);
    if (found === undefined) throw new RangeError(`the sheet has no check ${id}`);
    return found;
  };
  switch (next.kind) {
    case 'next': {
      const progress = byId(next.checkId);
      return {
        kind: 'next',
        progress,
        why: whyOf(progress, checks, next.reason),
        unsettled: unsettled(progress, checks),
      };
    }
    case 'correctFirst':
      return {
        kind: 'correctFirst',
        findings: next.findings.map((id) => byId(id).check),
        waiting: next.waiting,
      };
    case 'allChecksDone':
      return { kind: 'done' };
  }
}

function whyOf(progress: CheckProgress, checks: readonly CheckProgress[], reason: OrderReason): NextCheckWhy {
  if (progress.asLeftDue) return 'asLeftDue';
  return isToRepeatAfterCompanion(progress, checks) ? 'companionNowRight' : reason;
}

/** Where a check stands for the order; null where it has no usable result. */
function settledStanding(progress: CheckProgress, checks: readonly CheckProgress[]): SettledCheck | null {
  const checkId = progress.check.id;
  const undecided: SettledCheck = { checkId, standing: 'undecided', countsAs: 'nothing' };
  if (progress.asLeftDue || isToRepeatAfterCompanion(progress, checks)) return undecided;
  switch (progress.state) {
    case 'open':
      return null;
    case 'notDone':
    case 'recorded':
    case 'passed':
      return { checkId, standing: 'negative', countsAs: 'negative' };
    case 'failed':
      return { checkId, standing: 'positive', countsAs: 'positive' };
    case 'undecided':
      return canBeSettled(progress) ? undecided : { checkId, standing: 'negative', countsAs: 'nothing' };
    case 'provisional':
      return currentPhases(progress.phases).every(({ satisfies }) => satisfies)
        ? { checkId, standing: 'negative', countsAs: 'negative' }
        : provisionalStanding(progress, checks);
  }
}

/** Read too early: kept, and not asked for again as long as what it waits for is still open. */
function provisionalStanding(progress: CheckProgress, checks: readonly CheckProgress[]): SettledCheck | null {
  const isWaiting = progress.check.prerequisites.some((id) => {
    const before = checks.find(({ check }) => check.id === id);
    return before !== undefined && !currentPhases(before.phases).every(({ satisfies }) => satisfies);
  });
  return isWaiting ? null : { checkId: progress.check.id, standing: 'undecided', countsAs: 'nothing' };
}

/** False where no number of further readings would settle it: asking for them again would go round in a circle. */
function canBeSettled({ phases }: CheckProgress): boolean {
  return !currentPhases(phases).some(({ verdicts }) =>
    verdicts.some(
      ({ content: { outcome, severity, detail } }) =>
        outcome === 'undecided' &&
        severity !== 'advisory' &&
        detail.judgement.kind === 'judged' &&
        detail.judgement.furtherReadings.kind === 'noNumberSettles',
    ),
  );
}

/** A negative functional answer was provisional, and the companion has come into its window by work since then. */
function isToRepeatAfterCompanion(
  { check, state, phases }: CheckProgress,
  checks: readonly CheckProgress[],
): boolean {
  if (check.functional === null || state !== 'provisional') return false;
  const { companionCheckId } = check.functional;
  const companion = checks.find((each) => each.check.id === companionCheckId);
  const lastOf = (progress: CheckProgress['phases']): string =>
    progress
      .map(({ lastTakenAt }) => lastTakenAt)
      .sort()
      .at(-1) ?? '';
  return companion?.state === 'passed' && lastOf(companion.phases) > lastOf(phases);
}

function unsettled({ check }: CheckProgress, checks: readonly CheckProgress[]): readonly string[] {
  return check.prerequisites.filter((id) =>
    checks.some((each) => each.check.id === id && each.state === 'undecided' && !canBeSettled(each)),
  );
}

async function symptomsOf(
  tx: ShopTransaction,
  jobId: string | null,
): Promise<Readonly<Record<string, SymptomState>>> {
  if (jobId === null) return {};
  const known = new Set(shippedDiagnosisTables.symptoms.map(({ id }) => id));
  const complaints = await tx.complaints.all({ jobId });
  return Object.fromEntries(
    complaints
      .flatMap(({ content }) => Object.entries(content.symptoms))
      .filter(([id]) => known.has(id))
      // Present in one complaint is present, whatever another says.
      .sort(([, a], [, b]) => (a === b ? 0 : a === 'absent' ? -1 : 1)),
  );
}

type Ranked = Pick<NextCheckAnswer, 'worthwhile' | 'leadingCauses' | 'tablesVersion'>;

function rank(checks: readonly CheckProgress[], symptoms: Readonly<Record<string, SymptomState>>): Ranked {
  const rows = new Set(shippedDiagnosisTables.checks.map(({ id }) => id));
  const feeding = checks.filter(({ check }) => rows.has(check.diagnosticCheckId ?? ''));
  if (feeding.length === 0) return { worthwhile: [], leadingCauses: [], tablesVersion: null };
  const evidence: Evidence = { symptoms, results: resultsOf(feeding) };
  const answer = rankNextChecks(shippedDiagnosisTables, evidence);
  if (answer.kind === 'impossibleEvidence')
    return { worthwhile: [], leadingCauses: [], tablesVersion: shippedDiagnosisTables.version };
  const worthwhile =
    answer.kind === 'proposed'
      ? answer.checks.map(({ checkId, minutes, reasons }) => ({
          diagnosticCheckId: checkId,
          checks: feeding
            .filter(({ check, state }) => check.diagnosticCheckId === checkId && state !== 'passed')
            .map(({ check }) => check),
          minutes,
          reasons,
        }))
      : [];
  return { worthwhile, leadingCauses: answer.leadingCauses, tablesVersion: answer.tablesVersion };
}

/** Results by row of the tables: one failed check is positive, all passed are negative, in between is undecided. */
function resultsOf(feeding: readonly CheckProgress[]): readonly CheckResult[] {
  const rows = [...new Set(feeding.map(({ check }) => check.diagnosticCheckId ?? ''))];
  return rows.flatMap((checkId): readonly CheckResult[] => {
    const own = feeding.filter(({ check }) => check.diagnosticCheckId === checkId);
    const failedBefore = own.some(({ phases }) => phases.some(({ state }) => state === 'failed'));
    const failsNow = own.some(({ state }) => state === 'failed');
    if (failsNow) return [{ checkId, outcome: 'positive' }];
    if (failedBefore)
      return [
        { checkId, outcome: 'positive' },
        { checkId, outcome: 'corrected' },
      ];
    const states = own.map(({ state }) => state).filter((state) => state !== 'notDone');
    if (states.length > 0 && states.every((state) => state === 'passed' || state === 'recorded'))
      return [{ checkId, outcome: 'negative' }];
    return states.some((state) => state === 'undecided') ? [{ checkId, outcome: 'undecided' }] : [];
  });
}
