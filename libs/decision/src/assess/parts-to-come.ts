import type { PartBelief } from '../belief/part-belief.js';
import { afterDistance } from '../belief/part-belief.js';
import { wearNodes } from '../belief/wear-grid.js';
import type { DecisionBeliefs } from './decision-beliefs.js';
import { chanceBeyondCriterion } from './reasons.js';

/** Margins over wear and rate of weights over rate x node. */
export function marginsOf(places: Float64Array): PartBelief {
  const nodes = wearNodes.length;
  const wear = new Float64Array(nodes);
  const rates = new Float64Array(places.length / nodes);
  for (let index = 0; index < places.length; index += 1) {
    const r = Math.floor(index / nodes);
    wear[index - r * nodes] = wear[index - r * nodes]! + places[index]!;
    rates[r] = rates[r]! + places[index]!;
  }
  return { places, wear, rates };
}

/**
 * Chance that wear has reached the criterion after each step of the plan, nothing being done.
 *
 * @param beliefs  of the assessment
 * @param places   weights over rate x node now
 * @returns one chance a step, the first one now; rising
 */
export function chancesOfCrossing(
  { steps, increments }: DecisionBeliefs,
  places: Float64Array,
): readonly number[] {
  const chances = [chanceBeyondCriterion(marginsOf(places).wear)];
  let now = places;
  for (let step = 0; step < steps; step += 1) {
    now = afterDistance(now, increments);
    chances.push(Math.max(chances.at(-1)!, Math.min(1, chanceBeyondCriterion(marginsOf(now).wear))));
  }
  return chances;
}
