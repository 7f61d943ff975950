import type { Evidence } from '../evidence/evidence.js';
import { settleResults } from '../evidence/settle-results.js';
import type { ImpossibleEvidence } from '../single-cause/single-cause-posterior.js';
import { singleCausePosterior } from '../single-cause/single-cause-posterior.js';
import type { DiagnosisTables } from '../tables/diagnosis-tables.js';
import { compareByValue } from './compare-by-value.js';
import { jointInformationBits } from './joint-information-bits.js';
import type { PrerequisiteStanding } from './prerequisite-standing.js';
import { isDone, prerequisiteStanding } from './prerequisite-standing.js';

/** Worth of one check done next. */
export interface RankedCheck {
  readonly checkId: string;
  readonly informationBits: number;
  readonly minutes: number;
  readonly bitsPerHour: number;
  readonly probabilityPositive: number;
  readonly prerequisites: PrerequisiteStanding;
  /** an earlier result was undecided or contradictory */
  readonly repeats: boolean;
}

export interface SingleCheckRanking {
  readonly kind: 'ranked';
  readonly method: 'expectedInformationPerMinute';
  readonly tablesVersion: string;
  /** best first; empty when every check is done */
  readonly checks: readonly RankedCheck[];
}

/**
 * Ranks single checks by expected information per minute, over the checks without a usable result whose prerequisites
 * all have one. Ties: fewer minutes, then id. A gate that says little by itself ranks low here; see `rankCheckChains`.
 *
 * @param tables  weights and minutes
 * @param evidence  what is known so far
 * @param options  `ignorePrerequisites` ranks every check without a result (for comparisons only)
 * @returns the ranking, or `impossibleEvidence`
 * @throws RangeError on unusable tables or evidence that names what the tables do not hold
 * @source Lindley (1956) for expected information; dividing by minutes is judgement
 * @oracle worked examples retyped in fixtures, agreeing to 1e-5
 */
export function rankSingleChecks(
  tables: DiagnosisTables,
  evidence: Evidence,
  options: { readonly ignorePrerequisites?: boolean } = {},
): SingleCheckRanking | ImpossibleEvidence {
  const posterior = singleCausePosterior(tables, evidence);
  if (posterior.kind !== 'estimated') return posterior;
  const settled = settleResults(tables, evidence);
  const weights = posterior.causes.map((cause) => cause.probability);
  const ranked: RankedCheck[] = [];
  for (const check of tables.checks) {
    if (isDone(check.id, settled)) continue;
    const prerequisites = prerequisiteStanding(check, settled);
    if (prerequisites === 'unmet' && options.ignorePrerequisites !== true) continue;
    const positive = tables.causes.map((cause) => check.positiveGivenCause[cause.id] ?? 0);
    const informationBits = jointInformationBits(weights, [positive]);
    ranked.push({
      checkId: check.id,
      informationBits,
      minutes: check.minutes,
      bitsPerHour: (60 * informationBits) / check.minutes,
      probabilityPositive: weights.reduce((sum, w, i) => sum + w * positive[i]!, 0),
      prerequisites,
      repeats: settled.has(check.id),
    });
  }
  ranked.sort((a, b) => compareByValue(byInformation(a), byInformation(b)));
  return {
    kind: 'ranked',
    method: 'expectedInformationPerMinute',
    tablesVersion: tables.version,
    checks: ranked,
  };
}

const byInformation = (check: RankedCheck) => ({
  id: check.checkId,
  minutes: check.minutes,
  valuePerMinute: check.bitsPerHour,
});
