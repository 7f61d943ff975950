import { greatestWear, sizeAtShare } from '../belief/wear-grid.js';
import type { RepairCandidate, CommonPrices } from '../pricing/repair-candidate.js';
import type { FlipPoint } from '../terms/assessment.js';
import type { PartBelief } from '../belief/part-belief.js';
import type { DecisionModel } from './decision-model.js';
import { pricedModel } from './decision-model.js';
import { partNow } from './decision-beliefs.js';
import { admissible, costAt, leastCosts } from './evaluate-options.js';
import type { EvaluatedOption } from './evaluate-options.js';
import { flipsOf, rival } from './flip-search.js';
import type { Variation } from './flip-search.js';
import { reported, reportedAmount } from './reported.js';

const PRICE_FACTOR = 4;
const LONGEST_LEAD_TIME = 120;
const DOWNTIME_FACTOR = 10;
const WEAR_SCAN = 16;

const costsOf = (options: readonly EvaluatedOption[]): ReadonlyMap<string, number> =>
  new Map(admissible(options).map(({ option, chosen }) => [option.optionId, chosen.cost.mean]));

/** Everything a flip point is sought with. */
export interface FlipQuestion {
  readonly model: DecisionModel;
  /** evaluated, cheapest first */
  readonly options: readonly EvaluatedOption[];
  readonly part: PartBelief;
  readonly bestId: string;
}

function resolved(question: FlipQuestion, candidates: readonly RepairCandidate[], prices: CommonPrices) {
  const model = pricedModel(question.model, candidates, prices, false);
  if (model === null) throw new RangeError('a model that renews the part lost its renewals');
  return leastCosts(model, admissible(question.options), question.part);
}

function candidateVariation(question: FlipQuestion, varied: EvaluatedOption): readonly Variation[] {
  const { model, bestId } = question;
  const { candidate } = varied.chosen;
  const { optionId, leadTime, partPrice } = candidate;
  const { currency } = model.beliefs.input;
  const isBest = optionId === bestId;
  const base = costsOf(question.options);
  const behind = isBest ? rival(base, bestId).gap : base.get(optionId)! - base.get(bestId)!;
  const withCandidate = (change: Partial<RepairCandidate>) =>
    resolved(
      question,
      model.candidates.map((known) => (known === candidate ? { ...known, ...change } : known)),
      model.prices,
    );
  const variations: Variation[] = [];
  if (candidate.offerId !== null) {
    // The best can only lose by a dearer part, the others only win by a cheaper one.
    const top = partPrice === 0 ? 10 * model.prices.labourPerHour : PRICE_FACTOR * partPrice;
    variations.push({
      quantity: 'price',
      optionId,
      now: partPrice,
      lower: isBest ? partPrice : 0,
      upper: isBest ? top : partPrice,
      tolerance: 3e-4 * Math.max(partPrice, 1),
      levelAfter: behind,
      say: (value) => reportedAmount(value, currency),
      costs: (value) => withCandidate({ partPrice: value }),
    });
  }
  const isWaitCostly = !model.prices.isUsableWhileWaiting && model.beliefs.input.occasion === 'complaint';
  if (leadTime !== null && isWaitCostly) {
    const now = leadTime.meanDays;
    variations.push({
      quantity: 'leadTime',
      optionId,
      now,
      lower: isBest ? now : 0,
      upper: isBest ? Math.max(LONGEST_LEAD_TIME, now) : now,
      tolerance: 0.005,
      levelAfter: model.prices.downtimePerDay > 0 ? behind / model.prices.downtimePerDay : null,
      say: (value) => reported(value, 'd'),
      costs: (value) => withCandidate({ leadTime: { ...leadTime, meanDays: value } }),
    });
  }
  return variations;
}

function downtimeVariation(question: FlipQuestion): Variation {
  const { model } = question;
  const { prices, beliefs } = model;
  const now = prices.downtimePerDay;
  return {
    quantity: 'downtimeCost',
    optionId: null,
    now,
    lower: 0,
    upper: DOWNTIME_FACTOR * Math.max(now, prices.labourPerHour),
    tolerance: 3e-4 * Math.max(now, prices.labourPerHour),
    levelAfter: null,
    say: (value) => {
      const amount = reportedAmount(value, beliefs.input.currency);
      return { ...amount, unit: `${amount.unit}/d` };
    },
    costs: (value) => resolved(question, model.candidates, { ...prices, downtimePerDay: value }),
  };
}

/** Chance of a comeback of one option, all it leads to left as it is; linear, so the whole range is tried at once. */
function comebackVariation(question: FlipQuestion, varied: EvaluatedOption): Variation {
  const base = costsOf(question.options);
  const { comeback, withComeback, withoutComeback } = varied.chosen;
  const { optionId } = varied.option;
  const isBest = optionId === question.bestId;
  return {
    quantity: 'comebackProbability',
    optionId,
    now: comeback,
    lower: isBest ? comeback : 0,
    upper: isBest ? 1 : comeback,
    tolerance: 1e-6,
    levelAfter: null,
    say: (value) => reported(value, '1'),
    costs: (value) =>
      new Map([
        ...base,
        [optionId, base.get(optionId)! + (value - comeback) * (withComeback - withoutComeback)],
      ]),
  };
}

function wearVariation(question: FlipQuestion): Variation | null {
  const { model, options } = question;
  const { reading, input } = model.beliefs;
  if (reading === null) return null;
  const { characteristic } = input;
  const now = Math.min(greatestWear, Math.max(0, reading.share));
  return {
    quantity: 'wearNow',
    optionId: null,
    now,
    lower: 0,
    upper: greatestWear,
    tolerance: 1e-4,
    levelAfter: null,
    say: (share) => reported(sizeAtShare(share, characteristic), characteristic.unit),
    costs: (share) => {
      const part = partNow(model.beliefs, { ...reading, share });
      return new Map(
        admissible(options).map(({ option, chosen }) => [option.optionId, costAt(chosen, part)]),
      );
    },
  };
}

/**
 * Values of the reading, prices, lead times, downtime cost and comeback chances at which another option becomes the
 * cheapest admissible one, each varied alone with the model solved anew. Where none does, the range that was searched.
 *
 * Guards and verdict stay as they are while the reading is varied. A changed price or lead time also holds for later
 * repairs. Searched: wear 0 to twice the criterion; the best option's part up to four times its price, the others' down to
 * nothing; lead times up to 120 days; downtime up to ten times its cost (or ten times the labour rate).
 *
 * @param question  the solved model, its options and the best of them
 * @returns flip points; none with fewer than two admissible options
 */
export function flipPoints(question: FlipQuestion): readonly FlipPoint[] {
  const { bestId, options } = question;
  const left = admissible(options);
  if (left.length < 2) return [];
  const wear = wearVariation(question);
  const gapNow = rival(costsOf(options), bestId).gap;
  return [
    ...(wear === null
      ? []
      : flipsOf(
          wear,
          bestId,
          gapNow,
          left.some(({ chosen }) => chosen.costAtPlace !== null) ? WEAR_SCAN : 1,
        )),
    ...left
      .flatMap((option) => candidateVariation(question, option))
      .flatMap((variation) => flipsOf(variation, bestId, gapNow)),
    ...flipsOf(downtimeVariation(question), bestId, gapNow),
    ...left
      .filter(({ chosen }) => chosen.withComeback > chosen.withoutComeback)
      .flatMap((option) => flipsOf(comebackVariation(question, option), bestId, gapNow)),
  ];
}
