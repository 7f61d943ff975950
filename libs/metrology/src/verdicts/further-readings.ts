import type { DegreesOfFreedom } from '../instruments/instrument.js';
import type { VerdictThresholds } from '../limits/limit.js';
import { combineUncertainty } from '../uncertainty/combine-uncertainty.js';
import type { KnownUncertainty } from '../uncertainty/uncertainty-budget.js';
import type { ConformanceInput } from './conformance-probability.js';
import { conformanceProbability } from './conformance-probability.js';
import { outcomeOfProbability } from './outcome-of.js';
import type { FurtherReadings } from './verdict.js';

/** More further readings than this are never proposed (judgement: nobody takes them). */
export const mostFurtherReadings = 100;

/**
 * How many further readings would settle an undecided value, if their mean and their scatter stayed as they are.
 * Only repeatability averages out; every further reading also adds a degree of freedom to it, where it has finitely many.
 *
 * @param input       the judged input (value, limits, bounds, prior)
 * @param budget      its budget
 * @param thresholds  of the limit
 * @returns `none` where it is decided; `needed` with the smallest count; or `noNumberSettles` because the doubt that does
 *   not average is too large by itself, because nothing averages, or because more than 100 would be needed
 * @throws RangeError as `conformanceProbability` and `combineUncertainty`
 * @source JCGM 106:2012, 7.2, with JCGM 100:2008, 4.2.3 and G.4.1
 * @example furtherReadings(
 *   { value: 0, standardUncertainty: 1, degreesOfFreedom: 'infinite', permitted: { lower: null, upper: 9 },
 *     possible: { lower: null, upper: null }, prior: null },
 *   { kind: 'known', unit: 'mm', standardUncertainty: 1, effectiveDegreesOfFreedom: 'infinite', contributions: [],
 *     repeatability: null, method: '' },
 *   { inside: 0.95, outside: 0.05 }) // => { kind: 'none' }
 */
export function furtherReadings(
  input: ConformanceInput,
  budget: KnownUncertainty,
  thresholds: VerdictThresholds,
): FurtherReadings {
  const isDecided = (standardUncertainty: number, degreesOfFreedom: DegreesOfFreedom): boolean => {
    const result = conformanceProbability({ ...input, standardUncertainty, degreesOfFreedom });
    return result.kind === 'probability' && outcomeOfProbability(result.inside, thresholds) !== 'undecided';
  };
  if (isDecided(budget.standardUncertainty, budget.effectiveDegreesOfFreedom)) return { kind: 'none' };
  const { repeatability } = budget;
  if (repeatability === null || repeatability.standardDeviation === 0) {
    return { kind: 'noNumberSettles', why: 'nothingAverages' };
  }
  const fixed = budget.contributions.filter(({ source }) => source !== 'repeatability');
  const isAnyFixed = fixed.some(({ standardUncertainty }) => standardUncertainty > 0);
  if (isAnyFixed) {
    const limit = combineUncertainty(fixed);
    if (!isDecided(limit.standardUncertainty, limit.effectiveDegreesOfFreedom)) {
      return { kind: 'noNumberSettles', why: 'doubtThatDoesNotAverage' };
    }
  }
  for (let count = 1; count <= mostFurtherReadings; count++) {
    const { standardDeviation, degreesOfFreedom } = repeatability;
    const combined = combineUncertainty([
      ...fixed,
      {
        source: 'repeatability',
        standardUncertainty: standardDeviation / Math.sqrt(repeatability.count + count),
        degreesOfFreedom: degreesOfFreedom === 'infinite' ? 'infinite' : degreesOfFreedom + count,
      },
    ]);
    if (isDecided(combined.standardUncertainty, combined.effectiveDegreesOfFreedom))
      return { kind: 'needed', count };
  }
  return { kind: 'noNumberSettles', why: 'moreThanPractical' };
}
