import { normalSurvival } from '../distributions/normal.js';
import { studentTSurvival } from '../distributions/student-t.js';
import type { Interval } from '../inference/interval.js';
import type { LineFit } from './line-fit.js';
import { lineQuantile } from './line-quantile.js';

export interface SlopeInterval extends Interval {
  /** Two-sided p-value of "the slope is 0"; 0 for points exactly on a sloping line, 1 on a level one. */
  readonly pValue: number;
}

/**
 * Interval for the slope of a fitted line and the test of a slope of 0.
 *
 * @param fit  a line with an estimated or known scatter
 * @param confidence  two-sided level, strictly between 0 and 1; default 0.95
 * @returns limits in v per u and the two-sided p-value (t, or normal for a known scatter)
 * @throws RangeError on a level outside (0, 1)
 * @source Draper & Smith (1998), Applied Regression Analysis, 3rd ed., sec. 1.4
 * @oracle test/oracles/statistics-regression/generate.R (confint.lm)
 * @example slopeInterval(ordinaryLeastSquares([[0, 0], [1, 1], [2, 2]])) // => { lower: 1, upper: 1, pValue: 0 }
 */
export function slopeInterval(fit: LineFit, confidence = 0.95): SlopeInterval {
  const half = lineQuantile(fit, confidence) * fit.slopeStandardError;
  return { lower: fit.slope - half, upper: fit.slope + half, pValue: slopePValue(fit) };
}

function slopePValue(fit: LineFit): number {
  if (fit.slopeStandardError === 0) return fit.slope === 0 ? 1 : 0;
  const ratio = Math.abs(fit.slope) / fit.slopeStandardError;
  return (
    2 *
    (fit.degreesOfFreedom === null ? normalSurvival(ratio) : studentTSurvival(ratio, fit.degreesOfFreedom))
  );
}
