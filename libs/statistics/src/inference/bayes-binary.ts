import { requireProbability } from '../distributions/checked-arguments.js';

/** A test that answers yes or no, and how often it answers yes when a statement is true and when it is false. */
export interface BinaryTest {
  /** P(positive | true). */
  readonly sensitivity: number;
  /** P(positive | false), 1 − specificity. */
  readonly falsePositiveRate: number;
}

export type PosteriorOutcome =
  | { readonly kind: 'estimated'; readonly probability: number; readonly evidence: number }
  /** Under prior and test the result cannot happen: one of the three numbers is wrong. */
  | { readonly kind: 'impossibleResult' };

/**
 * Probability of a statement after the result of a test (Bayes).
 *
 * @param prior  probability before the test
 * @param test  sensitivity and false positive rate
 * @param positive  the result
 * @returns probability after it, and how probable the result was; `impossibleResult` when it had probability 0
 * @throws RangeError on a number outside [0, 1]
 * @source Bayes (1763); Gigerenzer & Hoffrage (1995), Psychological Review 102:684–704
 * @oracle Eddy (1982) and Gigerenzer (2002) in the spec
 * @example bayesBinary(0.5, { sensitivity: 0.75, falsePositiveRate: 0.25 }, true) // => { kind: 'estimated', probability: 0.75, evidence: 0.5 }
 */
export function bayesBinary(prior: number, test: BinaryTest, positive: boolean): PosteriorOutcome {
  requireProbability('prior', prior);
  requireProbability('sensitivity', test.sensitivity);
  requireProbability('falsePositiveRate', test.falsePositiveRate);
  const ifTrue = prior * (positive ? test.sensitivity : 1 - test.sensitivity);
  const ifFalse = (1 - prior) * (positive ? test.falsePositiveRate : 1 - test.falsePositiveRate);
  const evidence = ifTrue + ifFalse;
  if (evidence === 0) return { kind: 'impossibleResult' };
  return { kind: 'estimated', probability: ifTrue / evidence, evidence };
}
