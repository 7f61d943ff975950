import { toCanonical } from '../quantities/convert-quantity.js';
import { ExactDecimal, toDecimalText } from '../quantities/exact-decimal.js';
import type { QuantityKind } from '../quantities/quantity-kind.js';
import type { LimitContext } from './applicability.js';
import type { EdgeResult } from './edge-result.js';
import type { LimitCriterion } from './limit-criterion.js';
import { isQuantity } from './matches-rule.js';

type Formula = Extract<LimitCriterion, { kind: 'formula' }>;

/**
 * Permitted value as a factor times the maker's value. A maker's value of zero makes the limit meaningless (1.5 x 0
 * would refuse every toe but exactly zero) and is reported as such.
 *
 * @param criterion  the formula
 * @param kind       what the readings are values of
 * @param context    holds the maker's value under `criterion.makerValueKey`
 * @returns the permitted value in the canonical unit, or `notResolved` with `contextMissing` or `makerValueZero`
 */
export function boundFromFormula(criterion: Formula, kind: QuantityKind, context: LimitContext): EdgeResult {
  const makerValue = context[criterion.makerValueKey];
  const canonical = isQuantity(makerValue) ? toCanonical(makerValue, kind) : null;
  if (canonical?.kind !== 'converted') {
    return { kind: 'notResolved', reason: 'contextMissing', details: [criterion.makerValueKey] };
  }
  const value = new ExactDecimal(canonical.value);
  if (value.isZero())
    return { kind: 'notResolved', reason: 'makerValueZero', details: [criterion.makerValueKey] };
  const permitted = (criterion.isAbsolute ? value.abs() : value).times(criterion.factor);
  return { kind: 'edge', value: { value: toDecimalText(permitted), unit: canonical.unit } };
}
