import { insufficientData, type InsufficientData } from '../descriptive/outcomes.js';
import { requireLevel } from '../inference/confidence-level.js';
import type { Interval } from '../inference/interval.js';
import { requireForecasts, type Forecast } from './forecast.js';
import { wilsonInterval } from './wilson-interval.js';

/** How the mean stated probability of a class stands to the interval of what was observed. */
export const reliabilityFindings = ['withinInterval', 'statedTooLow', 'statedTooHigh'] as const;
export type ReliabilityFinding = (typeof reliabilityFindings)[number];

export interface ReliabilityRow {
  /** Stated probabilities from `from` (included) to `to` (excluded, except in the last class). */
  readonly from: number;
  readonly to: number;
  readonly forecasts: number;
  readonly occurred: number;
  /** Mean stated probability, share observed, its Wilson interval and the finding; null in an empty class. */
  readonly observed: {
    readonly meanStated: number;
    readonly share: number;
    readonly interval: Interval;
    readonly finding: ReliabilityFinding;
  } | null;
}

export interface ReliabilityTable {
  readonly kind: 'estimated';
  readonly rows: readonly ReliabilityRow[];
  /** Weighted mean square of (mean stated − share): 0 is perfect. */
  readonly reliability: number;
  /** Weighted mean square of (share − base rate): the larger, the better forecasts tell cases apart. */
  readonly resolution: number;
  /** Base rate · (1 − base rate). */
  readonly uncertainty: number;
}

export interface ReliabilityOptions {
  /** Inner class borders, ascending, strictly between 0 and 1; 0.1, 0.2 … 0.9 when left out. */
  readonly borders?: readonly number[];
  /** Level of the intervals; 0.95 when left out. */
  readonly confidence?: number;
}

const TENTHS = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];

function rowOf(inside: readonly Forecast[], from: number, to: number, confidence: number): ReliabilityRow {
  const forecasts = inside.length;
  const occurred = inside.filter((forecast) => forecast.occurred).length;
  const observed = wilsonInterval({ successes: occurred, trials: forecasts }, confidence);
  if (observed.kind !== 'estimated') return { from, to, forecasts, occurred, observed: null };
  const meanStated = inside.reduce((sum, { probability }) => sum + probability, 0) / forecasts;
  const { lower, upper, proportion } = observed;
  const finding =
    meanStated < lower ? 'statedTooLow' : meanStated > upper ? 'statedTooHigh' : 'withinInterval';
  return {
    from,
    to,
    forecasts,
    occurred,
    observed: { meanStated, share: proportion, interval: { lower, upper }, finding },
  };
}

/**
 * Reliability table of probability forecasts: by class of stated probability, how often the event occurred.
 *
 * Reliability − resolution + uncertainty equals the Brier score when all forecasts of a class state the same
 * probability; otherwise the spread within classes is left out.
 *
 * @param forecasts  probabilities with outcomes, any order
 * @param options  class borders and level
 * @returns one row a class, empty classes included, and Murphy's three terms; `insufficientData` without a forecast.
 *   With many classes some intervals miss by chance: one in twenty at 0.95.
 * @throws RangeError on a probability outside [0, 1], borders out of order or a level outside (0, 1)
 * @source Murphy (1973), J. Appl. Meteor. 12:595–600; intervals as `wilsonInterval`
 * @oracle cases worked by hand in the spec
 * @example reliabilityTable([]) // => { kind: 'insufficientData', of: 'forecasts', needed: 1, got: 0 }
 */
export function reliabilityTable(
  forecasts: readonly Forecast[],
  options: ReliabilityOptions = {},
): ReliabilityTable | InsufficientData {
  const { borders = TENTHS, confidence = 0.95 } = options;
  requireForecasts(forecasts);
  requireLevel('confidence', confidence);
  const edges = [0, ...borders, 1];
  if (!edges.every((edge, i) => i === 0 || edge > edges[i - 1]!)) {
    throw new RangeError('class borders must ascend strictly between 0 and 1');
  }
  const n = forecasts.length;
  if (n === 0) return insufficientData('forecasts', 1, 0);
  const baseRate = forecasts.filter(({ occurred }) => occurred).length / n;
  const rows = edges.slice(1).map((to, i) => {
    const from = edges[i]!;
    const inside = forecasts.filter(({ probability: p }) => p >= from && (p < to || (to === 1 && p === 1)));
    return rowOf(inside, from, to, confidence);
  });
  const weighted = (square: (row: NonNullable<ReliabilityRow['observed']>) => number): number =>
    rows.reduce(
      (sum, row) => sum + (row.observed === null ? 0 : (row.forecasts / n) * square(row.observed)),
      0,
    );
  return {
    kind: 'estimated',
    rows,
    reliability: weighted(({ meanStated, share }) => (meanStated - share) ** 2),
    resolution: weighted(({ share }) => (share - baseRate) ** 2),
    uncertainty: baseRate * (1 - baseRate),
  };
}
