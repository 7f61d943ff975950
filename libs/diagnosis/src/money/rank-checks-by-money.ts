import type { Evidence } from '../evidence/evidence.js';
import { compareByValue } from '../ranking/compare-by-value.js';
import { openChains } from '../ranking/rank-check-chains.js';
import type { ImpossibleEvidence } from '../single-cause/single-cause-posterior.js';
import { singleCausePosterior } from '../single-cause/single-cause-posterior.js';
import type { CheckRow, DiagnosisTables } from '../tables/diagnosis-tables.js';

/** One thing that could be done about the complaint. */
export interface RepairAction {
  readonly id: string;
  /** cause id to expected cost of doing this when that is the cause, comebacks included; one currency throughout */
  readonly costGivenCause: Readonly<Record<string, number>>;
}

export interface DiagnosisCosts {
  readonly actions: readonly RepairAction[];
  /** price of a minute of checking */
  readonly labourPerMinute: number;
}

/** What knowing the results of a chain of checks before acting is worth. */
export interface ChainWorth {
  readonly targetCheckId: string;
  readonly chain: readonly string[];
  readonly firstAction: string;
  readonly minutes: number;
  /** expected cost of acting now, less expected cost of acting after the results; not negative */
  readonly expectedCostSaved: number;
  readonly costOfChecking: number;
  /** saved less the cost of checking; above zero the chain is worth doing before acting */
  readonly expectedNetSaved: number;
  readonly netSavedPerMinute: number;
}

export interface MoneyRanking {
  readonly kind: 'ranked';
  readonly method: 'expectedCostSavedPerMinute';
  readonly tablesVersion: string;
  readonly bestActionNow: { readonly actionId: string; readonly expectedCost: number };
  /** best first; includes chains that are not worth doing, with a negative net */
  readonly chains: readonly ChainWorth[];
}

function requireUsableCosts(tables: DiagnosisTables, costs: DiagnosisCosts): void {
  if (costs.actions.length === 0) throw new RangeError('there is no action to choose from');
  if (!(costs.labourPerMinute >= 0 && Number.isFinite(costs.labourPerMinute))) {
    throw new RangeError('labour per minute must be finite and not negative');
  }
  for (const action of costs.actions) {
    for (const { id } of tables.causes) {
      if (!Number.isFinite(action.costGivenCause[id] ?? Number.NaN)) {
        throw new RangeError(`action ${action.id} has no finite cost under ${id}`);
      }
    }
  }
}

/**
 * Ranks chains of checks by the expected cost they save per minute: what acting costs now with the best action, less what
 * it costs on average once the results are known and the best action is taken then, less the minutes of checking.
 *
 * @param tables  weights and minutes
 * @param evidence  what is known so far
 * @param costs  actions with their cost under each cause, and the price of a minute
 * @returns the best action now and the worth of each chain, or `impossibleEvidence`
 * @throws RangeError on unusable tables, evidence or costs
 * @ties fewer minutes, then id
 * @source expected value of sample information, Raiffa & Schlaifer (1961), Applied Statistical Decision Theory
 */
export function rankChecksByMoney(
  tables: DiagnosisTables,
  evidence: Evidence,
  costs: DiagnosisCosts,
): MoneyRanking | ImpossibleEvidence {
  const posterior = singleCausePosterior(tables, evidence);
  if (posterior.kind !== 'estimated') return posterior;
  requireUsableCosts(tables, costs);
  const weights = posterior.causes.map((cause) => cause.probability);
  const causeIds = tables.causes.map((cause) => cause.id);
  const costRows = costs.actions.map((action) => causeIds.map((id) => action.costGivenCause[id]!));
  const costNow = costRows.map((row) => row.reduce((sum, cost, i) => sum + cost * weights[i]!, 0));
  const cheapest = costNow.reduce((best, cost, i) => (cost < costNow[best]! ? i : best), 0);
  const chains = openChains(tables, evidence).map((rows) => {
    const positive = rows.map((row) => causeIds.map((id) => row.positiveGivenCause[id] ?? 0));
    const saved = Math.max(0, costNow[cheapest]! - costAfter(weights, positive, costRows));
    return worthOf(rows, saved, costs.labourPerMinute);
  });
  chains.sort((a, b) => compareByValue(byMoney(a), byMoney(b)));
  return {
    kind: 'ranked',
    method: 'expectedCostSavedPerMinute',
    tablesVersion: tables.version,
    bestActionNow: { actionId: costs.actions[cheapest]!.id, expectedCost: costNow[cheapest]! },
    chains,
  };
}

/** Expected cost when the best action is chosen after all results; weights need not be normalised. */
function costAfter(
  weights: readonly number[],
  positive: readonly (readonly number[])[],
  costRows: readonly (readonly number[])[],
): number {
  const [row, ...rest] = positive;
  if (row === undefined)
    return Math.min(...costRows.map((costs) => costs.reduce((sum, cost, i) => sum + cost * weights[i]!, 0)));
  return (
    costAfter(
      weights.map((w, i) => w * row[i]!),
      rest,
      costRows,
    ) +
    costAfter(
      weights.map((w, i) => w * (1 - row[i]!)),
      rest,
      costRows,
    )
  );
}

function worthOf(rows: readonly CheckRow[], saved: number, labourPerMinute: number): ChainWorth {
  const minutes = rows.reduce((sum, row) => sum + row.minutes, 0);
  const costOfChecking = minutes * labourPerMinute;
  return {
    targetCheckId: rows.at(-1)!.id,
    chain: rows.map((row) => row.id),
    firstAction: rows[0]!.id,
    minutes,
    expectedCostSaved: saved,
    costOfChecking,
    expectedNetSaved: saved - costOfChecking,
    netSavedPerMinute: (saved - costOfChecking) / minutes,
  };
}

const byMoney = (chain: ChainWorth) => ({
  id: chain.targetCheckId,
  minutes: chain.minutes,
  valuePerMinute: chain.netSavedPerMinute,
});
