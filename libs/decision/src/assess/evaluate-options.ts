import type { GuardCode } from '../terms/reason-codes.js';
import type { OptionTerms } from '../terms/option-terms.js';
import type { DecisionModel } from './decision-model.js';
import { candidateKey } from './decision-model.js';
import { evaluateCandidate } from './evaluate-candidate.js';
import type { EvaluatedCandidate } from './evaluate-candidate.js';

/** An option with its cheapest offer, evaluated. */
export interface EvaluatedOption {
  readonly option: OptionTerms;
  readonly removedBy: readonly GuardCode[];
  readonly chosen: EvaluatedCandidate;
  readonly others: readonly EvaluatedCandidate[];
}

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Order of two evaluated candidates: by expected cost, then by option and offer. */
export function byCost(a: EvaluatedCandidate, b: EvaluatedCandidate): number {
  return a.cost.mean - b.cost.mean || byText(candidateKey(a.candidate), candidateKey(b.candidate));
}

/**
 * Evaluates all options at one belief about the wear, each with its cheapest offer.
 *
 * @param model    the solved model
 * @param options  those that have a candidate in it, with the guards that remove them
 * @param wear     weights over the wear now
 * @param everywhere  costs by wear node too; without it they hold only where the wear has weight
 * @returns options, cheapest first
 */
export function evaluateOptions(
  model: DecisionModel,
  options: readonly { readonly option: OptionTerms; readonly removedBy: readonly GuardCode[] }[],
  wear: Float64Array,
  everywhere = true,
): readonly EvaluatedOption[] {
  return options
    .map(({ option, removedBy }): EvaluatedOption => {
      const [chosen, ...others] = model.candidates
        .filter((candidate) => candidate.optionId === option.optionId)
        .map((candidate) => evaluateCandidate(model, candidate, wear, everywhere))
        .sort(byCost);
      if (chosen === undefined) throw new RangeError(`option ${option.optionId} has no candidate`);
      return { option, removedBy, chosen, others };
    })
    .sort((a, b) => byCost(a.chosen, b.chosen));
}

/** Those that no guard removes, in the same order. */
export const admissible = (options: readonly EvaluatedOption[]): readonly EvaluatedOption[] =>
  options.filter(({ removedBy }) => removedBy.length === 0);

/** Expected cost of a candidate at another belief about the wear, all else as it is. */
export function costAt({ cost, costAtNode }: EvaluatedCandidate, wear: Float64Array): number {
  return costAtNode === null ? cost.mean : costAtNode.reduce((sum, atNode, i) => sum + wear[i]! * atNode, 0);
}
