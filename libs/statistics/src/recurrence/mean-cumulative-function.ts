import { requireLevel } from '../descriptive/checked-values.js';
import { insufficientData, type InsufficientData } from '../descriptive/outcomes.js';
import { normalQuantile } from '../distributions/normal.js';
import {
  orderSample,
  startOf,
  type OrderedEvents,
  type OrderedSample,
  type RecurrenceSample,
} from './recurrence-sample.js';

/** Forms of the limits: `plain` M ± z se, which may go below 0; `log` M exp(± z se / M). */
export const recurrenceLimitForms = ['plain', 'log'] as const;
export type RecurrenceLimitForm = (typeof recurrenceLimitForms)[number];

/** Mean cumulative function, one entry of each column per distinct event age, ages rising. */
export interface RecurrenceCurve {
  readonly kind: 'estimated';
  readonly ages: readonly number[];
  readonly atRisk: readonly number[];
  /** Events at the age; their total size where sizes were given. */
  readonly events: readonly number[];
  readonly mean: readonly number[];
  /** Robust standard error; null for a single unit, whose spread cannot be known. */
  readonly standardErrors: readonly (number | null)[];
  readonly lower: readonly (number | null)[];
  readonly upper: readonly (number | null)[];
  readonly limitForm: RecurrenceLimitForm;
  readonly level: number;
  /** The mean counts from the least age observed; it says nothing beyond the greatest. */
  readonly firstAge: number;
  readonly lastAge: number;
  /** Ages in between at which no unit was observed: events there would have gone unseen. */
  readonly gaps: readonly { readonly from: number; readonly to: number }[];
  readonly units: number;
}

/** No event at all; the uncertainty cannot be had from the data by this method. */
export interface NoRecurrences {
  readonly kind: 'noEvents';
  readonly units: number;
  readonly firstAge: number;
  readonly lastAge: number;
}

export interface RecurrenceOptions {
  /** Default `log`. */
  readonly limitForm?: RecurrenceLimitForm;
  /** Two-sided, pointwise; default 0.95. */
  readonly level?: number;
}

export type RecurrenceOutcome = RecurrenceCurve | NoRecurrences | InsufficientData;

/**
 * Mean cumulative number (or size) of events per unit with the robust variance of Lawless and Nadeau, for units that
 * enter late or are observed with gaps. No assumption on how the events of one unit depend on each other; the spans must
 * not depend on them. Var M(t) = Σ over units of [Σ over ages ≤ t of at-risk · (its events − events / at risk) / at risk]².
 *
 * @param sample  events and spans, any order; see RecurrenceSample
 * @param options  form of the limits (default log) and level (default 0.95)
 * @returns the curve; `insufficientData` for no units; `noEvents` for none; a single unit has no standard error
 * @throws RangeError on columns of unlike lengths, numbers below 0 or not finite, unit numbers that are not whole, a span
 *   that ends before it starts, spans of one unit that overlap, an event outside the spans of its unit, or a level
 *   outside (0, 1)
 * @ties events at one age are one step; a unit that ends at an event age is at risk there
 * @complexity O(n log n) time, O(n) memory: the squares of the units at risk are kept as running sums
 * @source Lawless & Nadeau (1995), Technometrics 37:158–168, eq. 2.6; Nelson (1995), Technometrics 37:147–157
 * @oracle test/oracles/statistics-survival/generate.R
 * @example meanCumulativeFunction({ eventUnits: [0], eventAges: [2], spanUnits: [0, 1], spanEnds: [4, 4] }).kind // => 'estimated'
 */
export function meanCumulativeFunction(
  sample: RecurrenceSample,
  options: RecurrenceOptions = {},
): RecurrenceOutcome {
  const { limitForm = 'log', level = 0.95 } = options;
  requireLevel(level);
  const order = orderSample(sample);
  const { observedUnits: units, firstAge, lastAge } = order;
  if (units === 0) return insufficientData('units', 1, 0);
  if (order.events.ages.length === 0) return { kind: 'noEvents', units, firstAge, lastAge };
  const columns = walk(new UnitSpread(sample, order), order.events);
  const multiplier = normalQuantile(0.5 + level / 2);
  return {
    kind: 'estimated',
    ages: columns.ages,
    atRisk: columns.atRisk,
    events: columns.events,
    mean: columns.mean,
    ...limitsOf(columns, units > 1 ? multiplier : null, limitForm),
    limitForm,
    level,
    firstAge,
    lastAge,
    gaps: gapsOf(sample, order),
    units,
  };
}

/** Standard errors and limits; null throughout where there is no multiplier, since one unit shows no spread. */
function limitsOf(
  { mean, variance }: Walked,
  multiplier: number | null,
  form: RecurrenceLimitForm,
): Pick<RecurrenceCurve, 'standardErrors' | 'lower' | 'upper'> {
  const steps = mean.length;
  if (multiplier === null) {
    const none = new Array<null>(steps).fill(null);
    return { standardErrors: none, lower: none, upper: none };
  }
  const standardErrors = new Array<number>(steps);
  const lower = new Array<number>(steps);
  const upper = new Array<number>(steps);
  for (let step = 0; step < steps; step += 1) {
    const standardError = Math.sqrt(variance[step]!);
    const reach = multiplier * standardError;
    standardErrors[step] = standardError;
    lower[step] = limitOf(mean[step]!, -reach, form);
    upper[step] = limitOf(mean[step]!, reach, form);
  }
  return { standardErrors, lower, upper };
}

/** Log limits of a mean of 0 (only events of size 0 so far) are 0 themselves. */
function limitOf(mean: number, reach: number, form: RecurrenceLimitForm): number {
  if (form === 'plain') return mean + reach;
  return mean === 0 ? 0 : mean * Math.exp(reach / mean);
}

type Walked = Readonly<Record<'ages' | 'atRisk' | 'events' | 'mean' | 'variance', number[]>>;

/** Columns of their final length: growing them would touch several times the memory. */
function columnsFor(ages: Float64Array): Walked {
  let steps = 0;
  for (let place = 0; place < ages.length; place += 1) {
    if (place === 0 || ages[place] !== ages[place - 1]) steps += 1;
  }
  const column = (): number[] => new Array<number>(steps);
  return { ages: column(), atRisk: column(), events: column(), mean: column(), variance: column() };
}

function walk(spread: UnitSpread, { ages, units, sizes }: OrderedEvents): Walked {
  const columns = columnsFor(ages);
  let mean = 0;
  let step = 0;
  for (let place = 0; place < ages.length; step += 1) {
    const age = ages[place]!;
    spread.moveTo(age);
    let total = 0;
    for (; place < ages.length && ages[place] === age; place += 1) {
      const size = sizes === null ? 1 : sizes[place]!;
      spread.addEvent(units[place]!, size);
      total += size;
    }
    mean += total / spread.atRisk;
    spread.addMean(total);
    columns.ages[step] = age;
    columns.atRisk[step] = spread.atRisk;
    columns.events[step] = total;
    columns.mean[step] = mean;
    columns.variance[step] = spread.variance();
  }
  return columns;
}

/**
 * Sum of squares of what each unit has contributed so far. A unit at risk stands at b − C, where C is common to all
 * (the sum of events / at-risk² so far) and b changes only with the unit's own events; a unit not at risk stands still.
 * So the sums of b and b² give the squares of all units at risk in one step, whatever their number.
 */
class UnitSpread {
  atRisk = 0;
  private readonly sample: RecurrenceSample;
  private readonly order: OrderedSample;
  /** b of a unit at risk, or the resting contribution of one that is not. */
  private readonly levels: Float64Array;
  private common = 0;
  private sumLevels = 0;
  private sumSquares = 0;
  private resting = 0;
  private nextStart = 0;
  private nextEnd = 0;

  constructor(sample: RecurrenceSample, order: OrderedSample) {
    this.sample = sample;
    this.order = order;
    this.levels = new Float64Array(order.unitCount);
  }

  /** Lets in the spans that start before the age, and out those that end before it. */
  moveTo(age: number): void {
    const { sample, order } = this;
    for (;;) {
      const { starts: byStart, ends: byEnd } = order;
      const start = this.nextStart < byStart.rows.length ? byStart.ages[this.nextStart]! : Infinity;
      const end = this.nextEnd < byEnd.rows.length ? byEnd.ages[this.nextEnd]! : Infinity;
      const starts = start < age || start === 0;
      const ends = end < age;
      // A span that ends where the next one starts is let out first, but never before it was let in itself.
      if (ends && (end < start || (end === start && this.isIn(byEnd.rows[this.nextEnd]!, start)))) {
        this.leave(sample.spanUnits[byEnd.rows[this.nextEnd]!]!);
        this.nextEnd += 1;
      } else if (starts) {
        this.enter(sample.spanUnits[byStart.rows[this.nextStart]!]!);
        this.nextStart += 1;
      } else return;
    }
  }

  private isIn(span: number, start: number): boolean {
    return startOf(this.sample, span) < start;
  }

  private enter(unit: number): void {
    const resting = this.levels[unit]!;
    this.resting -= resting * resting;
    this.put(unit, resting + this.common, 1);
  }

  private leave(unit: number): void {
    const level = this.levels[unit]!;
    const contribution = level - this.common;
    this.put(unit, level, -1);
    this.levels[unit] = contribution;
    this.resting += contribution * contribution;
  }

  private put(unit: number, level: number, sign: 1 | -1): void {
    this.levels[unit] = level;
    this.atRisk += sign;
    this.sumLevels += sign * level;
    this.sumSquares += sign * level * level;
  }

  addEvent(unit: number, size: number): void {
    const level = this.levels[unit]!;
    const step = size / this.atRisk;
    this.levels[unit] = level + step;
    this.sumLevels += step;
    this.sumSquares += step * (2 * level + step);
  }

  addMean(total: number): void {
    this.common += total / (this.atRisk * this.atRisk);
  }

  variance(): number {
    const { common, atRisk } = this;
    return Math.max(
      0,
      this.resting + this.sumSquares - 2 * common * this.sumLevels + atRisk * common * common,
    );
  }
}

function gapsOf(sample: RecurrenceSample, order: OrderedSample): { from: number; to: number }[] {
  const gaps: { from: number; to: number }[] = [];
  if (order.starts.ages.at(-1) === order.firstAge) return gaps;
  let reached = order.firstAge;
  order.starts.rows.forEach((span, place) => {
    const start = order.starts.ages[place]!;
    if (start > reached) gaps.push({ from: reached, to: start });
    reached = Math.max(reached, sample.spanEnds[span]!);
  });
  return gaps;
}
