import type { LearnedNumber } from './learned-tables.js';

/**
 * One number after counting: Beta(worth x p + yes, worth x (1 - p) + no). The marginal of a Dirichlet has the same form.
 *
 * @param startingValue  p, from 0 to 1
 * @param startingWorthJobs  worth of p in jobs, above zero
 * @param count  jobs counted, and how many of them came from selected checks; none where left out
 * @returns mean and provenance; its interval comes from `learnedInterval`
 * @throws RangeError on a starting value outside 0 to 1, a worth not above zero, or a negative count
 * @source Gelman et al., Bayesian Data Analysis, 3rd ed., section 2.4
 * @example learnedNumber(0.5, 20, { yes: 5, no: 0, selected: 0 }).current // => 0.6
 */
export function learnedNumber(
  startingValue: number,
  startingWorthJobs: number,
  count: { readonly yes: number; readonly no: number; readonly selected: number } = {
    yes: 0,
    no: 0,
    selected: 0,
  },
): LearnedNumber {
  if (!(startingValue >= 0 && startingValue <= 1))
    throw new RangeError('a starting value must lie between 0 and 1');
  if (!(startingWorthJobs > 0)) throw new RangeError('the starting worth must be above zero');
  if (!(count.yes >= 0 && count.no >= 0)) throw new RangeError('counts must not be negative');
  const a = startingWorthJobs * startingValue + count.yes;
  const b = startingWorthJobs * (1 - startingValue) + count.no;
  const counted = count.yes + count.no;
  return {
    startingValue,
    startingWorthJobs,
    yes: count.yes,
    no: count.no,
    current: a / (a + b),
    fromSelectedChecks: count.selected,
    fedOnlyBySelectedChecks: counted > 0 && count.selected === counted,
  };
}
