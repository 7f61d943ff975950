import type { GuardCode } from '../terms/reason-codes.js';
import type { PartBelief } from '../belief/part-belief.js';
import type { OptionTerms } from '../terms/option-terms.js';
import type { DecisionModel } from './decision-model.js';
import { candidateKey } from './decision-model.js';
import { evaluateCandidate, expectedCost } from './evaluate-candidate.js';
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
 * @param part     what is believed of the part now fitted
 * @param everywhere  costs by wear node too; without it they hold only where the wear has weight
 * @returns options, cheapest first
 */
export function evaluateOptions(
  model: DecisionModel,
  options: readonly { readonly option: OptionTerms; readonly removedBy: readonly GuardCode[] }[],
  part: PartBelief,
  everywhere = true,
): readonly EvaluatedOption[] {
  return options
    .map(({ option, removedBy }): EvaluatedOption => {
      const [chosen, ...others] = model.candidates
        .filter((candidate) => candidate.optionId === option.optionId)
        .map((candidate) => evaluateCandidate(model, candidate, part, everywhere))
        .sort(byCost);
      if (chosen === undefined) throw new RangeError(`option ${option.optionId} has no candidate`);
      return { option, removedBy, chosen, others };
    })
    .sort((a, b) => byCost(a.chosen, b.chosen));
}

/**
 * Expected costs alone, each option with its cheapest offer.
 *
 * @param model    the solved model
 * @param options  those that have a candidate in it
 * @param part     what is believed of the part now fitted
 * @returns cost by option id, in the order of the options
 */
export function leastCosts(
  model: DecisionModel,
  options: readonly EvaluatedOption[],
  part: PartBelief,
): ReadonlyMap<string, number> {
  return new Map(
    options.map(({ option }) => {
      let least = Infinity;
      for (const candidate of model.candidates) {
        if (candidate.optionId !== option.optionId) continue;
        const cost = expectedCost(model, candidate, part);
        if (cost < least) least = cost;
      }
      return [option.optionId, least];
    }),
  );
}

/** Those that no guard removes, in the same order. */
export const admissible = (options: readonly EvaluatedOption[]): readonly EvaluatedOption[] =>
  options.filter(({ removedBy }) => removedBy.length === 0);

/** Expected cost of a candidate at another belief about the part, all else as it is. */
export function costAt({ cost, costAtPlace }: EvaluatedCandidate, { places }: PartBelief): number {
  if (costAtPlace === null) return cost.mean;
  let sum = 0;
  for (let index = 0; index < places.length; index += 1) sum += places[index]! * costAtPlace[index]!;
  return sum;
}
