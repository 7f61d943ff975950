/** What the instrument record says about calibration; local dates as YYYY-MM-DD. */
export interface CalibrationRecord {
  /** Last calibration with a good result; null if there was none. */
  readonly lastCalibratedOn: string | null;
  /** Days until the next one; null where the shop has set no interval. */
  readonly intervalDays: number | null;
}

/** Kinds of calibration status. */
export const calibrationStatusKinds = [
  'inCalibration',
  'due',
  'overdue',
  'neverCalibrated',
  'noInterval',
  'calibratedLater',
] as const;

/** State of an instrument's calibration on a day. */
export type CalibrationStatus =
  | { readonly kind: 'inCalibration'; readonly dueOn: string; readonly daysLeft: number }
  | { readonly kind: 'due'; readonly dueOn: string; readonly daysLeft: number }
  | { readonly kind: 'overdue'; readonly dueOn: string; readonly daysOver: number }
  | { readonly kind: 'neverCalibrated' }
  | { readonly kind: 'noInterval'; readonly lastCalibratedOn: string }
  /** The record's calibration is after the day asked about: it says nothing about that day. */
  | { readonly kind: 'calibratedLater'; readonly lastCalibratedOn: string };

const millisecondsPerDay = 86_400_000;

/**
 * State of calibration on a given day. The due day itself still counts as calibrated (`due`).
 *
 * @param record        last calibration and interval
 * @param asOf          the day asked about, YYYY-MM-DD
 * @param dueSoonDays   days before the due day from which on it is `due`, 0 or more
 * @returns the state; days are whole days between local dates. Without a calibration `neverCalibrated`, whatever the
 *   interval; without an interval `noInterval`
 * @throws RangeError on a text that is no date, an interval that is not whole or below 1 day, a warning time that is
 *   not whole or negative
 * @source common practice, no published source
 * @example calibrationStatus({ lastCalibratedOn: '2025-03-01', intervalDays: 365 }, '2026-03-02', 0)
 *   // => { kind: 'overdue', dueOn: '2026-03-01', daysOver: 1 }
 */
export function calibrationStatus(
  record: CalibrationRecord,
  asOf: string,
  dueSoonDays: number,
): CalibrationStatus {
  const day = dayNumber(asOf);
  if (!Number.isInteger(dueSoonDays) || dueSoonDays < 0)
    throw new RangeError('dueSoonDays is a whole number of days');
  if (record.lastCalibratedOn === null) return { kind: 'neverCalibrated' };
  const last = dayNumber(record.lastCalibratedOn);
  if (last > day) return { kind: 'calibratedLater', lastCalibratedOn: record.lastCalibratedOn };
  if (record.intervalDays === null) return { kind: 'noInterval', lastCalibratedOn: record.lastCalibratedOn };
  if (!Number.isInteger(record.intervalDays) || record.intervalDays < 1) {
    throw new RangeError('intervalDays is a whole number of days, at least 1');
  }
  const due = last + record.intervalDays;
  const dueOn = new Date(due * millisecondsPerDay).toISOString().slice(0, 10);
  const daysLeft = due - day;
  if (daysLeft < 0) return { kind: 'overdue', dueOn, daysOver: -daysLeft };
  return { kind: daysLeft <= dueSoonDays ? 'due' : 'inCalibration', dueOn, daysLeft };
}

function dayNumber(text: string): number {
  const match = /^([0-9]{4})-([0-9]{2})-([0-9]{2})$/.exec(text);
  const time =
    match === null ? Number.NaN : Date.UTC(Number(match[1]), Number(match[2]) - 1, Number(match[3]));
  if (Number.isNaN(time) || new Date(time).toISOString().slice(0, 10) !== text) {
    throw new RangeError(`not a date: ${text.slice(0, 16)}`);
  }
  return time / millisecondsPerDay;
}
