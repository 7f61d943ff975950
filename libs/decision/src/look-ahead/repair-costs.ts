import type { CostMoments, LookAheadWorld, PositionCosts, RenewalInWorld } from './look-ahead-world.js';
import { mixed, shifted } from './look-ahead-world.js';

/**
 * Cost in the end of a renewal: its cost, and with its chance a comeback, repaired under warranty or by the follow-up.
 *
 * @param renewal  the renewal
 * @param cost     what it costs now
 * @param comeback its chance of a comeback
 * @param held     cost to come where it held
 * @param followUp cost in the end of the repair after a comeback
 * @param handling of a comeback
 * @returns moments
 */
export function renewalCost(
  renewal: RenewalInWorld,
  cost: number,
  comeback: number,
  held: CostMoments,
  followUp: CostMoments,
  handling: number,
): CostMoments {
  const failed =
    renewal.repeatCost === null ? shifted(handling, followUp) : shifted(handling + renewal.repeatCost, held);
  return shifted(cost, mixed(comeback, failed, held));
}

function meanAt(places: Int32Array, weights: Float64Array, values: Float64Array): number {
  let mean = 0;
  for (let k = 0; k < places.length; k += 1) mean += weights[k]! * values[places[k]!]!;
  return mean;
}

/**
 * Cost to come of a part that starts at places with weights.
 *
 * @param places   of the start
 * @param weights  of the places, adding up to one
 * @param means    cost to come by place
 * @param squares  second moments by place; empty where none are wanted, then the answer's is 0
 * @returns moments
 */
export function startingMoments(
  places: Int32Array,
  weights: Float64Array,
  means: Float64Array,
  squares: Float64Array,
): CostMoments {
  const square = squares.length === 0 ? 0 : meanAt(places, weights, squares);
  return { mean: meanAt(places, weights, means), square };
}

/**
 * Costs to come after each renewal, and the cheapest repair after a comeback, at one position.
 *
 * A renewal that comes back twice is done a third time; that one holds.
 *
 * @param world              the world; at least one renewal
 * @param afterRepair        cost to come after a repair that held, by rate and wear
 * @param afterRepairSquare  its second moment; empty where none is wanted, then they are 0
 * @returns the parts of `PositionCosts` that do not depend on the present wear
 * @throws RangeError without any renewal
 */
export function renewalsAtPosition(
  world: LookAheadWorld,
  afterRepair: Float64Array,
  afterRepairSquare: Float64Array,
): Pick<PositionCosts, 'renewed' | 'followUp'> {
  const renewed = world.renewals.map(({ places, weights }) =>
    startingMoments(places, weights, afterRepair, afterRepairSquare),
  );
  let best: PositionCosts['followUp'] | null = null;
  world.renewals.forEach((renewal, index) => {
    const held = renewed[index]!;
    const repeat = renewal.repeatCost ?? renewal.costOnComplaint;
    const total = shifted(
      renewal.costOnComplaint,
      mixed(renewal.comebackAgain, shifted(world.comebackHandling + repeat, held), held),
    );
    if (best === null || total.mean < best.total.mean) best = { index, total, future: held.mean };
  });
  if (best === null) throw new RangeError('a look-ahead needs a repair that renews');
  return { renewed, followUp: best };
}
