import type { InsufficientData } from '../descriptive/outcomes.js';

/** What a chart points out at a place; a place can carry several. */
export const chartSignals = [
  'aboveUpperLimit',
  'belowLowerLimit',
  'runAboveCentre',
  'runBelowCentre',
] as const;
export type ChartSignal = (typeof chartSignals)[number];

export const chartKinds = ['count', 'proportion', 'rate', 'eventsBetween', 'timeBetween'] as const;
export type ChartKind = (typeof chartKinds)[number];

export interface ChartPlace {
  readonly value: number;
  readonly lower: number;
  readonly upper: number;
  readonly signals: readonly ChartSignal[];
}

export interface ControlChart {
  readonly kind: 'estimated';
  readonly chart: ChartKind;
  /** Mean of the baseline, or the centre given. */
  readonly centre: number;
  /** The line whose sides are compared for runs: the centre, or the median of a skew distribution. */
  readonly runLine: number;
  readonly places: readonly ChartPlace[];
}

export type ControlChartOutcome =
  | ControlChart
  /** The centre lies where the chart has no width (no event, or nothing but events): no limits can be drawn. */
  | { readonly kind: 'noVariation'; readonly centre: number }
  | InsufficientData;

export interface ControlChartOptions {
  /** Centre known beforehand; when left out it is estimated from the baseline. */
  readonly centre?: number;
  /** Number of first places that make the baseline; all when left out. Ignored with a given centre. */
  readonly baseline?: number;
  /** Number of places in a row on one side of the run line that make a signal; 8 when left out. */
  readonly runLength?: number;
}
