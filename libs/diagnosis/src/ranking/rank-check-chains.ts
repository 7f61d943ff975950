import type { Evidence } from '../evidence/evidence.js';
import { settleResults } from '../evidence/settle-results.js';
import type { ImpossibleEvidence } from '../single-cause/single-cause-posterior.js';
import { singleCausePosterior } from '../single-cause/single-cause-posterior.js';
import type { CheckRow, DiagnosisTables } from '../tables/diagnosis-tables.js';
import { compareByValue } from './compare-by-value.js';
import { jointInformationBits } from './joint-information-bits.js';
import { chainTo, isDone } from './prerequisite-standing.js';

/** A check taken together with the prerequisites that still need a result. */
export interface RankedChain {
  readonly targetCheckId: string;
  /** in the order to do them; the last is the target */
  readonly chain: readonly string[];
  readonly firstAction: string;
  readonly jointInformationBits: number;
  readonly minutes: number;
  readonly bitsPerHour: number;
}

export interface ChainRanking {
  readonly kind: 'ranked';
  readonly method: 'jointInformationPerMinute';
  readonly tablesVersion: string;
  /** best first; empty when every check is done */
  readonly chains: readonly RankedChain[];
}

/** Rows of the chain to each check that has no usable result yet. */
export function openChains(tables: DiagnosisTables, evidence: Evidence): readonly (readonly CheckRow[])[] {
  const settled = settleResults(tables, evidence);
  const row = new Map(tables.checks.map((check) => [check.id, check]));
  return tables.checks
    .filter((check) => !isDone(check.id, settled))
    .map((check) => chainTo(tables.checks, check.id, settled).map((id) => row.get(id)!));
}

/**
 * Ranks each check together with its unmet prerequisites: joint expected information of the chain divided by its minutes.
 * Do the first member of the best chain next. Keeps a cheap gate from being passed over because it says little by itself.
 *
 * @param tables  weights and minutes
 * @param evidence  what is known so far
 * @returns the ranking, or `impossibleEvidence`
 * @throws RangeError on unusable tables, unknown evidence, or a chain of more than 16 checks
 * @source Lindley (1956) for expected information; chains and minutes are judgement
 * @oracle worked examples retyped in fixtures, agreeing to 1e-5
 */
export function rankCheckChains(
  tables: DiagnosisTables,
  evidence: Evidence,
): ChainRanking | ImpossibleEvidence {
  const posterior = singleCausePosterior(tables, evidence);
  if (posterior.kind !== 'estimated') return posterior;
  const weights = posterior.causes.map((cause) => cause.probability);
  const chains = openChains(tables, evidence).map((rows): RankedChain => {
    const bits = jointInformationBits(
      weights,
      rows.map((row) => tables.causes.map((cause) => row.positiveGivenCause[cause.id] ?? 0)),
    );
    const minutes = rows.reduce((sum, row) => sum + row.minutes, 0);
    return {
      targetCheckId: rows.at(-1)!.id,
      chain: rows.map((row) => row.id),
      firstAction: rows[0]!.id,
      jointInformationBits: bits,
      minutes,
      bitsPerHour: (60 * bits) / minutes,
    };
  });
  chains.sort((a, b) => compareByValue(byInformation(a), byInformation(b)));
  return { kind: 'ranked', method: 'jointInformationPerMinute', tablesVersion: tables.version, chains };
}

const byInformation = (chain: RankedChain) => ({
  id: chain.targetCheckId,
  minutes: chain.minutes,
  valuePerMinute: chain.bitsPerHour,
});
