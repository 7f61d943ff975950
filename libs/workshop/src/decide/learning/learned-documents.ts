import { shippedDiagnosisTables, type CheckSheet } from '@endfloat/catalogue';
import {
  judgementTables,
  learnTables,
  optionActions,
  type LearnedTables,
  type OptionAction,
  type SettledDelivery,
  type SettledPart,
  type TaughtTables,
} from '@endfloat/decision';
import {
  learnFromCases,
  notTaughtReasons,
  type LearnedTables as LearnedDiagnosis,
  type NotTaughtReason,
} from '@endfloat/diagnosis';
import type { Fingerprint } from '../../ports/fingerprint.port.js';
import type { AssessedRepair, FoundCheck, ReleasedJobHistory } from '../../ports/learning-history.port.js';
import { canonicalText } from './canonical-text.js';
import { closedCases } from './closed-cases.js';
import { repairsLeftOutReasons, settledRepairs, type RepairLeftOutReason } from './comeback-outcomes.js';

/** Learned tables of the diagnosis with what taught them. */
export interface DiagnosisDocument {
  readonly tables: LearnedDiagnosis;
  readonly jobs: {
    readonly released: number;
    readonly taught: number;
    readonly taughtByComeback: number;
    /** released jobs that teach nothing, by reason; reasons that apply to none are left out */
    readonly notTaught: Readonly<Partial<Record<NotTaughtReason, number>>>;
  };
}

/** Repairs behind the chances of one action. */
export interface ActionCounts {
  readonly comebacks: number;
  readonly held: number;
  readonly running: number;
}

/** Learned tables of the decision with what taught them. */
export interface DecisionDocument {
  readonly tables: LearnedTables;
  readonly fit: { readonly kind: 'estimated' | 'notConverged'; readonly iterations: number };
  readonly byAction: Readonly<Record<OptionAction, ActionCounts>>;
  readonly leftOut: Readonly<Partial<Record<RepairLeftOutReason, number>>>;
  /** parts, their inspections and complaints, and deliveries behind wear, complaint rates and lead times */
  readonly counts: TaughtTables['counts'];
}

/** Everything the tables are learned from. */
export interface SettledHistory {
  readonly jobs: readonly ReleasedJobHistory[];
  readonly checks: readonly FoundCheck[];
  readonly sheets: ReadonlyMap<string, CheckSheet>;
  readonly assessed: readonly AssessedRepair[];
  readonly parts: readonly SettledPart[];
  readonly deliveries: readonly SettledDelivery[];
  readonly until: string;
}

const rows = new Map(shippedDiagnosisTables.checks.map(({ id, openingMove }) => [id, { openingMove }]));

function countsOf<K extends string>(reasons: readonly K[], found: readonly K[]): Partial<Record<K, number>> {
  const counts: Partial<Record<K, number>> = {};
  for (const reason of reasons) {
    const count = found.filter((each) => each === reason).length;
    if (count > 0) counts[reason] = count;
  }
  return counts;
}

/** Tables of the diagnosis after the shop's settled history; the same history gives the same tables. */
export function learnDiagnosis({ jobs, checks, sheets, until }: SettledHistory): DiagnosisDocument {
  const cases = closedCases({ jobs, checks, sheets, rows, until });
  const { tables, taught, notTaught } = learnFromCases(shippedDiagnosisTables, cases);
  return {
    tables,
    jobs: {
      released: jobs.length,
      taught: taught.length,
      taughtByComeback: taught.filter(({ becauseOfComeback }) => becauseOfComeback).length,
      notTaught: countsOf(
        notTaughtReasons,
        notTaught.map(({ reason }) => reason),
      ),
    },
  };
}

/**
 * Tables of the decision after the shop's settled history, without their hash. Always learned from the judgement tables with
 * the whole history; coefficients whose fit does not settle stay judgement.
 */
export function learnDecision({
  jobs,
  assessed,
  until,
  parts,
  deliveries,
}: SettledHistory): DecisionDocument {
  const { repairs, leftOut } = settledRepairs(jobs, assessed, until);
  const outcomes = repairs.map(({ outcome }) => outcome);
  const { tables, comebacks, counts } = learnTables(
    { parts, deliveries, repairs: outcomes },
    judgementTables,
  );
  const taughtBy = outcomes.length + counts.inspections + counts.complaints + counts.deliveries;
  const countOf = (action: OptionAction, kind: 'comeback' | 'held' | 'running'): number =>
    outcomes.filter(({ context, outcome }) => context.action === action && outcome.kind === kind).length;
  return {
    tables:
      taughtBy === 0
        ? judgementTables
        : { ...tables, version: `${judgementTables.version}+${String(outcomes.length)}`, hash: '' },
    fit: comebacks,
    counts,
    byAction: Object.fromEntries(
      optionActions.map((action) => [
        action,
        {
          comebacks: countOf(action, 'comeback'),
          held: countOf(action, 'held'),
          running: countOf(action, 'running'),
        },
      ]),
    ) as Record<OptionAction, ActionCounts>,
    leftOut: countsOf(
      repairsLeftOutReasons,
      leftOut.map(({ reason }) => reason),
    ),
  };
}

/** SHA-256 of the tables without their hash. */
export function hashOfDecision(tables: LearnedTables, fingerprint: Fingerprint): string {
  return fingerprint.of(canonicalText({ ...tables, hash: '' }));
}

export function hashOfDiagnosis(tables: LearnedDiagnosis, fingerprint: Fingerprint): string {
  return fingerprint.of(canonicalText(tables));
}
