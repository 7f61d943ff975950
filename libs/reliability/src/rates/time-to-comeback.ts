import { kaplanMeier, type CurveOptions, type SurvivalCurve } from '@endfloat/statistics';

/** Jobs that came back, and jobs last seen without having come back, on one day since their release. */
export interface DayTally {
  /** days since release, counted up: 1 is the first 24 hours */
  readonly day: number;
  readonly comebacks: number;
  readonly lastSeen: number;
}

export type ComebackCurve =
  | (SurvivalCurve & { readonly comebacks: number })
  | { readonly kind: 'noEvents'; readonly units: number; readonly lastAge: number }
  | { readonly kind: 'insufficientData'; readonly of: string; readonly needed: number; readonly got: number };

/**
 * Share of jobs that have not come back, by days since release (Kaplan-Meier): a job without a comeback is censored on
 * the day its vehicle was last seen; one never seen again says nothing and is left out by the caller.
 *
 * @param tallies  one entry a day, any order; days whole, 1 or more
 * @param options  form of the limits (default logLog) and level (default 0.95)
 * @returns the curve at the days of comebacks, with the number of comebacks; `noEvents`; `insufficientData` for no jobs
 * @throws RangeError on days or counts that are not whole or too small, a level outside (0, 1)
 * @complexity O(days log days), however many jobs
 * @source Kaplan & Meier (1958), JASA 53:457-481
 * @oracle NIST/SEMATECH e-Handbook 8.4.1.3 in the spec, hours taken for days
 * @example timeToComeback([{ day: 3, comebacks: 0, lastSeen: 2 }]) // => { kind: 'noEvents', units: 2, lastAge: 3 }
 */
export function timeToComeback(tallies: readonly DayTally[], options: CurveOptions = {}): ComebackCurve {
  for (const { day, comebacks, lastSeen } of tallies) {
    if (!Number.isSafeInteger(day) || day < 1) throw new RangeError(`days are whole, 1 or more, got ${day}`);
    for (const count of [comebacks, lastSeen])
      if (!Number.isSafeInteger(count) || count < 0) throw new RangeError(`not a count: ${count}`);
  }
  const rows = tallies.flatMap(({ day, comebacks, lastSeen }) => [
    ...(comebacks > 0 ? [{ day, event: 1 as const, weight: comebacks }] : []),
    ...(lastSeen > 0 ? [{ day, event: 0 as const, weight: lastSeen }] : []),
  ]);
  const curve = kaplanMeier(
    {
      ages: rows.map(({ day }) => day),
      events: rows.map(({ event }) => event),
      weights: rows.map(({ weight }) => weight),
    },
    options,
  );
  if (curve.kind !== 'estimated') return curve;
  return { ...curve, comebacks: tallies.reduce((sum, { comebacks }) => sum + comebacks, 0) };
}
