import type { Check } from '@endfloat/catalogue';
import { nextCheckInOrder, type OrderReason, type SettledCheck } from '@endfloat/diagnosis';
import { diagnosisNumbers, diagnosisTablesInUse } from '../decide/learning/learned-tables.use-case.js';
import type { Clock } from '../ports/clock.port.js';
import type { Fingerprint } from '../ports/fingerprint.port.js';
import type { Caller } from '../ports/roles.js';
import type { UnitOfWork } from '../ports/unit-of-work.port.js';
import { currentPhases, type CheckProgress } from './check-progress.js';
import { progressOf, visibleInspection } from './inspections.use-case.js';
import { checkingRates, rankByMoney, type ChecksByMoney } from './next-check-money.js';
import {
  diagnosticEvidence,
  rankByInformation,
  symptomsOf,
  type RankedChecks,
} from './next-check-ranking.js';

export type NextCheckWhy = OrderReason | 'asLeftDue' | 'companionNowRight';

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

export interface NextCheckAnswer extends RankedChecks {
  readonly step: NextStep;
  readonly precedence: string;
  readonly byMoney: ChecksByMoney;
}

/**
 * The next check of an inspection: safe opening moves first, then the order of the sheet, never before its
 * prerequisites. Beside it, the checks most worth their minutes by the complaints of the job: by what they tell, and by the
 * money they save.
 */
export class NextCheckUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly fingerprint: Fingerprint,
  ) {}

  execute(caller: Caller, inspectionId: string): Promise<NextCheckAnswer> {
    const now = this.clock.now();
    return this.work.read(caller.shopId, async (tx) => {
      const inspection = await visibleInspection(tx, caller, now, { id: inspectionId });
      const { sheet, checks } = await progressOf(tx, inspection);
      const tables = diagnosisNumbers(await diagnosisTablesInUse(tx, this.fingerprint));
      const { jobId, vehicleId } = inspection.identity;
      const known = diagnosticEvidence(tables, checks, await symptomsOf(tx, tables, jobId));
      return {
        step: nextStep(checks),
        precedence: sheet.precedence,
        ...rankByInformation(tables, known),
        byMoney: rankByMoney(tables, known, await checkingRates(tx, vehicleId, now)),
      };
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
