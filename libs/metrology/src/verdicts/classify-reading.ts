import type { LimitCriterion } from '../limits/limit-criterion.js';
import { compareQuantities } from '../quantities/compare-quantities.js';
import { ExactDecimal, toDecimalText } from '../quantities/exact-decimal.js';
import type { Quantity } from '../quantities/quantity.js';
import type { QuantityKind } from '../quantities/quantity-kind.js';

/** A class of a reading, and all classes its expanded uncertainty leaves possible, highest first. */
export interface ReadingClass {
  readonly kind: 'class';
  readonly name: string;
  readonly possible: readonly string[];
}

/**
 * Class of a number by descending thresholds (battery voltage at rest). A state, not a verdict and not a percentage.
 *
 * @param criterion  a `classes` criterion: thresholds from the highest down, the last class without one
 * @param value      the reading
 * @param expanded   expanded uncertainty in the criterion's unit, not negative; 0 leaves the bare class
 * @param kind       what is measured
 * @returns the class of the bare value and those within plus or minus `expanded`
 * @throws RangeError on a value that is none of the kind, a negative uncertainty, or a criterion whose last class has a
 *   threshold and is not reached
 * @source common practice, no published source; classes within the expanded uncertainty: judgement
 * @example classifyReading({ kind: 'classes', unit: 'V', steps: [{ name: 'full', from: '12.6' }, { name: 'lower', from: null }] },
 *   { value: '12.65', unit: 'V' }, 0.093, 'voltage') // => { kind: 'class', name: 'full', possible: ['full', 'lower'] }
 */
export function classifyReading(
  criterion: Extract<LimitCriterion, { kind: 'classes' }>,
  value: Quantity,
  expanded: number,
  kind: QuantityKind,
): ReadingClass {
  if (!(expanded >= 0) || !Number.isFinite(expanded))
    throw new RangeError('expanded is a finite number not below zero');
  const indexAt = (shift: number): number =>
    criterion.steps.findIndex(({ from }) => {
      if (from === null) return true;
      const moved = {
        value: toDecimalText(new ExactDecimal(from).plus(shift).toDecimalPlaces(9)),
        unit: criterion.unit,
      };
      const comparison = compareQuantities(value, moved, kind);
      if (comparison.kind !== 'compared') throw new RangeError(`not a ${kind}: ${comparison.kind}`);
      return comparison.order !== 'less';
    });
  const [bare, highest, lowest] = [indexAt(0), indexAt(-expanded), indexAt(expanded)];
  if (bare < 0 || lowest < 0) throw new RangeError('the last class has no threshold');
  const names = criterion.steps.map(({ name }) => name);
  return { kind: 'class', name: names[bare]!, possible: names.slice(highest, lowest + 1) };
}
