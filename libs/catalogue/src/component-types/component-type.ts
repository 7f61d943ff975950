import type { Quantity, QuantityKind, UnitCode } from '@endfloat/metrology';
import type { Evidence } from '../evidence/evidence-tag.js';

/** Shapes of a result. */
export const resultKinds = ['number', 'bladePair', 'yesNo', 'grade'] as const;
export type ResultKind = (typeof resultKinds)[number];

/** Which way a characteristic moves as the part wears; 'none' for what is set or is a state. */
export const wearDirections = ['up', 'down', 'none'] as const;
export type WearDirection = (typeof wearDirections)[number];

/** Whether a series of readings may be drawn as wear, as slow drift against itself, or as a state only. */
export const trendKinds = ['wear', 'drift', 'state'] as const;
export type TrendKind = (typeof trendKinds)[number];

/** Doubt to assume for one reading until the shop has measured its own. */
export interface DefaultDoubt {
  /** standard deviation of one reading by the same person with the same instrument; averages out with repeats */
  readonly repeatability: Quantity | null;
  /** degrees of freedom behind `repeatability`; a judged value is worth few (JCGM 100, G.4.2) */
  readonly repeatabilityDegreesOfFreedom: number | null;
  /** standard uncertainty of mounting and angle; does not average out; zero where none is needed, null where not known */
  readonly setUp: Quantity | null;
  readonly evidence: Evidence;
}

/** What is measured on a component. */
export interface Characteristic {
  readonly id: string;
  readonly name: string;
  readonly resultKind: ResultKind;
  /** null where the result is no number */
  readonly quantityKind: QuantityKind | null;
  readonly canonicalUnit: UnitCode | null;
  readonly wearDirection: WearDirection;
  readonly trend: TrendKind;
  /** a reading outside is stored and stays unjudged until somebody confirms it */
  readonly plausible: { readonly lowest: Quantity; readonly highest: Quantity } | null;
  /** what the quantity cannot fall below, for a clearance zero; null where it can be anything */
  readonly lowestPossible: Quantity | null;
  readonly doubt: DefaultDoubt | null;
  /** readings of one inspection that are averaged */
  readonly readingsAdvised: number;
}

/** A kind of part at a position, with everything that can be measured on it. New kinds are data, no code. */
export interface ComponentType {
  readonly id: string;
  readonly name: string;
  readonly edition: number;
  readonly positions: readonly string[];
  readonly characteristics: readonly Characteristic[];
}
