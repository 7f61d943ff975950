import type { OrientedPart } from './level-given-rate.js';
import type { WearPrior } from './wear-model.js';

/** Unevenness of wear on the way to the limit (standard deviation over mean) where nothing is known; judgement. */
const unevennesses = [
  { value: 0.03, weight: 0.25 },
  { value: 0.1, weight: 0.5 },
  { value: 0.3, weight: 0.25 },
] as const;

/**
 * Prior of a part that borrows from no other: start anywhere, every rate above 0 equally likely up to ten times the
 * steepest the points could show, unevenness as above.
 *
 * @param part   oriented points, at two distances at least
 * @param limit  in the direction of wear
 */
export function ownPrior(part: OrientedPart, limit: number): WearPrior {
  const doubt = Math.sqrt(
    Math.max(...part.variance.map((own, index) => own + part.bias[index * (part.km.length + 1)]!)),
  );
  const spread = Math.max(...part.level) - Math.min(...part.level) + 6 * doubt;
  const longest = part.km.at(-1)! - part.km[0]!;
  const way = Math.max(Math.abs(limit - part.level[0]!), doubt);
  const rate = { kind: 'flat', greatest: (10 * spread) / longest } as const;
  return {
    start: { mean: part.level[0]!, sd: 100 * spread },
    variants: unevennesses.map(({ value, weight }) => ({ rate, scale: value ** 2 * way, weight })),
    weighing: 'byReadings',
  };
}
