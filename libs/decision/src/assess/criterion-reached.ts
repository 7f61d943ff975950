import { wearNodes } from '../belief/wear-grid.js';
import { gammaShare } from '../portable/probability.js';
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
export function reachTable({ input, rates }: DecisionBeliefs): ReachTable {
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

/** Chance over weights of wear and rate. */
export function chanceOfReaching(table: ReachTable, wear: Float64Array, rates: Float64Array): number {
  let sum = 0;
  rates.forEach((rateWeight, r) => {
    if (rateWeight === 0) return;
    wear.forEach((weight, i) => (sum += rateWeight * weight * table[r * wear.length + i]!));
  });
  return Math.min(1, sum);
}
