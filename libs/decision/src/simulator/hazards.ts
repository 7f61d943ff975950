import { exp, logistic } from '../portable/elementary.js';
import type { SimulatedFleet } from './fleet-parameters.js';
import { simulatedWorld } from './fleet-parameters.js';
import type { ComplaintCause } from './situation.js';

/** Chance of a complaint in one step, and the share of it that adjusting cures, by the wear at the end of the step. */
export function complaintHazard(
  fleet: SimulatedFleet,
  wear: number,
): { readonly chance: number; readonly otherShare: number } {
  const worn = fleet.worn * logistic((wear - 1) / fleet.onsetWidth);
  const total = fleet.otherCauses + worn;
  return {
    chance: 1 - exp((-total * simulatedWorld.stepKm) / 100_000),
    otherShare: fleet.otherCauses / total,
  };
}

/** Chance that moving the shaft by hand operates the switch. */
export const criterionChance = (fleet: SimulatedFleet, wear: number): number =>
  logistic((wear - 1) / fleet.functionalWidth);

/** Chance that adjusting comes back. */
export const adjustComeback = (fleet: SimulatedFleet, cause: ComplaintCause): number =>
  fleet.adjustComeback[cause];
