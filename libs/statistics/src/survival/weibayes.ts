import { requireLevel } from '../descriptive/checked-values.js';
import { insufficientData, type InsufficientData } from '../descriptive/outcomes.js';
import { chiSquareQuantile } from '../distributions/chi-square.js';
import { requirePositive } from '../distributions/checked-arguments.js';
import { eventWeight, requireCensoredSample, type CensoredSample } from './censored-sample.js';

export type WeibayesOutcome =
  | {
      readonly kind: 'estimated';
      readonly characteristicLife: number;
      readonly lower: number;
      readonly upper: number;
      readonly events: number;
      readonly shape: number;
      readonly level: number;
    }
  /** No event yet: the life is above `lower` with one-sided confidence `level`; no estimate. */
  | {
      readonly kind: 'lowerLimitOnly';
      readonly lower: number;
      readonly shape: number;
      readonly level: number;
    }
  | InsufficientData;

/**
 * Characteristic life of a Weibull distribution whose shape is taken as known, from few events or none (Weibayes).
 * With shape 1 it is the mean of an exponential distribution. The limits are exact for a given shape and count every
 * age as time-terminated (χ² with 2r + 2 below, 2r above); they hold no doubt about the shape.
 *
 * @param sample  ages with events, late entry and weights as for kaplanMeier
 * @param shape  positive
 * @param level  default 0.95; two-sided with events, one-sided without
 * @returns the estimate with limits; `lowerLimitOnly` without events; `insufficientData` when no unit was observed for
 *   any time
 * @throws RangeError as kaplanMeier does (the level included), or on a shape that is not positive
 * @complexity O(n)
 * @source Nelson (1985), J. Quality Technology 17:140–146
 * @oracle worked by hand in the spec; genfan with shape 1 against test/oracles/statistics-survival/generate.R
 * @example weibayes({ ages: [2, 4], events: [1, 0] }, 1).kind // => 'estimated'
 */
export function weibayes(sample: CensoredSample, shape: number, level = 0.95): WeibayesOutcome {
  requireCensoredSample(sample);
  requirePositive('shape', shape);
  requireLevel(level);
  const { ages, entryAges, weights } = sample;
  let greatest = 0;
  for (let i = 0; i < ages.length; i += 1) greatest = Math.max(greatest, ages[i]!);
  // Ages are taken relative to the greatest, so that high powers neither overflow nor vanish together.
  let exposure = 0;
  for (let i = 0; i < ages.length; i += 1) {
    const grown = (ages[i]! / greatest) ** shape - ((entryAges?.[i] ?? 0) / greatest) ** shape;
    if (grown > 0) exposure += grown * (weights?.[i] ?? 1);
  }
  if (!(exposure > 0)) return insufficientData('observed time', 1, 0);
  const events = eventWeight(sample);
  const lifeAt = (divisor: number): number => greatest * (exposure / divisor) ** (1 / shape);
  if (events === 0) return { kind: 'lowerLimitOnly', lower: lifeAt(-Math.log1p(-level)), shape, level };
  const tail = (1 - level) / 2;
  return {
    kind: 'estimated',
    characteristicLife: lifeAt(events),
    lower: lifeAt(chiSquareQuantile(1 - tail, 2 * events + 2) / 2),
    upper: lifeAt(chiSquareQuantile(tail, 2 * events) / 2),
    events,
    shape,
    level,
  };
}
