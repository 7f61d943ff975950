import type { DegreesOfFreedom } from '../instruments/instrument.js';
import type { UncertaintyComponent, UncertaintyContribution } from './uncertainty-budget.js';

/** Combined standard uncertainty with its degrees of freedom and the shares of its parts. */
export interface CombinedUncertainty {
  readonly standardUncertainty: number;
  readonly effectiveDegreesOfFreedom: DegreesOfFreedom;
  readonly contributions: readonly UncertaintyContribution[];
}

/**
 * Root sum of squares of independent components, with effective degrees of freedom
 * nu = u^4 / sum(u_i^4 / nu_i) (Welch and Satterthwaite), not rounded.
 *
 * @param components  at least one; standard uncertainties in one unit, not negative, at least one above zero
 * @returns u, nu ('infinite' where no component with finite degrees of freedom contributes), and the contributions in
 *   the order given, with shares of the variance
 * @throws RangeError on an empty list, a negative or non-finite number, degrees of freedom that are not positive, or
 *   nothing but zeros
 * @source JCGM 100:2008, 5.1.2 and G.4.1 (G.2b)
 * @oracle libs/metrology/src/published-cases (GUM annex H.1)
 * @example combineUncertainty([
 *   { source: 'instrument', standardUncertainty: 3, degreesOfFreedom: 'infinite' },
 *   { source: 'repeatability', standardUncertainty: 4, degreesOfFreedom: 'infinite' },
 * ]).standardUncertainty // => 5
 */
export function combineUncertainty(components: readonly UncertaintyComponent[]): CombinedUncertainty {
  const parts = components.map((component) => ({
    ...component,
    contribution: contributionOf(component),
  }));
  const variance = parts.reduce((sum, { contribution }) => sum + contribution ** 2, 0);
  if (!(variance > 0) || !Number.isFinite(variance)) {
    throw new RangeError('a budget needs at least one finite component above zero');
  }
  const denominator = parts.reduce(
    (sum, { contribution, degreesOfFreedom }) =>
      degreesOfFreedom === 'infinite' ? sum : sum + (contribution ** 2 / variance) ** 2 / degreesOfFreedom,
    0,
  );
  return {
    standardUncertainty: Math.sqrt(variance),
    effectiveDegreesOfFreedom: denominator > 0 ? 1 / denominator : 'infinite',
    contributions: parts.map(({ source, degreesOfFreedom, contribution }) => ({
      source,
      standardUncertainty: contribution,
      degreesOfFreedom,
      share: contribution ** 2 / variance,
    })),
  };
}

function contributionOf({
  standardUncertainty,
  degreesOfFreedom,
  sensitivity = 1,
}: UncertaintyComponent): number {
  if (!(standardUncertainty >= 0) || !Number.isFinite(standardUncertainty)) {
    throw new RangeError('a standard uncertainty is a finite number not below zero');
  }
  if (!Number.isFinite(sensitivity)) throw new RangeError('a sensitivity is a finite number');
  if (degreesOfFreedom !== 'infinite' && !(degreesOfFreedom > 0 && Number.isFinite(degreesOfFreedom))) {
    throw new RangeError("degrees of freedom are positive, or 'infinite'");
  }
  return Math.abs(sensitivity) * standardUncertainty;
}
