import { wearNodes } from '../belief/wear-grid.js';
import { exp, log, logistic } from '../portable/elementary.js';
import type { LearnedTables } from '../tables/learned-tables.js';
import { greatestAt, greatestBySteps } from './greatest-at.js';
import type { LifeSums } from './part-smoother.js';

/** How far learned numbers are expected from the judgement, standard deviations of logarithms; JUDGEMENT. */
const doubt = { otherCauses: 0.7, worn: 0.7, onset: 0.3, functional: 0.3 } as const;

/** Complaints per 100,000 km by wear node. */
export function hazardAtNodes({
  otherCausesRate,
  wornRate,
  onsetWidth,
}: LearnedTables['complaints']): Float64Array {
  return wearNodes.map((wear) => otherCausesRate + wornRate * logistic((wear - 1) / onsetWidth));
}

/** Chance of a positive functional criterion by wear node, never quite none or all. */
export const positiveAtNodes = (width: number): Float64Array =>
  wearNodes.map((wear) => 0.001 + 0.998 * logistic((wear - 1) / width));

const square = (x: number): number => x * x;

/**
 * Complaint rates from expected distance and complaints at each wear, near a prior.
 *
 * @param sums   of all parts
 * @param prior  what they are expected to be, all positive
 * @returns mode of the posterior
 * @source Poisson counts with an exposure; lognormal priors
 */
export function fitComplaints(
  { exposure, complaints }: Pick<LifeSums, 'exposure' | 'complaints'>,
  prior: LearnedTables['complaints'],
): LearnedTables['complaints'] {
  if (!(prior.otherCausesRate > 0) || !(prior.wornRate > 0)) return prior;
  const centre = [log(prior.otherCausesRate), log(prior.wornRate), log(prior.onsetWidth)];
  const sds = [doubt.otherCauses, doubt.worn, doubt.onset];
  const named = ([other, worn, onset]: readonly number[]) => ({
    otherCausesRate: exp(other!),
    wornRate: exp(worn!),
    onsetWidth: exp(onset!),
  });
  const value = (at: readonly number[]): number => {
    const hazard = hazardAtNodes(named(at));
    let sum = at.reduce((total, x, k) => total - 0.5 * square((x - centre[k]!) / sds[k]!), 0);
    for (let i = 0; i < hazard.length; i += 1)
      sum += complaints[i]! * log(hazard[i]!) - exposure[i]! * hazard[i]!;
    return sum;
  };
  return named(
    greatestBySteps(
      value,
      centre,
      sds.map((sd) => 4 * sd),
      4,
    ),
  );
}

/**
 * Width over which the functional criterion turns, near a prior.
 *
 * @param sums   of all parts
 * @param prior  what it is expected to be, positive
 * @returns mode of the posterior
 */
export function fitFunctionalWidth(
  { positives, negatives }: Pick<LifeSums, 'positives' | 'negatives'>,
  prior: number,
): number {
  const value = (logWidth: number): number => {
    const positive = positiveAtNodes(exp(logWidth));
    let sum = -0.5 * square((logWidth - log(prior)) / doubt.functional);
    for (let i = 0; i < positive.length; i += 1)
      sum += positives[i]! * log(positive[i]!) + negatives[i]! * log(1 - positive[i]!);
    return sum;
  };
  const reach = 4 * doubt.functional;
  return exp(greatestAt(value, log(prior) - reach, log(prior) + reach));
}
