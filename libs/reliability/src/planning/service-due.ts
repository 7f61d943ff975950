/** How often something is to be done: whichever of the two is reached first. */
export interface ServiceInterval {
  readonly days: number | null;
  readonly km: number | null;
}

/** What is known of a vehicle and of when this was last done; days count from one day common to all. */
export interface ServiceState {
  readonly today: number;
  /** present distance; null where it cannot be relied on */
  readonly nowKm: number | null;
  readonly kmPerDay: number | null;
  /** null: never, as far as anybody knows */
  readonly last: { readonly day: number; readonly km: number | null } | null;
  /** first use of the vehicle, from which a service never done is counted; null: unknown */
  readonly firstUse: number | null;
}

export const dueStandings = ['overdue', 'dueSoon', 'later', 'unknown'] as const;
export type DueStanding = (typeof dueStandings)[number];
export const dueBases = ['lastDone', 'firstUse', 'none'] as const;
export type DueBasis = (typeof dueBases)[number];

export interface ServiceDue {
  readonly standing: DueStanding;
  readonly basis: DueBasis;
  readonly dueDay: number | null;
  readonly dueKm: number | null;
  /** days until it is due by date, below 0 when past */
  readonly daysLeft: number | null;
  /** km until it is due by distance, below 0 when past */
  readonly kmLeft: number | null;
  /** day on which the first of the two is expected to be reached; distance by the yearly distance */
  readonly expectedDay: number | null;
  readonly reachedFirst: 'date' | 'distance' | null;
  /** the distance does not count: it, or what it was then, is not known */
  readonly isDistanceUnknown: boolean;
}

const requireFiniteOrNull = (name: string, value: number | null): void => {
  if (value !== null && !Number.isFinite(value)) throw new RangeError(`${name} must be finite, got ${value}`);
};

function requirePositive(name: string, value: number | null): void {
  requireFiniteOrNull(name, value);
  if (value !== null && !(value > 0)) throw new RangeError(`${name} must be above 0, got ${value}`);
}

/**
 * When a service is due by days or by distance, whichever comes first. What was never done counts from first use, at 0 km.
 * Where the distance is not known the date alone counts; without either it is not known whether it is due. With 0 days
 * or km left it is overdue; due soon also where its distance is expected within the days of `soonWithin`.
 *
 * @param interval   days, km or both, above 0
 * @param state      of the vehicle, and when it was last done
 * @param soonWithin days and km before it is due from which on it is due soon
 * @returns standing with what it follows from
 * @throws RangeError on an interval of neither or not above 0, or a number that is not finite
 * @source definition: the earlier of date and distance; distance falls back to days where it is unreliable
 * @oracle worked by hand in the spec
 * @example serviceDue({ days: 365, km: null }, { today: 400, nowKm: null, kmPerDay: null, last: { day: 0, km: null }, firstUse: null }, { days: 30, km: 1000 }).standing // => 'overdue'
 */
export function serviceDue(
  interval: ServiceInterval,
  state: ServiceState,
  soonWithin: { readonly days: number; readonly km: number },
): ServiceDue {
  requireKnown(interval, state);
  requireFiniteOrNull('days of soon', soonWithin.days);
  requireFiniteOrNull('km of soon', soonWithin.km);
  const { today, nowKm, kmPerDay, last } = state;
  const { dueDay, dueKm, basis } = duePoints(interval, state);
  const kmLeft = dueKm === null || nowKm === null ? null : dueKm - nowKm;
  const daysLeft = dueDay === null ? null : dueDay - today;
  const dayOfKm = expectedDayOf(kmLeft, kmPerDay, today);
  const byDistance = dayOfKm !== null && (dueDay === null || dayOfKm < dueDay);
  const onlyDistance = dueDay === null && kmLeft !== null;
  return {
    standing: standingOf({ daysLeft, kmLeft, dayOfKm }, today, soonWithin),
    basis: last === null ? basis : 'lastDone',
    dueDay,
    dueKm,
    daysLeft,
    kmLeft,
    expectedDay: byDistance ? dayOfKm : dueDay,
    reachedFirst: byDistance || onlyDistance ? 'distance' : dueDay === null ? null : 'date',
    isDistanceUnknown: interval.km !== null && kmLeft === null,
  };
}

function requireKnown(interval: ServiceInterval, state: ServiceState): void {
  requirePositive('the interval in days', interval.days);
  requirePositive('the interval in km', interval.km);
  if (interval.days === null && interval.km === null)
    throw new RangeError('an interval has days, km or both');
  for (const [name, value] of [
    ['today', state.today],
    ['the present distance', state.nowKm],
    ['the distance a day', state.kmPerDay],
    ['first use', state.firstUse],
    ['the day it was last done', state.last?.day ?? null],
    ['the distance it was last done at', state.last?.km ?? null],
  ] as const)
    requireFiniteOrNull(name, value);
}

/** Day and distance at which it is due, counted from when it was last done, else from first use. */
function duePoints(
  interval: ServiceInterval,
  { last, firstUse }: ServiceState,
): Pick<ServiceDue, 'dueDay' | 'dueKm'> & { readonly basis: DueBasis } {
  const from = last ?? (firstUse === null ? null : { day: firstUse, km: 0 });
  if (from === null) return { dueDay: null, dueKm: null, basis: 'none' };
  return {
    dueDay: interval.days === null ? null : from.day + interval.days,
    dueKm: interval.km === null || from.km === null ? null : from.km + interval.km,
    basis: 'firstUse',
  };
}

/** Past distances are due today; ahead, by the distance a day where it is known and above 0. */
function expectedDayOf(kmLeft: number | null, kmPerDay: number | null, today: number): number | null {
  if (kmLeft === null) return null;
  if (kmLeft <= 0) return today;
  return kmPerDay === null || !(kmPerDay > 0) ? null : today + kmLeft / kmPerDay;
}

function standingOf(
  left: { readonly daysLeft: number | null; readonly kmLeft: number | null; readonly dayOfKm: number | null },
  today: number,
  soonWithin: { readonly days: number; readonly km: number },
): DueStanding {
  const { daysLeft, kmLeft, dayOfKm } = left;
  if (daysLeft === null && kmLeft === null) return 'unknown';
  if ((daysLeft ?? 1) <= 0 || (kmLeft ?? 1) <= 0) return 'overdue';
  const isSoon =
    (daysLeft !== null && daysLeft <= soonWithin.days) ||
    (kmLeft !== null && kmLeft <= soonWithin.km) ||
    (dayOfKm !== null && dayOfKm - today <= soonWithin.days);
  return isSoon ? 'dueSoon' : 'later';
}
