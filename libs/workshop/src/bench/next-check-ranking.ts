import type { Check } from '@endfloat/catalogue';
import {
  rankNextChecks,
  type CauseProbability,
  type CheckResult,
  type DiagnosisTables,
  type Evidence,
  type NextCheckReason,
  type SymptomState,
} from '@endfloat/diagnosis';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import type { CheckProgress } from './check-progress.js';

/** A check worth its time by what is known of the complaint; information, not an order. */
export interface WorthwhileCheck {
  readonly diagnosticCheckId: string;
  /** checks of the sheet that answer it and are not done */
  readonly checks: readonly Check[];
  readonly minutes: number;
  readonly reasons: readonly NextCheckReason[];
}

/** What an inspection says of the complaint, by rows of the tables. */
export interface DiagnosticEvidence {
  readonly feeding: readonly CheckProgress[];
  readonly evidence: Evidence;
}

/** Evidence of one inspection and the complaints of its job; null where the sheet feeds no row of the tables. */
export function diagnosticEvidence(
  tables: DiagnosisTables,
  checks: readonly CheckProgress[],
  symptoms: Readonly<Record<string, SymptomState>>,
): DiagnosticEvidence | null {
  const rows = new Set(tables.checks.map(({ id }) => id));
  const feeding = checks.filter(({ check }) => rows.has(check.diagnosticCheckId ?? ''));
  return feeding.length === 0 ? null : { feeding, evidence: { symptoms, results: resultsOf(feeding) } };
}

/** Symptoms of all complaints of a job that the tables know. */
export async function symptomsOf(
  tx: ShopTransaction,
  tables: DiagnosisTables,
  jobId: string | null,
): Promise<Readonly<Record<string, SymptomState>>> {
  if (jobId === null) return {};
  const known = new Set(tables.symptoms.map(({ id }) => id));
  const complaints = await tx.complaints.all({ jobId });
  return Object.fromEntries(
    complaints
      .flatMap(({ content }) => Object.entries(content.symptoms))
      .filter(([id]) => known.has(id))
      // Present in one complaint is present, whatever another says.
      .sort(([, a], [, b]) => (a === b ? 0 : a === 'absent' ? -1 : 1)),
  );
}

/** Checks of the sheet that answer a row and are not passed. */
export function openChecksOf(feeding: readonly CheckProgress[], row: string): readonly Check[] {
  return feeding
    .filter(({ check, state }) => check.diagnosticCheckId === row && state !== 'passed')
    .map(({ check }) => check);
}

export interface RankedChecks {
  readonly worthwhile: readonly WorthwhileCheck[];
  readonly leadingCauses: readonly CauseProbability[];
  readonly tablesVersion: string | null;
}

/** The two or three checks that tell the most for their minutes, opening moves first. */
export function rankByInformation(tables: DiagnosisTables, known: DiagnosticEvidence | null): RankedChecks {
  if (known === null) return { worthwhile: [], leadingCauses: [], tablesVersion: null };
  const answer = rankNextChecks(tables, known.evidence);
  if (answer.kind === 'impossibleEvidence')
    return { worthwhile: [], leadingCauses: [], tablesVersion: tables.version };
  const worthwhile =
    answer.kind === 'proposed'
      ? answer.checks.map(({ checkId, minutes, reasons }) => ({
          diagnosticCheckId: checkId,
          checks: openChecksOf(known.feeding, checkId),
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
