import { criterionWear, wearNodes } from '../belief/wear-grid.js';
import { recalled } from '../memo/recalled.js';
import { exp } from '../portable/elementary.js';
import type { LearnedTables } from '../tables/learned-tables.js';
import type { ValueOfFurtherReadings } from '../terms/assessment.js';
import type { AssessmentInput } from '../terms/assessment-input.js';
import { moneyFromNumber } from '@endfloat/metrology';
import type { CommonPrices } from '../pricing/repair-candidate.js';
import { admissible, costAt } from './evaluate-options.js';
import type { EvaluatedCandidate } from './evaluate-candidate.js';
import type { PartBelief } from '../belief/part-belief.js';
import type { EvaluatedOption } from './evaluate-options.js';

/**
 * Expected saving by a further set of readings: the least expected cost now, less the mean of the least expected cost after
 * the set, over what the set may show.
 *
 * @param options  evaluated; only those that no guard removes count
 * @param part     what is believed of the part now fitted
 * @param standardUncertainty  of the mean of the new set, share of the criterion
 * @param tables   the model's
 * @returns saving, 0 or more
 * @source preposterior analysis: Raiffa & Schlaifer (1961), Applied Statistical Decision Theory, ch. 4; normal reading on a grid
 */
export function expectedSaving(
  options: readonly EvaluatedOption[],
  part: PartBelief,
  standardUncertainty: number,
  tables: LearnedTables,
): number {
  const candidates = admissible(options).map(({ chosen }) => chosen);
  if (candidates.length < 2 || candidates.every(({ costAtPlace }) => costAtPlace === null)) return 0;
  const now = Math.min(...candidates.map((candidate) => costAt(candidate, part)));
  const shown = recalled(tables, `shown ${standardUncertainty}`, () => chancesShown(standardUncertainty));
  // Cost times weight at each wear node, the rates summed up.
  const weighed = candidates.map((candidate) => costByNode(candidate, part));
  let after = 0;
  for (const chances of shown) {
    let least = Infinity;
    for (const costs of weighed) {
      let sum = 0;
      for (let i = 0; i < costs.length; i += 1) sum += chances[i]! * costs[i]!;
      if (sum < least) least = sum;
    }
    after += least;
  }
  return Math.max(0, now - after);
}

/**
 * Chance of each result of a further set, by the wear node it comes from.
 *
 * @param standardUncertainty  of the mean of the set, share of the criterion; 0 or more
 * @returns one row a result, results lying on the wear nodes; each column adds up to one
 */
export function chancesShown(standardUncertainty: number): readonly Float64Array[] {
  const count = wearNodes.length;
  const rows = Array.from({ length: count }, () => new Float64Array(count));
  for (let i = 0; i < count; i += 1) {
    const likelihood = Float64Array.from(wearNodes, (at) => {
      if (standardUncertainty === 0) return at === wearNodes[i] ? 1 : 0;
      const z = (at - wearNodes[i]!) / standardUncertainty;
      return Math.abs(z) > 8 ? 0 : exp(-0.5 * z * z);
    });
    const sum = likelihood.reduce((total, value) => total + value, 0);
    likelihood.forEach((value, at) => (rows[at]![i] = value / sum));
  }
  return rows;
}

function costByNode({ cost, costAtPlace }: EvaluatedCandidate, { wear, places }: PartBelief): Float64Array {
  if (costAtPlace === null) return wear.map((weight) => weight * cost.mean);
  const nodes = wear.length;
  const sums = new Float64Array(nodes);
  for (let index = 0; index < places.length; index += 1) {
    const node = index % nodes;
    sums[node] = sums[node]! + places[index]! * costAtPlace[index]!;
  }
  return sums;
}

/**
 * Whether one more set of readings is worth its cost.
 *
 * @param options  evaluated
 * @param part     what is believed of the part now fitted
 * @param input    the assessment
 * @param prices   common prices; null where they are not known
 * @returns gain and cost, or why it cannot be said
 * @throws RangeError on an uncertainty or hours that are negative or not finite
 */
export function valueOfFurtherReadings(
  options: readonly EvaluatedOption[],
  part: PartBelief,
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
  const gain = expectedSaving(
    options,
    part,
    standardUncertainty / criterionWear(characteristic),
    input.tables,
  );
  const cost = labourHours * prices.labourPerHour;
  return {
    kind: gain > cost ? 'worthIt' : 'notWorthIt',
    expectedGain: moneyFromNumber(gain, currency),
    cost: moneyFromNumber(cost, currency),
    readings: count,
  };
}
