import type { OptionAction } from '../terms/option-actions.js';
import type { ExactPosition } from './exact-values.js';
import { adjustingCost, exactValues, valueAt } from './exact-values.js';
import type { ExactWorld } from './exact-world.js';
import { simulatedWorld } from './fleet-parameters.js';
import type { Decider, Situation } from './situation.js';

/** Exact values of a fleet for every distance between visits, worked out when first asked for. */
export function exactTables(world: ExactWorld): (serviceIntervalKm: number) => readonly ExactPosition[] {
  const tables = new Map<number, readonly ExactPosition[]>();
  return (serviceIntervalKm) => {
    const known = tables.get(serviceIntervalKm);
    if (known !== undefined) return known;
    const made = exactValues(world, serviceIntervalKm / simulatedWorld.stepKm);
    tables.set(serviceIntervalKm, made);
    return made;
  };
}

/** Renewals open in a situation with their cost in the end. */
export function renewalCosts(
  here: ExactPosition,
  situation: Situation,
): readonly (readonly [OptionAction, number])[] {
  if (situation.occasion === 'serviceVisit') return [...here.planned];
  const { underWarranty } = situation;
  return [...here.onComplaint].map(([action, cost]) => [
    action,
    action === underWarranty ? here.underWarranty.get(action)! : cost,
  ]);
}

/** The cheapest of some options. */
export function cheapestOf(options: readonly (readonly [OptionAction, number])[]): OptionAction {
  return options.reduce((best, option) => (option[1] < best[1] ? option : best))[0];
}

/**
 * The policy that knows play, rate and cause and acts by dynamic programming on the true model. It does not know the
 * future, nor which part it will get. No guard binds it.
 *
 * @param world   the fleet's truth
 * @param tables  its exact values
 * @returns policy without memory
 */
export function clairvoyant(world: ExactWorld, tables: ReturnType<typeof exactTables>): Decider {
  return {
    decide: (situation, { wear, rate, cause }) => {
      const here = tables(situation.serviceIntervalKm)[situation.position]!;
      const goOn = valueAt(world, here.goOn, wear, rate);
      const renewing = renewalCosts(here, situation);
      const cheapest = Math.min(...renewing.map(([, cost]) => cost));
      const keeping: readonly [OptionAction, number] =
        cause === null ? ['leave', goOn] : ['adjust', adjustingCost(world, cause, goOn, cheapest)];
      return { kind: 'act', action: cheapestOf([keeping, ...renewing]), predicted: null };
    },
  };
}
