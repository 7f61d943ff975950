import type { OptionAction, RenewingAction } from '../terms/option-actions.js';
import type { SimulatedFleet } from './fleet-parameters.js';
import { simulatedWorld } from './fleet-parameters.js';

/** Whether an action renews the wearing surfaces. */
export const renews = (action: OptionAction): action is RenewingAction =>
  action !== 'leave' && action !== 'adjust';

/** A complaint before anything is repaired. */
export function complaintCost(fleet: SimulatedFleet): number {
  const { labourHours, downtimeDays } = simulatedWorld.laterComplaint;
  return labourHours * fleet.labourPerHour + downtimeDays * fleet.downtimePerDay;
}

/** Adjusting. */
export const adjustCost = (fleet: SimulatedFleet): number => fleet.adjustHours * fleet.labourPerHour;

/** Renewing: the part unless its giver bears it, labour, and the days off the road. */
export function renewalCost(
  fleet: SimulatedFleet,
  action: RenewingAction,
  waitDays: number,
  isUnderWarranty: boolean,
): number {
  const { price, labourHours, workshopDays } = fleet.renewals[action];
  return (
    (isUnderWarranty ? 0 : price) +
    labourHours * fleet.labourPerHour +
    (workshopDays + waitDays) * fleet.downtimePerDay
  );
}

/** One more set of readings. */
export const furtherSetCost = (fleet: SimulatedFleet): number =>
  simulatedWorld.furtherSetHours * fleet.labourPerHour;
