import { requireLevel } from '../descriptive/checked-values.js';
import { insufficientData, type InsufficientData, type NotConverged } from '../descriptive/outcomes.js';
import { normalQuantile } from '../distributions/normal.js';
import { maximiseByNewton, type SecondOrder } from '../optimise/maximise-by-newton.js';
import type { Interval } from '../inference/interval.js';
import { requireGroupedCounts, type GroupedCounts } from './process-spans.js';

export interface GroupedPowerLawFit {
  readonly kind: 'estimated';
  readonly shape: number;
  /** Symmetric on the logarithm, by the observed information. */
  readonly shapeLimits: Interval;
  readonly rate: number;
  readonly logLikelihood: number;
  readonly events: number;
  readonly level: number;
}

export type GroupedPowerLawOutcome =
  | GroupedPowerLawFit
  /** All events lie in the intervals that reach furthest, or all in those that start at 0: the shape has no bound. */
  | { readonly kind: 'noMaximum'; readonly reason: 'shapeUnbounded' | 'shapeVanishing' }
  | InsufficientData
  | NotConverged;

/**
 * Power-law process from counts in intervals of age, of one or of several like systems: the counts are Poisson with
 * mean rate · (end^shape − start^shape). The rate is events / Σ (end^shape − start^shape); the shape is found by Newton.
 *
 * @param grouped  intervals with counts, any order; intervals without events count
 * @param level  two-sided, default 0.95
 * @returns the fit; `insufficientData` with no event, or with fewer than two different intervals, which fix no shape;
 *   `noMaximum` where all events lie in the last intervals or all in those that start at 0; `notConverged`, also where
 *   the best shape would lie below 0
 * @throws RangeError on unlike lengths, a start below 0, an interval that does not end after its start, counts not whole
 *   or below 0, a level outside (0, 1)
 * @complexity O(n) a step
 * @source MIL-HDBK-189 (1981), appendix C, grouped data, for one system; Poisson likelihood for several
 * @oracle hand-solved cases in the spec
 * @example groupedPowerLawProcess({ starts: [], ends: [], counts: [] }).kind // => 'insufficientData'
 */
export function groupedPowerLawProcess(grouped: GroupedCounts, level = 0.95): GroupedPowerLawOutcome {
  requireLevel(level);
  requireGroupedCounts(grouped);
  let events = 0;
  for (let i = 0; i < grouped.counts.length; i += 1) events += grouped.counts[i]!;
  if (events === 0) return insufficientData('events', 1, 0);
  const distinct = new Set(Array.from(grouped.ends, (end, i) => `${grouped.starts[i]}–${end}`)).size;
  if (distinct < 2) return insufficientData('intervals', 2, distinct);
  const found = maximiseByNewton(profileOf(grouped, events), [0]);
  if (found.kind !== 'found') return found;
  const logShape = found.at[0] ?? 0;
  const shape = Math.exp(logShape);
  const variance = found.inverseCurvature[0]?.[0] ?? Infinity;
  if (variance > 100) {
    return { kind: 'noMaximum', reason: logShape > 0 ? 'shapeUnbounded' : 'shapeVanishing' };
  }
  const reach = normalQuantile(0.5 + level / 2) * Math.sqrt(variance);
  const growth = Array.from(grouped.ends).reduce(
    (sum, end, i) => sum + end ** shape - grouped.starts[i]! ** shape,
    0,
  );
  return {
    kind: 'estimated',
    shape,
    shapeLimits: { lower: shape * Math.exp(-reach), upper: shape * Math.exp(reach) },
    rate: events / growth,
    logLikelihood: found.value,
    events,
    level,
  };
}

/**
 * Log-likelihood in ln shape with the rate at its best, up to the factorials of the counts: Σ nᵢ ln gᵢ − N ln Σ gᵢ plus
 * N ln N − N, where gᵢ = endᵢ^shape − startᵢ^shape. Ages are relative to the greatest, which leaves it unchanged.
 */
function profileOf(
  { starts, ends, counts }: GroupedCounts,
  events: number,
): (at: readonly number[]) => SecondOrder {
  let greatest = 0;
  for (let i = 0; i < ends.length; i += 1) greatest = Math.max(greatest, ends[i]!);
  return ([logShape = 0]) => {
    const shape = Math.exp(logShape);
    let value = events * Math.log(events) - events;
    let first = 0;
    let second = 0;
    const total = [0, 0, 0];
    for (let i = 0; i < ends.length; i += 1) {
      const [g, g1, g2] = growthOf(starts[i]! / greatest, ends[i]! / greatest, shape);
      total[0]! += g;
      total[1]! += g1;
      total[2]! += g2;
      const count = counts[i]!;
      if (count === 0) continue;
      value += count * Math.log(g);
      first += (count * g1) / g;
      second += count * (g2 / g - (g1 / g) ** 2);
    }
    const [sum = 0, sum1 = 0, sum2 = 0] = total;
    value -= events * Math.log(sum);
    first -= (events * sum1) / sum;
    second -= events * (sum2 / sum - (sum1 / sum) ** 2);
    return { value, gradient: [shape * first], hessian: [[shape * shape * second + shape * first]] };
  };
}

/** end^shape − start^shape with its first two derivatives in the shape. */
function growthOf(start: number, end: number, shape: number): [number, number, number] {
  const upper = powerTerms(end, shape);
  const lower = powerTerms(start, shape);
  return [upper[0] - lower[0], upper[1] - lower[1], upper[2] - lower[2]];
}

function powerTerms(age: number, shape: number): [number, number, number] {
  if (age === 0) return [0, 0, 0];
  const log = Math.log(age);
  const power = age ** shape;
  return [power, power * log, power * log * log];
}
