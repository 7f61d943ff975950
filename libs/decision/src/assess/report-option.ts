import { moneyFromNumber } from '@endfloat/metrology';
import { sizeAtShare, wearNodes, criterionWear } from '../belief/wear-grid.js';
import type { OtherOffer, PricedOption } from '../terms/assessment.js';
import type { PricedOffers } from '../pricing/price-options.js';
import { chanceAtPlaces, chanceOfReaching } from './criterion-reached.js';
import type { PartBelief } from '../belief/part-belief.js';
import type { ReachTable } from './criterion-reached.js';
import type { DecisionModel } from './decision-model.js';
import type { EvaluatedOption } from './evaluate-options.js';
import { sortedQuantile } from './parameter-doubt.js';
import type { CandidateDraws } from './parameter-doubt.js';
import { reportedComponents, reportedTotal } from './reported-cost.js';
import { reported, reportedShare } from './reported.js';

/** What the report of an option is made from. */
export interface OptionSource {
  readonly model: DecisionModel;
  readonly part: PartBelief;
  readonly reach: ReachTable;
  readonly offers: PricedOffers;
  readonly evaluated: EvaluatedOption;
  readonly draws: CandidateDraws;
  readonly probabilityOfBeingCheapest: number | null;
}

const meanOf = (weights: Float64Array, values: Float64Array): number =>
  weights.reduce((sum, weight, i) => sum + weight * values[i]!, 0);

/** Components, each rounded; the expected cost is their sum, so that what is shown adds up. */
function wearOf({ model, part, reach, evaluated }: OptionSource): PricedOption['wear'] {
  const { beliefs, renewals } = model;
  const { characteristic } = beliefs.input;
  const renewal = renewals.find(({ candidate }) => candidate === evaluated.chosen.candidate);
  const start = renewal?.fitted.start ?? part.wear;
  const rates = renewal?.fitted.rates ?? part.rates;
  const perThousandKm = (meanOf(rates, beliefs.rates) * criterionWear(characteristic)) / 100;
  return {
    startSize: reported(sizeAtShare(meanOf(start, wearNodes), characteristic), characteristic.unit),
    meanRate: reported(perThousandKm, `${characteristic.unit}/1000.km`),
    probabilityOfReachingCriterion: reportedShare(
      renewal === undefined
        ? chanceOfReaching(reach, part.places)
        : chanceAtPlaces(reach, renewal.fitted.places),
    ),
  };
}

/**
 * A priced option as it leaves the room: money rounded at the currency's decimals, shares at four decimals, sizes at four
 * significant digits.
 *
 * @param source  the solved and evaluated option
 * @returns report
 */
export function reportOption(source: OptionSource): PricedOption {
  const { model, evaluated, draws, offers, probabilityOfBeingCheapest } = source;
  const { chosen, option, removedBy, others } = evaluated;
  const { currency } = model.beliefs.input;
  const money = (value: number) => moneyFromNumber(value, currency);
  const variance = Math.max(0, chosen.cost.square - chosen.cost.mean * chosen.cost.mean);
  const costs = draws.costs.toSorted();
  const chances = draws.chances.toSorted();
  const otherOffers: OtherOffer[] = [
    ...others.map(({ candidate, cost }): OtherOffer => ({
      kind: 'priced',
      offerId: candidate.offerId!,
      expectedCost: money(cost.mean),
    })),
    ...offers.unpricedOffers.map((offer): OtherOffer => ({ kind: 'cannotBePriced', ...offer })),
  ];
  return {
    kind: 'priced',
    optionId: option.optionId,
    action: option.action,
    offerId: chosen.candidate.offerId,
    isAdmissible: removedBy.length === 0,
    removedBy,
    expectedCost: reportedTotal(chosen, currency),
    components: reportedComponents(chosen, currency),
    expectedCostInterval: {
      lower: money(sortedQuantile(costs, 0.05)),
      upper: money(sortedQuantile(costs, 0.95)),
    },
    probabilityOfBeingCheapest:
      probabilityOfBeingCheapest === null ? null : reportedShare(probabilityOfBeingCheapest),
    outcomes: {
      standardDeviation: money(Math.sqrt(variance)),
      withoutComeback: money(chosen.withoutComeback),
      withComeback: money(chosen.withComeback),
    },
    comeback: {
      probability: reportedShare(chosen.comeback),
      interval: {
        lower: reportedShare(sortedQuantile(chances, 0.05)),
        upper: reportedShare(sortedQuantile(chances, 0.95)),
      },
    },
    leadTimeDays:
      chosen.candidate.leadTime === null ? null : Math.round(chosen.candidate.leadTime.meanDays * 100) / 100,
    wear: wearOf(source),
    otherOffers,
  };
}
