import type { PartBelief } from '../belief/part-belief.js';
import { afterDistance } from '../belief/part-belief.js';
import { criterionWear, wearNodes } from '../belief/wear-grid.js';
import { normalised } from '../grid/hat-weights.js';
import { recalled } from '../memo/recalled.js';
import type { NextLook } from '../terms/assessment.js';
import type { DecisionModel } from './decision-model.js';
import { chancesOfCrossing } from './parts-to-come.js';
import { reported, reportedShare } from './reported.js';
import { chancesShown } from './value-of-readings.js';

/** Chance of having reached the criterion at which a part is measured again whatever that costs; JUDGEMENT. */
export const recheckChance = 0.1;

/** Weights after one step that brought no complaint. */
function quietStep(model: DecisionModel, places: Float64Array): Float64Array {
  const { increments, complaint } = model.beliefs;
  const nodes = wearNodes.length;
  const next = afterDistance(places, increments);
  for (let index = 0; index < next.length; index += 1)
    next[index] = next[index]! * (1 - complaint[index % nodes]!);
  return normalised(next);
}

/** Saving expected of one set of readings at a planned visit, where the part may go on or be renewed. */
function savingThere(
  goOn: Float64Array,
  renew: number,
  places: Float64Array,
  shown: readonly Float64Array[],
): number {
  const nodes = wearNodes.length;
  const weights = new Float64Array(nodes);
  const costs = new Float64Array(nodes);
  let now = 0;
  for (let index = 0; index < places.length; index += 1) {
    const node = index % nodes;
    weights[node] = weights[node]! + places[index]!;
    costs[node] = costs[node]! + places[index]! * goOn[index]!;
    now += places[index]! * goOn[index]!;
  }
  let after = 0;
  for (const chances of shown) {
    let [weight, cost] = [0, 0];
    for (let i = 0; i < nodes; i += 1) {
      weight += chances[i]! * weights[i]!;
      cost += chances[i]! * costs[i]!;
    }
    after += Math.min(cost, weight * renew);
  }
  return Math.max(0, Math.min(now, renew) - after);
}

/**
 * When the part now fitted is to be looked at again if it stays and nothing is complained of: the first distance at which
 * a set of readings is expected to save more than it costs, or at which the chance of having reached the criterion passes
 * a tenth (nothing being done, complaints or not). A planned visit at which renewing is expected to be the cheaper course comes before that where it lies nearer.
 *
 * @param model  solved with its later positions
 * @param part   what is believed of the part now fitted
 * @returns advice, by the steps of the look-ahead; distances from now
 */
export function nextLook(model: DecisionModel, part: PartBelief): NextLook {
  const { beliefs, ahead, prices, world } = model;
  const { furtherReadings, characteristic, tables } = beliefs.input;
  const isMeasurable = furtherReadings.kind === 'available';
  const u = isMeasurable ? furtherReadings.standardUncertainty / criterionWear(characteristic) : 0;
  const cost = isMeasurable ? furtherReadings.labourHours * prices.labourPerHour : Infinity;
  const shown = isMeasurable ? recalled(tables, `shown ${u}`, () => chancesShown(u)) : [];
  const crossed = chancesOfCrossing(beliefs, part.places);
  let places = part.places;
  for (let position = 1; position < beliefs.steps; position += 1) {
    places = quietStep(model, places);
    const there = ahead.later[position]!;
    const distance = reported(position * beliefs.stepKm, 'km');
    const goOn = places.reduce((sum, weight, index) => sum + weight * there.goOn[index]!, 0);
    if (world.plannedVisit[position] === true && there.renewPlanned < goOn)
      return { kind: 'renewAtVisit', distance };
    const chance = crossed[position]!;
    const probability = reportedShare(chance);
    if (chance >= recheckChance)
      return { kind: 'recheckAt', distance, why: 'chanceOfCriterion', probability };
    if (isMeasurable && savingThere(there.goOn, there.renewPlanned, places, shown) > cost)
      return { kind: 'recheckAt', distance, why: 'readingWorthItsCost', probability };
  }
  return { kind: 'notWithinPlan' };
}
