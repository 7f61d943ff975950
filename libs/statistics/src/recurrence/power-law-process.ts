import { requireLevel } from '../descriptive/checked-values.js';
import { insufficientData, type InsufficientData } from '../descriptive/outcomes.js';
import { chiSquareQuantile } from '../distributions/chi-square.js';
import { normalQuantile } from '../distributions/normal.js';
import type { Interval } from '../inference/interval.js';
import { checkedSystem, type SingleSystem, type Termination } from './process-spans.js';

/** Power-law process of one system: expected events by age t are rate · t^shape. */
export interface PowerLawFit {
  readonly kind: 'estimated';
  /** Above 1 the events come ever faster, below 1 ever slower. */
  readonly shape: number;
  readonly shapeLimits: Interval;
  readonly rate: number;
  /** shape · (n − 1)/n for termination by time, (n − 2)/n by failure; null where that would be 0 or less. */
  readonly unbiasedShape: number | null;
  /** Rate that goes with the unbiased shape. */
  readonly unbiasedRate: number | null;
  /** Events per unit of age at the end of observation, and its inverse. */
  readonly intensityAtEnd: number;
  readonly meanTimeAtEnd: number;
  /** Mean time at the end by the unbiased shape, with approximate limits; null with fewer than 2 random events. */
  readonly unbiasedMeanTime: {
    readonly estimate: number;
    readonly lower: number;
    /** null where the approximation has none: too few events for the level. */
    readonly upper: number | null;
  } | null;
  /** Distance of the transformed ages from a straight line; grows with lack of fit. */
  readonly cramerVonMises: number | null;
  readonly events: number;
  readonly end: number;
  readonly termination: Termination;
  readonly level: number;
}

export type PowerLawOutcome =
  | PowerLawFit
  /** An event at age 0, which the process does not allow. */
  | { readonly kind: 'zeroAgeEvents'; readonly count: number }
  /** All events at the very end: the shape grows without end. */
  | { readonly kind: 'noMaximum'; readonly reason: 'allEventsAtEnd' }
  | InsufficientData;

/**
 * Power-law (Crow) process of one repairable system from exact event ages, in closed form: shape = n / Σ ln(T / tᵢ),
 * rate = n / T^shape; exact limits of the shape from χ² with 2n (time) or 2(n − 1) (failure) degrees of freedom.
 *
 * @param system  event ages, end and kind of termination
 * @param level  two-sided, default 0.95
 * @returns the fit; `insufficientData` with no event (by failure: fewer than 2); `zeroAgeEvents`; `noMaximum`
 * @throws RangeError on ages below 0 or beyond the end, an end that is not positive (by failure: one that is not the last
 *   event), or a level outside (0, 1)
 * @ties equal ages are taken as they stand
 * @complexity O(n log n) time, O(n) memory
 * @source MIL-HDBK-189 (1981), appendix C; NIST/SEMATECH e-Handbook 8.4.5.2 for the limits of the mean time
 * @oracle test/oracles/statistics-survival/generate.R
 * @example powerLawProcess({ eventAges: [], end: 5, termination: 'time' }).kind // => 'insufficientData'
 */
export function powerLawProcess(system: SingleSystem, level = 0.95): PowerLawOutcome {
  requireLevel(level);
  const { ages, end, inner } = checkedSystem(system);
  const { termination } = system;
  const events = ages.length;
  const zeros = ages.findIndex((age) => age > 0);
  if (zeros > 0 || (events > 0 && ages[events - 1] === 0)) {
    return { kind: 'zeroAgeEvents', count: zeros > 0 ? zeros : events };
  }
  if (inner < 1) return insufficientData('events', termination === 'time' ? 1 : 2, events);
  const logSum = ages.reduce((sum, age) => sum + Math.log(end / age), 0);
  if (!(logSum > 0)) return { kind: 'noMaximum', reason: 'allEventsAtEnd' };
  const shape = events / logSum;
  const rate = events / end ** shape;
  const unbiasedShape = inner > 1 ? (inner - 1) / logSum : null;
  const limit = (probability: number): number => chiSquareQuantile(probability, 2 * inner) / (2 * logSum);
  const intensityAtEnd = (events * shape) / end;
  return {
    kind: 'estimated',
    shape,
    shapeLimits: { lower: limit((1 - level) / 2), upper: limit((1 + level) / 2) },
    rate,
    unbiasedShape,
    unbiasedRate: unbiasedShape === null ? null : events / end ** unbiasedShape,
    intensityAtEnd,
    meanTimeAtEnd: 1 / intensityAtEnd,
    unbiasedMeanTime:
      unbiasedShape === null ? null : meanTimeOf(end / (events * unbiasedShape), events, level),
    cramerVonMises:
      unbiasedShape === null ? null : cramerVonMises(ages.subarray(0, inner), end, unbiasedShape),
    events,
    end,
    termination,
    level,
  };
}

/** NIST/SEMATECH e-Handbook 8.4.5.2, approximate limits of the mean time between events at the end. */
function meanTimeOf(estimate: number, events: number, level: number): PowerLawFit['unbiasedMeanTime'] {
  const z = normalQuantile(0.5 + level / 2);
  const gathered = estimate * events * (events - 1);
  const below = events + (z * z) / 4 + Math.sqrt((events * z * z) / 2 + z ** 4 / 16);
  const above = events - z * Math.sqrt(events / 2);
  return { estimate, lower: gathered / below ** 2, upper: above > 0 ? gathered / above ** 2 : null };
}

function cramerVonMises(ages: Float64Array, end: number, shape: number): number {
  const size = ages.length;
  return ages.reduce(
    (sum, age, i) => sum + ((age / end) ** shape - (2 * i + 1) / (2 * size)) ** 2,
    1 / (12 * size),
  );
}
