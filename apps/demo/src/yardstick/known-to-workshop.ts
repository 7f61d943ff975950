import type { SimulatedFleet } from '@endfloat/decision/simulator';
import { deliveriesOnRecord, simulatedWorld } from '@endfloat/decision/simulator';
import type { KnownToWorkshop } from './endfloat-policy.js';

/**
 * What a workshop knows of a fleet: prices, promises, what suppliers took before, and how well it measures. Member by
 * member, so that nothing of the truth slips through.
 *
 * @param fleet  its parameters
 * @param seed   of the run
 * @returns prices and rules
 */
export function knownToWorkshop(fleet: SimulatedFleet, seed: number): KnownToWorkshop {
  const terms = (action: keyof SimulatedFleet['renewals']) => {
    const { price, labourHours, workshopDays, promisedDays, coversPart } = fleet.renewals[action];
    return { price, labourHours, workshopDays, promisedDays, coversPart };
  };
  const { criterionMm, watchWindowKm, laterComplaint, furtherSetHours, readingsInSet } = simulatedWorld;
  const { labourPerHour, downtimePerDay, comebackHandling, adjustHours, readings } = fleet;
  return {
    criterionMm,
    watchWindowKm,
    laterComplaint,
    furtherSetHours,
    readingsInSet,
    fleet: {
      labourPerHour,
      downtimePerDay,
      comebackHandling,
      adjustHours,
      readings,
      renewals: {
        reBush: terms('reBush'),
        fitUsed: terms('fitUsed'),
        fitRemanufactured: terms('fitRemanufactured'),
        fitNew: terms('fitNew'),
      },
    },
    deliveries: deliveriesOnRecord(fleet, seed),
  };
}
