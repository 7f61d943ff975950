import { requireLevel } from '../descriptive/checked-values.js';
import { insufficientData, type InsufficientData, type NotConverged } from '../descriptive/outcomes.js';
import { normalQuantile } from '../distributions/normal.js';
import type { Interval } from '../inference/interval.js';
import { maximiseByNewton, type SecondOrder } from '../optimise/maximise-by-newton.js';
import { orderSample, startOf, type RecurrenceSample } from './recurrence-sample.js';

/** Process whose rate at age t is exp(logRate + slope · t), for each system. */
export interface LogLinearFit {
  readonly kind: 'estimated';
  readonly logRate: number;
  /** Per unit of age; above 0 the events come ever faster. */
  readonly slope: number;
  readonly slopeStandardError: number;
  /** Symmetric, by the observed information. */
  readonly slopeLimits: Interval;
  readonly logLikelihood: number;
  readonly events: number;
  readonly level: number;
}

export type LogLinearOutcome =
  | LogLinearFit
  /** All events at the first or all at the last age observed: the slope has no bound. */
  | { readonly kind: 'noMaximum'; readonly reason: 'allEventsAtOneEnd' }
  | InsufficientData
  | NotConverged;

/**
 * Log-linear (exponential-law) process by maximum likelihood, one or several systems with their spans.
 *
 * @param sample  events and spans as for meanCumulativeFunction; sizes are not used
 * @param level  two-sided, default 0.95
 * @returns the fit; `insufficientData` with no event; `noMaximum`; `notConverged`
 * @throws RangeError as meanCumulativeFunction does, or on a level outside (0, 1)
 * @complexity O(n log n) time, O(n) memory
 * @source Cox & Lewis (1966), The Statistical Analysis of Series of Events, 3.3; Ascher & Feingold (1984)
 * @oracle test/oracles/statistics-survival/generate.R
 * @example logLinearProcess({ eventUnits: [], eventAges: [], spanUnits: [0], spanEnds: [4] }).kind // => 'insufficientData'
 */
export function logLinearProcess(sample: RecurrenceSample, level = 0.95): LogLinearOutcome {
  requireLevel(level);
  const { firstAge, lastAge } = orderSample(sample);
  const { eventAges } = sample;
  const events = eventAges.length;
  if (events === 0) return insufficientData('events', 1, 0);
  // Ages are taken from the middle of the observed range in half ranges, so the slope is a pure number near 1.
  const middle = (firstAge + lastAge) / 2;
  const half = (lastAge - firstAge) / 2;
  const places = Float64Array.from(eventAges, (age) => (age - middle) / half);
  const total = places.reduce((sum, place) => sum + place, 0);
  if (!(half > 0) || Math.abs(total) >= events) return { kind: 'noMaximum', reason: 'allEventsAtOneEnd' };
  const spans = Array.from(
    sample.spanEnds,
    (end, i) => [(startOf(sample, i) - middle) / half, (end - middle) / half] as const,
  );
  const found = maximiseByNewton(profileOf(spans, total, events), [0]);
  if (found.kind !== 'found') return found;
  const steepness = found.at[0] ?? 0;
  const slope = steepness / half;
  const slopeStandardError = Math.sqrt(found.inverseCurvature[0]?.[0] ?? Infinity) / half;
  const reach = normalQuantile(0.5 + level / 2) * slopeStandardError;
  const mass =
    spans.reduce((sum, [start, end]) => sum + exponentialMoments(start, end, steepness)[0], 0) * half;
  const logRateAtMiddle = Math.log(events / mass);
  return {
    kind: 'estimated',
    logRate: logRateAtMiddle - slope * middle,
    slope,
    slopeStandardError,
    slopeLimits: { lower: slope - reach, upper: slope + reach },
    logLikelihood: events * (logRateAtMiddle - 1) + steepness * total,
    events,
    level,
  };
}

/** Log-likelihood in the steepness with the rate at its best: steepness · Σ places − n ln Σ ∫ exp(steepness · u) du. */
function profileOf(
  spans: readonly (readonly [number, number])[],
  total: number,
  events: number,
): (at: readonly number[]) => SecondOrder {
  return ([steepness = 0]) => {
    let [mass, first, second] = [0, 0, 0];
    for (const [start, end] of spans) {
      const moments = exponentialMoments(start, end, steepness);
      mass += moments[0];
      first += moments[1];
      second += moments[2];
    }
    const mean = first / mass;
    return {
      value: steepness * total - events * Math.log(mass),
      gradient: [total - events * mean],
      hessian: [[-events * (second / mass - mean * mean)]],
    };
  };
}

// Nodes and weights of the 10-point Gauss–Legendre rule; Abramowitz & Stegun (1964), table 25.4.
const NODES = [
  0.14887433898163122, 0.4333953941292472, 0.6794095682990244, 0.8650633666889845, 0.9739065285171717,
];
const WEIGHTS = [
  0.29552422471475287, 0.26926671930999635, 0.21908636251598204, 0.1494513491505806, 0.06667134430868814,
];

/**
 * ∫ uᵏ exp(s u) du over a span for k = 0, 1, 2. By quadrature on pieces over which the exponent changes by less than 4:
 * the closed forms cancel as s nears 0.
 */
function exponentialMoments(start: number, end: number, s: number): [number, number, number] {
  const pieces = Math.max(1, Math.min(1000, Math.ceil((Math.abs(s) * (end - start)) / 4)));
  const half = (end - start) / pieces / 2;
  const moments: [number, number, number] = [0, 0, 0];
  for (let piece = 0; piece < pieces; piece += 1) {
    const centre = start + half * (2 * piece + 1);
    for (let i = 0; i < NODES.length; i += 1) {
      for (const sign of [-1, 1]) {
        const u = centre + sign * half * NODES[i]!;
        const density = WEIGHTS[i]! * half * Math.exp(s * u);
        moments[0] += density;
        moments[1] += density * u;
        moments[2] += density * u * u;
      }
    }
  }
  return moments;
}
