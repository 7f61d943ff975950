import type { FlipPoint, FlipQuantity, ReportedValue } from '../terms/assessment.js';

/** Costs of the admissible options at one value of the varied input. */
type CostsAt = (value: number) => ReadonlyMap<string, number>;

/** One input that is varied alone. */
export interface Variation {
  readonly quantity: FlipQuantity;
  readonly optionId: string | null;
  readonly now: number;
  readonly lower: number;
  readonly upper: number;
  readonly tolerance: number;
  /** distance from now at which the varied option would be level if only this occasion's cost changed; null where unknown */
  readonly levelAfter: number | null;
  readonly say: (value: number) => ReportedValue;
  readonly costs: CostsAt;
}

/** The cheapest option other than the best, and how much dearer it is. */
interface Rival {
  readonly id: string;
  readonly gap: number;
}

/** @returns the cheapest option other than `bestId`; infinitely dearer where there is none */
export function rival(costs: ReadonlyMap<string, number>, bestId: string): Rival {
  const own = costs.get(bestId)!;
  let id = '';
  let gap = Infinity;
  for (const [optionId, cost] of costs) {
    if (optionId !== bestId && cost - own < gap) {
      id = optionId;
      gap = cost - own;
    }
  }
  return { id, gap };
}

/** Money at which two options are level; less than a currency can tell. */
const LEVEL = 0.002;
const MOST_TRIES = 60;

interface Bracket {
  readonly from: number;
  readonly gapFrom: number;
  readonly to: number;
  readonly beyond: Rival;
}

/** The weight by which the gap of an end that stays is lessened when the other moves from `moved` to `gap`. */
const lessened = (gap: number, moved: number): number => (gap < moved ? 1 - gap / moved : 0.5);

/**
 * Where the gap goes from positive to negative, and which option is level there. Costs are straight lines in prices, times
 * and chances between changes of later decisions, so that the straight line through the ends hits soon; an end that stays
 * twice counts less and less. Ends where two tries lie within the tolerance.
 *
 * @source Anderson & Bjorck (1973), BIT 13:253-264; every fourth try halves
 */
function levelPoint(
  rivalAt: (value: number) => Rival,
  bracket: Bracket,
  tolerance: number,
): { readonly at: number; readonly id: string } {
  let { from, gapFrom, to, beyond } = bracket;
  let gapTo = beyond.gap;
  let moved: 'from' | 'to' | null = null;
  let value = from;
  for (let tries = 0; tries < MOST_TRIES; tries += 1) {
    const before = value;
    const share = tries % 4 === 3 ? 0.5 : gapFrom / (gapFrom - gapTo);
    value = from + share * (to - from);
    if (tries > 0 && Math.abs(value - before) <= tolerance) break;
    const there = rivalAt(value);
    if (Math.abs(there.gap) <= LEVEL) return { at: value, id: there.id };
    if (there.gap > 0) {
      if (moved === 'from') gapTo *= lessened(there.gap, gapFrom);
      [from, gapFrom, moved] = [value, there.gap, 'from'];
    } else {
      if (moved === 'to') gapFrom *= lessened(-there.gap, -gapTo);
      [to, gapTo, beyond, moved] = [value, there.gap, there, 'to'];
    }
  }
  return { at: value, id: beyond.id };
}

/** Values at which to look, the end last: evenly, and where the flip would lie if nothing later changed. */
function triesTowards({ now, levelAfter }: Variation, end: number, scan: number): readonly number[] {
  const even = Array.from({ length: scan }, (_, k) =>
    k === scan - 1 ? end : now + ((end - now) * (k + 1)) / scan,
  );
  return levelAfter !== null && levelAfter < Math.abs(end - now)
    ? [now + Math.sign(end - now) * levelAfter, ...even]
    : even;
}

/** First value from `now` towards `end` at which another option draws level; null where none does. */
function flipTowards(
  variation: Variation,
  bestId: string,
  gapNow: number,
  end: number,
  scan: number,
): FlipPoint | null {
  const { now, costs, tolerance, say, quantity, optionId } = variation;
  const rivalAt = (value: number) => rival(costs(value), bestId);
  let from = now;
  let gapFrom = gapNow;
  for (const to of triesTowards(variation, end, scan)) {
    const beyond = rivalAt(to);
    if (beyond.gap < 0) {
      const { at, id } =
        gapFrom <= 0
          ? { at: from, id: beyond.id }
          : levelPoint(rivalAt, { from, gapFrom, to, beyond }, tolerance);
      return { quantity, optionId, now: say(now), kind: 'flipsAt', at: say(at), toOptionId: id };
    }
    from = to;
    gapFrom = beyond.gap;
  }
  return null;
}

/**
 * Where one varied input makes another option the cheapest, above and below its present value; where neither end does, the
 * range that was searched.
 *
 * @param variation  the input and its range
 * @param bestId     the cheapest option now
 * @param gapNow     by how much the next one is dearer now
 * @param scan       looks on the way to each end; more than one where costs may turn and turn back
 * @returns flip points; none where the input has no range
 */
export function flipsOf(
  variation: Variation,
  bestId: string,
  gapNow: number,
  scan = 1,
): readonly FlipPoint[] {
  const { now, lower, upper, say, quantity, optionId } = variation;
  const ends = [lower, upper].filter((end) => end !== now);
  if (ends.length === 0) return [];
  const flips = ends.flatMap((end) => flipTowards(variation, bestId, gapNow, end, scan) ?? []);
  if (flips.length > 0) return flips;
  return [{ quantity, optionId, now: say(now), kind: 'noFlipWithin', lower: say(lower), upper: say(upper) }];
}
