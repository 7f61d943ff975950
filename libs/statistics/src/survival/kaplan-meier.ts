import { requireLevel } from '../descriptive/checked-values.js';
import { insufficientData, type InsufficientData } from '../descriptive/outcomes.js';
import { requireCensoredSample, totalWeight, type CensoredSample } from './censored-sample.js';
import { curveLimits, multiplierOf, type CurveLimitForm } from './curve-limits.js';
import { RiskWalk } from './risk-walk.js';

/** A step curve, one entry of each column per distinct event age, ages rising. */
export interface SurvivalCurve {
  readonly kind: 'estimated';
  readonly ages: readonly number[];
  /** Weight at risk just before the age, and weight of the events at it. */
  readonly atRisk: readonly number[];
  readonly events: readonly number[];
  readonly survival: readonly number[];
  /** Greenwood's standard error; null where the curve is at 0, which has none. */
  readonly standardErrors: readonly (number | null)[];
  readonly lower: readonly (number | null)[];
  readonly upper: readonly (number | null)[];
  readonly limitForm: CurveLimitForm;
  readonly level: number;
  /** The curve says nothing beyond this age, the greatest observed. */
  readonly lastAge: number;
  readonly units: number;
  /** The curve fell to 0 while older units were still to be observed: late entry left too few at risk at that age. */
  readonly exhaustedEarly: boolean;
}

/** No event at all: the curve stays at 1 up to `lastAge`, and its uncertainty cannot be had from it. */
export interface NoEvents {
  readonly kind: 'noEvents';
  readonly units: number;
  readonly lastAge: number;
}

export interface CurveOptions {
  /** Default `logLog`. */
  readonly limitForm?: CurveLimitForm;
  /** Two-sided, pointwise; default 0.95. */
  readonly level?: number;
}

/**
 * Kaplan–Meier (product-limit) estimate of survival with Greenwood's variance, right censoring and late entry.
 * A unit is at risk at age t when it entered before t and ends at t or later; units with entry 0 are at risk from 0 on,
 * so an event at age 0 is counted. A unit that ends where it enters adds nothing. A censored age equal to an event age
 * counts as at risk there.
 *
 * @param sample  columns of equal length, any order; ages in the caller's unit
 * @param options  form of the limits (default logLog) and level (default 0.95)
 * @returns the curve; `insufficientData` for no units; `noEvents` when all are censored. All events at one age give
 *   one step; when the last unit at risk has an event, survival is 0 there, without standard error and limits
 * @throws RangeError on unlike lengths, numbers below 0 or not finite, an event mark that is neither 0 nor 1, an entry
 *   after its end, an event at its entry (but for age 0), or a level outside (0, 1)
 * @ties ages are tied only when they are the same number
 * @complexity O(n log n) time, O(n) memory
 * @source Kaplan & Meier (1958), JASA 53:457–481; Greenwood (1926); limits as in Kalbfleisch & Prentice (2002), 1.4
 * @oracle test/oracles/statistics-survival/generate.R
 * @example kaplanMeier({ ages: [1, 2], events: [1, 0] }).kind // => 'estimated'
 */
export function kaplanMeier(
  sample: CensoredSample,
  options: CurveOptions = {},
): SurvivalCurve | NoEvents | InsufficientData {
  const { limitForm = 'logLog', level = 0.95 } = options;
  requireCensoredSample(sample);
  requireLevel(level);
  const units = totalWeight(sample);
  if (!(units > 0)) return insufficientData('units', 1, 0);
  const walk = new RiskWalk(sample);
  const lastAge = walk.lastAge;
  if (walk.deaths.ages.length === 0) return { kind: 'noEvents', units, lastAge };
  const columns = steps(walk, limitForm, level);
  const exhaustedEarly = fellToZeroBefore(columns, lastAge);
  return { kind: 'estimated', ...columns, exhaustedEarly, limitForm, level, lastAge, units };
}

type Columns = Pick<
  SurvivalCurve,
  'ages' | 'atRisk' | 'events' | 'survival' | 'standardErrors' | 'lower' | 'upper'
>;

function steps(walk: RiskWalk, form: CurveLimitForm, level: number): Columns {
  const { deaths } = walk;
  const atRisk = new Array<number>(deaths.ages.length);
  const size = deaths.ages.length;
  const survivals = new Array<number>(size);
  const standardErrors = new Array<number | null>(size);
  const lower = new Array<number | null>(size);
  const upper = new Array<number | null>(size);
  const multiplier = multiplierOf(level);
  let survival = 1;
  let greenwood = 0;
  for (let i = 0; i < size; i += 1) {
    const [n, d] = walk.stepTo(deaths.ages[i]!);
    atRisk[i] = n;
    // Weights that are not whole may leave a rounding residue where everyone at risk has the event.
    const surviving = n - d <= 1e-12 * n ? 0 : n - d;
    survival *= surviving / n;
    greenwood += surviving === 0 ? Infinity : d / (n * surviving);
    const limits = curveLimits(survival, Math.sqrt(greenwood), multiplier, form);
    survivals[i] = survival;
    standardErrors[i] = survival === 0 ? null : survival * Math.sqrt(greenwood);
    lower[i] = limits.lower;
    upper[i] = limits.upper;
  }
  return {
    ages: Array.from(deaths.ages),
    atRisk,
    events: Array.from(deaths.totals),
    survival: survivals,
    standardErrors,
    lower,
    upper,
  };
}

function fellToZeroBefore(columns: Columns, lastAge: number): boolean {
  const zero = columns.survival.indexOf(0);
  return zero >= 0 && columns.ages[zero]! < lastAge;
}
