import type { OrientedPart } from './level-given-rate.js';
import { conditioned, givenRate } from './level-given-rate.js';
import type { WearPoint } from './wear-point.js';
import type { WearPrior } from './wear-model.js';
import type { WearPosterior } from './wear-posterior.js';

/** What an instrument is found to read too much, as far as the readings can tell. */
export interface InstrumentBias {
  readonly instrumentId: string;
  readonly points: number;
  /** in the characteristic's unit; add nothing to a reading because of it, the trend has done so */
  readonly bias: number;
  readonly u: number;
}

/**
 * Bias of each instrument of a part's points, given all of them, where there is more than one: a change of instrument is
 * carried by these terms and does not look like wear.
 *
 * @param part       oriented points
 * @param points     the same, as given
 * @param prior      the posterior was made with
 * @param posterior  possible rates
 * @param sign       1 for rising wear, -1 for falling
 * @returns one an instrument, in order of id; empty for a single instrument
 */
export function instrumentBias(
  part: OrientedPart,
  points: readonly WearPoint[],
  prior: WearPrior,
  posterior: WearPosterior,
  sign: 1 | -1,
): InstrumentBias[] {
  const ids = [...new Set(part.instruments)].sort();
  if (ids.length < 2) return [];
  return ids.map((instrumentId) => {
    const own = points.filter((point) => point.instrumentId === instrumentId);
    const biasU = Math.max(...own.map((point) => point.biasU));
    const sorted = [...points].sort((a, b) => a.km - b.km);
    const covariance = sorted.map((point) => (point.instrumentId === instrumentId ? biasU * point.biasU : 0));
    const states = posterior.nodes.map((node) => ({
      weight: node.weight,
      ...conditioned(
        givenRate(part, prior.start, node.rate, node.scale),
        { mean: 0, variance: biasU ** 2 },
        covariance,
      ),
    }));
    const mean = states.reduce((sum, state) => sum + state.weight * state.mean, 0);
    const variance = states.reduce(
      (sum, state) => sum + state.weight * (state.variance + (state.mean - mean) ** 2),
      0,
    );
    return { instrumentId, points: own.length, bias: sign * mean, u: Math.sqrt(variance) };
  });
}
