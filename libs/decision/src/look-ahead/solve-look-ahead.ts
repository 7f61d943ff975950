import type { CostMoments, LookAheadWorld, PositionCosts } from './look-ahead-world.js';
import { cheaper, mixed, shifted } from './look-ahead-world.js';
import { comebackOfKeptWear, renewalCost, renewalsAtPosition } from './repair-costs.js';

interface Field {
  readonly mean: Float64Array;
  readonly square: Float64Array;
}

interface Increments {
  readonly weights: Float64Array;
  readonly left: Float64Array;
}

const field = (size: number): Field => ({ mean: new Float64Array(size), square: new Float64Array(size) });

/** Share of the increments that are longer than each number of nodes. */
function longerThan(weights: Float64Array): Float64Array {
  const left = new Float64Array(weights.length + 1);
  for (let j = weights.length - 1; j >= 0; j -= 1) left[j] = left[j + 1]! + weights[j]!;
  return left;
}

/** Mean of a field over the increments of one step; what goes beyond the last node stays on it. */
function step(increments: readonly Increments[], nodes: number, from: Float64Array, to: Float64Array): void {
  increments.forEach(({ weights, left }, r) => {
    const row = r * nodes;
    const last = row + nodes - 1;
    const beyond = from[last]!;
    for (let i = row; i <= last; i += 1) {
      const inside = Math.min(weights.length, last - i);
      let sum = left[inside]! * beyond;
      for (let j = 0; j < inside; j += 1) sum += weights[j]! * from[i + j]!;
      to[i] = sum;
    }
  });
}

/**
 * The cheaper way to deal with a complaint at this wear: the best renewal, or adjusting.
 */
function onComplaint(
  world: LookAheadWorld,
  here: PositionCosts,
  renew: CostMoments,
  index: number,
  node: number,
): CostMoments {
  const { adjustment, comebackHandling } = world;
  if (adjustment === null) return renew;
  const held = { mean: here.afterRepair[index]!, square: here.afterRepairSquare[index]! };
  const failed = comebackOfKeptWear(
    adjustment,
    adjustment.comebackAgain[node]!,
    held,
    here.followUp.total,
    comebackHandling,
  );
  return cheaper(renew, shifted(adjustment.cost, mixed(adjustment.comeback[node]!, failed, held)));
}

/** Cost of the best renewal at one position. */
function bestRenewal(world: LookAheadWorld, here: PositionCosts, isPlanned: boolean): CostMoments {
  return world.renewals
    .map((renewal, f) =>
      renewalCost(
        renewal,
        isPlanned ? renewal.costPlanned : renewal.costOnComplaint,
        renewal.comeback,
        here.renewed[f]!,
        here.followUp.total,
        world.comebackHandling,
      ),
    )
    .reduce(cheaper);
}

/** Costs before the complaint of the step that ends here is known (`before`), and where there was none (`quiet`). */
function foldMoments(
  world: LookAheadWorld,
  here: PositionCosts,
  isPlanned: boolean,
  before: Field,
  quiet: Field,
): void {
  const nodes = world.complaint.length;
  const renew = bestRenewal(world, here, false);
  const renewPlanned = isPlanned ? bestRenewal(world, here, true) : null;
  for (let index = 0; index < here.goOn.length; index += 1) {
    const node = index % nodes;
    const goOn = { mean: here.goOn[index]!, square: here.goOnSquare[index]! };
    const still = renewPlanned === null ? goOn : cheaper(goOn, renewPlanned);
    quiet.mean[index] = still.mean;
    quiet.square[index] = still.square;
    const complained = shifted(world.laterComplaintCost, onComplaint(world, here, renew, index, node));
    const both = mixed(world.complaint[node]!, complained, still);
    before.mean[index] = both.mean;
    before.square[index] = both.square;
  }
}

/** `foldMoments` for the means alone, without an object a node: the same sums in the same order. */
function foldMeans(
  world: LookAheadWorld,
  here: PositionCosts,
  isPlanned: boolean,
  before: Field,
  quiet: Field,
): void {
  const { complaint, adjustment, laterComplaintCost } = world;
  const nodes = complaint.length;
  const renew = bestRenewal(world, here, false).mean;
  const renewPlanned = isPlanned ? bestRenewal(world, here, true).mean : Infinity;
  const followUp = here.followUp.total.mean;
  const renewed = world.comebackHandling + followUp;
  const cost = adjustment?.cost ?? Infinity;
  for (let row = 0; row < here.goOn.length; row += nodes) {
    for (let node = 0; node < nodes; node += 1) {
      const held = here.afterRepair[row + node]!;
      let repair = renew;
      if (adjustment !== null) {
        const again = adjustment.comebackAgain[node]!;
        const adjustAgain = cost + (again * renewed + (1 - again) * held);
        const failed = world.comebackHandling + (adjustAgain < followUp ? adjustAgain : followUp);
        const chance = adjustment.comeback[node]!;
        const adjusted = cost + (chance * failed + (1 - chance) * held);
        if (adjusted < renew) repair = adjusted;
      }
      const goOn = here.goOn[row + node]!;
      const still = renewPlanned < goOn ? renewPlanned : goOn;
      const share = complaint[node]!;
      quiet.mean[row + node] = still;
      before.mean[row + node] = share * (laterComplaintCost + repair) + (1 - share) * still;
    }
  }
}

/**
 * Least expected cost to come, by finite-horizon dynamic programming over distance, wear and rate.
 *
 * The wear and the rate are taken as known at every later decision (later readings will be there; the error is on the
 * hopeful side and the same for all options). Nothing is discounted; at the planning distance nothing more is spent.
 *
 * @param world  the world; at least one renewal
 * @param withSpread  second moments too; without it they are 0 and the means are the same to the last bit
 * @returns costs at position 0: going on, after a repair that held, after each renewal, and the repair after a comeback
 * @throws RangeError without any renewal
 * @complexity steps x rates x nodes x length of the increments
 * @source Bellman (1957), Dynamic Programming, ch. III; second moments along the optimal policy by the same recursion
 * @oracle brute-force enumeration of every outcome and choice in a tiny world (look-ahead.spec.ts)
 */
export function solveLookAhead(world: LookAheadWorld, withSpread: boolean): PositionCosts {
  const nodes = world.complaint.length;
  const size = nodes * world.increments.length;
  const increments = world.increments.map((weights) => ({ weights, left: longerThan(weights) }));
  const before = field(size);
  const quiet = field(size);
  const goOn = field(size);
  const afterRepair = field(size);
  const at = (): PositionCosts => ({
    goOn: goOn.mean,
    goOnSquare: goOn.square,
    afterRepair: afterRepair.mean,
    afterRepairSquare: afterRepair.square,
    ...renewalsAtPosition(world, afterRepair.mean, afterRepair.square),
  });
  const fold = withSpread ? foldMoments : foldMeans;
  for (let position = world.steps - 1; position >= 0; position -= 1) {
    step(increments, nodes, before.mean, goOn.mean);
    step(increments, nodes, quiet.mean, afterRepair.mean);
    if (withSpread) {
      step(increments, nodes, before.square, goOn.square);
      step(increments, nodes, quiet.square, afterRepair.square);
    }
    if (position > 0) fold(world, at(), world.plannedVisit[position] ?? false, before, quiet);
  }
  return at();
}
