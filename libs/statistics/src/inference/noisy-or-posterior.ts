import { requireProbability } from '../distributions/checked-arguments.js';

/** Greatest number of hypotheses whose combinations are enumerated: 2¹⁸ of them. */
export const mostHypotheses = 18;

/** A finding seen or found absent; one not looked for is left out of the list. */
export interface NoisyOrFinding {
  readonly present: boolean;
  /** Per hypothesis, how often it brings about the finding by itself; 0 where it cannot. */
  readonly strengths: readonly number[];
  /** How often the finding comes about by none of the hypotheses. */
  readonly leak: number;
}

export interface NoisyOrPosterior {
  readonly kind: 'estimated';
  /** Per hypothesis, its probability given the findings. They need not add up to 1: several may hold at once. */
  readonly marginals: readonly number[];
  /** Natural logarithm of the probability of the findings. */
  readonly logEvidence: number;
  /** The most probable combination and its probability; of equal ones that without the last hypothesis they differ in. */
  readonly mostProbable: { readonly holds: readonly boolean[]; readonly probability: number };
  readonly noneProbability: number;
}

export type NoisyOrPosteriorOutcome =
  | NoisyOrPosterior
  /** No combination of hypotheses can bring about these findings: a leak of 0 is too strict, or a prior is wrong. */
  | { readonly kind: 'impossibleFindings' };

/** Sum over the members of every combination of a value per hypothesis, combination by combination. */
function overCombinations(start: number, whenPresent: readonly number[]): Float64Array {
  const sums = new Float64Array(2 ** whenPresent.length);
  sums[0] = start;
  whenPresent.forEach((value, i) => {
    const size = 2 ** i;
    for (let combination = 0; combination < size; combination += 1) {
      sums[size + combination] = sums[combination]! + value;
    }
  });
  return sums;
}

function checkArguments(priors: readonly number[], findings: readonly NoisyOrFinding[]): void {
  if (priors.length > mostHypotheses) {
    throw new RangeError(`at most ${mostHypotheses} hypotheses can be enumerated, got ${priors.length}`);
  }
  priors.forEach((prior, i) => requireProbability(`prior ${i}`, prior));
  findings.forEach(({ strengths, leak }, f) => {
    requireProbability(`leak of finding ${f}`, leak);
    if (strengths.length !== priors.length) {
      throw new RangeError(`finding ${f} has ${strengths.length} strengths for ${priors.length} hypotheses`);
    }
    strengths.forEach((strength, i) => requireProbability(`strength ${i} of finding ${f}`, strength));
  });
}

/** ln of prior and findings together, for every combination of hypotheses. */
function jointLogs(priors: readonly number[], findings: readonly NoisyOrFinding[]): Float64Array {
  const joint = new Float64Array(2 ** priors.length);
  for (let combination = 0; combination < joint.length; combination += 1) {
    let log = 0;
    priors.forEach((prior, i) => {
      log += (combination >>> i) & 1 ? Math.log(prior) : Math.log1p(-prior);
    });
    joint[combination] = log;
  }
  for (const { present, strengths, leak } of findings) {
    const absent = overCombinations(
      Math.log1p(-leak),
      strengths.map((strength) => Math.log1p(-strength)),
    );
    for (let combination = 0; combination < joint.length; combination += 1) {
      const logAbsent = absent[combination]!;
      joint[combination]! += present ? Math.log(-Math.expm1(logAbsent)) : logAbsent;
    }
  }
  return joint;
}

/**
 * Probabilities of hypotheses given findings, when each hypothesis holds or not independently of the others beforehand and
 * findings are noisy-ORs, independent of each other given the hypotheses. Exact, by going through all combinations.
 *
 * @param priors  per hypothesis, its probability before the findings
 * @param findings  those looked for, present or absent, with strengths and leak
 * @returns marginal probabilities, the most probable combination and the evidence; without a finding the priors;
 *   `impossibleFindings` when no combination allows them
 * @throws RangeError on a number outside [0, 1], lists of different lengths, or more than 18 hypotheses
 * @complexity O(2ᵏ · (k + findings)) time, O(2ᵏ) memory for k hypotheses
 * @source Pearl (1988), Probabilistic Reasoning in Intelligent Systems, sec. 4.3.2
 * @oracle test/oracles/statistics-regression/generate.R (fever example of Russell & Norvig with priors)
 * @example noisyOrPosterior([0.5], [{ present: true, strengths: [1], leak: 0 }]) // => { kind: 'estimated', marginals: [1] }
 */
export function noisyOrPosterior(
  priors: readonly number[],
  findings: readonly NoisyOrFinding[],
): NoisyOrPosteriorOutcome {
  checkArguments(priors, findings);
  const joint = jointLogs(priors, findings);
  const highest = joint.reduce((most, log, i) => (log > joint[most]! ? i : most), 0);
  const top = joint[highest]!;
  if (top === -Infinity) return { kind: 'impossibleFindings' };
  let total = 0;
  const holding = priors.map(() => 0);
  joint.forEach((log, combination) => {
    // Weights relative to the heaviest combination: no underflow however many findings there are.
    const weight = Math.exp(log - top);
    total += weight;
    for (let i = 0; i < holding.length; i += 1) if ((combination >>> i) & 1) holding[i]! += weight;
  });
  return {
    kind: 'estimated',
    marginals: holding.map((weight) => weight / total),
    logEvidence: top + Math.log(total),
    mostProbable: { holds: priors.map((_, i) => ((highest >>> i) & 1) === 1), probability: 1 / total },
    noneProbability: Math.exp(joint[0]! - top) / total,
  };
}
