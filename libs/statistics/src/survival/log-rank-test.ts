import { insufficientData, type InsufficientData } from '../descriptive/outcomes.js';
import { chiSquareSurvival } from '../distributions/chi-square.js';
import { tallyByAge, type AgeTally } from './age-tally.js';
import { eventWeight, requireCensoredSample, totalWeight, type CensoredSample } from './censored-sample.js';
import { RiskWalk } from './risk-walk.js';

export type LogRankOutcome =
  | {
      readonly kind: 'tested';
      /** Events seen in the first and second group, and expected in each were the hazards equal. */
      readonly observed: readonly [number, number];
      readonly expected: readonly [number, number];
      /** Hypergeometric variance of observed minus expected. */
      readonly variance: number;
      readonly chiSquare: number;
      /** Upper tail of chi-square with 1 degree of freedom. */
      readonly pValue: number;
    }
  /** Both groups are never at risk together at an event age, or all at risk have the event: nothing to compare. */
  | { readonly kind: 'notComparable' }
  | InsufficientData;

/**
 * Log-rank test of equal hazards in two groups, right censoring and late entry, hypergeometric variance for ties.
 *
 * @param first  first group; at risk as in kaplanMeier
 * @param second  second group
 * @returns chi-square and p-value; `insufficientData` when a group is empty or neither has an event; `notComparable`
 *   when no event age has both groups at risk with a unit that goes on
 * @throws RangeError as kaplanMeier does
 * @ties events at one age are taken together
 * @complexity O(n log n) time, O(n) memory
 * @source Mantel (1966), Cancer Chemother. Rep. 50:163–170; Peto & Peto (1972), JRSS A 135:185–207
 * @oracle test/oracles/statistics-survival/generate.R
 * @example logRankTest({ ages: [1], events: [1] }, { ages: [], events: [] }).kind // => 'insufficientData'
 */
export function logRankTest(first: CensoredSample, second: CensoredSample): LogRankOutcome {
  requireCensoredSample(first);
  requireCensoredSample(second);
  const groups = [first, second].filter((group) => totalWeight(group) > 0).length;
  if (groups < 2) return insufficientData('groups', 2, groups);
  const observed = [eventWeight(first), eventWeight(second)] as const;
  if (observed[0] + observed[1] === 0) return insufficientData('events', 1, 0);
  const one = new RiskWalk(first);
  const other = new RiskWalk(second);
  let expectedFirst = 0;
  let variance = 0;
  for (const age of eventAges(one.deaths, other.deaths)) {
    const [n1, d1] = one.stepTo(age);
    const [n2, d2] = other.stepTo(age);
    const n = n1 + n2;
    const d = d1 + d2;
    expectedFirst += (d * n1) / n;
    if (n > 1) variance += (d * n1 * n2 * (n - d)) / (n * n * (n - 1));
  }
  if (!(variance > 0)) return { kind: 'notComparable' };
  const expected = [expectedFirst, observed[0] + observed[1] - expectedFirst] as const;
  const chiSquare = (observed[0] - expectedFirst) ** 2 / variance;
  return { kind: 'tested', observed, expected, variance, chiSquare, pValue: chiSquareSurvival(chiSquare, 1) };
}

/** Distinct event ages of both groups, rising. */
function eventAges(one: AgeTally, other: AgeTally): Float64Array {
  const all = new Float64Array(one.ages.length + other.ages.length);
  all.set(one.ages);
  all.set(other.ages, one.ages.length);
  return tallyByAge({ ages: all }).ages;
}
