import { requireLevel } from '../descriptive/checked-values.js';
import { insufficientData, type InsufficientData, type NotConverged } from '../descriptive/outcomes.js';
import { normalQuantile } from '../distributions/normal.js';
import type { Interval } from '../inference/interval.js';
import { maximiseByNewton, type SecondOrder } from '../optimise/maximise-by-newton.js';
import { orderSample, startOf, type RecurrenceSample } from './recurrence-sample.js';

export interface PooledPowerLawFit {
  readonly kind: 'estimated';
  readonly shape: number;
  /** Symmetric on the logarithm, by the observed information. */
  readonly shapeLimits: Interval;
  /** Expected events of one system by age t are rate · t^shape. */
  readonly rate: number;
  readonly events: number;
  readonly level: number;
}

export type PooledPowerLawOutcome =
  | PooledPowerLawFit
  | { readonly kind: 'zeroAgeEvents'; readonly count: number }
  | { readonly kind: 'noMaximum'; readonly reason: 'allEventsAtEnd' }
  | InsufficientData
  | NotConverged;

/**
 * Power-law process common to several systems from exact event ages, each system observed in its own spans fixed
 * beforehand (late starts and gaps allowed): Σ ln tᵢ + n / shape = n · d ln Σ(end^shape − start^shape) / d shape.
 *
 * @param sample  events and spans as for meanCumulativeFunction; sizes are not used
 * @param level  two-sided, default 0.95
 * @returns the fit; `insufficientData` with no event; `zeroAgeEvents`; `noMaximum` where all events lie at the greatest
 *   age; `notConverged`
 * @throws RangeError as meanCumulativeFunction does, or on a level outside (0, 1)
 * @complexity O(n log n) time, O(n) memory
 * @source Crow (1990), Technometrics 32; Rigdon & Basu (2000), Statistical Methods for the Reliability of Repairable
 *   Systems, ch. 5
 * @oracle equal to the closed form for systems observed alike, in the spec
 * @example pooledPowerLawProcess({ eventUnits: [], eventAges: [], spanUnits: [0], spanEnds: [4] }).kind // => 'insufficientData'
 */
export function pooledPowerLawProcess(sample: RecurrenceSample, level = 0.95): PooledPowerLawOutcome {
  requireLevel(level);
  orderSample(sample);
  const { eventAges, spanEnds } = sample;
  const events = eventAges.length;
  if (events === 0) return insufficientData('events', 1, 0);
  const zeros = Array.from(eventAges).filter((age) => age === 0).length;
  if (zeros > 0) return { kind: 'zeroAgeEvents', count: zeros };
  const greatest = Array.from(spanEnds).reduce((most, end) => Math.max(most, end), 0);
  const logs = Array.from(eventAges).reduce((sum, age) => sum + Math.log(age / greatest), 0);
  if (logs === 0) return { kind: 'noMaximum', reason: 'allEventsAtEnd' };
  const found = maximiseByNewton(profileOf(sample, greatest, logs), [0]);
  if (found.kind !== 'found') return found;
  const shape = Math.exp(found.at[0] ?? 0);
  const reach = normalQuantile(0.5 + level / 2) * Math.sqrt(found.inverseCurvature[0]?.[0] ?? Infinity);
  let growth = 0;
  for (let i = 0; i < spanEnds.length; i += 1) growth += spanEnds[i]! ** shape - startOf(sample, i) ** shape;
  return {
    kind: 'estimated',
    shape,
    shapeLimits: { lower: shape * Math.exp(-reach), upper: shape * Math.exp(reach) },
    rate: events / growth,
    events,
    level,
  };
}

/** Log-likelihood in ln shape with the rate at its best; ages relative to the greatest. */
function profileOf(
  sample: RecurrenceSample,
  greatest: number,
  logs: number,
): (at: readonly number[]) => SecondOrder {
  const events = sample.eventAges.length;
  return ([logShape = 0]) => {
    const shape = Math.exp(logShape);
    const total: [number, number, number] = [0, 0, 0];
    for (let i = 0; i < sample.spanEnds.length; i += 1) {
      addPower(total, sample.spanEnds[i]! / greatest, shape, 1);
      addPower(total, startOf(sample, i) / greatest, shape, -1);
    }
    const [sum, sum1, sum2] = total;
    const first = events / shape + logs - (events * sum1) / sum;
    const second = -events / (shape * shape) - events * (sum2 / sum - (sum1 / sum) ** 2);
    return {
      value: events * (logShape - Math.log(sum)) + (shape - 1) * logs,
      gradient: [shape * first],
      hessian: [[shape * shape * second + shape * first]],
    };
  };
}

function addPower(total: [number, number, number], age: number, shape: number, sign: number): void {
  if (age === 0) return;
  const log = Math.log(age);
  const power = sign * age ** shape;
  total[0] += power;
  total[1] += power * log;
  total[2] += power * log * log;
}
