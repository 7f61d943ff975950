import type { Horizon } from './probability-of-reaching.js';
import { probabilityOfReaching } from './probability-of-reaching.js';
import type { WearModel } from './wear-model.js';
import type { WearQuestion, WearTrend, WearTrendOutcome } from './wear-trend.js';
import { wearTrend } from './wear-trend.js';

/** A part of a fleet and how far it goes before it is seen again. */
export interface WatchedPart extends Omit<WearQuestion, 'model'> {
  readonly partId: string;
  readonly untilNextVisit: Horizon;
}

export type WatchedWear =
  | {
      readonly kind: 'estimated';
      readonly partId: string;
      /** probability that the limit is reached before the next visit */
      readonly probability: number;
      readonly trend: WearTrend;
    }
  | {
      readonly kind: 'notEstimated';
      readonly partId: string;
      readonly because: Exclude<WearTrendOutcome, WearTrend>;
    };

/**
 * Which parts will reach their limit before their next visit: the likeliest first, then the nearer median, then by id;
 * parts without an answer at the end, with the reason.
 *
 * @param parts  any order
 * @param model  of their fleet; null: each part alone
 * @returns one entry a part
 * @throws RangeError as `wearTrend` and `probabilityOfReaching`
 * @source order: judgement; figures as `wearTrend`
 */
export function wearWatchList(parts: readonly WatchedPart[], model: WearModel | null): WatchedWear[] {
  return parts
    .map((part): WatchedWear => {
      const trend = wearTrend({ ...part, model });
      if (trend.kind !== 'estimated') return { kind: 'notEstimated', partId: part.partId, because: trend };
      const probability = probabilityOfReaching(trend, part.untilNextVisit);
      return { kind: 'estimated', partId: part.partId, probability, trend };
    })
    .sort((a, b) => {
      if (a.kind === 'estimated' && b.kind === 'estimated') {
        const [first, second] = [a, b].map(({ trend }) => trend.distanceToLimit.median ?? Infinity) as [
          number,
          number,
        ];
        const byMedian = first === second ? 0 : first - second;
        return b.probability - a.probability || byMedian || (a.partId < b.partId ? -1 : 1);
      }
      if (a.kind !== b.kind) return a.kind === 'estimated' ? -1 : 1;
      return a.partId < b.partId ? -1 : 1;
    });
}
