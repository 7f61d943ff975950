import { hatWeights } from '../grid/hat-weights.js';
import { logNormalShortfall } from '../grid/shortfall.js';
import { exp, log } from '../portable/elementary.js';
import type { RenewingAction } from '../terms/option-actions.js';
import { renewingActions } from '../terms/option-actions.js';
import type { SimulatedFleet, Spread } from './fleet-parameters.js';
import { simulatedWorld } from './fleet-parameters.js';
import { complaintHazard } from './hazards.js';
import { meanDeliveryDays } from './simulated-van.js';
import { renewalCost } from './money.js';
import { incrementWeights } from './wear-law.js';

const PER_CRITERION = 80;
const RATES = 9;

/** Nodes of wear, shares of the criterion. */
export const exactNodes: Float64Array = Float64Array.from(
  { length: 2 * PER_CRITERION + 1 },
  (_, i) => i / PER_CRITERION,
);

/** A renewal as the exact calculation sees it. */
export interface ExactRenewal {
  readonly action: RenewingAction;
  readonly onComplaint: number;
  readonly planned: number;
  readonly underWarranty: number;
  readonly comeback: number;
  /** weights over rate x node of the fitted part */
  readonly start: Float64Array;
}

/** A fleet's truth on a grid. */
export interface ExactWorld {
  readonly fleet: SimulatedFleet;
  readonly steps: number;
  readonly rates: Float64Array;
  /** increments by rate, and by node where the law depends on the wear */
  readonly increments: readonly (readonly Float64Array[])[];
  readonly hazard: Float64Array;
  readonly otherShare: Float64Array;
  readonly renewals: readonly ExactRenewal[];
  /** of the vans as they come in */
  readonly start: Float64Array;
}

function product(rates: Float64Array, start: Spread, rate: Spread): Float64Array {
  const mean = ({ median, logSd }: Spread) => median * exp(0.5 * logSd * logSd);
  const byNode = hatWeights(exactNodes, logNormalShortfall(start.median, start.logSd, mean(start)));
  const byRate = hatWeights(rates, logNormalShortfall(rate.median, rate.logSd, mean(rate)));
  const both = new Float64Array(rates.length * exactNodes.length);
  byRate.forEach((weight, r) => {
    for (let i = 0; i < exactNodes.length; i += 1) both[r * exactNodes.length + i] = weight * byNode[i]!;
  });
  return both;
}

function trimmed(weights: Float64Array): Float64Array {
  let length = weights.length;
  while (length > 1 && weights[length - 1]! < 1e-7) length -= 1;
  return weights.slice(0, length);
}

/**
 * Puts a fleet's truth on a grid.
 *
 * @param fleet  its parameters
 * @returns grid world; rates between nodes are taken by straight lines
 */
export function exactWorld(fleet: SimulatedFleet): ExactWorld {
  const { stepKm, planningDistanceKm } = simulatedWorld;
  const all = [fleet.rate, ...Object.values(fleet.renewals).map(({ rate }) => rate)];
  const low = Math.min(...all.map(({ median, logSd }) => median * exp(-2.5 * logSd)));
  const high = Math.max(...all.map(({ median, logSd }) => median * exp(2.5 * logSd)));
  const rates = Float64Array.from(
    { length: RATES },
    (_, i) => low * exp((log(high / low) * i) / (RATES - 1)),
  );
  const hazards = Array.from(exactNodes, (wear) => complaintHazard(fleet, wear));
  return {
    fleet,
    steps: planningDistanceKm / stepKm,
    rates,
    increments: Array.from(rates, (rate) =>
      fleet.law.kind === 'accelerating'
        ? Array.from(exactNodes, (wear) =>
            trimmed(incrementWeights(fleet.law, rate, wear, stepKm, exactNodes)),
          )
        : [trimmed(incrementWeights(fleet.law, rate, 0, stepKm, exactNodes))],
    ),
    hazard: Float64Array.from(hazards, ({ chance }) => chance),
    otherShare: Float64Array.from(hazards, ({ otherShare }) => otherShare),
    start: product(rates, fleet.start, fleet.rate),
    renewals: renewingActions.map((action) => {
      const { comeback, coversPart, start, rate } = fleet.renewals[action];
      const wait = meanDeliveryDays(fleet, action);
      return {
        action,
        onComplaint: renewalCost(fleet, action, wait, false),
        planned: renewalCost(fleet, action, 0, false),
        underWarranty: renewalCost(fleet, action, wait, coversPart),
        comeback,
        start: product(rates, start, rate),
      };
    }),
  };
}

/** Mean over one step of a field over rate x node. */
export function expectedAfterStep(world: ExactWorld, field: Float64Array): Float64Array {
  const nodes = exactNodes.length;
  const after = new Float64Array(field.length);
  world.increments.forEach((byNode, r) => {
    for (let i = 0; i < nodes; i += 1) {
      const weights = byNode.length === 1 ? byNode[0]! : byNode[i]!;
      let sum = 0;
      for (let j = 0; j < weights.length; j += 1)
        sum += weights[j]! * field[r * nodes + Math.min(nodes - 1, i + j)]!;
      after[r * nodes + i] = sum;
    }
  });
  return after;
}

/** Weights over rate x node after one step. */
export function weightsAfterStep(world: ExactWorld, weights: Float64Array): Float64Array {
  const nodes = exactNodes.length;
  const after = new Float64Array(weights.length);
  world.increments.forEach((byNode, r) => {
    for (let i = 0; i < nodes; i += 1) {
      const weight = weights[r * nodes + i]!;
      if (weight < 1e-9) continue;
      const steps = byNode.length === 1 ? byNode[0]! : byNode[i]!;
      for (let j = 0; j < steps.length; j += 1) {
        const at = r * nodes + Math.min(nodes - 1, i + j);
        after[at] = after[at]! + weight * steps[j]!;
      }
    }
  });
  return after;
}
