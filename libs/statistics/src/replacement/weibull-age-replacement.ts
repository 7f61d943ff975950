import type { NotConverged } from '../descriptive/outcomes.js';
import { requirePositive } from '../distributions/checked-arguments.js';
import { regularisedGammaLower } from '../distributions/incomplete-gamma.js';
import { logGamma } from '../distributions/special-functions.js';
import { findRoot } from '../optimise/find-root.js';
import {
  requireReplacementCosts,
  type OptimalAge,
  type ReplacementCosts,
  type RunToFailure,
} from './replacement-costs.js';

export interface WeibullLife {
  /** Characteristic life, in the caller's unit of age. */
  readonly scale: number;
  readonly shape: number;
}

/** Beyond this cumulative hazard the chance of reaching the age is under 1e-300. */
const BEYOND = 690;

/**
 * Age of planned replacement with the lowest long-run cost for a Weibull life: the t where
 * hazard(t) · ∫₀ᵗ R − F(t) = planned / (failure − planned).
 *
 * @param life  scale and shape, both positive
 * @param costs  planned (positive) and failure cost
 * @returns the optimum; `runToFailure` when the shape is 1 or less (nothing wears), when a failure costs no more than a
 *   planned replacement, or when the optimum lies beyond any age that is ever reached; `notConverged`
 * @throws RangeError on a parameter or planned cost that is not positive, or a negative failure cost
 * @source Barlow & Hunter (1960), Operations Research 8:90–100, policy I; integral by the incomplete gamma function
 * @oracle test/oracles/statistics-regression/generate.R (numerical integration and root)
 * @example weibullAgeReplacement({ scale: 10, shape: 1 }, { planned: 1, failure: 5 }) // => { kind: 'runToFailure', costRate: 0.5 }
 */
export function weibullAgeReplacement(
  life: WeibullLife,
  costs: ReplacementCosts,
): OptimalAge | RunToFailure | NotConverged {
  const { scale, shape } = life;
  requirePositive('scale', scale);
  requirePositive('shape', shape);
  requireReplacementCosts(costs);
  const { planned, failure } = costs;
  const meanInScales = Math.exp(logGamma(1 + 1 / shape));
  const meanLife = scale * meanInScales;
  const runToFailureCostRate = failure / meanLife;
  const runOn = (reason: RunToFailure['reason']): RunToFailure => ({
    kind: 'runToFailure',
    reason,
    costRate: runToFailureCostRate,
    meanLife,
  });
  if (failure <= planned) return runOn('failureCostsNoMore');
  if (shape <= 1) return runOn('hazardDoesNotRiseEnough');

  // In ln(cumulative hazard): even steps from early to late ages whatever the shape.
  const ratio = planned / (failure - planned);
  const hazardOverScale = (h: number): number => shape * Math.pow(h, 1 - 1 / shape);
  const cycleOverScale = (h: number): number => meanInScales * regularisedGammaLower(1 / shape, h);
  const balance = (logHazard: number): number => {
    const h = Math.exp(logHazard);
    return hazardOverScale(h) * cycleOverScale(h) + Math.expm1(-h) - ratio;
  };
  if (balance(Math.log(BEYOND)) <= 0) return runOn('optimumBeyondAnyLife');
  // Early on the left side is (shape − 1) · h: a start below ratio / shape is below the root.
  const root = findRoot(balance, Math.log(Math.min(1e-3, ratio / shape)) - 2, Math.log(BEYOND));
  if (root.kind === 'noSignChange') {
    return { kind: 'notConverged', iterations: 0, reason: 'no change of sign below the greatest age' };
  }
  if (root.kind !== 'found') return root;
  const h = Math.exp(root.root);
  const costRate = ((failure - planned) * hazardOverScale(h)) / scale;
  return {
    kind: 'optimum',
    age: scale * Math.pow(h, 1 / shape),
    costRate,
    runToFailureCostRate,
    saving: 1 - costRate / runToFailureCostRate,
    meanCycle: scale * cycleOverScale(h),
    failureShare: -Math.expm1(-h),
  };
}
