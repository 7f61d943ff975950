import { exp } from '../portable/elementary.js';
import type { SeededDraws } from '../random/seeded-draws.js';
import type { RenewingAction } from '../terms/option-actions.js';
import { renewingActions } from '../terms/option-actions.js';
import type { DeliveredLeadTime } from '../terms/option-terms.js';
import type { SimulatedFleet, Spread } from './fleet-parameters.js';
import { simulatedWorld } from './fleet-parameters.js';
import { keyedDraws } from './keyed-draws.js';

/** Streams of one van, one a purpose. */
const purposes = {
  van: 1,
  wear: 2,
  complaint: 3,
  reading: 4,
  functional: 5,
  comeback: 6,
  delivery: 7,
  part: 8,
  crossing: 9,
};

/** A van, before anything happens to it. */
export interface SimulatedVan {
  readonly number: number;
  readonly yearlyKm: number;
  readonly serviceIntervalKm: number;
  readonly start: number;
  readonly rate: number;
  /** of the instrument this van is measured with, mm */
  readonly bias: number;
  /** a stream for a purpose, a position and a count; the same for every policy */
  draws(purpose: keyof typeof purposes, ...keys: readonly number[]): SeededDraws;
}

const spread = ({ median, logSd }: Spread, z: number): number => median * exp(logSd * z);

/**
 * Makes a van of a fleet.
 *
 * @param fleet   its parameters
 * @param seed    of the run
 * @param number  of the van
 * @returns van
 */
export function simulatedVan(fleet: SimulatedFleet, seed: number, number: number): SimulatedVan {
  const draws: SimulatedVan['draws'] = (purpose, ...keys) =>
    keyedDraws(seed, number, purposes[purpose], ...keys);
  const own = draws('van');
  const { yearlyDistance, serviceIntervalKm, stepKm } = simulatedWorld;
  const yearlyKm = spread(yearlyDistance, own.normal());
  const { shortest, longest } = serviceIntervalKm;
  const interval = Math.round(Math.min(longest, Math.max(shortest, yearlyKm)) / stepKm) * stepKm;
  return {
    number,
    yearlyKm,
    serviceIntervalKm: interval,
    start: spread(fleet.start, own.normal()),
    rate: spread(fleet.rate, own.normal()),
    bias: fleet.readings.bias * own.normal(),
    draws,
  };
}

/** Wear and rate of a part as it comes out of its box. */
export function fittedPart(
  fleet: SimulatedFleet,
  van: SimulatedVan,
  action: RenewingAction,
  ordinal: number,
): { readonly wear: number; readonly rate: number } {
  const draws = van.draws('part', ordinal);
  const { start, rate } = fleet.renewals[action];
  return { wear: spread(start, draws.normal()), rate: spread(rate, draws.normal()) };
}

/** Days until a part that was ordered is here. */
export function deliveryDays(fleet: SimulatedFleet, action: RenewingAction, z: number): number {
  const { promisedDays } = fleet.renewals[action];
  return promisedDays === 0 ? 0 : (promisedDays + 1) * exp(fleet.slip.mean + fleet.slip.sd * z) - 1;
}

/** Mean of `deliveryDays`; a delivery before the order is none. */
export function meanDeliveryDays(fleet: SimulatedFleet, action: RenewingAction): number {
  const { promisedDays } = fleet.renewals[action];
  const { mean, sd } = fleet.slip;
  return promisedDays === 0 ? 0 : Math.max(0, (promisedDays + 1) * exp(mean + 0.5 * sd * sd) - 1);
}

/** Deliveries that are on record when the fleet's first van comes in, by action. */
export function deliveriesOnRecord(
  fleet: SimulatedFleet,
  seed: number,
): Readonly<Record<RenewingAction, readonly DeliveredLeadTime[]>> {
  const of = (action: RenewingAction): readonly DeliveredLeadTime[] => {
    const { promisedDays } = fleet.renewals[action];
    const draws = keyedDraws(seed, renewingActions.indexOf(action), 77);
    return Array.from({ length: simulatedWorld.deliveriesOnRecord }, () => ({
      promisedDays,
      actualDays: Math.max(0, Math.round(deliveryDays(fleet, action, draws.normal()))),
    }));
  };
  return {
    reBush: of('reBush'),
    fitUsed: of('fitUsed'),
    fitRemanufactured: of('fitRemanufactured'),
    fitNew: of('fitNew'),
  };
}
