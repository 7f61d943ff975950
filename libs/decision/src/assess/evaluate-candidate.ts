import { wearNodes } from '../belief/wear-grid.js';
import type { CostMoments } from '../look-ahead/look-ahead-world.js';
import { startingMoments } from '../look-ahead/repair-costs.js';
import { mixed, shifted } from '../look-ahead/look-ahead-world.js';
import type { RepairCandidate } from '../pricing/repair-candidate.js';
import { costNow, costPlanned, downtimeDays, warrantyRepeatCost } from '../pricing/repair-candidate.js';
import type { PartBelief } from '../belief/part-belief.js';
import type { DecisionModel, RenewalBelief } from './decision-model.js';

/** What a repair leads to at one wear and rate: chance of a comeback, and the cost after it and without it. */
export interface Prospect {
  readonly comeback: number;
  readonly held: CostMoments;
  readonly failed: CostMoments;
  /** mean of `failed` that lies after the repairs of the comeback */
  readonly failedFuture: number;
}

/** Expected cost of a candidate and its parts, plain numbers. */
export interface EvaluatedCandidate {
  readonly candidate: RepairCandidate;
  readonly immediate: number;
  readonly downtime: number;
  readonly comeback: number;
  readonly comebackCost: number;
  readonly wearToCome: number;
  readonly cost: CostMoments;
  /** mean cost where it comes back, and where it holds, everything to come included */
  readonly withComeback: number;
  readonly withoutComeback: number;
  /** mean cost at each rate and wear node; null where the part now fitted has no bearing */
  readonly costAtPlace: Float64Array | null;
}

const isPlanned = ({ beliefs }: DecisionModel): boolean => beliefs.input.occasion === 'serviceVisit';

/** Everything spent at once on this occasion: at a planned visit the part is ordered ahead. */
export function immediateCost(model: DecisionModel, candidate: RepairCandidate): number {
  return isPlanned(model) ? costPlanned(candidate, model.prices) : costNow(candidate, model.prices);
}

/** Cost of the days off the road on this occasion. */
export function immediateDowntime(model: DecisionModel, candidate: RepairCandidate): number {
  const wait = isPlanned(model) ? 0 : (candidate.leadTime?.meanDays ?? 0);
  return downtimeDays(candidate, model.prices, wait) * model.prices.downtimePerDay;
}

/**
 * Prospect of a candidate that keeps the wear, at one rate and wear node.
 *
 * At a planned visit there is no complaint to come back: the part simply goes on.
 *
 * @param model   the solved model
 * @param action  leave or adjust
 * @param rate    index of the rate
 * @param node    index of the wear
 * @returns prospect
 */
export function keptProspect(
  model: DecisionModel,
  action: 'leave' | 'adjust',
  rate: number,
  node: number,
): Prospect {
  const { ahead, kept, world } = model;
  const index = rate * wearNodes.length + node;
  if (isPlanned(model)) {
    const goOn = { mean: ahead.goOn[index]!, square: ahead.goOnSquare[index]! };
    return { comeback: 0, held: goOn, failed: goOn, failedFuture: goOn.mean };
  }
  const held = { mean: ahead.afterRepair[index]!, square: ahead.afterRepairSquare[index]! };
  const comeback = (action === 'leave' ? kept.leaveNow : kept.adjustNow)[node]!;
  const { followUp } = ahead;
  const renewed = shifted(world.comebackHandling, followUp.total);
  const { adjustment } = world;
  if (adjustment !== null) {
    // After leaving, adjusting is a first attempt; after adjusting, a second.
    const again = (action === 'leave' ? kept.adjustNow : kept.adjustNowAgain)[node]!;
    const adjusted = shifted(adjustment.cost, mixed(again, renewed, held));
    if (adjusted.mean < followUp.total.mean) {
      const failedFuture = again * followUp.future + (1 - again) * held.mean;
      return { comeback, held, failed: shifted(world.comebackHandling, adjusted), failedFuture };
    }
  }
  return { comeback, held, failed: renewed, failedFuture: followUp.future };
}

/** Prospect of a renewing candidate; the wear and rate of the old part have no bearing on it. */
export function renewedProspect(model: DecisionModel, renewal: RenewalBelief): Prospect {
  const { ahead, world, beliefs } = model;
  const { places, weights } = renewal.fitted.places;
  const held = startingMoments(places, weights, ahead.afterRepair, ahead.afterRepairSquare);
  const comeback = beliefs.input.occasion === 'serviceVisit' ? renewal.comebackLater : renewal.comebackNow;
  const repeat = warrantyRepeatCost(renewal.candidate, model.prices);
  if (repeat !== null) {
    return {
      comeback,
      held,
      failed: shifted(world.comebackHandling + repeat, held),
      failedFuture: held.mean,
    };
  }
  const failed = shifted(world.comebackHandling, ahead.followUp.total);
  return { comeback, held, failed, failedFuture: ahead.followUp.future };
}

/**
 * Expected cost of a candidate in the end and nothing else: the same sum as `evaluateCandidate`.
 *
 * @param model      the solved model
 * @param candidate  one of its candidates
 * @param part       what is believed of the part now fitted
 * @returns expected cost
 */
export function expectedCost(
  model: DecisionModel,
  candidate: RepairCandidate,
  { places }: PartBelief,
): number {
  const immediate = immediateCost(model, candidate);
  const { action } = candidate;
  if (action !== 'leave' && action !== 'adjust') {
    const { comeback, failed, held } = renewedProspect(model, renewalOf(model, candidate));
    return immediate + comeback * failed.mean + (1 - comeback) * held.mean;
  }
  const { ahead, kept, world } = model;
  let sum = 0;
  if (isPlanned(model)) {
    for (let index = 0; index < places.length; index += 1) {
      if (places[index] !== 0) sum += places[index]! * ahead.goOn[index]!;
    }
    return immediate + sum;
  }
  const nodes = wearNodes.length;
  const chances = action === 'leave' ? kept.leaveNow : kept.adjustNow;
  const chancesAgain = action === 'leave' ? kept.adjustNow : kept.adjustNowAgain;
  const handling = world.comebackHandling;
  const followUp = ahead.followUp.total.mean;
  const cost = world.adjustment?.cost ?? Infinity;
  for (let index = 0; index < places.length; index += 1) {
    const weight = places[index]!;
    if (weight === 0) continue;
    const node = index % nodes;
    const held = ahead.afterRepair[index]!;
    let failed = followUp;
    if (world.adjustment !== null) {
      const again = chancesAgain[node]!;
      const adjusted = cost + (again * (handling + followUp) + (1 - again) * held);
      if (adjusted < failed) failed = adjusted;
    }
    const comeback = chances[node]!;
    sum += weight * (comeback * (handling + failed) + (1 - comeback) * held);
  }
  return immediate + sum;
}

function renewalOf(model: DecisionModel, candidate: RepairCandidate): RenewalBelief {
  const renewal = model.renewals.find((known) => known.candidate === candidate);
  if (renewal === undefined) throw new RangeError(`no beliefs about option ${candidate.optionId}`);
  return renewal;
}

interface Sums {
  comeback: number;
  failed: number;
  held: number;
  future: number;
  mean: number;
  square: number;
}

function add(sums: Sums, weight: number, prospect: Prospect): number {
  const { comeback, failed, held, failedFuture } = prospect;
  const both = mixed(comeback, failed, held);
  sums.comeback += weight * comeback;
  sums.failed += weight * comeback * failed.mean;
  sums.held += weight * (1 - comeback) * held.mean;
  sums.future += weight * (comeback * failedFuture + (1 - comeback) * held.mean);
  sums.mean += weight * both.mean;
  sums.square += weight * both.square;
  return both.mean;
}

/**
 * Expected cost of a candidate in the end.
 *
 * @param model      the solved model
 * @param candidate  one of its candidates
 * @param part       what is believed of the part now fitted
 * @param everywhere cost by rate and wear too, also where they have no weight
 * @returns expected cost, second moment, parts of the cost, and cost by place where it depends on the part now fitted
 */
export function evaluateCandidate(
  model: DecisionModel,
  candidate: RepairCandidate,
  { places }: PartBelief,
  everywhere: boolean,
): EvaluatedCandidate {
  const immediate = immediateCost(model, candidate);
  const sums: Sums = { comeback: 0, failed: 0, held: 0, future: 0, mean: 0, square: 0 };
  let costAtPlace: Float64Array | null = null;
  if (candidate.action === 'leave' || candidate.action === 'adjust') {
    const { action } = candidate;
    const nodes = wearNodes.length;
    costAtPlace = new Float64Array(places.length);
    for (let index = 0; index < places.length; index += 1) {
      if (!everywhere && places[index] === 0) continue;
      const rate = Math.floor(index / nodes);
      const prospect = keptProspect(model, action, rate, index - rate * nodes);
      costAtPlace[index] = immediate + add(sums, places[index]!, prospect);
    }
  } else {
    add(sums, 1, renewedProspect(model, renewalOf(model, candidate)));
  }
  const { comeback } = sums;
  return {
    candidate,
    immediate,
    downtime: immediateDowntime(model, candidate),
    comeback,
    comebackCost: sums.mean - sums.future,
    wearToCome: sums.future,
    cost: shifted(immediate, { mean: sums.mean, square: sums.square }),
    withComeback: immediate + (comeback > 0 ? sums.failed / comeback : sums.mean),
    withoutComeback: immediate + (comeback < 1 ? sums.held / (1 - comeback) : sums.mean),
    costAtPlace,
  };
}
