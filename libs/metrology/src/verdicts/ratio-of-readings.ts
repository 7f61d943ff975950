import type { RatioOfManyForm, RatioOfTwoForm } from '../limits/limit-criterion.js';
import { compareFractions, quantityInBase } from '../quantities/convert-quantity.js';
import type { ExactFraction } from '../quantities/exact-decimal.js';
import { ExactDecimal } from '../quantities/exact-decimal.js';
import type { Quantity } from '../quantities/quantity.js';
import type { QuantityKind } from '../quantities/quantity-kind.js';

/** A ratio of readings, exact, with its change per change of each reading in the canonical unit of the readings. */
export interface RatioOfReadings {
  readonly kind: 'ratio';
  readonly value: ExactDecimal;
  /** d ratio / d reading for each reading, in the order given. */
  readonly sensitivities: readonly number[];
  readonly lowest: number;
  readonly highest: number;
}

/** A ratio, or that it has no meaning because what it is taken of is not above zero. */
export type RatioResult = RatioOfReadings | { readonly kind: 'ratioUndefined' };

/** Which ratio to take, and of what. */
export type RatioForm =
  | { readonly kind: 'ratioOfTwo'; readonly form: RatioOfTwoForm }
  | { readonly kind: 'ratioToBest' | 'ratioToMean'; readonly form: RatioOfManyForm };

/**
 * Ratio of two readings, or of the lowest of several to the highest or the mean, exactly from what was written.
 *
 * @param ratio     which ratio
 * @param readings  two for `ratioOfTwo`, else two or more, of one kind
 * @param canonical the same readings as numbers in the canonical unit
 * @param kind      what the readings are values of
 * @returns ratio and sensitivities, or `ratioUndefined` where the reference is not above zero
 * @throws RangeError on too few readings or a reading that is no value of the kind
 */
export function ratioOfReadings(
  ratio: RatioForm,
  readings: readonly Quantity[],
  canonical: readonly number[],
  kind: QuantityKind,
): RatioResult {
  if (ratio.kind === 'ratioOfTwo' ? readings.length !== 2 : readings.length < 2) {
    throw new RangeError(
      `${ratio.kind} needs ${ratio.kind === 'ratioOfTwo' ? 'exactly' : 'at least'} two readings`,
    );
  }
  const fractions = readings.map((reading) => {
    const base = quantityInBase(reading, kind);
    if (base.kind !== 'base') throw new RangeError(`not a ${kind}: ${base.kind}`);
    return base.fraction;
  });
  const order = fractions.map((_, index) => index);
  order.sort((a, b) => compareFractions(fractions[a]!, fractions[b]!));
  const lowest = order[0]!;
  const highest = order[order.length - 1]!;
  const isFirstOverSecond = ratio.form === 'firstOverSecond';
  const top = isFirstOverSecond ? 0 : lowest;
  const reference = isFirstOverSecond ? 1 : highest;
  const weights = referenceWeights(ratio.kind === 'ratioToMean', readings.length, reference);
  const below = weightedSum(fractions, weights);
  if (!below.numerator.gt(0)) return { kind: 'ratioUndefined' };
  const quotient = fractions[top]!.numerator.times(below.denominator).div(
    fractions[top]!.denominator.times(below.numerator),
  );
  const isDifference = ratio.form === 'differenceOverGreater' || ratio.form === 'differenceOverReference';
  const sign = isDifference ? -1 : 1;
  const referenceValue = canonical.reduce((sum, value, index) => sum + value * weights[index]!, 0);
  const quotientNumber = quotient.toNumber();
  return {
    kind: 'ratio',
    value: isDifference ? new ExactDecimal(1).minus(quotient) : quotient,
    sensitivities: canonical.map(
      (_, index) => (sign * ((index === top ? 1 : 0) - quotientNumber * weights[index]!)) / referenceValue,
    ),
    lowest,
    highest,
  };
}

/** The reference is one reading, or all of them with equal weight. */
const referenceWeights = (isMean: boolean, count: number, reference: number): readonly number[] =>
  Array.from({ length: count }, (_, index) => (isMean ? 1 / count : index === reference ? 1 : 0));

function weightedSum(fractions: readonly ExactFraction[], weights: readonly number[]): ExactFraction {
  const single = weights.indexOf(1);
  if (single >= 0) return fractions[single]!;
  let numerator = new ExactDecimal(0);
  let denominator = new ExactDecimal(1);
  for (const fraction of fractions) {
    if (fraction.denominator.eq(denominator)) {
      numerator = numerator.plus(fraction.numerator);
    } else {
      numerator = numerator.times(fraction.denominator).plus(fraction.numerator.times(denominator));
      denominator = denominator.times(fraction.denominator);
    }
  }
  return { numerator, denominator: denominator.times(fractions.length) };
}
