import { insufficientData, type InsufficientData } from '../descriptive/outcomes.js';
import { requireFinite, requirePositive } from '../distributions/checked-arguments.js';

export interface JamesSteinShrinkage {
  readonly kind: 'estimated';
  /** Mean of the values, towards which all are drawn. */
  readonly centre: number;
  /** Sum of squared deviations from the centre over the sampling variance (V). */
  readonly spread: number;
  /** Share of each deviation that is kept: 1 − (k − 3) / V, never below 0. */
  readonly factor: number;
  /** In the order given. */
  readonly values: readonly number[];
}

/**
 * James–Stein estimates of several normal means of equal, known variance, drawn towards their own mean (Efron and
 * Morris); positive part: when the values differ less than chance would have them, all become the mean.
 *
 * @param values  k ≥ 4 finite estimates, any one unit
 * @param samplingVariance  positive, the known variance of each, in that unit squared
 * @returns centre, V, the factor and the drawn values in the order given; factor 0 when all values are equal;
 *   `insufficientData` with fewer than four values, for which drawing in does not pay
 * @throws RangeError on a non-finite value or a variance that is not positive
 * @source Efron & Morris (1975), J. Amer. Statist. Assoc. 70:311–319, eq. 1.4 (with k − 3 for an estimated centre)
 * @oracle test/oracles/statistics-regression/generate.R
 * @example jamesSteinShrinkage([0, 0, 2, 2], 1) // => { centre: 1, spread: 4, factor: 0.75, values: [0.25, 0.25, 1.75, 1.75] }
 */
export function jamesSteinShrinkage(
  values: readonly number[],
  samplingVariance: number,
): JamesSteinShrinkage | InsufficientData {
  values.forEach((value, i) => requireFinite(`value ${i}`, value));
  requirePositive('samplingVariance', samplingVariance);
  const k = values.length;
  if (k < 4) return insufficientData('values', 4, k);
  const centre = values.reduce((sum, value) => sum + value / k, 0);
  const spread = values.reduce((sum, value) => sum + (value - centre) ** 2, 0) / samplingVariance;
  const factor = spread <= k - 3 ? 0 : 1 - (k - 3) / spread;
  return {
    kind: 'estimated',
    centre,
    spread,
    factor,
    values: values.map((value) => centre + factor * (value - centre)),
  };
}
