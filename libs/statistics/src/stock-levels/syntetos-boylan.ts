import type { InsufficientData } from '../descriptive/outcomes.js';
import { croston, type IntermittentForecast } from './croston.js';

/**
 * Croston's demand per period times (1 − α/2), which takes out most of its upward bias.
 *
 * @param series  demand per period in time order, 0 or more
 * @param smoothing  α, above 0 and at most 1
 * @returns as `croston`, with the corrected demand per period
 * @throws RangeError on a negative or non-finite demand, or α outside (0, 1]
 * @source Syntetos & Boylan (2005), International Journal of Forecasting 21:303–314
 * @oracle test/oracles/statistics-regression/generate.R
 * @example syntetosBoylan([0, 4, 0, 4], 0.5) // => { kind: 'estimated', method: 'syntetosBoylan', perPeriod: 1.5 }
 */
export function syntetosBoylan(
  series: readonly number[],
  smoothing: number,
): IntermittentForecast | InsufficientData {
  const plain = croston(series, smoothing);
  if (plain.kind !== 'estimated') return plain;
  return { ...plain, method: 'syntetosBoylan', perPeriod: (1 - smoothing / 2) * plain.perPeriod };
}
