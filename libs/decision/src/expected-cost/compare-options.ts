import { compareMoney } from '@endfloat/metrology';
import { expectedCostOfOption } from './expected-cost-of-option.js';
import type { CostedOption, CostRates, OptionCostTerms, UncostedOption } from './option-cost-terms.js';

/** Options in order of expected total, and those that have none. */
export interface OptionComparison {
  readonly cheapestFirst: readonly CostedOption[];
  readonly cannotBePriced: readonly UncostedOption[];
}

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function byTotal(a: CostedOption, b: CostedOption): number {
  const compared = compareMoney(a.expectedTotal, b.expectedTotal);
  if (compared.kind !== 'compared') throw new RangeError('options of one comparison are in one currency');
  if (compared.order === 'equal') return byText(a.optionId, b.optionId);
  return compared.order === 'less' ? -1 : 1;
}

/**
 * Costs every option and orders them, cheapest first; equal totals are ordered by id, so the order of input never matters.
 *
 * @param options  any number, distinct ids
 * @param rates    prices common to all options
 * @returns priced options cheapest first; the others with their reason, by id
 * @throws RangeError on two options of one id
 * @source judgement; common practice of the trade
 */
export function compareOptions(options: readonly OptionCostTerms[], rates: CostRates): OptionComparison {
  if (new Set(options.map(({ optionId }) => optionId)).size !== options.length) {
    throw new RangeError('two options have one id');
  }
  const costed = options.map((option) => expectedCostOfOption(option, rates));
  return {
    cheapestFirst: costed.filter((option) => option.kind === 'costed').sort(byTotal),
    cannotBePriced: costed
      .filter((option) => option.kind === 'cannotBePriced')
      .sort((a, b) => byText(a.optionId, b.optionId)),
  };
}
