import { requireNonNegativeValues, type Numbers } from '../descriptive/checked-values.js';
import { insufficientData, type InsufficientData } from '../descriptive/outcomes.js';
import { chiSquareCdf, chiSquareSurvival } from '../distributions/chi-square.js';
import { normalSurvival } from '../distributions/normal.js';
import { checkedSystem, type CheckedSystem, type SingleSystem } from './process-spans.js';

export interface LaplaceTest {
  readonly kind: 'tested';
  /** Standard normal without a trend; above 0 events come ever faster, below 0 ever slower. */
  readonly statistic: number;
  readonly pValue: number;
  readonly events: number;
}

/**
 * Laplace's test for a trend in the rate of events of one or several systems, against a constant rate in each. For
 * termination by failure the last event is the end and not counted. Approximate: normal for the mean of uniform ages.
 *
 * @param systems  each observed from age 0 to its own end
 * @returns statistic and two-sided p-value; `insufficientData` with no event that counts
 * @throws RangeError as powerLawProcess does
 * @complexity O(n log n)
 * @source Ascher & Feingold (1984), Repairable Systems Reliability; NIST/SEMATECH e-Handbook 8.2.3.4
 * @oracle test/oracles/statistics-survival/generate.R
 * @example laplaceTrendTest([{ eventAges: [5], end: 10, termination: 'time' }]) // => { kind: 'tested', statistic: 0, pValue: 1, events: 1 }
 */
export function laplaceTrendTest(systems: readonly SingleSystem[]): LaplaceTest | InsufficientData {
  let excess = 0;
  let variance = 0;
  let events = 0;
  for (const { ages, end, inner } of systems.map(checkedSystem)) {
    excess += innerSum(ages, inner) - (inner * end) / 2;
    variance += (inner * end * end) / 12;
    events += inner;
  }
  if (!(variance > 0)) return insufficientData('events', 1, events);
  const statistic = excess / Math.sqrt(variance);
  return { kind: 'tested', statistic, pValue: Math.min(1, 2 * normalSurvival(Math.abs(statistic))), events };
}

const innerSum = (ages: Float64Array, inner: number): number =>
  ages.subarray(0, inner).reduce((sum, age) => sum + age, 0);

export interface PowerLawTrendTest {
  readonly kind: 'tested';
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  /** Small: events come ever faster (deterioration). */
  readonly lowerTail: number;
  /** Small: events come ever slower (improvement). */
  readonly upperTail: number;
  /** Twice the smaller tail, at most 1. */
  readonly pValue: number;
}

/**
 * Test of MIL-HDBK-189 for a trend, against a constant rate in each system: 2 Σ ln(T / tᵢ) is χ² with twice as many
 * degrees of freedom as events; exact. For termination by failure the last event is not counted.
 *
 * @param systems  each observed from age 0 to its own end
 * @returns χ² with both tails; `insufficientData` with no event that counts; `zeroAgeEvents`, whose logarithm has no
 *   bound
 * @throws RangeError as powerLawProcess does
 * @complexity O(n log n)
 * @source MIL-HDBK-189 (1981), appendix C; NIST/SEMATECH e-Handbook 8.2.3.4
 * @oracle test/oracles/statistics-survival/generate.R
 * @example powerLawTrendTest([{ eventAges: [], end: 10, termination: 'time' }]).kind // => 'insufficientData'
 */
export function powerLawTrendTest(
  systems: readonly SingleSystem[],
): PowerLawTrendTest | { readonly kind: 'zeroAgeEvents'; readonly count: number } | InsufficientData {
  const checked: CheckedSystem[] = systems.map(checkedSystem);
  const zeros = checked.reduce((sum, { ages }) => sum + ages.filter((age) => age === 0).length, 0);
  if (zeros > 0) return { kind: 'zeroAgeEvents', count: zeros };
  const events = checked.reduce((sum, { inner }) => sum + inner, 0);
  if (events === 0) return insufficientData('events', 1, 0);
  const chiSquare = checked.reduce(
    (sum, { ages, end, inner }) =>
      sum + 2 * ages.subarray(0, inner).reduce((logs, age) => logs + Math.log(end / age), 0),
    0,
  );
  const degreesOfFreedom = 2 * events;
  const lowerTail = chiSquareCdf(chiSquare, degreesOfFreedom);
  const upperTail = chiSquareSurvival(chiSquare, degreesOfFreedom);
  const pValue = Math.min(1, 2 * Math.min(lowerTail, upperTail));
  return { kind: 'tested', chiSquare, degreesOfFreedom, lowerTail, upperTail, pValue };
}

export interface ReverseArrangements {
  readonly kind: 'tested';
  /** Pairs of gaps of which the later is the longer; many of them mean improvement. */
  readonly reversals: number;
  readonly greatest: number;
  readonly expected: number;
  /** Normal approximation with the continuity correction of the source, +½. */
  readonly statistic: number;
}

/**
 * Reverse arrangement test for a trend in the gaps between successive events of one system; the first gap counts from
 * age 0.
 *
 * @param eventAges  0 or more, any order
 * @returns number of reversals with its normal approximation; `insufficientData` with fewer than 2 events
 * @throws RangeError on an age below 0 or not finite
 * @ties a pair of equal gaps is no reversal
 * @complexity O(n²) time, O(n) memory
 * @source NIST/SEMATECH e-Handbook 8.2.3.4
 * @oracle test/oracles/statistics-survival/generate.R
 * @example reverseArrangements([1]).kind // => 'insufficientData'
 */
export function reverseArrangements(eventAges: Numbers): ReverseArrangements | InsufficientData {
  requireNonNegativeValues('eventAges', eventAges);
  const count = eventAges.length;
  if (count < 2) return insufficientData('events', 2, count);
  const ages = Float64Array.from(eventAges).sort();
  const gaps = ages.map((age, i) => age - (i === 0 ? 0 : ages[i - 1]!));
  let reversals = 0;
  for (let i = 0; i < count; i += 1) {
    for (let j = i + 1; j < count; j += 1) if (gaps[j]! > gaps[i]!) reversals += 1;
  }
  const greatest = (count * (count - 1)) / 2;
  const expected = greatest / 2;
  const deviation = Math.sqrt(((2 * count + 5) * (count - 1) * count) / 72);
  return {
    kind: 'tested',
    reversals,
    greatest,
    expected,
    statistic: (reversals - expected + 0.5) / deviation,
  };
}
