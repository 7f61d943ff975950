import { insufficientData, type InsufficientData } from '../descriptive/outcomes.js';
import { requireFinite } from '../distributions/checked-arguments.js';

export const intermittentMethods = ['croston', 'syntetosBoylan'] as const;
export type IntermittentMethod = (typeof intermittentMethods)[number];

export interface IntermittentForecast {
  readonly kind: 'estimated';
  readonly method: IntermittentMethod;
  /** Mean demand per period. */
  readonly perPeriod: number;
  /** Smoothed size of a demand. */
  readonly size: number;
  /** Smoothed number of periods from one demand to the next. */
  readonly interval: number;
  /** Number of periods with a demand. */
  readonly demands: number;
}

/**
 * Demand per period of something asked for now and then (Croston): sizes of demands and intervals between them are
 * smoothed apart, only when a demand occurs. Start values are the first size and the first interval, counted from the
 * start of the series. Periods after the last demand change nothing, so demand that has died out is not noticed.
 *
 * Biased upwards; `syntetosBoylan` takes the bias out.
 *
 * @param series  demand per period in time order, 0 or more
 * @param smoothing  α, above 0 and at most 1
 * @returns size, interval and their ratio; `insufficientData` without a period with demand
 * @throws RangeError on a negative or non-finite demand, or α outside (0, 1]
 * @source Croston (1972), Operational Research Quarterly 23:289–303
 * @oracle test/oracles/statistics-regression/generate.R (forecast::croston and a transcription of the formula)
 * @example croston([0, 4, 0, 4], 0.5) // => { kind: 'estimated', method: 'croston', perPeriod: 2, size: 4, interval: 2, demands: 2 }
 */
export function croston(
  series: readonly number[],
  smoothing: number,
): IntermittentForecast | InsufficientData {
  if (!(smoothing > 0 && smoothing <= 1)) {
    throw new RangeError(`smoothing must be above 0 and at most 1, got ${smoothing}`);
  }
  let size = 0;
  let interval = 0;
  let since = 0;
  let demands = 0;
  series.forEach((demand, i) => {
    requireFinite(`demand of period ${i}`, demand);
    if (demand < 0) throw new RangeError(`demand of period ${i} must be 0 or more, got ${demand}`);
    since += 1;
    if (demand === 0) return;
    demands += 1;
    const weight = demands === 1 ? 1 : smoothing;
    size += weight * (demand - size);
    interval += weight * (since - interval);
    since = 0;
  });
  if (demands === 0) return insufficientData('periodsWithDemand', 1, 0);
  return { kind: 'estimated', method: 'croston', perPeriod: size / interval, size, interval, demands };
}
