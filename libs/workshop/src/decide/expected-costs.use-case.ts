import {
  breakEvenProbability,
  compareOptions,
  type BreakEven,
  type CostRates,
  type OptionComparison,
  type OptionCostTerms,
} from '@endfloat/decision';
import { parseMoney } from '@endfloat/metrology';
import { DomainError, invalidInput } from '../errors/domain.errors.js';

export interface ExpectedCostsCommand {
  readonly rates: CostRates;
  readonly options: readonly OptionCostTerms[];
  /** at which comeback probability of the one it costs as much as the other */
  readonly breakEven: { readonly optionId: string; readonly againstOptionId: string } | null;
}

export interface ExpectedCosts extends OptionComparison {
  readonly breakEven: BreakEven | null;
}

/** The plain arithmetic of the estimate, which a person can check by hand. Keeps nothing. */
export class ExpectedCostsUseCase {
  execute({ rates, options, breakEven }: ExpectedCostsCommand): ExpectedCosts {
    refuseMixedRates(rates);
    const twice = options.findIndex(
      ({ optionId }, index) => options.findIndex((each) => each.optionId === optionId) !== index,
    );
    if (twice >= 0)
      throw invalidInput(`/options/${String(twice)}/optionId`, 'unique', 'Two options have this id.');
    return {
      ...compareOptions(options, rates),
      breakEven:
        breakEven === null
          ? null
          : breakEvenProbability(
              named(options, breakEven.optionId, '/breakEven/optionId'),
              named(options, breakEven.againstOptionId, '/breakEven/againstOptionId'),
              rates,
            ),
    };
  }
}

/** Rates are common to all options: nothing can be summed unless they are in one currency. */
function refuseMixedRates(rates: CostRates): void {
  const { currency } = rates.labourPerHour;
  for (const [member, money] of Object.entries(rates) as [keyof CostRates, CostRates[keyof CostRates]][]) {
    if (parseMoney(money.amount, money.currency).kind !== 'money' || money.amount.startsWith('-')) {
      throw invalidInput(
        `/rates/${member}/amount`,
        'money',
        `Give an amount of ${money.currency} that is not negative, with no more decimals than the currency has.`,
      );
    }
    if (money.currency === currency) continue;
    throw new DomainError(
      'currency.mismatch',
      `Labour is in ${currency}, ${member} in ${money.currency}. Amounts of two currencies are never summed.`,
      [{ pointer: `/rates/${member}/currency`, rule: 'oneCurrency', detail: currency }],
    );
  }
}

function named(options: readonly OptionCostTerms[], id: string, pointer: string): OptionCostTerms {
  const option = options.find(({ optionId }) => optionId === id);
  if (option === undefined) throw invalidInput(pointer, 'reference', `No option has the id "${id}".`);
  return option;
}
