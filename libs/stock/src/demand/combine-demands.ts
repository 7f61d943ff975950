import { noDemand, type DemandDistribution } from './demand-distribution.js';

/**
 * Demand of two independent sources together (convolution).
 *
 * @param one    a distribution; that its chances add up to 1 is not checked
 * @param other  another
 * @returns distribution of their sum; with `noDemand` the other one itself
 * @complexity O(n · m)
 * @source definition of the convolution
 * @example sumOfDemands({ probabilities: [0.5, 0.5] }, { probabilities: [0, 1] }).probabilities // => [0, 0.5, 0.5]
 */
export function sumOfDemands(one: DemandDistribution, other: DemandDistribution): DemandDistribution {
  const [a, b] = [one.probabilities, other.probabilities];
  const sum = new Float64Array(a.length + b.length - 1);
  a.forEach((chance, count) => {
    if (chance === 0) return;
    b.forEach((next, more) => {
      sum[count + more] = sum[count + more]! + chance * next;
    });
  });
  return { probabilities: [...sum] };
}

/** One of several ways it may turn out, such as one lead time of several, and the demand then. */
export interface DemandCase {
  readonly weight: number;
  readonly demand: DemandDistribution;
}

/**
 * Demand when it is not known which of several cases holds: demand over a lead time that is itself uncertain is the
 * mixture of the demands over the lead times that occur.
 *
 * @param cases  weights 0 or more with a positive sum; they need not add up to 1. None gives no demand
 * @returns the mixture
 * @throws RangeError on a weight that is negative or not finite, or weights that add up to 0
 * @source law of total probability
 * @example mixtureOfDemands([{ weight: 1, demand: { probabilities: [1] } }, { weight: 1, demand: { probabilities: [0, 1] } }]).probabilities // => [0.5, 0.5]
 */
export function mixtureOfDemands(cases: readonly DemandCase[]): DemandDistribution {
  if (cases.length === 0) return noDemand;
  for (const { weight } of cases)
    if (!(weight >= 0) || weight === Infinity)
      throw new RangeError(`a weight must be 0 or more, got ${weight}`);
  const total = cases.reduce((sum, { weight }) => sum + weight, 0);
  if (total === 0) throw new RangeError('the weights add up to 0');
  const length = Math.max(...cases.map(({ demand }) => demand.probabilities.length));
  const probabilities = Array.from({ length }, (_, count) =>
    cases.reduce((sum, { weight, demand }) => sum + (weight / total) * (demand.probabilities[count] ?? 0), 0),
  );
  return { probabilities };
}
