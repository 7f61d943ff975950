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

/**
 * Probability that the level has reached a limit after some further distance. Wear only ever adds, so reaching within d is
 * being there at d. For each rate the level then is a normal level now plus gamma wear to come: its mean, variance and
 * skewness are exact, its distribution that of a shifted gamma of these three; the probability never falls with d.
 *
 * @param forecast  level now, by rate
 * @param limit     in the direction of wear
 * @param km        further distance, not negative
 * @returns probability
 * @source van Noortwijk (2009), Reliab. Eng. Syst. Saf. 94:2-21; Wilson & Hilferty (1931), PNAS 17:684-688
 */
export function reachedWithin(forecast: LevelForecast, limit: number, km: number): number {
  let total = 0;
  for (const { weight, rate, scale, mean, variance } of forecast.branches) {
    const wear = rate * km;
    const doubt = variance + scale * wear;
    const skewness = (2 * scale * scale * wear) / (doubt * Math.sqrt(doubt));
    const now = (mean - limit) / Math.sqrt(variance);
    const then = -deviateOf((limit - mean - wear) / Math.sqrt(doubt), skewness);
    const z = Math.max(now, then);
    if (z > -8) total += weight * (z > 8 ? 1 : normalCdf(z));
  }
  return Math.min(1, total);
}

/**
 * Further distance by which the limit is reached with a probability.
 *
 * @param forecast     level now, by rate
 * @param limit        in the direction of wear
 * @param probability  strictly between 0 and 1
 * @returns km from now; 0 where it is reached already with that probability; null beyond `farthestKm`
 */
export function distanceQuantile(forecast: LevelForecast, limit: number, probability: number): number | null {
  const missing = (km: number) => reachedWithin(forecast, limit, km) - probability;
  if (missing(0) >= 0) return 0;
  if (missing(farthestKm) < 0) return null;
  let [below, above] = [0, 1000];
  while (above < farthestKm && missing(above) < 0) [below, above] = [above, Math.min(farthestKm, 4 * above)];
  const root = findRoot(missing, below, above, { tolerance: 1e-6 * above });
  if (root.kind !== 'found') throw new RangeError(`distance to the limit: ${root.kind}`);
  return root.root;
}
