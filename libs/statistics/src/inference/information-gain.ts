import { requireProbability } from '../distributions/checked-arguments.js';
import { entropy } from './entropy.js';

/** One exclusive case: its probability now, and how often the test is positive if it holds. */
export interface TestedCase {
  readonly probability: number;
  readonly positiveRate: number;
}

export interface InformationGain {
  /** Expected fall of entropy, in bits, between 0 and 1. */
  readonly gain: number;
  /** Entropy before the test, in bits. */
  readonly before: number;
  readonly positiveProbability: number;
  /** Probabilities of the cases after each result, in their order; null for a result that cannot happen. */
  readonly ifPositive: readonly number[] | null;
  readonly ifNegative: readonly number[] | null;
}

function conditional(weights: readonly number[]): readonly number[] | null {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return total === 0 ? null : weights.map((weight) => weight / total);
}

/**
 * How much a yes-or-no test is expected to tell about which of several exclusive cases holds (mutual information).
 *
 * @param cases  exclusive and exhaustive, probabilities adding up to 1
 * @returns expected gain in bits with the distributions after either result; gain 0 when every case has the same
 *   positive rate or one case is certain
 * @throws RangeError on a number outside [0, 1], or probabilities that do not add up to 1 within 1e-9
 * @source Lindley (1956), Annals of Mathematical Statistics 27:986–1005
 * @oracle cases worked by hand in the spec
 * @example informationGain([{ probability: 0.5, positiveRate: 1 }, { probability: 0.5, positiveRate: 0 }]).gain // => 1
 */
export function informationGain(cases: readonly TestedCase[]): InformationGain {
  const before = entropy(cases.map(({ probability }) => probability));
  cases.forEach(({ positiveRate }, i) => requireProbability(`positive rate ${i}`, positiveRate));
  const positive = cases.map(({ probability, positiveRate }) => probability * positiveRate);
  const negative = cases.map(({ probability, positiveRate }) => probability * (1 - positiveRate));
  const positiveProbability = positive.reduce((sum, weight) => sum + weight, 0);
  const ifPositive = conditional(positive);
  const ifNegative = conditional(negative);
  const after =
    (ifPositive === null ? 0 : positiveProbability * entropy(ifPositive)) +
    (ifNegative === null ? 0 : (1 - positiveProbability) * entropy(ifNegative));
  // Rounding may put the difference a hair below 0, which information never is.
  return { gain: Math.max(0, before - after), before, positiveProbability, ifPositive, ifNegative };
}
