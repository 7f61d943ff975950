/** An order that came: what was promised, if anything was, and what it took. */
export interface DeliveredOrder {
  readonly promisedDays: number | null;
  readonly actualDays: number;
}

/** One lead time that occurs, and how often. */
export interface LeadTimeCase {
  readonly days: number;
  readonly weight: number;
}

/** What lead times are reckoned from. */
export const leadTimeSources = ['delivered', 'promisedOnly', 'given'] as const;
/** A source of `leadTimeSources`. */
export type LeadTimeSource = (typeof leadTimeSources)[number];

/** Lead times as they occur, the shortest first; weights add up to 1. */
export type LeadTimes =
  | {
      readonly kind: 'known';
      readonly source: LeadTimeSource;
      readonly cases: readonly LeadTimeCase[];
      readonly meanDays: number;
      /** not exceeded by nine in ten */
      readonly ninetiethDays: number;
      readonly deliveries: number;
    }
  | { readonly kind: 'unknown' };

function requireDays(days: number): void {
  if (!(days >= 0) || days === Infinity) throw new RangeError(`days must be 0 or more, got ${days}`);
}

/**
 * Lead time of an order placed today, from how the supplier has delivered before. A promise is stretched by each slip of
 * the past, (actual + 1) / (promised + 1); without a promise, or where nothing delivered had one, the delivered days
 * themselves occur again. Each delivery counts the same: no curve is laid through them, so few deliveries say little.
 *
 * @param promisedDays  of the order in question; null: nothing is promised
 * @param delivered     orders that came
 * @returns lead times rounded to whole days with their weights, and how many deliveries they rest on; with a promise
 *   and no delivery the promise alone (`promisedOnly`); `unknown` with neither
 * @throws RangeError on days that are negative or not finite
 * @source empirical distribution; the ratio of days + 1 admits delivery on the same day. Judgement: slips are taken to be in
 *   proportion to the promise
 * @example leadTimesOf(4, [{ promisedDays: 4, actualDays: 9 }]).meanDays // => 9
 */
export function leadTimesOf(promisedDays: number | null, delivered: readonly DeliveredOrder[]): LeadTimes {
  if (promisedDays !== null) requireDays(promisedDays);
  for (const order of delivered) {
    requireDays(order.actualDays);
    if (order.promisedDays !== null) requireDays(order.promisedDays);
  }
  const slips = delivered.flatMap(({ promisedDays: promised, actualDays }) =>
    promised === null ? [] : [(actualDays + 1) / (promised + 1)],
  );
  if (promisedDays !== null && slips.length > 0)
    return knownTimes(
      'delivered',
      slips.map((slip) => (promisedDays + 1) * slip - 1),
    );
  if (delivered.length > 0)
    return knownTimes(
      'delivered',
      delivered.map(({ actualDays }) => actualDays),
    );
  return promisedDays === null
    ? { kind: 'unknown' }
    : { ...knownTimes('promisedOnly', [promisedDays]), deliveries: 0 };
}

/**
 * A lead time somebody names, for asking what if.
 *
 * @param days  0 or more
 * @returns that lead time alone, rounded to whole days
 * @throws RangeError on days that are negative or not finite
 * @source definition
 * @example givenLeadTime(18).meanDays // => 18
 */
export function givenLeadTime(days: number): LeadTimes & { readonly kind: 'known' } {
  requireDays(days);
  return { ...knownTimes('given', [days]), deliveries: 0 };
}

function knownTimes(source: LeadTimeSource, days: readonly number[]): LeadTimes & { readonly kind: 'known' } {
  const counts = new Map<number, number>();
  for (const each of days) {
    const whole = Math.max(0, Math.round(each));
    counts.set(whole, (counts.get(whole) ?? 0) + 1);
  }
  const cases = [...counts]
    .map(([each, count]) => ({ days: each, weight: count / days.length }))
    .sort((a, b) => a.days - b.days);
  let reached = 0;
  const ninetieth = cases.find(({ weight }) => (reached += weight) >= 0.9 - 1e-12) ?? cases.at(-1);
  return {
    kind: 'known',
    source,
    cases,
    meanDays: cases.reduce((sum, { days: each, weight }) => sum + each * weight, 0),
    ninetiethDays: ninetieth?.days ?? 0,
    deliveries: days.length,
  };
}
