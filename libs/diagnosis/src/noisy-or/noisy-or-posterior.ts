import { noisyOrProbability } from './noisy-or-probability.js';

/** A finding and how each cause produces it. */
export interface NoisyOrFinding {
  readonly id: string;
  readonly present: boolean;
  /** probability that it shows with no listed cause present */
  readonly leak: number;
  /** cause id to probability that this cause alone would produce it; a cause not named has none */
  readonly strength: Readonly<Record<string, number>>;
}

export interface NoisyOrCause {
  readonly id: string;
  /** probability that it is present, independently of the others */
  readonly prior: number;
}

/** One set of causes that are present together. */
export interface CauseCombination {
  readonly causeIds: readonly string[];
  readonly probability: number;
}

export interface EstimatedNoisyOr {
  readonly kind: 'estimated';
  readonly method: 'noisyOrExactEnumeration';
  /** marginal probability of each cause, in the order given; they need not add up to one */
  readonly causes: readonly { readonly causeId: string; readonly probability: number }[];
  /** probability of the findings before the causes are known */
  readonly evidenceProbability: number;
  /** none of the listed causes: the leak explains the findings */
  readonly noneOfThese: number;
  readonly moreThanOne: number;
  /** the likeliest combinations, best first */
  readonly combinations: readonly CauseCombination[];
}

export type NoisyOrPosterior = EstimatedNoisyOr | { readonly kind: 'impossibleEvidence' };

const MOST_CAUSES = 16;
const COMBINATIONS_SHOWN = 5;

/** Probability of one finding for every combination: the failing part is a product over present causes. */
function findingByState(finding: NoisyOrFinding, causes: readonly NoisyOrCause[]): Float64Array {
  const fails = new Float64Array(2 ** causes.length);
  fails[0] = 1 - noisyOrProbability(finding.leak, []);
  causes.forEach((cause, bit) => {
    const strength = noisyOrProbability(finding.strength[cause.id] ?? 0, []);
    for (let state = 2 ** bit; state < 2 ** (bit + 1); state += 1)
      fails[state] = fails[state - 2 ** bit]! * (1 - strength);
  });
  return finding.present ? fails.map((fail) => 1 - fail) : fails;
}

function priorByState(causes: readonly NoisyOrCause[]): Float64Array {
  const weights = new Float64Array(2 ** causes.length);
  weights[0] = 1;
  causes.forEach(({ id, prior }, bit) => {
    if (!(prior >= 0 && prior <= 1)) throw new RangeError(`the prior of ${id} must lie between 0 and 1`);
    for (let state = 0; state < 2 ** bit; state += 1) {
      weights[state + 2 ** bit] = weights[state]! * prior;
      weights[state] = weights[state]! * (1 - prior);
    }
  });
  return weights;
}

/**
 * Posterior over sets of causes by enumerating all of them: independent causes, each finding a noisy-OR of the causes
 * present with a leak that is always open, findings independent given the causes.
 *
 * @param causes  at most 16 (2^n combinations)
 * @param findings  present and absent ones; a finding not asked or not done is left out
 * @returns marginals, combinations, probability of none and of more than one; or `impossibleEvidence`
 * @throws RangeError with more than 16 causes or a probability outside 0 to 1
 * @complexity O(2^causes x findings) time and memory
 * @source Pearl (1988), section 4.3.2; Henrion (1989) for the leak
 * @oracle fever example of Russell & Norvig, posteriors to 1e-9
 */
export function noisyOrPosterior(
  causes: readonly NoisyOrCause[],
  findings: readonly NoisyOrFinding[],
): NoisyOrPosterior {
  if (causes.length > MOST_CAUSES)
    throw new RangeError(`${causes.length} causes are more than ${MOST_CAUSES}`);
  const weights = priorByState(causes);
  for (const finding of findings) {
    const factor = findingByState(finding, causes);
    for (let state = 0; state < weights.length; state += 1) weights[state] = weights[state]! * factor[state]!;
  }
  const evidenceProbability = weights.reduce((sum, w) => sum + w, 0);
  if (evidenceProbability === 0) return { kind: 'impossibleEvidence' };
  const posterior = weights.map((w) => w / evidenceProbability);
  const single = causes.reduce((sum, _cause, bit) => sum + posterior[2 ** bit]!, 0);
  return {
    kind: 'estimated',
    method: 'noisyOrExactEnumeration',
    causes: causes.map(({ id }, bit) => ({ causeId: id, probability: marginal(posterior, bit) })),
    evidenceProbability,
    noneOfThese: posterior[0]!,
    moreThanOne: Math.max(0, 1 - posterior[0]! - single),
    combinations: likeliest(posterior, causes),
  };
}

function marginal(posterior: Float64Array, bit: number): number {
  let sum = 0;
  for (let state = 0; state < posterior.length; state += 1)
    if (((state >> bit) & 1) === 1) sum += posterior[state]!;
  return Math.min(1, sum);
}

function likeliest(posterior: Float64Array, causes: readonly NoisyOrCause[]): readonly CauseCombination[] {
  const states = [...posterior.keys()]
    .sort((a, b) => posterior[b]! - posterior[a]! || a - b)
    .slice(0, COMBINATIONS_SHOWN);
  return states.map((state) => ({
    causeIds: causes.filter((_cause, bit) => ((state >> bit) & 1) === 1).map((cause) => cause.id),
    probability: posterior[state]!,
  }));
}
