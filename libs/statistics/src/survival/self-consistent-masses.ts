import type { NotConverged } from '../descriptive/outcomes.js';
import type { CoveredRange } from './innermost-intervals.js';

export type MassesOutcome =
  | {
      readonly kind: 'found';
      readonly masses: Float64Array;
      readonly logLikelihood: number;
      readonly iterations: number;
    }
  | NotConverged;

const MAX_ITERATIONS = 10_000;
/** Greatest departure from the Kuhn–Tucker conditions, as a share of the units. */
const TOLERANCE = 1e-10;
/** A mass up to this is taken as 0; a row that only it covers would need more than 1e8 units. */
const NEGLIGIBLE = 1e-8;

/**
 * Masses that maximise Σ weight · ln(mass covered). At the maximum the slope of every mass, Σ weight / covered over the
 * rows that cover it, is `units` where the mass is positive and no more where it is 0.
 */
export function selfConsistentMasses(
  ranges: readonly CoveredRange[],
  size: number,
  units: number,
): MassesOutcome {
  let masses = new Float64Array(size).fill(1 / size);
  for (let iterations = 0; iterations < MAX_ITERATIONS; iterations += 1) {
    const here = slopesOf(ranges, masses, units);
    if (isMaximum(masses, here.slopes)) {
      const cleared = withoutNegligible(masses);
      return {
        kind: 'found',
        masses: cleared,
        logLikelihood: slopesOf(ranges, cleared, units).value,
        iterations,
      };
    }
    masses = pooledStep(ranges, stepped(masses, here.slopes), units);
  }
  return {
    kind: 'notConverged',
    iterations: MAX_ITERATIONS,
    reason: 'the masses were still moving when the steps ran out',
  };
}

interface Slopes {
  readonly value: number;
  /** Slope of each mass as a share of the units: 1 where the mass is at its best. */
  readonly slopes: Float64Array;
}

function slopesOf(ranges: readonly CoveredRange[], masses: Float64Array, units: number): Slopes {
  const size = masses.length;
  const before = new Float64Array(size + 1);
  for (let i = 0; i < size; i += 1) before[i + 1] = before[i]! + masses[i]!;
  const changes = new Float64Array(size + 1);
  let value = 0;
  for (const { first, last, weight } of ranges) {
    // A single interval is read directly: a difference of sums would lose a small mass.
    const covered = first === last ? masses[first]! : before[last + 1]! - before[first]!;
    value += weight * Math.log(covered);
    const share = weight / covered / units;
    changes[first]! += share;
    changes[last + 1]! -= share;
  }
  const slopes = new Float64Array(size);
  let slope = 0;
  for (let i = 0; i < size; i += 1) {
    slope += changes[i]!;
    slopes[i] = slope;
  }
  return { value: Number.isNaN(value) ? -Infinity : value, slopes };
}

function isMaximum(masses: Float64Array, slopes: Float64Array): boolean {
  return masses.every((mass, i) => {
    const excess = slopes[i]! - 1;
    return excess <= TOLERANCE && (excess >= -TOLERANCE || mass <= NEGLIGIBLE);
  });
}

/** A mass this small stands for 0, also where its slope does not yet say so: the difference is beyond the tolerance. */
function withoutNegligible(masses: Float64Array): Float64Array {
  const kept = masses.map((mass) => (mass <= NEGLIGIBLE ? 0 : mass));
  const total = kept.reduce((sum, mass) => sum + mass, 0);
  return kept.map((mass) => mass / total);
}

const stepped = (masses: Float64Array, slopes: Float64Array): Float64Array<ArrayBuffer> =>
  Float64Array.from(masses, (mass, i) => mass * slopes[i]!);

/**
 * One step of the iterative convex minorant algorithm: Newton's step for the cumulated masses with the diagonal of the
 * second derivatives, made rising by pooling, then halved until it climbs. Unlike self-consistency it can take a mass to
 * exactly 0 and back.
 */
function pooledStep(
  ranges: readonly CoveredRange[],
  masses: Float64Array,
  units: number,
): Float64Array<ArrayBuffer> {
  const size = masses.length - 1;
  const cumulated = new Float64Array(size);
  for (let i = 0, sum = 0; i < size; i += 1) {
    sum += masses[i]!;
    cumulated[i] = sum;
  }
  const gradient = new Float64Array(size);
  const curvature = new Float64Array(size);
  for (const { first, last, weight } of ranges) {
    const covered = (last < size ? cumulated[last]! : 1) - (first > 0 ? cumulated[first - 1]! : 0);
    const share = weight / covered;
    for (const [place, sign] of [
      [last, 1],
      [first - 1, -1],
    ] as const) {
      if (place < 0 || place >= size) continue;
      gradient[place]! += sign * share;
      curvature[place]! += share / covered;
    }
  }
  const wanted = cumulated.map((value, i) => value + gradient[i]! / curvature[i]!);
  const rising = pooled(wanted, curvature).map((value) => Math.min(1, Math.max(0, value)));
  const before = slopesOf(ranges, masses, units).value;
  for (let share = 1; share > 1e-6; share /= 2) {
    const tried = cumulated.map((value, i) => value + share * (rising[i]! - value));
    const next = Float64Array.from(masses, (_, i) => (tried[i] ?? 1) - (i > 0 ? tried[i - 1]! : 0));
    if (slopesOf(ranges, next, units).value >= before) return next;
  }
  return Float64Array.from(masses);
}

/** Weighted least-squares fit that never falls, by pooling neighbours that do. */
function pooled(values: Float64Array, weights: Float64Array): Float64Array {
  const means: number[] = [];
  const totals: number[] = [];
  const counts: number[] = [];
  values.forEach((value, i) => {
    let [mean, total, count] = [value, weights[i]!, 1];
    while (means.length > 0 && means.at(-1)! >= mean) {
      const [lastMean, lastTotal] = [means.pop()!, totals.pop()!];
      mean = (mean * total + lastMean * lastTotal) / (total + lastTotal);
      total += lastTotal;
      count += counts.pop()!;
    }
    means.push(mean);
    totals.push(total);
    counts.push(count);
  });
  return Float64Array.from(means.flatMap((mean, block) => new Array<number>(counts[block]!).fill(mean)));
}
