import type { RecurrenceCurve, RecurrenceOutcome } from '@endfloat/statistics';
import { meanCumulativeFunction } from '@endfloat/statistics';
import { recurrenceColumns } from './recurrence-columns.js';
import type { UnitHistory } from './unit-history.js';

export interface RecurrenceLimits {
  readonly lower: number;
  readonly upper: number;
}

/** State of the fleet after the events at one age. */
export interface RecurrencePoint {
  readonly age: number;
  /** vehicles watched at that age; one that ends exactly then still counts */
  readonly atRisk: number;
  readonly events: number;
  /** mean number of events per vehicle up to that age */
  readonly mean: number;
  /** robust; null for a single vehicle */
  readonly standardError: number | null;
  /** mean -/+ z se, possibly below 0 */
  readonly plain: RecurrenceLimits | null;
  /** mean x exp(-/+ z se / mean) */
  readonly log: RecurrenceLimits | null;
}

interface RecurrenceBasis {
  readonly units: number;
  readonly firstAge: number;
  readonly lastAge: number;
  /** watched age, all vehicles together */
  readonly observedAge: number;
  /** events at ages at which their vehicle was not watched: left out, because others like them went unseen */
  readonly unobservedEvents: number;
}

export type FleetRecurrence =
  | (RecurrenceBasis & {
      readonly kind: 'estimated';
      readonly method: 'meanCumulativeFunction';
      readonly level: number;
      readonly events: number;
      readonly points: readonly RecurrencePoint[];
      /** ages in between at which no vehicle was watched */
      readonly gaps: readonly { readonly from: number; readonly to: number }[];
    })
  | (RecurrenceBasis & { readonly kind: 'noEvents' })
  | Extract<RecurrenceOutcome, { kind: 'insufficientData' }>;

function limitsOf(curve: RecurrenceCurve, index: number): RecurrenceLimits | null {
  const [lower, upper] = [curve.lower[index]!, curve.upper[index]!];
  return lower === null || upper === null ? null : { lower, upper };
}

/**
 * How often something recurs per vehicle by age: the mean cumulative function over a fleet in which vehicles join, leave
 * and go unseen for a while, with robust standard errors and both forms of limits.
 *
 * Nothing is assumed about how the recurrences of one vehicle depend on each other. Spans of one vehicle that overlap or
 * touch are joined. An event outside its vehicle's spans is left out and counted in `unobservedEvents`.
 *
 * @param histories  one a vehicle, any order; without a span a vehicle tells nothing
 * @param level      two-sided and pointwise, default 0.95
 * @returns points at the ages of events; `noEvents`; `insufficientData` without a watched vehicle
 * @throws RangeError on a span before 0, one that ends before it starts, an age that is not finite, a level outside (0, 1)
 * @source Nelson (1995), Technometrics 37:147-157; Lawless & Nadeau (1995), Technometrics 37:158-168
 * @oracle valve seats of Nelson & Doganaksoy (1989), see `valveSeatRecurrence`
 * @example fleetRecurrence([{ spans: [{ from: 0, until: 9 }], eventAges: [4] }, { spans: [{ from: 0, until: 5 }], eventAges: [] }]).kind // => 'estimated'
 */
export function fleetRecurrence(histories: readonly UnitHistory[], level = 0.95): FleetRecurrence {
  const { sample, observedAge, unobserved } = recurrenceColumns(histories);
  const plain = meanCumulativeFunction(sample, { limitForm: 'plain', level });
  if (plain.kind === 'insufficientData') return plain;
  const { units, firstAge, lastAge } = plain;
  const basis = { units, firstAge, lastAge, observedAge, unobservedEvents: unobserved };
  if (plain.kind === 'noEvents') return { kind: 'noEvents', ...basis };
  const log = meanCumulativeFunction(sample, { limitForm: 'log', level });
  if (log.kind !== 'estimated') throw new RangeError(`the same sample answered ${log.kind}`);
  return {
    kind: 'estimated',
    method: 'meanCumulativeFunction',
    level,
    ...basis,
    events: sample.eventAges.length,
    gaps: plain.gaps,
    points: plain.ages.map((age, index) => ({
      age,
      atRisk: plain.atRisk[index]!,
      events: plain.events[index]!,
      mean: plain.mean[index]!,
      standardError: plain.standardErrors[index]!,
      plain: limitsOf(plain, index),
      log: limitsOf(log, index),
    })),
  };
}

/**
 * The mean at an age: the last point at or before it.
 *
 * @param recurrence  estimated
 * @param age         from the first age watched to the last; in a gap between, the point before it
 * @returns the point, or null before the first event
 * @throws RangeError outside these ages
 * @source definition of a step function, continuous from the right
 */
export function recurrenceAt(
  recurrence: Extract<FleetRecurrence, { kind: 'estimated' }>,
  age: number,
): RecurrencePoint | null {
  if (!(age >= recurrence.firstAge && age <= recurrence.lastAge)) {
    throw new RangeError(`no vehicle was watched at age ${age}`);
  }
  return recurrence.points.findLast((point) => point.age <= age) ?? null;
}
