import type { RecurrenceSample } from '@endfloat/statistics';
import type { UnitHistory } from './unit-history.js';

interface Span {
  readonly from: number;
  readonly until: number;
}

function requireSpan({ from, until }: Span): void {
  if (!(from >= 0 && until >= from && Number.isFinite(until))) {
    throw new RangeError(
      `a span runs from an age of 0 or more to one not before it, got ${from} to ${until}`,
    );
  }
}

/** Spans in order, overlapping and touching ones made one: a vehicle entered twice is watched once. */
export function joinedSpans(spans: readonly Span[]): Span[] {
  const joined: Span[] = [];
  for (const span of [...spans].sort((a, b) => a.from - b.from)) {
    requireSpan(span);
    const last = joined.at(-1);
    if (last === undefined || span.from > last.until) joined.push(span);
    else joined[joined.length - 1] = { from: last.from, until: Math.max(last.until, span.until) };
  }
  return joined;
}

const holds = ({ from, until }: Span, age: number): boolean =>
  (from < age || (from === 0 && age === 0)) && age <= until;

/** The span in which something at this age would have been seen. */
export const spanAround = (spans: readonly Span[], age: number): Span | undefined =>
  spans.find((span) => holds(span, age));

export interface RecurrenceColumns {
  readonly sample: RecurrenceSample;
  readonly observedAge: number;
  readonly unobserved: number;
}

/** Columns of the estimators, and what they cannot use: events outside the spans of their vehicle. */
export function recurrenceColumns(histories: readonly UnitHistory[]): RecurrenceColumns {
  const [eventUnits, eventAges]: [number[], number[]] = [[], []];
  const [spanUnits, spanStarts, spanEnds]: [number[], number[], number[]] = [[], [], []];
  let [observedAge, unobserved] = [0, 0];
  for (const [unit, history] of histories.entries()) {
    const spans = joinedSpans(history.spans);
    for (const { from, until } of spans) {
      spanUnits.push(unit);
      spanStarts.push(from);
      spanEnds.push(until);
      observedAge += until - from;
    }
    for (const age of history.eventAges) {
      if (!Number.isFinite(age))
        throw new RangeError(`an age at which something recurred must be finite: ${age}`);
      if (spanAround(spans, age) === undefined) {
        unobserved += 1;
        continue;
      }
      eventUnits.push(unit);
      eventAges.push(age);
    }
  }
  return { sample: { eventUnits, eventAges, spanUnits, spanStarts, spanEnds }, observedAge, unobserved };
}
