import { insufficientData } from '../descriptive/outcomes.js';
import { requireCount, requirePositive } from '../distributions/checked-arguments.js';
import { checkedOptions, judgedPlaces, limitWidth } from './chart-places.js';
import type { ControlChartOptions, ControlChartOutcome } from './control-chart.js';

/**
 * c chart: counts of events in equal areas of opportunity, limits c̄ ± 3√c̄ (Poisson).
 * A lower limit below 0 is drawn at 0, where no count can fall below it.
 *
 * @param counts  whole numbers in time order
 * @param options  known centre, baseline, run length (8: Western Electric rule 4)
 * @returns limits and signals per place; a count exactly on a limit is not out. `insufficientData` without a baseline
 *   count; `noVariation` when the baseline has no event. Below a mean of about 5 the 3σ limits are coarse.
 * @throws RangeError on counts that are not whole or negative, a centre that is not positive, a bad option
 * @source NIST/SEMATECH e-Handbook 6.3.3.1; runs Western Electric (1956), Statistical Quality Control Handbook
 * @oracle test/oracles/statistics-regression/published-files.spec.ts (NIST wafer counts); cases worked by hand in the spec
 * @example countChart([0, 0]) // => { kind: 'noVariation', centre: 0 }
 */
export function countChart(
  counts: readonly number[],
  options: ControlChartOptions = {},
): ControlChartOutcome {
  counts.forEach((count, i) => requireCount(`count ${i}`, count));
  const { centre: given, baseline, runLength } = checkedOptions(options, counts.length);
  if (given !== undefined) requirePositive('centre', given);
  else if (baseline === 0) return insufficientData('baselinePlaces', 1, 0);
  const centre = given ?? counts.slice(0, baseline).reduce((sum, count) => sum + count, 0) / baseline;
  if (centre === 0) return { kind: 'noVariation', centre };
  const half = limitWidth * Math.sqrt(centre);
  const limits = { lower: Math.max(0, centre - half), upper: centre + half };
  const places = counts.map((value) => ({ value, ...limits }));
  return {
    kind: 'estimated',
    chart: 'count',
    centre,
    runLine: centre,
    places: judgedPlaces(places, centre, runLength),
  };
}
