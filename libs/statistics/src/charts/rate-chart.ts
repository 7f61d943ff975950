import { insufficientData } from '../descriptive/outcomes.js';
import { requireCount, requirePositive } from '../distributions/checked-arguments.js';
import { checkedOptions, judgedPlaces, limitWidth } from './chart-places.js';
import type { ControlChartOptions, ControlChartOutcome } from './control-chart.js';

/** Events during an exposure, in the caller's unit of exposure. */
export interface EventCount {
  readonly events: number;
  readonly exposure: number;
}

/** Refuses counts that are not whole and exposures that are not positive. */
export function requireEventCounts(counts: readonly EventCount[]): void {
  counts.forEach(({ events, exposure }, i) => {
    requireCount(`events of place ${i}`, events);
    requirePositive(`exposure of place ${i}`, exposure);
  });
}

/**
 * u chart: events per unit of exposure where exposures differ, limits ū ± 3√(ū / exposure).
 * A lower limit below 0 is drawn at 0, where no rate can fall below it.
 *
 * @param counts  events and positive exposure in time order
 * @param options  known centre (events per unit), baseline, run length (8)
 * @returns limits and signals per place, values as rates; a rate exactly on a limit is not out. ū is total events over
 *   total exposure. `insufficientData` without a baseline place; `noVariation` when the baseline has no event.
 * @throws RangeError on counts that are not whole, exposures or a centre that are not positive, a bad option
 * @source Montgomery (2013), Introduction to Statistical Quality Control, 7th ed., sec. 7.3; runs Western Electric (1956)
 * @oracle cases worked by hand in the spec; equal exposures give the c chart
 * @example rateChart([{ events: 0, exposure: 2 }]) // => { kind: 'noVariation', centre: 0 }
 */
export function rateChart(
  counts: readonly EventCount[],
  options: ControlChartOptions = {},
): ControlChartOutcome {
  requireEventCounts(counts);
  const { centre: given, baseline, runLength } = checkedOptions(options, counts.length);
  if (given !== undefined) requirePositive('centre', given);
  else if (baseline === 0) return insufficientData('baselinePlaces', 1, 0);
  const base = counts.slice(0, baseline);
  const centre =
    given ??
    base.reduce((sum, { events }) => sum + events, 0) / base.reduce((sum, { exposure }) => sum + exposure, 0);
  if (centre === 0) return { kind: 'noVariation', centre };
  const places = counts.map(({ events, exposure }) => {
    const half = limitWidth * Math.sqrt(centre / exposure);
    return { value: events / exposure, lower: Math.max(0, centre - half), upper: centre + half };
  });
  return {
    kind: 'estimated',
    chart: 'rate',
    centre,
    runLine: centre,
    places: judgedPlaces(places, centre, runLength),
  };
}
