import { requireNonNegativeValues, requireSameLength, type Numbers } from '../descriptive/checked-values.js';
import { orderByAge, type AgeOrder } from '../survival/age-order.js';

/**
 * Recurring events of units numbered 0, 1, … and the spans of age in which each unit was observed. A unit may have
 * several spans (late start, gaps); they must not overlap. A unit is at risk at age t when start < t ≤ end, and at
 * age 0 when it starts at 0; every event must lie in a span of its unit.
 */
export interface RecurrenceSample {
  readonly eventUnits: Numbers;
  readonly eventAges: Numbers;
  /** Size of each event (a cost, a count), 0 or more; 1 when left out. */
  readonly eventSizes?: Numbers | undefined;
  readonly spanUnits: Numbers;
  /** 0 for all when left out. */
  readonly spanStarts?: Numbers | undefined;
  readonly spanEnds: Numbers;
}

/** Columns of the events, ages rising; sizes null where every event counts 1. */
export interface OrderedEvents {
  readonly ages: Float64Array;
  readonly units: Uint32Array;
  readonly sizes: Float64Array | null;
}

/** Rows of a sample in order of age, checked; kept as row numbers so that no row becomes an object. */
export interface OrderedSample {
  readonly unitCount: number;
  /** Units with at least one span of positive length, or one at age 0. */
  readonly observedUnits: number;
  readonly events: OrderedEvents;
  /** Spans that count, by their start and by their end. */
  readonly starts: AgeOrder;
  readonly ends: AgeOrder;
  readonly firstAge: number;
  readonly lastAge: number;
}

/** Start of a span; 0 where none is given. */
export const startOf = (sample: RecurrenceSample, span: number): number => sample.spanStarts?.[span] ?? 0;

function orderEvents({ eventUnits, eventAges, eventSizes }: RecurrenceSample): OrderedEvents {
  const ageAt = (row: number): number => eventAges[row]!;
  if (eventSizes === undefined) {
    const { rows: units, ages } = orderByAge(Uint32Array.from(eventUnits), ageAt);
    return { ages, units, sizes: null };
  }
  const { rows, ages } = orderByAge(
    Uint32Array.from(eventUnits, (_, row) => row),
    ageAt,
  );
  return {
    ages,
    units: rows.map((row) => eventUnits[row]!),
    sizes: Float64Array.from(rows, (row) => eventSizes[row]!),
  };
}

/** Rows in rising order of a key; rows that are not kept are left out. */
function orderBy(
  size: number,
  key: (row: number) => number,
  keep: (row: number) => boolean = () => true,
): AgeOrder {
  const rows = new Uint32Array(size);
  let kept = 0;
  for (let row = 0; row < size; row += 1) {
    if (!keep(row)) continue;
    rows[kept] = row;
    kept += 1;
  }
  return orderByAge(rows.subarray(0, kept), (place) => key(rows[place]!));
}

/**
 * Checks a sample and sorts its rows.
 *
 * @throws RangeError on unlike lengths, numbers below 0 or not finite, unit numbers that are not whole, a span that ends
 *   before it starts, spans of one unit that overlap, or an event outside the spans of its unit
 */
export function orderSample(sample: RecurrenceSample): OrderedSample {
  const { spanUnits, spanEnds } = sample;
  const greatestUnit = requireColumns(sample);
  const events = orderEvents(sample);
  // A span without length adds nothing, unless it is at age 0, where a unit is at risk from the start.
  const hasLength = (span: number): boolean =>
    spanEnds[span]! > startOf(sample, span) || spanEnds[span] === 0;
  const starts = orderBy(spanEnds.length, (span) => startOf(sample, span), hasLength);
  const ends = orderBy(spanEnds.length, (span) => spanEnds[span]!, hasLength);
  /** End of the last span that each unit entered; −1 before the first. */
  const openEnd = new Float64Array(greatestUnit + 1).fill(-1);
  let nextStart = 0;
  const observed = new Uint8Array(greatestUnit + 1);
  const openUntil = (age: number): void => {
    for (; nextStart < starts.rows.length; nextStart += 1) {
      const span = starts.rows[nextStart]!;
      const start = starts.ages[nextStart]!;
      if (start >= age && start > 0) return;
      const unit = spanUnits[span]!;
      const before = openEnd[unit]!;
      if (before >= 0 && (before > start || start === 0)) {
        throw new RangeError(`the spans of unit ${unit} overlap at age ${start}`);
      }
      openEnd[unit] = spanEnds[span]!;
      observed[unit] = 1;
    }
  };
  for (let place = 0; place < events.units.length; place += 1) {
    const age = events.ages[place]!;
    openUntil(age);
    const unit = events.units[place]!;
    if (openEnd[unit]! < age) {
      throw new RangeError(`the event of unit ${unit} at age ${age} lies outside its spans`);
    }
  }
  openUntil(Infinity);
  return {
    unitCount: greatestUnit + 1,
    observedUnits: observed.reduce((sum, one) => sum + one, 0),
    events,
    starts,
    ends,
    firstAge: starts.ages[0] ?? 0,
    lastAge: ends.ages.at(-1) ?? 0,
  };
}

/** Checks each column; answers the greatest unit number, −1 for none. */
function requireColumns(sample: RecurrenceSample): number {
  const { eventUnits, eventAges, eventSizes, spanUnits, spanEnds } = sample;
  requireNonNegativeValues('eventAges', eventAges);
  requireSameLength('eventUnits', eventUnits, eventAges.length);
  if (eventSizes !== undefined) {
    requireSameLength('eventSizes', eventSizes, eventAges.length);
    requireNonNegativeValues('eventSizes', eventSizes);
  }
  requireNonNegativeValues('spanEnds', spanEnds);
  requireSameLength('spanUnits', spanUnits, spanEnds.length);
  if (sample.spanStarts !== undefined) {
    requireSameLength('spanStarts', sample.spanStarts, spanEnds.length);
    requireNonNegativeValues('spanStarts', sample.spanStarts);
  }
  for (let span = 0; span < spanEnds.length; span += 1) {
    if (spanEnds[span]! < startOf(sample, span)) {
      throw new RangeError(
        `span ${span} ends at ${spanEnds[span]} before it starts at ${startOf(sample, span)}`,
      );
    }
  }
  return Math.max(greatestUnit('spanUnits', spanUnits), greatestUnit('eventUnits', eventUnits));
}

function greatestUnit(name: string, units: Numbers): number {
  let greatest = -1;
  for (let i = 0; i < units.length; i += 1) {
    const unit = units[i]!;
    if (!Number.isInteger(unit) || unit < 0 || unit >= 2 ** 31) {
      throw new RangeError(`${name}[${i}] must be a whole number, 0 or more, got ${unit}`);
    }
    greatest = Math.max(greatest, unit);
  }
  return greatest;
}
