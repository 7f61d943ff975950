import { findRoot, normalCdf } from '@endfloat/statistics';
import type { OrientedPart } from './level-given-rate.js';
import { givenRate, levelAt, workspaceFor } from './level-given-rate.js';
import type { WearPrior } from './wear-model.js';
import type { WearPosterior } from './wear-posterior.js';

/** Level now and wear to come, for each possible rate of a part. */
export interface LevelForecast {
  readonly nowKm: number;
  readonly branches: readonly {
    readonly weight: number;
    readonly rate: number;
    readonly scale: number;
    readonly mean: number;
    readonly variance: number;
  }[];
}

/** Km beyond which no distance is told. */
export const farthestKm = 1e7;
/** Km the search for a distance begins with; it goes on in steps of four. */
const nearestKm = 1000;

/**
 * Level of a part at a distance not below that of its last point, for each possible rate.
 *
 * @param part       oriented points
 * @param prior      the posterior was made with
 * @param posterior  possible rates
 * @param nowKm      km since fitting
 * @returns one branch a rate
 */
export function levelForecast(
  part: OrientedPart,
  prior: WearPrior,
  posterior: WearPosterior,
  nowKm: number,
): LevelForecast {
  const workspace = workspaceFor(part);
  const branches = posterior.nodes.map((node) => {
    const given = givenRate(part, prior.start, node.rate, node.scale, workspace);
    const { mean, variance } = levelAt(part, prior.start, given, nowKm);
    return { weight: node.weight, rate: node.rate, scale: node.scale, mean, variance };
  });
  return { nowKm, branches };
}

/** Mean and standard uncertainty of the level now. */
export function levelNow({ branches }: LevelForecast): { mean: number; u: number } {
  const mean = branches.reduce((sum, branch) => sum + branch.weight * branch.mean, 0);
  const square = branches.reduce(
    (sum, branch) => sum + branch.weight * (branch.variance + (branch.mean - mean) ** 2),
    0,
  );
  return { mean, u: Math.sqrt(square) };
}

/** Normal deviate of a quantity with a skewness, from its own deviate (Wilson and Hilferty's cube root). */
function deviateOf(standardised: number, skewness: number): number {
  if (skewness < 1e-6) return standardised;
  const inner = 1 + (skewness / 2) * standardised;
  return inner <= 0 ? -Infinity : (6 / skewness) * (Math.cbrt(inner) - 1) + skewness / 6;
}

/** Beyond this deviate a normal probability is 0 or 1 to nine digits. */
const certain = 6;

/** Probability of having reached one limit, by further distance. */
export type ReachedBy = (km: number) => number;

/**
 * Probability that the level has reached a limit after some further distance. Wear only ever adds, so reaching within d is
 * being there at d. For each rate the level then is a normal level now plus gamma wear to come: its mean, variance and
 * skewness are exact, its distribution that of a shifted gamma of these three; the probability never falls with d. Right
 * to nine digits.
 *
 * @param forecast  level now, by rate
 * @param limit     in the direction of wear
 * @returns probability by further distance, km, not negative
 * @source van Noortwijk (2009), Reliab. Eng. Syst. Saf. 94:2-21; Wilson & Hilferty (1931), PNAS 17:684-688
 */
export function reachedBy({ branches }: LevelForecast, limit: number): ReachedBy {
  const deviatesNow = branches.map(({ mean, variance }) => (mean - limit) / Math.sqrt(variance));
  return (km) => {
    let total = 0;
    for (let i = 0; i < branches.length; i += 1) {
      const { weight, rate, scale, mean, variance } = branches[i]!;
      let z = deviatesNow[i]!;
      if (z < certain) {
        const wear = rate * km;
        const doubt = variance + scale * wear;
        const deviation = Math.sqrt(doubt);
        const skewness = (2 * scale * scale * wear) / (doubt * deviation);
        z = Math.max(z, -deviateOf((limit - mean - wear) / deviation, skewness));
      }
      if (z > certain) total += weight;
      else if (z > -certain) total += weight * normalCdf(z);
    }
    return Math.min(1, total);
  };
}

/**
 * Further distances by which the limit is reached with given probabilities. What was worked out for one is used to
 * enclose the next.
 *
 * @param reached        of `reachedBy`
 * @param probabilities  strictly between 0 and 1, any order
 * @returns km from now, one a probability; 0 where it is reached already with that probability; null beyond `farthestKm`
 */
export function distanceQuantiles(
  reached: ReachedBy,
  probabilities: readonly number[],
): readonly (number | null)[] {
  const known = new Map<number, number>();
  const at = (km: number): number => {
    const probability = known.get(km) ?? reached(km);
    known.set(km, probability);
    return probability;
  };
  return probabilities.map((probability) => distanceQuantile(at, known, probability));
}

function distanceQuantile(
  at: ReachedBy,
  known: ReadonlyMap<number, number>,
  probability: number,
): number | null {
  if (at(0) >= probability) return 0;
  let below = 0;
  let above = Infinity;
  for (const [km, reached] of known) {
    if (reached < probability) below = Math.max(below, km);
    else above = Math.min(above, km);
  }
  if (above === Infinity) {
    above = Math.min(farthestKm, Math.max(nearestKm, 4 * below));
    while (at(above) < probability) {
      if (above === farthestKm) return null;
      [below, above] = [above, Math.min(farthestKm, 4 * above)];
    }
  }
  const root = findRoot((km) => at(km) - probability, below, above, { tolerance: 1e-6 * above });
  if (root.kind !== 'found') throw new RangeError(`distance to the limit: ${root.kind}`);
  return root.root;
}
