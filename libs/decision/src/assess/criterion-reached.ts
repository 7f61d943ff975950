import { wearNodes } from '../belief/wear-grid.js';
import { recalled } from '../memo/recalled.js';
import { gammaShare } from '../portable/probability.js';
import type { RenewalInWorld } from '../look-ahead/look-ahead-world.js';
import type { DecisionBeliefs } from './decision-beliefs.js';

/** Chance of reaching the criterion before the planning distance, by rate and wear node (index rate x nodes + node). */
export type ReachTable = Float64Array;

/**
 * Chance that a gamma process that starts at each node, nothing more being done, passes the criterion within the plan.
 *
 * @param beliefs  of the assessment
 * @returns table; 1 at and beyond the criterion
 * @source P(increment > 1 - wear) = 1 - P(a, (1 - wear) / scale), a = mean increment / scale
 */
export function reachTable(beliefs: DecisionBeliefs): ReachTable {
  const { input, ratesKey } = beliefs;
  return recalled(input.tables, `reach ${input.planningDistanceKm} ${ratesKey}`, () => made(beliefs));
}

function made({ input, rates }: DecisionBeliefs): ReachTable {
  const scale = input.tables.wear.incrementScale;
  const table = new Float64Array(rates.length * wearNodes.length);
  rates.forEach((rate, r) => {
    const mean = (rate * input.planningDistanceKm) / 100_000;
    const shape = mean / scale;
    wearNodes.forEach((wear, i) => {
      const missing = 1 - wear;
      let chance: number;
      if (missing <= 0) chance = 1;
      else if (mean === 0 || !(shape < 1e6)) chance = mean >= missing ? 1 : 0;
      else chance = 1 - gammaShare(shape, missing / scale);
      table[r * wearNodes.length + i] = chance;
    });
  });
  return table;
}

/** Chance over weights of rate x node. */
export function chanceOfReaching(table: ReachTable, places: Float64Array): number {
  let sum = 0;
  for (let index = 0; index < places.length; index += 1) sum += places[index]! * table[index]!;
  return Math.min(1, sum);
}

/** Chance over some places and their weights. */
export function chanceAtPlaces(
  table: ReachTable,
  { places, weights }: Pick<RenewalInWorld, 'places' | 'weights'>,
): number {
  let sum = 0;
  for (let k = 0; k < places.length; k += 1) sum += weights[k]! * table[places[k]!]!;
  return Math.min(1, sum);
}
