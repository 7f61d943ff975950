import { normalQuantile, studentTQuantile } from '@endfloat/statistics';
import type { DegreesOfFreedom } from '../instruments/instrument.js';

/** How wide an interval to state: a fixed factor, or a level of confidence by Student's t. */
export type Coverage =
  { readonly kind: 'factor'; readonly factor: number } | { readonly kind: 'level'; readonly level: number };

/** U = k u, with the factor used. */
export interface ExpandedUncertainty {
  readonly expanded: number;
  readonly coverageFactor: number;
  /** Degrees of freedom the factor was looked up with: cut to the next lower integer; 'infinite' for a fixed factor. */
  readonly degreesOfFreedom: DegreesOfFreedom;
}

/**
 * Expanded uncertainty of a result.
 *
 * For a level, k is the two-sided quantile of Student's t at the effective degrees of freedom cut to the next lower
 * integer (at least 1), which is never too small.
 *
 * @param standardUncertainty  combined standard uncertainty, positive
 * @param effectiveDegreesOfFreedom  from the budget, above 0
 * @param coverage  a factor above zero, or a level between 0 and 1 (0.95 for 95 %)
 * @returns U in the unit of u, and k
 * @throws RangeError outside these ranges; degrees of freedom are looked at for a level only
 * @source JCGM 100:2008, 6.2, G.3 and G.4.1
 * @oracle libs/metrology/src/published-cases (GUM annex H.1)
 * @example expandedUncertainty(0.02, 'infinite', { kind: 'factor', factor: 2 }).expanded // => 0.04
 */
export function expandedUncertainty(
  standardUncertainty: number,
  effectiveDegreesOfFreedom: DegreesOfFreedom,
  coverage: Coverage,
): ExpandedUncertainty {
  if (!(standardUncertainty > 0) || !Number.isFinite(standardUncertainty)) {
    throw new RangeError('a combined standard uncertainty is a finite number above zero');
  }
  if (coverage.kind === 'factor') {
    if (!(coverage.factor > 0) || !Number.isFinite(coverage.factor))
      throw new RangeError('a coverage factor is positive');
    return {
      expanded: coverage.factor * standardUncertainty,
      coverageFactor: coverage.factor,
      degreesOfFreedom: 'infinite',
    };
  }
  if (!(coverage.level > 0 && coverage.level < 1)) throw new RangeError('a level lies between 0 and 1');
  const probability = (1 + coverage.level) / 2;
  if (effectiveDegreesOfFreedom === 'infinite') {
    const coverageFactor = normalQuantile(probability);
    return { expanded: coverageFactor * standardUncertainty, coverageFactor, degreesOfFreedom: 'infinite' };
  }
  if (!(effectiveDegreesOfFreedom > 0 && Number.isFinite(effectiveDegreesOfFreedom)))
    throw new RangeError("degrees of freedom are positive, or 'infinite'");
  const degreesOfFreedom = Math.max(1, Math.floor(effectiveDegreesOfFreedom));
  const coverageFactor = studentTQuantile(probability, degreesOfFreedom);
  return { expanded: coverageFactor * standardUncertainty, coverageFactor, degreesOfFreedom };
}
