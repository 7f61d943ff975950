import type { InsufficientData } from '../descriptive/outcomes.js';

/** A line with an intercept, or one forced through the origin. */
export const lineModels = ['interceptAndSlope', 'throughOrigin'] as const;
export type LineModel = (typeof lineModels)[number];

/** Whether the scatter about the line was estimated from the residuals or was known beforehand. */
export const scatterSources = ['estimated', 'known'] as const;
export type ScatterSource = (typeof scatterSources)[number];

/**
 * A fitted straight line, in units v (of y) and u (of x).
 *
 * `centre` is the weighted mean point, where height and slope are uncorrelated; it is the origin for a line through the
 * origin. Everything else about the line follows from `centre`, `slope`, `centreVariance` and `slopeVariance`.
 */
export interface LineFit {
  readonly kind: 'estimated';
  readonly model: LineModel;
  readonly scatter: ScatterSource;
  readonly observations: number;
  /** v per u. */
  readonly slope: number;
  /** v, the height at x = 0; 0 for a line through the origin. */
  readonly intercept: number;
  readonly slopeStandardError: number;
  readonly interceptStandardError: number;
  readonly centre: { readonly x: number; readonly y: number };
  readonly centreVariance: number;
  readonly slopeVariance: number;
  /** Variance of one new observation of weight 1 about the true line; 1 when the scatter is known (weight = 1 / variance). */
  readonly residualVariance: number;
  readonly residualStandardDeviation: number;
  /** Weighted sum of squared residuals. */
  readonly residualSumOfSquares: number;
  /** For the t quantile; null when the scatter is known and the normal quantile applies. */
  readonly degreesOfFreedom: number | null;
  /**
   * Share of the weighted sum of squares of y explained: about the mean with an intercept, about 0 through the origin;
   * null when there is nothing to explain (all y equal, or all 0).
   */
  readonly rSquared: number | null;
}

/** As many coefficients as observations: the line passes through every point and says nothing about the scatter. */
export interface ExactlyDeterminedLine {
  readonly kind: 'exactlyDetermined';
  readonly slope: number;
  readonly intercept: number;
}

export type LineFitOutcome = LineFit | ExactlyDeterminedLine | InsufficientData;
