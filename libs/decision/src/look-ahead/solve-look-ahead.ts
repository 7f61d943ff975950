import type { CostMoments, LookAheadWorld, PositionCosts, SolvedLookAhead } from './look-ahead-world.js';
import { cheaper } from './look-ahead-world.js';
import { stepFields, stepIncrements } from './step-fields.js';
import { renewalCost, renewalsAtPosition } from './repair-costs.js';

interface Field {
  readonly mean: Float64Array;
  readonly square: Float64Array;
}

const field = (size: number, withSquare: boolean): Field => ({
  mean: new Float64Array(size),
  square: new Float64Array(withSquare ? size : 0),
});

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

/** Second moment of a cost plus a constant. */
const squareOf = (constant: number, mean: number, square: number): number =>
  constant * constant + 2 * constant * mean + square;

/** Costs before the complaint of the step that ends here is known (`before`), and where there was none (`quiet`). */
function foldMoments(
  world: LookAheadWorld,
  here: PositionCosts,
  isPlanned: boolean,
  before: Field,
  quiet: Field,
): void {
  const { complaint, adjustment, laterComplaintCost: first, comebackHandling: handling } = world;
  const nodes = complaint.length;
  const renew = bestRenewal(world, here, false);
  const renewPlanned = isPlanned ? bestRenewal(world, here, true) : null;
  const { mean: follow, square: followSquare } = here.followUp.total;
  const renewedSquare = squareOf(handling, follow, followSquare);
  for (let index = 0; index < here.goOn.length; index += 1) {
    const node = index % nodes;
    let still = here.goOn[index]!;
    let stillSquare = here.goOnSquare[index]!;
    if (renewPlanned !== null && renewPlanned.mean < still) {
      still = renewPlanned.mean;
      stillSquare = renewPlanned.square;
    }
    let repair = renew.mean;
    let repairSquare = renew.square;
    if (adjustment !== null) {
      const held = here.afterRepair[index]!;
      const heldSquare = here.afterRepairSquare[index]!;
      const again = adjustment.comebackAgain[node]!;
      const chance = adjustment.comeback[node]!;
      const { cost } = adjustment;
      // After a comeback: the follow-up renewal, or adjusting once more and the renewal if that comes back too.
      const twice = again * (handling + follow) + (1 - again) * held;
      const isTwice = cost + twice < follow;
      const next = isTwice ? cost + twice : follow;
      const nextSquare = isTwice
        ? squareOf(cost, twice, again * renewedSquare + (1 - again) * heldSquare)
        : followSquare;
      const mean = chance * (handling + next) + (1 - chance) * held;
      if (cost + mean < repair) {
        repair = cost + mean;
        repairSquare = squareOf(
          cost,
          mean,
          chance * squareOf(handling, next, nextSquare) + (1 - chance) * heldSquare,
        );
      }
    }
    const share = complaint[node]!;
    quiet.mean[index] = still;
    quiet.square[index] = stillSquare;
    before.mean[index] = share * (first + repair) + (1 - share) * still;
    before.square[index] = share * squareOf(first, repair, repairSquare) + (1 - share) * stillSquare;
  }
}

/** `foldMoments` for the means alone, without an object a node: the same sums in the same order. */
function foldMeans(
  world: LookAheadWorld,
  here: PositionCosts,
  isPlanned: boolean,
  { mean: before }: Field,
  { mean: quiet }: Field,
): void {
  const { complaint, adjustment, laterComplaintCost, comebackHandling } = world;
  const nodes = complaint.length;
  const renew = bestRenewal(world, here, false).mean;
  const renewPlanned = isPlanned ? bestRenewal(world, here, true).mean : Infinity;
  const followUp = here.followUp.total.mean;
  const renewed = comebackHandling + followUp;
  const { goOn, afterRepair } = here;
  const cost = adjustment?.cost ?? Infinity;
  const comeback = adjustment?.comeback ?? complaint;
  const comebackAgain = adjustment?.comebackAgain ?? complaint;
  for (let index = 0, node = 0; index < before.length; index += 1, node += 1) {
    if (node === nodes) node = 0;
    const held = afterRepair[index]!;
    const again = comebackAgain[node]!;
    const adjustAgain = cost + (again * renewed + (1 - again) * held);
    const failed = comebackHandling + (adjustAgain < followUp ? adjustAgain : followUp);
    const chance = comeback[node]!;
    const adjusted = cost + (chance * failed + (1 - chance) * held);
    const repair = adjusted < renew ? adjusted : renew;
    const further = goOn[index]!;
    const still = renewPlanned < further ? renewPlanned : further;
    const share = complaint[node]!;
    quiet[index] = still;
    before[index] = share * (laterComplaintCost + repair) + (1 - share) * still;
  }
}

/**
 * Least expected cost to come, by finite-horizon dynamic programming over distance, wear and rate.
 *
 * The wear and the rate are taken as known at every later decision (later readings will be there; the error is on the
 * hopeful side and the same for all options). Nothing is discounted; at the planning distance nothing more is spent.
 *
 * @param world  the world; at least one renewal
 * @param withSpread  second moments too; without it there are none and the means are the same to the last bit
 * @returns costs at position 0: going on, after a repair that held, after each renewal, and the repair after a comeback;
 *   with second moments also the means at later positions (from 1 on)
 * @throws RangeError without any renewal
 * @complexity steps x rates x nodes x length of the increments
 * @source Bellman (1957), Dynamic Programming, ch. III; second moments along the optimal policy by the same recursion
 * @oracle brute-force enumeration of every outcome and choice in a tiny world (look-ahead.spec.ts)
 */
export function solveLookAhead(world: LookAheadWorld, withSpread: boolean): SolvedLookAhead {
  const nodes = world.complaint.length;
  const size = nodes * world.increments.length;
  const increments = world.increments.map(stepIncrements);
  const before = field(size, withSpread);
  const quiet = field(size, withSpread);
  const goOn = field(size, withSpread);
  const afterRepair = field(size, withSpread);
  const at = (): PositionCosts => ({
    goOn: goOn.mean,
    goOnSquare: goOn.square,
    afterRepair: afterRepair.mean,
    afterRepairSquare: afterRepair.square,
    ...renewalsAtPosition(world, afterRepair.mean, afterRepair.square),
  });
  const fold = withSpread ? foldMoments : foldMeans;
  const later: SolvedLookAhead['later'][number][] = [];
  for (let position = world.steps - 1; position >= 0; position -= 1) {
    stepFields(increments, nodes, before.mean, quiet.mean, goOn.mean, afterRepair.mean);
    if (withSpread)
      stepFields(increments, nodes, before.square, quiet.square, goOn.square, afterRepair.square);
    if (position === 0) break;
    const here = at();
    if (withSpread)
      later[position] = {
        goOn: Float64Array.from(goOn.mean),
        renewPlanned: bestRenewal(world, here, true).mean,
      };
    fold(world, here, world.plannedVisit[position] ?? false, before, quiet);
  }
  return { ...at(), later };
}
