import type { DegreesOfFreedom } from '../instruments/instrument.js';
import type { UnitCode } from '../quantities/unit-code.js';

/** Where a part of the doubt comes from. */
export const uncertaintySources = ['instrument', 'resolution', 'setUp', 'repeatability', 'other'] as const;

/** A source of `uncertaintySources`. */
export type UncertaintySource = (typeof uncertaintySources)[number];

/** One line of a budget, in the unit of the result. */
export interface UncertaintyComponent {
  readonly source: UncertaintySource;
  /** Standard uncertainty of the input, not negative. */
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: DegreesOfFreedom;
  /** Change of the result per change of the input; 1 where left out. */
  readonly sensitivity?: number;
}

/** A line of a finished budget with its share of the variance (all shares sum to 1). */
export interface UncertaintyContribution {
  readonly source: UncertaintySource;
  /** Contribution to the result: sensitivity x standard uncertainty, in the result's unit. */
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: DegreesOfFreedom;
  readonly share: number;
}

/** Repeatability behind a mean: one reading's standard deviation, its degrees of freedom, how many readings were averaged. */
export interface RepeatabilityOfMean {
  readonly standardDeviation: number;
  readonly degreesOfFreedom: DegreesOfFreedom;
  readonly count: number;
}

/** A finished budget of the mean of an inspection's readings. */
export interface KnownUncertainty {
  readonly kind: 'known';
  readonly unit: UnitCode;
  readonly standardUncertainty: number;
  readonly effectiveDegreesOfFreedom: DegreesOfFreedom;
  readonly contributions: readonly UncertaintyContribution[];
  /** What averages out with further readings; null where nothing does. */
  readonly repeatability: RepeatabilityOfMean | null;
  readonly method: string;
}

/** What a budget may lack. */
export const missingUncertaintyInputs = [
  'instrument',
  'resolution',
  'setUp',
  'repeatability',
  'linearScale',
] as const;

/** An entry of `missingUncertaintyInputs`. */
export type MissingUncertaintyInput = (typeof missingUncertaintyInputs)[number];

/** No budget can be made; the reading is judged at face value only. */
export interface UnknownUncertainty {
  readonly kind: 'unknown';
  readonly missing: readonly MissingUncertaintyInput[];
}

/** A budget, or what it lacks. */
export type UncertaintyBudget = KnownUncertainty | UnknownUncertainty;
