import { requireFinite, requirePositive } from '../distributions/checked-arguments.js';
import type { Interval } from '../inference/interval.js';
import type { LineFit } from './line-fit.js';
import { lineQuantile } from './line-quantile.js';

/** What is known to lie at the height y: one new observation, or the line itself. */
export const inverseTargets = ['observation', 'line'] as const;
export type InverseTarget = (typeof inverseTargets)[number];

export interface InversePredictionOptions {
  /** Two-sided level; 0.95 when left out. */
  readonly confidence?: number;
  /** 'observation' (default): y carries the scatter of an observation. 'line': the true line reaches y. */
  readonly target?: InverseTarget;
  /** Weight of the new observation; 1 when left out. For the mean of m equal observations give m. */
  readonly weight?: number;
}

export type InversePrediction =
  | { readonly kind: 'estimated'; readonly x: number; readonly interval: Interval; readonly g: number }
  | { readonly kind: 'slopeNotSignificant'; readonly g: number | null };

/**
 * The x at which a fitted line reaches the height y, with Fieller's interval: all x that a test at the level does not
 * refuse. The interval is not symmetric about the estimate.
 *
 * g = (t · se(slope) / slope)²; from g = 1 on the slope may be 0 at this level, the set of x is unbounded, and the
 * question is refused rather than answered with a number.
 *
 * @param fit  a line with an estimated or known scatter
 * @param y  finite height, in v
 * @param options  level, target and weight
 * @returns x in u with its interval and g, or `slopeNotSignificant` (g null for a slope of exactly 0)
 * @throws RangeError on a non-finite y, a level outside (0, 1) or a weight that is not positive
 * @source Fieller (1954), J. R. Statist. Soc. B 16:175–185; Graybill & Iyer (1994), Regression Analysis, p. 431
 * @oracle test/oracles/statistics-regression/generate.R
 * @example inversePrediction(ordinaryLeastSquares([[0, 0], [1, 2], [2, 4]]), 6) // => { kind: 'estimated', x: 3, g: 0 }
 */
export function inversePrediction(
  fit: LineFit,
  y: number,
  options: InversePredictionOptions = {},
): InversePrediction {
  requireFinite('y', y);
  const { confidence = 0.95, target = 'observation', weight = 1 } = options;
  requirePositive('weight', weight);
  const quantile = lineQuantile(fit, confidence);
  const { slope } = fit;
  if (slope === 0) return { kind: 'slopeNotSignificant', g: null };
  const g = (quantile * fit.slopeStandardError) ** 2 / slope ** 2;
  if (!(g < 1)) return { kind: 'slopeNotSignificant', g };

  const own = target === 'line' ? 0 : fit.residualVariance / weight;
  const step = (y - fit.centre.y) / slope;
  const half =
    (quantile / Math.abs(slope)) *
    Math.sqrt(step * step * fit.slopeVariance + (1 - g) * (own + fit.centreVariance));
  return {
    kind: 'estimated',
    x: fit.centre.x + step,
    interval: {
      lower: fit.centre.x + (step - half) / (1 - g),
      upper: fit.centre.x + (step + half) / (1 - g),
    },
    g,
  };
}
