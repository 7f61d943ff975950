import type { InsufficientData } from '../descriptive/outcomes.js';
import type { Interval } from '../inference/interval.js';

/** Intervals for one proportion; they differ, so a result always says which it is. */
export const proportionIntervalMethods = [
  'wilson',
  'clopperPearson',
  'jeffreys',
  'modifiedJeffreys',
] as const;
export type ProportionIntervalMethod = (typeof proportionIntervalMethods)[number];

export interface ProportionInterval extends Interval {
  readonly kind: 'estimated';
  readonly method: ProportionIntervalMethod;
  /** successes / trials. */
  readonly proportion: number;
  readonly confidence: number;
}

export type ProportionIntervalOutcome = ProportionInterval | InsufficientData;
