import type { RenewingAction } from '../terms/option-actions.js';
import { adjustComeback } from './hazards.js';
import type { ExactWorld } from './exact-world.js';
import { exactNodes, expectedAfterStep } from './exact-world.js';
import { adjustCost, complaintCost } from './money.js';
import type { ComplaintCause } from './situation.js';

/** Least expected costs at one position of the plan, everything true being known. */
export interface ExactPosition {
  /** the part goes on, by rate x node */
  readonly goOn: Float64Array;
  /** a renewal in the end, by action: on a complaint, at a planned visit, again under its warranty */
  readonly onComplaint: ReadonlyMap<RenewingAction, number>;
  readonly planned: ReadonlyMap<RenewingAction, number>;
  readonly underWarranty: ReadonlyMap<RenewingAction, number>;
  readonly cheapestRenewal: number;
}

/**
 * Cost in the end of adjusting, with a known cause, given what it costs to go on.
 *
 * @param world  the fleet's truth
 * @param cause  of the complaint
 * @param goOn   cost to come where adjusting held
 * @param renew  the cheapest renewal in the end
 * @returns expected cost; where it comes back, the cheaper of renewing and adjusting again
 */
export function adjustingCost(
  { fleet }: ExactWorld,
  cause: ComplaintCause,
  goOn: number,
  renew: number,
): number {
  const comeback = adjustComeback(fleet, cause);
  const cost = adjustCost(fleet);
  const again = (cost + (1 - comeback) * goOn + comeback * fleet.comebackHandling) / (1 - comeback);
  return cost + (1 - comeback) * goOn + comeback * (fleet.comebackHandling + (again < renew ? again : renew));
}

/** Renewal costs at one position: a fixed point, as a renewal that comes back leads to another repair. */
function renewalsAt(world: ExactWorld, goOn: Float64Array): Omit<ExactPosition, 'goOn'> {
  const { renewals, fleet } = world;
  const held = renewals.map(({ start }) => start.reduce((sum, weight, i) => sum + weight * goOn[i]!, 0));
  let failed = held.map((cost) => cost + 400);
  const inTheEnd = (cost: (k: number) => number) =>
    renewals.map(
      ({ comeback }, k) =>
        cost(k) + (1 - comeback) * held[k]! + comeback * (fleet.comebackHandling + failed[k]!),
    );
  let fresh = inTheEnd((k) => renewals[k]!.onComplaint);
  let again = inTheEnd((k) => renewals[k]!.underWarranty);
  for (let round = 0; round < 12; round += 1) {
    const cheapest = Math.min(...fresh);
    failed = renewals.map(({ start }, k) => {
      const renew = Math.min(cheapest, again[k]!);
      let sum = 0;
      for (let i = 0; i < start.length; i += 1) {
        if (start[i]! > 1e-9)
          sum += start[i]! * Math.min(renew, adjustingCost(world, 'fitting', goOn[i]!, renew));
      }
      return sum;
    });
    fresh = inTheEnd((k) => renewals[k]!.onComplaint);
    again = inTheEnd((k) => renewals[k]!.underWarranty);
  }
  const planned = inTheEnd((k) => renewals[k]!.planned);
  const named = (costs: readonly number[]) => new Map(renewals.map(({ action }, k) => [action, costs[k]!]));
  return {
    onComplaint: named(fresh),
    planned: named(planned),
    underWarranty: named(again),
    cheapestRenewal: Math.min(...fresh),
  };
}

/** Costs before it is known whether the step that ends here brought a complaint. */
function beforeComplaint(world: ExactWorld, here: ExactPosition, isVisit: boolean): Float64Array {
  const { hazard, otherShare, fleet } = world;
  const planned = isVisit ? Math.min(...here.planned.values()) : Infinity;
  const renew = here.cheapestRenewal;
  const first = complaintCost(fleet);
  return here.goOn.map((goOn, index) => {
    const node = index % exactNodes.length;
    const other = Math.min(renew, adjustingCost(world, 'other', goOn, renew));
    const worn = Math.min(renew, adjustingCost(world, 'worn', goOn, renew));
    const share = otherShare[node]!;
    const complained = first + share * other + (1 - share) * worn;
    return hazard[node]! * complained + (1 - hazard[node]!) * Math.min(goOn, planned);
  });
}

/**
 * Least expected costs at every position, by dynamic programming on the true model: play, rate and cause are known at
 * every decision, the future is not.
 *
 * @param world       the fleet's truth
 * @param visitEvery  steps between planned visits, counted from the first position
 * @returns one entry a position; after the last step nothing more is spent
 * @source Bellman (1957)
 */
export function exactValues(world: ExactWorld, visitEvery: number): readonly ExactPosition[] {
  const positions: ExactPosition[] = [];
  let goOn: Float64Array = new Float64Array(world.start.length);
  for (let position = world.steps - 1; position >= 0; position -= 1) {
    const after: ExactPosition | undefined = positions[position + 1];
    goOn =
      after === undefined
        ? new Float64Array(world.start.length)
        : expectedAfterStep(world, beforeComplaint(world, after, (position + 1) % visitEvery === 0));
    positions[position] = { goOn, ...renewalsAt(world, goOn) };
  }
  return positions;
}

/** Value of a field over rate x node at any wear and rate, by straight lines. */
export function valueAt({ rates }: ExactWorld, field: Float64Array, wear: number, rate: number): number {
  const nodes = exactNodes.length;
  const x = Math.min(nodes - 1, Math.max(0, wear / exactNodes[1]!));
  const i = Math.min(nodes - 2, Math.floor(x));
  let r = 0;
  while (r < rates.length - 2 && rates[r + 1]! < rate) r += 1;
  const y = Math.min(1, Math.max(0, (rate - rates[r]!) / (rates[r + 1]! - rates[r]!)));
  const along = (row: number) =>
    field[row * nodes + i]! + (x - i) * (field[row * nodes + i + 1]! - field[row * nodes + i]!);
  return along(r) + y * (along(r + 1) - along(r));
}
