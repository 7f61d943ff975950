import type { DiagnosisTables } from '../tables/diagnosis-tables.js';
import { requireUsableTables } from '../tables/require-usable-tables.js';
import type { CaseCheck, ClosedCase } from './closed-case.js';
import { learnedNumber } from './learned-number.js';
import type { LearnedNumber, LearnedTables } from './learned-tables.js';
import { priorWorthJobs } from './learned-tables.js';
import type { NotTaughtReason } from './what-a-case-teaches.js';
import { whatACaseTeaches } from './what-a-case-teaches.js';

export interface Learning {
  readonly tables: LearnedTables;
  readonly taught: readonly {
    readonly caseId: string;
    readonly causeId: string;
    readonly becauseOfComeback: boolean;
  }[];
  readonly notTaught: readonly { readonly caseId: string; readonly reason: NotTaughtReason }[];
}

export interface LearningOptions {
  /** worth of a starting number in jobs, above zero; 20 where left out */
  readonly startingWorthJobs?: number;
  /** name of the learned tables in answers */
  readonly version?: string;
}

interface Count {
  yes: number;
  no: number;
  selected: number;
}
type CountsByCell = Map<string, Count>;

const cellKey = (rowId: string, causeId: string): string => `${rowId}\u0000${causeId}`;

function add(counts: CountsByCell, key: string, isYes: boolean, isSelected: boolean): void {
  const count = counts.get(key) ?? { yes: 0, no: 0, selected: 0 };
  if (isYes) count.yes += 1;
  else count.no += 1;
  if (isSelected) count.selected += 1;
  counts.set(key, count);
}

/** As found: the first decided, judged result of each check; 'corrected' was positive as found. */
function asFound(checks: readonly CaseCheck[]): readonly CaseCheck[] {
  const first = new Map<string, CaseCheck>();
  for (const check of checks) {
    if (check.outcome === 'undecided' || check.provisional || first.has(check.checkId)) continue;
    first.set(check.checkId, check);
  }
  return [...first.values()];
}

/**
 * Updates the tables from closed jobs: Dirichlet for the causes, one Beta for each cell of symptoms and checks. A cell is
 * updated only by jobs in which that symptom was asked, or that check was done and judged. A job counts once.
 *
 * @param starting  tables that the starting worth stands behind
 * @param cases  closed jobs, any order; of two with one id the first counts
 * @param options  worth of the starting numbers in jobs (20), version name
 * @returns tables with provenance, and for each case what it taught or why it taught nothing
 * @throws RangeError on unusable tables or a starting worth that is not above zero
 * @source conjugate updating, for example Gelman et al., Bayesian Data Analysis, 3rd ed., sections 2.4 and 3.4
 */
export function learnFromCases(
  starting: DiagnosisTables,
  cases: readonly ClosedCase[],
  options: LearningOptions = {},
): Learning {
  requireUsableTables(starting);
  const worth = options.startingWorthJobs ?? priorWorthJobs;
  if (!(worth > 0 && Number.isFinite(worth))) throw new RangeError('the starting worth must be above zero');
  const known = new Set(starting.causes.map((cause) => cause.id));
  const seen = new Set<string>();
  const taught: { caseId: string; causeId: string; becauseOfComeback: boolean }[] = [];
  const notTaught: { caseId: string; reason: NotTaughtReason }[] = [];
  const causeCounts: CountsByCell = new Map<string, Count>();
  const symptomCounts: CountsByCell = new Map<string, Count>();
  const checkCounts: CountsByCell = new Map<string, Count>();
  for (const closed of cases) {
    const teaching = whatACaseTeaches(closed);
    if (seen.has(closed.caseId)) notTaught.push({ caseId: closed.caseId, reason: 'repeatedCase' });
    else if (teaching.kind === 'teachesNothing')
      notTaught.push({ caseId: closed.caseId, reason: teaching.reason });
    else if (!known.has(teaching.causeId)) notTaught.push({ caseId: closed.caseId, reason: 'unknownCause' });
    else {
      const { causeId, becauseOfComeback } = teaching;
      taught.push({ caseId: closed.caseId, causeId, becauseOfComeback });
      add(causeCounts, causeId, true, false);
      for (const [id, state] of Object.entries(closed.symptoms)) {
        if (state !== 'notAsked') add(symptomCounts, cellKey(id, causeId), state === 'present', false);
      }
      for (const check of asFound(closed.checks)) {
        add(
          checkCounts,
          cellKey(check.checkId, causeId),
          check.outcome !== 'negative',
          check.choice === 'becauseOfEarlierResults',
        );
      }
    }
    seen.add(closed.caseId);
  }
  const causeIds = starting.causes.map((cause) => cause.id);
  const cells = (rowId: string, given: Readonly<Record<string, number>>, counts: CountsByCell) =>
    Object.fromEntries(
      causeIds.map((id) => [id, learnedNumber(given[id] ?? 0, worth, counts.get(cellKey(rowId, id)))]),
    );
  const causeNumber = (id: string, prior: number): LearnedNumber => {
    const yes = causeCounts.get(id)?.yes ?? 0;
    return learnedNumber(prior, worth, { yes, no: taught.length - yes, selected: 0 });
  };
  return {
    tables: {
      method: 'dirichletCausesBetaCells',
      startingTables: starting,
      version: options.version ?? `${starting.version}+${taught.length}`,
      jobsCounted: taught.length,
      causes: Object.fromEntries(starting.causes.map(({ id, prior }) => [id, causeNumber(id, prior)])),
      symptoms: Object.fromEntries(
        starting.symptoms.map((row) => [row.id, cells(row.id, row.presentGivenCause, symptomCounts)]),
      ),
      checks: Object.fromEntries(
        starting.checks.map((row) => [row.id, cells(row.id, row.positiveGivenCause, checkCounts)]),
      ),
    },
    taught,
    notTaught,
  };
}
