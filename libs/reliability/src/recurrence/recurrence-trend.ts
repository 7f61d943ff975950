import {
  laplaceTrendTest,
  pooledPowerLawProcess,
  powerLawTrendTest,
  type InsufficientData,
  type LaplaceTest,
  type PooledPowerLawOutcome,
  type PowerLawTrendTest,
  type SingleSystem,
} from '@endfloat/statistics';
import type { UnitHistory } from './unit-history.js';
import { joinedSpans, recurrenceColumns, spanAround } from './recurrence-columns.js';

/** Whether what recurs comes ever faster or ever slower as vehicles age. */
export interface RecurrenceTrend {
  readonly laplace: LaplaceTest | InsufficientData;
  readonly powerLawTest:
    PowerLawTrendTest | { readonly kind: 'zeroAgeEvents'; readonly count: number } | InsufficientData;
  readonly powerLaw: PooledPowerLawOutcome;
}

/**
 * Trend of recurrences over a fleet: Laplace's test, the test of MIL-HDBK-189, and a power-law process common to all
 * vehicles (shape above 1: ever faster).
 *
 * The tests ask for systems watched from age 0. A stretch of watching that begins later is taken as a system of its own
 * that begins there: under a constant rate its events lie evenly in it, wherever it begins. What a vehicle grew worse by
 * before it joined is not seen by the tests, though it is by the power law, which takes ages as they are.
 *
 * @param histories  one a vehicle, ages in one unit; events outside the spans are left out
 * @param level      two-sided, of the limits of the shape; default 0.95
 * @returns three outcomes, each with its own reason where there is none
 * @throws RangeError as fleetRecurrence does, also on a level outside (0, 1)
 * @source Ascher & Feingold (1984), Repairable Systems Reliability; MIL-HDBK-189 (1981), appendix C; Crow (1990),
 *   Technometrics 32
 * @oracle worked by hand in the spec, and repairs of one system published in the NIST/SEMATECH e-Handbook 8.4.5.2
 * @example recurrenceTrend([{ spans: [{ from: 0, until: 10 }], eventAges: [5] }]).laplace // => { kind: 'tested', statistic: 0 }
 */
export function recurrenceTrend(histories: readonly UnitHistory[], level = 0.95): RecurrenceTrend {
  const systems = histories.flatMap(systemsOf);
  return {
    laplace: laplaceTrendTest(systems),
    powerLawTest: powerLawTrendTest(systems),
    powerLaw: pooledPowerLawProcess(recurrenceColumns(histories).sample, level),
  };
}

/** Each stretch with its events, ages counted from its beginning. */
function systemsOf({ spans, eventAges }: UnitHistory): SingleSystem[] {
  const joined = joinedSpans(spans);
  return joined
    .filter(({ from, until }) => until > from)
    .map((span) => ({
      eventAges: eventAges.filter((age) => spanAround(joined, age) === span).map((age) => age - span.from),
      end: span.until - span.from,
      termination: 'time',
    }));
}
