import type { LearnedTables } from '@endfloat/decision';
import { judgementTables, learnTables } from '@endfloat/decision';
import type { Decider, FixedRule, PlayedVan, SimulatedFleet } from '@endfloat/decision/simulator';
import {
  clairvoyant,
  exactTables,
  exactWorld,
  fixedRule,
  fixedRules,
  InformedPolicy,
  playVan,
  simulatedFleets,
  simulatedVan,
  simulatedWorld,
} from '@endfloat/decision/simulator';
import { endfloatPolicy } from './endfloat-policy.js';
import { historyOfVans } from './history-of-vans.js';
import { knownToWorkshop } from './known-to-workshop.js';

/** Renewals a fixed rule may always take; it is granted the best of them in hindsight. */
export const renewalsOfRules = ['reBush', 'fitUsed', 'fitRemanufactured', 'fitNew'] as const;

/** Policies other than the fixed rules. */
export const thinkingPolicies = ['clairvoyant', 'informed', 'endfloatPriors', 'endfloatLearned'] as const;

/** A policy of `thinkingPolicies`. */
export type ThinkingPolicy = (typeof thinkingPolicies)[number];

/** Cost per van, by policy; a fixed rule once for each renewal. */
export type CostsByPolicy = Readonly<Record<string, readonly number[]>>;

/** A prediction and what came of it. */
export type Predicted = readonly [chance: number, cameBack: boolean];

/** What became of some vans of a fleet under every policy. */
export interface FleetShare {
  readonly costs: CostsByPolicy;
  readonly predictions: Readonly<Partial<Record<ThinkingPolicy, readonly Predicted[]>>>;
  /** whether the 90 % interval of the distance to the criterion held the true distance */
  readonly intervals: Readonly<Partial<Record<ThinkingPolicy, readonly boolean[]>>>;
  readonly yearlyKm: readonly number[];
}

/** Seed of the vans that teach; the vans that are judged have another. */
const teachingSeed = (seed: number): number => (seed ^ 0x7ea0) >>> 0;

/** The fleet of an id. */
export function fleetOf(id: string): SimulatedFleet {
  const fleet = simulatedFleets.find((each) => each.id === id);
  if (fleet === undefined) throw new RangeError(`no simulated fleet has the id "${id}"`);
  return fleet;
}

/**
 * Tables after some van-years in a fleet of the same kind: a workshop that starts from judgement works on them, and learns
 * from what it saw.
 *
 * @param fleet  its parameters
 * @param seed   of the run; the vans that teach have another
 * @param years  van-years
 * @returns learned tables
 */
export function tablesAfterYears(fleet: SimulatedFleet, seed: number, years: number): LearnedTables {
  const known = knownToWorkshop(fleet, teachingSeed(seed));
  const played: PlayedVan[] = [];
  let driven = 0;
  for (let number = 0; driven < years; number += 1) {
    const van = simulatedVan(fleet, teachingSeed(seed), number);
    driven += simulatedWorld.planningDistanceKm / van.yearlyKm;
    played.push(playVan(fleet, van, endfloatPolicy(known, judgementTables)));
  }
  const { tables } = learnTables(historyOfVans(known, played), judgementTables);
  return { ...tables, version: `learned-${String(years)}-van-years` };
}

/** Name of a fixed rule with the renewal it always takes. */
export const ruleKey = (rule: FixedRule, renewal: (typeof renewalsOfRules)[number]): string =>
  `${rule} ${renewal}`;

/**
 * Plays some vans of a fleet under every policy.
 *
 * @param fleet    its parameters
 * @param seed     of the run
 * @param numbers  first van, and the one after the last
 * @param learned  tables after learning
 * @returns costs, predictions and intervals, van by van
 */
export function playShare(
  fleet: SimulatedFleet,
  seed: number,
  numbers: readonly [from: number, to: number],
  learned: LearnedTables,
): FleetShare {
  const world = exactWorld(fleet);
  const tables = exactTables(world);
  const known = knownToWorkshop(fleet, seed);
  const policies: Readonly<Record<ThinkingPolicy, () => Decider>> = {
    clairvoyant: () => clairvoyant(world, tables),
    informed: () => new InformedPolicy(world, tables),
    endfloatPriors: () => endfloatPolicy(known, judgementTables),
    endfloatLearned: () => endfloatPolicy(known, learned),
  };
  const costs: Record<string, number[]> = {};
  const predictions: Partial<Record<ThinkingPolicy, Predicted[]>> = {};
  const intervals: Partial<Record<ThinkingPolicy, boolean[]>> = {};
  const yearlyKm: number[] = [];
  for (let number = numbers[0]; number < numbers[1]; number += 1) {
    const van = simulatedVan(fleet, seed, number);
    yearlyKm.push(van.yearlyKm);
    for (const rule of fixedRules)
      for (const renewal of renewalsOfRules)
        (costs[ruleKey(rule, renewal)] ??= []).push(playVan(fleet, van, fixedRule(rule, renewal)).cost);
    for (const policy of thinkingPolicies) {
      const played = playVan(fleet, van, policies[policy]());
      (costs[policy] ??= []).push(played.cost);
      for (const { predicted, cameBack } of played.repairs)
        if (predicted !== null) (predictions[policy] ??= []).push([predicted, cameBack]);
      (intervals[policy] ??= []).push(...played.intervalsHeld);
    }
  }
  return { costs, predictions, intervals, yearlyKm };
}
