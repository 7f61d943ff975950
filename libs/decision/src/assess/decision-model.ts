import { recalled } from '../memo/recalled.js';
import type { LookAheadWorld, SolvedLookAhead } from '../look-ahead/look-ahead-world.js';
import { solveLookAhead } from '../look-ahead/solve-look-ahead.js';
import type { CommonPrices, RepairCandidate } from '../pricing/repair-candidate.js';
import { costNow, costPlanned, laterComplaintCost, warrantyRepeatCost } from '../pricing/repair-candidate.js';
import type { DecisionBeliefs, FittedStart } from './decision-beliefs.js';
import { chancesAtNodes, fittedStart, startKey } from './decision-beliefs.js';

/** A renewing candidate with its part's start and its comeback chances, free of money. */
export interface RenewalBelief {
  readonly candidate: RepairCandidate;
  readonly fitted: FittedStart;
  /** of this complaint, with the comebacks it has had */
  readonly comebackNow: number;
  /** of a later complaint, without and after one comeback */
  readonly comebackLater: number;
  readonly comebackLaterAgain: number;
}

/** Chances by wear node of repairs that keep the wear. */
export interface KeptWearBelief {
  readonly leaveNow: Float64Array;
  readonly adjustNow: Float64Array;
  readonly adjustNowAgain: Float64Array;
  readonly adjustLater: Float64Array;
  readonly adjustLaterAgain: Float64Array;
}

/** All that does not change when a price, a lead time or a downtime cost does. */
export interface MoneyFreeModel {
  readonly beliefs: DecisionBeliefs;
  readonly kept: KeptWearBelief;
  readonly renewals: readonly RenewalBelief[];
}

/** A model with its prices, looked ahead to the end of the plan. */
export interface DecisionModel extends MoneyFreeModel {
  readonly prices: CommonPrices;
  /** keeping and renewing candidates, ordered by option and offer */
  readonly candidates: readonly RepairCandidate[];
  readonly world: LookAheadWorld;
  readonly ahead: SolvedLookAhead;
}

/** A candidate's place in every list: by option, then by offer. */
export const candidateKey = (candidate: RepairCandidate): string =>
  JSON.stringify([candidate.optionId, candidate.offerId ?? '']);

/**
 * Chances and starts of all candidates.
 *
 * @param beliefs     of the assessment
 * @param candidates  priced ones
 * @returns the part of the model that no price changes
 */
export function moneyFreeModel(
  beliefs: DecisionBeliefs,
  candidates: readonly RepairCandidate[],
): MoneyFreeModel {
  const { tables } = beliefs.input;
  const { count } = beliefs.input.evidence.earlierComebacks;
  const renewals = candidates
    .filter(({ action }) => action !== 'leave' && action !== 'adjust')
    .map((candidate): RenewalBelief => {
      const fitted = fittedStart(beliefs, candidate);
      return {
        candidate,
        fitted,
        comebackNow: fitted.chance(count),
        comebackLater: fitted.chance(0),
        comebackLaterAgain: fitted.chance(1),
      };
    });
  return {
    beliefs,
    renewals,
    kept: {
      leaveNow: chancesAtNodes(beliefs.design, tables, 'leave', beliefs.functional, count),
      adjustNow: chancesAtNodes(beliefs.design, tables, 'adjust', beliefs.functional, count),
      adjustNowAgain: chancesAtNodes(beliefs.design, tables, 'adjust', beliefs.functional, count + 1),
      adjustLater: chancesAtNodes(beliefs.design, tables, 'adjust', 'none', 0),
      adjustLaterAgain: chancesAtNodes(beliefs.design, tables, 'adjust', 'none', 1),
    },
  };
}

/** Everything a look-ahead depends on besides the tables, in one text. */
function worldKey(
  { beliefs }: MoneyFreeModel,
  world: LookAheadWorld,
  renewals: readonly RenewalBelief[],
): string {
  const starts = new Map(renewals.map(({ candidate }) => [candidateKey(candidate), startKey(candidate)]));
  return JSON.stringify([
    'world',
    beliefs.ratesKey,
    beliefs.input.characteristic,
    beliefs.stepKm,
    world.steps,
    world.plannedVisit.map(Number).join(''),
    world.laterComplaintCost,
    world.comebackHandling,
    world.adjustment?.cost ?? null,
    world.renewals.map(({ id, costOnComplaint, costPlanned, repeatCost }) => [
      starts.get(id),
      costOnComplaint,
      costPlanned,
      repeatCost,
    ]),
  ]);
}

/**
 * Puts prices to a model and looks ahead. What the customer has declined is not counted on later either, unless nothing
 * else would renew the part.
 *
 * @param model       the part without prices
 * @param candidates  the same candidates, possibly at other prices
 * @param prices      common prices
 * @param withSpread  second moments of the costs too
 * @returns the solved model, or null where no candidate renews the part
 */
export function pricedModel(
  model: MoneyFreeModel,
  candidates: readonly RepairCandidate[],
  prices: CommonPrices,
  withSpread: boolean,
): DecisionModel | null {
  const { beliefs, kept } = model;
  const declined = beliefs.input.consent.declinedActions;
  const priceOf = new Map(candidates.map((candidate) => [candidateKey(candidate), candidate]));
  const renewals = model.renewals.map((renewal) => ({
    ...renewal,
    candidate: priceOf.get(candidateKey(renewal.candidate)) ?? renewal.candidate,
  }));
  if (renewals.length === 0) return null;
  const accepted = renewals.filter(({ candidate }) => !declined.includes(candidate.action));
  const adjust = candidates.find(({ action }) => action === 'adjust');
  const world: LookAheadWorld = {
    steps: beliefs.steps,
    increments: beliefs.increments,
    complaint: beliefs.complaint,
    laterComplaintCost: laterComplaintCost(prices),
    comebackHandling: prices.comebackHandling,
    adjustment:
      adjust === undefined
        ? null
        : { cost: costNow(adjust, prices), comeback: kept.adjustLater, comebackAgain: kept.adjustLaterAgain },
    renewals: (accepted.length > 0 ? accepted : renewals).map(
      ({ candidate, fitted, comebackLater, comebackLaterAgain }) => ({
        id: candidateKey(candidate),
        costOnComplaint: costNow(candidate, prices),
        costPlanned: costPlanned(candidate, prices),
        comeback: comebackLater,
        comebackAgain: comebackLaterAgain,
        repeatCost: warrantyRepeatCost(candidate, prices),
        ...fitted.places,
      }),
    ),
    plannedVisit: beliefs.plannedVisit,
  };
  const ahead = withSpread
    ? recalled(beliefs.input.tables, worldKey(model, world, renewals), () => solveLookAhead(world, true))
    : solveLookAhead(world, false);
  return { beliefs, kept, renewals, prices, candidates, world, ahead };
}
