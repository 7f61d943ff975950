import { instantOf, millisecondsPerDay } from '../time/instant-of.js';

/** What a vehicle stands in the workshop for. */
export const downtimeReasons = [
  'inWork',
  'waitingForConsent',
  'waitingForPart',
  'waitingForBay',
  'waitingForRelease',
] as const;
export type DowntimeReason = (typeof downtimeReasons)[number];

/** One visit; instants in ISO 8601. */
export interface Visit {
  readonly openedAt: string;
  /** null: still here */
  readonly leftAt: string | null;
  /** from when on it stood for which reason; before the first it was in work */
  readonly changes: readonly { readonly at: string; readonly reason: DowntimeReason }[];
}

export interface Downtime {
  readonly days: number;
  readonly byReason: Readonly<Record<DowntimeReason, number>>;
  readonly visits: number;
}

/**
 * Days a vehicle stood in the workshop within a time, by reason. Where two visits overlap the time counts once, for the
 * one that was opened first: a vehicle stands in one place. A reason given before a visit holds from its beginning.
 *
 * @param visits  of one vehicle, any order
 * @param from    beginning of the time
 * @param until   its end; visits that have not ended run to it
 * @returns days in all and by reason, fractions kept, 0 without a visit, and how many visits reach into the time
 * @throws RangeError on a text that is no instant, or an end before the beginning
 * @source definition
 * @oracle worked by hand in the spec
 * @example downtimeOf([{ openedAt: '2030-01-01T00:00:00Z', leftAt: '2030-01-03T00:00:00Z', changes: [] }], '2030-01-01T00:00:00Z', '2030-02-01T00:00:00Z').days // => 2
 */
export function downtimeOf(visits: readonly Visit[], from: string, until: string): Downtime {
  const [start, end] = [instantOf(from), instantOf(until)];
  if (end < start) throw new RangeError('the time must not end before it begins');
  const byReason = Object.fromEntries(downtimeReasons.map((reason) => [reason, 0])) as Record<
    DowntimeReason,
    number
  >;
  let covered = start;
  let counted = 0;
  for (const visit of [...visits].sort((a, b) => instantOf(a.openedAt) - instantOf(b.openedAt))) {
    const [opened, left] = [instantOf(visit.openedAt), visit.leftAt === null ? end : instantOf(visit.leftAt)];
    if (opened < end && left > start) counted += 1;
    const changes = [...visit.changes].sort((a, b) => instantOf(a.at) - instantOf(b.at));
    const steps = [
      { at: opened, reason: 'inWork' as const },
      ...changes.map(({ at, reason }) => ({ at: instantOf(at), reason })),
    ];
    for (const [place, { at, reason }] of steps.entries()) {
      const next = Math.min(steps[place + 1]?.at ?? left, left, end);
      const begins = Math.max(at, opened, covered);
      if (next > begins) byReason[reason] += (next - begins) / millisecondsPerDay;
    }
    covered = Math.max(covered, Math.min(left, end));
  }
  const days = downtimeReasons.reduce((sum, reason) => sum + byReason[reason], 0);
  return { days, byReason, visits: counted };
}
