import { calibrationStatus, type CalibrationStatus } from '@endfloat/metrology';
import type { Calibration } from '../ports/records/bench.records.js';

/** Days before the due day from which on a calibration is due (judgement). */
export const dueSoonDays = 14;

/** State of an instrument's calibration on a day; `failed`: the last calibration up to that day was not passed. */
export type CalibrationStanding = CalibrationStatus | { readonly kind: 'failed'; readonly failedOn: string };

/** The last passed calibration up to a day. */
export function lastGoodCalibration(
  calibrations: readonly Calibration[],
  day: string,
): Calibration | undefined {
  return upTo(calibrations, day)
    .filter(({ passed }) => passed)
    .at(-1);
}

/** Standing on a local day by the calibrations up to it; later ones say nothing about that day. */
export function calibrationStandingOn(
  calibrations: readonly Calibration[],
  day: string,
): CalibrationStanding {
  const last = upTo(calibrations, day).at(-1);
  if (last?.passed === false) return { kind: 'failed', failedOn: last.calibratedOn };
  return calibrationStatus(
    {
      lastCalibratedOn: last?.calibratedOn ?? null,
      intervalDays: last?.dueOn == null ? null : daysBetween(last.calibratedOn, last.dueOn),
    },
    day,
    dueSoonDays,
  );
}

function upTo(calibrations: readonly Calibration[], day: string): readonly Calibration[] {
  return calibrations
    .filter(({ calibratedOn }) => calibratedOn <= day)
    .sort((a, b) => a.calibratedOn.localeCompare(b.calibratedOn));
}

function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(to) - Date.parse(from)) / 86_400_000);
}
