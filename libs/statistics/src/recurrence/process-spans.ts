import {
  requireFiniteValues,
  requireNonNegativeValues,
  requireSameLength,
  type Numbers,
} from '../descriptive/checked-values.js';

export const terminations = ['time', 'failure'] as const;
/** Whether observation ended at a time fixed beforehand, or with the last event. */
export type Termination = (typeof terminations)[number];

/** Events of one system observed from age 0 to `end`, or until the last event. */
export interface SingleSystem {
  /** In any order, above 0 and not above `end`; equal ages are allowed. */
  readonly eventAges: Numbers;
  /** End of observation; for termination by failure the greatest event age, and may be left out. */
  readonly end?: number | undefined;
  readonly termination: Termination;
}

export interface CheckedSystem {
  readonly ages: Float64Array;
  readonly end: number;
  /** Events that count as random given the end: all, or all but the one that ended the observation. */
  readonly inner: number;
}

/** Checks and sorts one system; the last event of a failure-terminated one is its end. */
export function checkedSystem({ eventAges, end, termination }: SingleSystem): CheckedSystem {
  requireNonNegativeValues('eventAges', eventAges);
  const ages = Float64Array.from(eventAges).sort();
  const last = ages[ages.length - 1] ?? 0;
  if (termination === 'time') {
    if (end === undefined || !(end > 0) || end === Infinity) {
      throw new RangeError(`end must be positive and finite, got ${end}`);
    }
    if (last > end) throw new RangeError(`an event at ${last} lies after the end at ${end}`);
    return { ages, end, inner: ages.length };
  }
  if (end !== undefined && end !== last) {
    throw new RangeError(`observation that ends with the last event ends at ${last}, not ${end}`);
  }
  return { ages, end: last, inner: Math.max(0, ages.length - 1) };
}

/** Counts of events in intervals of age, of one or of several systems; intervals of one system must not overlap. */
export interface GroupedCounts {
  readonly starts: Numbers;
  readonly ends: Numbers;
  /** Whole numbers, 0 or more. */
  readonly counts: Numbers;
}

/** Refuses columns of unlike length, starts below 0, intervals without length, counts that are not whole or negative. */
export function requireGroupedCounts({ starts, ends, counts }: GroupedCounts): void {
  requireNonNegativeValues('starts', starts);
  requireFiniteValues('ends', ends);
  requireSameLength('ends', ends, starts.length);
  requireSameLength('counts', counts, starts.length);
  for (let i = 0; i < starts.length; i += 1) {
    if (!(ends[i]! > starts[i]!)) throw new RangeError(`interval ${i} must end after its start`);
    if (!Number.isSafeInteger(counts[i]) || counts[i]! < 0) {
      throw new RangeError(`counts[${i}] must be a whole number, 0 or more, got ${counts[i]}`);
    }
  }
}
