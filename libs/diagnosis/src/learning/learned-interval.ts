import { betaQuantile } from '@endfloat/statistics';
import type { LearnedNumber } from './learned-tables.js';

/** Doubt about a learned number, or why there is none to state. */
export type LearnedInterval =
  | {
      readonly kind: 'estimated';
      readonly lower: number;
      readonly upper: number;
      readonly level: number;
      readonly jobs: number;
    }
  /** the starting value was 0 or 1 and nothing counted contradicts it */
  | { readonly kind: 'degenerate'; readonly value: number };

/**
 * Central interval of the Beta distribution behind a learned number.
 *
 * @param number  from the learned tables
 * @param level  between 0 and 1; 0.9 where left out
 * @returns the interval with the jobs counted, or `degenerate` for a starting value of 0 or 1 that nothing contradicts
 * @throws RangeError on a level outside 0 to 1
 * @source Gelman et al., Bayesian Data Analysis, 3rd ed., section 2.3
 */
export function learnedInterval(number: LearnedNumber, level = 0.9): LearnedInterval {
  if (!(level > 0 && level < 1)) throw new RangeError('the level must lie between 0 and 1');
  const a = number.startingWorthJobs * number.startingValue + number.yes;
  const b = number.startingWorthJobs * (1 - number.startingValue) + number.no;
  if (a === 0 || b === 0) return { kind: 'degenerate', value: number.current };
  const tail = (1 - level) / 2;
  return {
    kind: 'estimated',
    lower: betaQuantile(tail, a, b),
    upper: betaQuantile(1 - tail, a, b),
    level,
    jobs: number.yes + number.no,
  };
}
