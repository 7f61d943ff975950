import { insufficientData } from '../descriptive/outcomes.js';
import { requireCount, requirePositive } from '../distributions/checked-arguments.js';
import { checkedOptions, judgedPlaces, limitWidth } from './chart-places.js';
import type { ControlChartOptions, ControlChartOutcome } from './control-chart.js';

/**
 * g chart: number of uneventful cases between one rare event and the next (geometric, counted from 0), upper limit
 * ḡ + 3√(ḡ(ḡ + 1)). The lower limit is always 0: a cluster of events shows as a run below the run line.
 *
 * Above the limit means fewer events than before, a run below the line means more. The run line is the median of the
 * geometric distribution, since far more than half of its values lie below the mean.
 *
 * @param gaps  whole numbers in time order, 0 when two events follow each other directly
 * @param options  known centre (mean gap), baseline, run length (8)
 * @returns limits and signals per place; a gap exactly on a limit is not out. `insufficientData` without a baseline gap;
 *   `noVariation` when all baseline gaps are 0.
 * @throws RangeError on gaps that are not whole or negative, a centre that is not positive, a bad option
 * @source Benneyan (2001), Health Care Management Science 4:305–318; Kaminsky et al. (1992), J. Quality Technology 24:63–69
 * @oracle cases worked by hand in the spec
 * @example eventsBetweenChart([0, 0, 0]) // => { kind: 'noVariation', centre: 0 }
 */
export function eventsBetweenChart(
  gaps: readonly number[],
  options: ControlChartOptions = {},
): ControlChartOutcome {
  gaps.forEach((gap, i) => requireCount(`gap ${i}`, gap));
  const { centre: given, baseline, runLength } = checkedOptions(options, gaps.length);
  if (given !== undefined) requirePositive('centre', given);
  else if (baseline === 0) return insufficientData('baselinePlaces', 1, 0);
  const centre = given ?? gaps.slice(0, baseline).reduce((sum, gap) => sum + gap, 0) / baseline;
  if (centre === 0) return { kind: 'noVariation', centre };
  // Chance of an event per case is 1 / (1 + mean): the median is where (1 − chance)^(g + 1) = ½, taken as continuous.
  const runLine = Math.max(0, Math.LN2 / Math.log1p(1 / centre) - 1);
  const upper = centre + limitWidth * Math.sqrt(centre * (centre + 1));
  const places = gaps.map((value) => ({ value, lower: 0, upper }));
  return {
    kind: 'estimated',
    chart: 'eventsBetween',
    centre,
    runLine,
    places: judgedPlaces(places, runLine, runLength),
  };
}
