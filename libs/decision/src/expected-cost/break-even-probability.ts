import { expectedCostOfOption } from './expected-cost-of-option.js';
import type { CostRates, OptionCostTerms, UncostedOption } from './option-cost-terms.js';

/** Comeback probability at which two options cost the same. */
export type BreakEven =
  | { readonly kind: 'at'; readonly probabilityOfComeback: number }
  /** The option is cheaper, or dearer, whatever its comeback probability. */
  | { readonly kind: 'alwaysCheaper' }
  | { readonly kind: 'neverCheaper' }
  /** Both cost the same, and a comeback costs nothing. */
  | { readonly kind: 'alwaysEqual' }
  | { readonly kind: 'cannotBePriced'; readonly options: readonly UncostedOption[] };

/**
 * Comeback probability of one option at which it costs as much as another, all else as it is.
 *
 * @param option   the option whose probability is varied
 * @param against  the option it is compared with, its own probability unchanged
 * @param rates    prices common to both
 * @returns `at` with the probability rounded to six decimals, `alwaysCheaper` or `neverCheaper` where no probability from
 *   0 to 1 makes them equal, `cannotBePriced` where either has no cost
 * @source the equation solved by hand: p = (total of the other - cost without comeback) / cost of a comeback
 */
export function breakEvenProbability(
  option: OptionCostTerms,
  against: OptionCostTerms,
  rates: CostRates,
): BreakEven {
  const own = expectedCostOfOption({ ...option, probabilityOfComeback: '0' }, rates);
  const other = expectedCostOfOption(against, rates);
  if (own.kind !== 'costed' || other.kind !== 'costed') {
    return {
      kind: 'cannotBePriced',
      options: [own, other].filter((costed) => costed.kind === 'cannotBePriced'),
    };
  }
  const room = Number(other.expectedTotal.amount) - Number(own.expectedTotal.amount);
  const cost = Number(own.costIfComeback.amount);
  if (room === 0 && cost === 0) return { kind: 'alwaysEqual' };
  if (room < 0) return { kind: 'neverCheaper' };
  if (room > cost) return { kind: 'alwaysCheaper' };
  return { kind: 'at', probabilityOfComeback: Math.round((room / cost) * 1e6) / 1e6 };
}
