import type {
  PricedOptionDto,
  PricedOtherOfferDto,
  PricingProblemDto,
  UnpricedOptionDto,
  UnpricedOtherOfferDto,
} from '@endfloat/contracts';
import type { OptionAssessment, OtherOffer, PricedOption, PricingProblem } from '@endfloat/decision';
import { actionTexts, pricingTexts } from './assessment-texts.js';

const doubtMethod = 'draws from the doubt about parameters';

function presentProblem({ code, at }: PricingProblem): PricingProblemDto {
  return { code, at, detail: pricingTexts[code] };
}

function presentOther(offer: OtherOffer): PricedOtherOfferDto | UnpricedOtherOfferDto {
  const { offerId } = offer;
  return offer.kind === 'priced'
    ? { kind: 'priced', offerId, expectedCost: offer.expectedCost }
    : { kind: 'cannotBePriced', offerId, problems: offer.problems.map(presentProblem) };
}

export function presentOption(option: OptionAssessment): PricedOptionDto | UnpricedOptionDto {
  if (option.kind === 'priced') return presentPriced(option);
  const { kind, optionId, action, removedBy, problems } = option;
  return {
    kind,
    optionId,
    action,
    title: actionTexts[action],
    removedBy: [...removedBy],
    problems: problems.map(presentProblem),
  };
}

function presentPriced(option: PricedOption): PricedOptionDto {
  const { kind, optionId, action, offerId, isAdmissible, removedBy, wear, comeback } = option;
  const { expectedCost, components, expectedCostInterval, outcomes, leadTimeDays } = option;
  return {
    kind,
    optionId,
    action,
    title: actionTexts[action],
    offerId,
    isAdmissible,
    removedBy: [...removedBy],
    expectedCost,
    components: {
      parts: components.parts,
      labour: components.labour,
      downtime: components.downtime,
      coreDepositAtRisk: components.coreDepositAtRisk,
      comeback: components.comeback,
      wearToCome: components.wearToCome,
    },
    expectedCostInterval: {
      lower: expectedCostInterval.lower,
      upper: expectedCostInterval.upper,
      level: 0.9,
      method: doubtMethod,
    },
    probabilityOfBeingCheapest: option.probabilityOfBeingCheapest,
    outcomes: {
      standardDeviation: outcomes.standardDeviation,
      withoutComeback: outcomes.withoutComeback,
      withComeback: outcomes.withComeback,
    },
    comeback: {
      probability: comeback.probability,
      interval: {
        low: comeback.interval.lower,
        high: comeback.interval.upper,
        level: 0.9,
        method: doubtMethod,
      },
    },
    leadTime: leadTimeDays === null ? null : { value: String(leadTimeDays), unit: 'd' },
    wear: {
      startSize: { ...wear.startSize },
      meanRate: { ...wear.meanRate },
      probabilityOfReachingCriterion: wear.probabilityOfReachingCriterion,
    },
    otherOffers: option.otherOffers.map(presentOther),
  };
}
