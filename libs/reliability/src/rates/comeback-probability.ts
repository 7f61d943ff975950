import { betaPosterior, type Interval } from '@endfloat/statistics';

/** What a proposal rests on, the strongest first: what persons said of others like it is counted by this. */
export const proposalGrounds = [
  'sameSymptoms',
  'sameSymptomFamily',
  'sameComponent',
  'beganAfterRepair',
] as const;
export type ProposalGround = (typeof proposalGrounds)[number];

export interface SettledProposals {
  readonly confirmed: number;
  readonly refused: number;
}

/** Settled proposals that the stated likeness is worth at the beginning; judgement. */
export const proposalPriorWeight = 10;

export interface ComebackProbability {
  readonly value: number;
  readonly interval: Interval;
  readonly confidence: number;
  readonly method: 'betaPosterior';
  readonly prior: { readonly mean: number; readonly weight: number };
  readonly confirmed: number;
  readonly refused: number;
}

/**
 * Probability that a person will confirm a proposal, from what the shop said of its own proposals of the same ground on
 * the same side of the window: Beta(10 likeness + confirmed, 10 (1 - likeness) + refused).
 *
 * @param likeness    prior mean, 0 to 1; kept 0.01 away from both ends
 * @param settled     confirmed and refused proposals like this one, before it; without any the prior answers
 * @param confidence  probability inside the interval, default 0.95
 * @returns mean, equal-tailed interval, and what it rests on
 * @throws RangeError on a likeness outside [0, 1], a confidence outside (0, 1), counts that are not whole or negative
 * @source Gelman et al. (2013), Bayesian Data Analysis, 3rd ed., sec. 2.4; prior mean and weight are judgement
 * @oracle a case worked by hand in the spec
 * @example comebackProbability(0.5, { confirmed: 9, refused: 1 }) // => { value: 0.7, confirmed: 9, refused: 1 }
 */
export function comebackProbability(
  likeness: number,
  settled: SettledProposals,
  confidence = 0.95,
): ComebackProbability {
  if (!(likeness >= 0 && likeness <= 1)) throw new RangeError(`likeness must lie in [0, 1], got ${likeness}`);
  const mean = Math.min(0.99, Math.max(0.01, likeness));
  const { confirmed, refused } = settled;
  const posterior = betaPosterior(
    { alpha: proposalPriorWeight * mean, beta: proposalPriorWeight * (1 - mean) },
    { successes: confirmed, trials: confirmed + refused },
    confidence,
  );
  return {
    value: posterior.mean,
    interval: posterior.interval,
    confidence,
    method: 'betaPosterior',
    prior: { mean, weight: proposalPriorWeight },
    confirmed,
    refused,
  };
}
