import { insufficientData } from '../descriptive/outcomes.js';
import { requireFinite, requirePositive } from '../distributions/checked-arguments.js';
import { normalSurvival } from '../distributions/normal.js';
import { checkedOptions, judgedPlaces, limitWidth } from './chart-places.js';
import type { ControlChartOptions, ControlChartOutcome } from './control-chart.js';

/** Chance beyond one limit: that of three standard deviations of a normal value, 0.00135. */
const TAIL = normalSurvival(limitWidth);

/**
 * Chart of the times between one event and the next, exponential while the rate is constant, with probability limits:
 * −t̄ ln(1 − 0.00135) and −t̄ ln 0.00135, the same chance of a false signal on each side as a 3σ chart.
 *
 * Below the lower limit means two events closer together than chance allows, above the upper a longer rest. The run
 * line is the median, t̄ ln 2. A time of 0 is allowed and lies below the lower limit.
 *
 * @param times  0 or more, in time order, one unit throughout; the unfinished time since the last event is left out
 * @param options  known centre (mean time), baseline, run length (8)
 * @returns limits and signals per place; a time exactly on a limit is not out. `insufficientData` without a baseline
 *   time; `noVariation` when all baseline times are 0.
 * @throws RangeError on a negative or non-finite time, a centre that is not positive, a bad option
 * @source Montgomery (2013), Introduction to Statistical Quality Control, 7th ed., sec. 7.3.5; probability limits Xie, Goh
 *   & Ranjan (2002), Reliability Engineering & System Safety 77:143–150
 * @oracle cases worked by hand in the spec
 * @example timeBetweenChart([]) // => { kind: 'insufficientData', of: 'baselinePlaces', needed: 1, got: 0 }
 */
export function timeBetweenChart(
  times: readonly number[],
  options: ControlChartOptions = {},
): ControlChartOutcome {
  times.forEach((time, i) => {
    requireFinite(`time ${i}`, time);
    if (time < 0) throw new RangeError(`time ${i} must be 0 or more, got ${time}`);
  });
  const { centre: given, baseline, runLength } = checkedOptions(options, times.length);
  if (given !== undefined) requirePositive('centre', given);
  else if (baseline === 0) return insufficientData('baselinePlaces', 1, 0);
  const centre = given ?? times.slice(0, baseline).reduce((sum, time) => sum + time, 0) / baseline;
  if (centre === 0) return { kind: 'noVariation', centre };
  const runLine = centre * Math.LN2;
  const limits = { lower: -centre * Math.log1p(-TAIL), upper: -centre * Math.log(TAIL) };
  const places = times.map((value) => ({ value, ...limits }));
  return {
    kind: 'estimated',
    chart: 'timeBetween',
    centre,
    runLine,
    places: judgedPlaces(places, runLine, runLength),
  };
}
