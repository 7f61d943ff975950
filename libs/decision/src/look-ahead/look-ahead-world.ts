import { normalised } from '../grid/hat-weights.js';

/** Adjusting in a look-ahead: the wear stays. Comeback chances by wear node. */
export interface AdjustmentInWorld {
  readonly cost: number;
  readonly comeback: Float64Array;
  /** after one comeback of the same complaint */
  readonly comebackAgain: Float64Array;
}

/** A renewal in a look-ahead: other surfaces, with their own start and rate. */
export interface RenewalInWorld {
  readonly id: string;
  /** cost on a complaint, waiting for the part included */
  readonly costOnComplaint: number;
  /** cost at a planned visit, the part being ordered ahead */
  readonly costPlanned: number;
  readonly comeback: number;
  readonly comebackAgain: number;
  /** cost of doing it again under its own warranty; null where a comeback is repaired by whatever is cheapest then */
  readonly repeatCost: number | null;
  /** where the renewed part starts: places (rate x nodes + node) and their weights, which add up to one */
  readonly places: Int32Array;
  readonly weights: Float64Array;
}

/**
 * A component on a vehicle over a finite distance, in equal steps. Wear lies on nodes and rises by gamma increments; a
 * step may bring a complaint, whose chance depends on the wear at its end; on a complaint one repair must be chosen, at a
 * planned visit one may. The first step after a repair is its watch window: it brings a comeback with the repair's own
 * chance instead.
 */
export interface LookAheadWorld {
  /** 0 or more */
  readonly steps: number;
  /** chance of rising by 0, 1, 2 ... nodes in a step, for each rate; what goes beyond the last node stays there */
  readonly increments: readonly Float64Array[];
  /** chance of a complaint in a step, by wear node at its end */
  readonly complaint: Float64Array;
  readonly laterComplaintCost: number;
  readonly comebackHandling: number;
  readonly adjustment: AdjustmentInWorld | null;
  readonly renewals: readonly RenewalInWorld[];
  /** whether a planned visit falls on position 0, 1, ... steps - 1 */
  readonly plannedVisit: readonly boolean[];
}

/**
 * Places and weights of a part that starts on wear nodes with a rate; places of no weight to speak of (below 1e-7) are left out
 * and the rest made up to one.
 *
 * @param start  weights over the wear nodes
 * @param rates  weights over the rates
 * @returns places and weights of a `RenewalInWorld`
 */
export function startingPlaces(
  start: Float64Array,
  rates: Float64Array,
): Pick<RenewalInWorld, 'places' | 'weights'> {
  const places: number[] = [];
  const weights: number[] = [];
  rates.forEach((rateWeight, rate) =>
    start.forEach((startWeight, node) => {
      if (rateWeight * startWeight < 1e-7) return;
      places.push(rate * start.length + node);
      weights.push(rateWeight * startWeight);
    }),
  );
  return { places: Int32Array.from(places), weights: normalised(Float64Array.from(weights)) };
}

/** First and second moment of a cost. */
export interface CostMoments {
  readonly mean: number;
  readonly square: number;
}

/** Costs to come at one position, by rate and wear (index rate x nodes + node). */
export interface PositionCosts {
  /** nothing done; the next step may bring a complaint */
  readonly goOn: Float64Array;
  readonly goOnSquare: Float64Array;
  /** after a repair that held; the next step brings no complaint */
  readonly afterRepair: Float64Array;
  readonly afterRepairSquare: Float64Array;
  /** after each renewal that held */
  readonly renewed: readonly CostMoments[];
  /** the cheapest repair after a comeback: its index, its cost in the end, and the part of it that lies in the future */
  readonly followUp: { readonly index: number; readonly total: CostMoments; readonly future: number };
}

/** A look-ahead with the means at every later position: going on, and the cheapest renewal at a planned visit. */
export interface SolvedLookAhead extends PositionCosts {
  readonly later: readonly { readonly goOn: Float64Array; readonly renewPlanned: number }[];
}

/** Moments of a cost plus a constant. */
export function shifted(constant: number, cost: CostMoments): CostMoments {
  return { mean: constant + cost.mean, square: constant * constant + 2 * constant * cost.mean + cost.square };
}

/** Moments of a cost that is one or the other. */
export function mixed(share: number, one: CostMoments, other: CostMoments): CostMoments {
  return {
    mean: share * one.mean + (1 - share) * other.mean,
    square: share * one.square + (1 - share) * other.square,
  };
}

/** The lesser mean; the first on a tie. */
export function cheaper(one: CostMoments, other: CostMoments): CostMoments {
  return other.mean < one.mean ? other : one;
}
