import {
  requireFiniteValues,
  requireNonNegativeValues,
  requireSameLength,
  type Numbers,
} from '../descriptive/checked-values.js';
import { requireCensoredSample, type CensoredSample } from './censored-sample.js';

/**
 * Lives known to lie in an interval (lower, upper], one row a unit or a group of like units. An exactly known life has
 * lower = upper; right censoring has upper = Infinity; left censoring has lower = 0.
 */
export interface LifeSample {
  readonly lower: Numbers;
  readonly upper: Numbers;
  /** Age from which the unit was observed (left truncation); 0 when left out. Never above `upper`. */
  readonly entryAges?: Numbers | undefined;
  /** How many like units the row stands for; 1 when left out. */
  readonly weights?: Numbers | undefined;
}

/**
 * The interval form of ages that end in an event or in the end of observation.
 *
 * @param sample  ages with events, late entry and weights as for kaplanMeier
 * @returns the same lives as intervals: events exact, the others open to the right
 * @throws RangeError as kaplanMeier does
 * @complexity O(n) time and memory
 * @source definition of right censoring
 * @oracle none needed: a change of form
 * @example rightCensoredLives({ ages: [3, 5], events: [1, 0] }).upper[1] // => Infinity
 */
export function rightCensoredLives(sample: CensoredSample): LifeSample {
  requireCensoredSample(sample);
  const { ages, events, entryAges, weights } = sample;
  const upper = Float64Array.from(ages, (age, i) => (Number(events[i]) === 1 ? age : Infinity));
  return { lower: ages, upper, entryAges, weights };
}

/** Refuses columns of unlike length, numbers below zero, upper below lower, and entries above the upper end. */
export function requireLifeSample(sample: LifeSample): void {
  const { lower, upper, entryAges, weights } = sample;
  requireNonNegativeValues('lower', lower);
  requireSameLength('upper', upper, lower.length);
  if (weights !== undefined) {
    requireSameLength('weights', weights, lower.length);
    requireNonNegativeValues('weights', weights);
  }
  if (entryAges !== undefined) {
    requireSameLength('entryAges', entryAges, lower.length);
    requireFiniteValues('entryAges', entryAges);
  }
  for (let i = 0; i < lower.length; i += 1) {
    const [low, high, entry] = [lower[i]!, upper[i]!, entryAges?.[i] ?? 0];
    if (!(high >= low))
      throw new RangeError(`upper[${i}] must not be below lower[${i}], got ${high} and ${low}`);
    // An exact life must lie above its entry; an interval must reach above it.
    if (entry < 0 || (entry > 0 && entry >= high)) {
      throw new RangeError(`entryAges[${i}] must lie between 0 and upper[${i}], got ${entry}`);
    }
  }
}
