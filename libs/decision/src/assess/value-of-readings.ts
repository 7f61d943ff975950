import { criterionWear, wearNodes } from '../belief/wear-grid.js';
import { exp } from '../portable/elementary.js';
import type { ValueOfFurtherReadings } from '../terms/assessment.js';
import type { AssessmentInput } from '../terms/assessment-input.js';
import { moneyFromNumber } from '@endfloat/metrology';
import type { CommonPrices } from '../pricing/repair-candidate.js';
import { admissible, costAt } from './evaluate-options.js';
import type { EvaluatedOption } from './evaluate-options.js';

/**
 * Expected saving by a further set of readings: the least expected cost now, less the mean of the least expected cost after
 * the set, over what the set may show.
 *
 * @param options  evaluated; only those that no guard removes count
 * @param wear     weights over the wear now
 * @param standardUncertainty  of the mean of the new set, share of the criterion
 * @returns saving, 0 or more
 * @source preposterior analysis: Raiffa & Schlaifer (1961), Applied Statistical Decision Theory, ch. 4; normal reading on a grid
 */
export function expectedSaving(
  options: readonly EvaluatedOption[],
  wear: Float64Array,
  standardUncertainty: number,
): number {
  const candidates = admissible(options).map(({ chosen }) => chosen);
  if (candidates.length < 2 || candidates.every(({ costAtNode }) => costAtNode === null)) return 0;
  const now = Math.min(...candidates.map((candidate) => costAt(candidate, wear)));
  const count = wearNodes.length;
  const joint = Array.from({ length: count }, () => new Float64Array(count));
  for (let i = 0; i < count; i += 1) {
    if (wear[i] === 0) continue;
    const likelihood = Float64Array.from(wearNodes, (shown) => {
      if (standardUncertainty === 0) return shown === wearNodes[i] ? 1 : 0;
      const z = (shown - wearNodes[i]!) / standardUncertainty;
      return exp(-0.5 * z * z);
    });
    const sum = likelihood.reduce((total, value) => total + value, 0);
    likelihood.forEach((value, shown) => (joint[shown]![i] = (wear[i]! * value) / sum));
  }
  let after = 0;
  for (const weights of joint) {
    const share = weights.reduce((total, weight) => total + weight, 0);
    if (share === 0) continue;
    after += Math.min(
      ...candidates.map(({ cost, costAtNode }) =>
        costAtNode === null
          ? share * cost.mean
          : costAtNode.reduce((sum, atNode, i) => sum + weights[i]! * atNode, 0),
      ),
    );
  }
  return Math.max(0, now - after);
}

/**
 * Whether one more set of readings is worth its cost.
 *
 * @param options  evaluated
 * @param wear     weights over the wear now
 * @param input    the assessment
 * @param prices   common prices; null where they are not known
 * @returns gain and cost, or why it cannot be said
 * @throws RangeError on an uncertainty or hours that are negative or not finite
 */
export function valueOfFurtherReadings(
  options: readonly EvaluatedOption[],
  wear: Float64Array,
  input: AssessmentInput,
  prices: CommonPrices | null,
): ValueOfFurtherReadings {
  const { furtherReadings, characteristic, currency } = input;
  if (furtherReadings.kind === 'notAvailable') return { kind: 'cannotBeSaid', why: 'notAvailable' };
  const { standardUncertainty, labourHours, count } = furtherReadings;
  for (const value of [standardUncertainty, labourHours]) {
    if (!Number.isFinite(value) || value < 0)
      throw new RangeError('further readings need finite numbers of 0 or more');
  }
  if (prices === null) return { kind: 'cannotBeSaid', why: 'labourRateMissing' };
  if (admissible(options).length < 2) return { kind: 'cannotBeSaid', why: 'fewerThanTwoOptions' };
  const gain = expectedSaving(options, wear, standardUncertainty / criterionWear(characteristic));
  const cost = labourHours * prices.labourPerHour;
  return {
    kind: gain > cost ? 'worthIt' : 'notWorthIt',
    expectedGain: moneyFromNumber(gain, currency),
    cost: moneyFromNumber(cost, currency),
    readings: count,
  };
}
