import { insufficientData } from '../descriptive/outcomes.js';
import { requireBinomialCount, type BinomialCount } from '../proportions/binomial-count.js';
import { checkedOptions, judgedPlaces, limitWidth } from './chart-places.js';
import type { ControlChartOptions, ControlChartOutcome } from './control-chart.js';

/**
 * p chart: shares of successes in samples of equal or different size, limits p̄ ± 3√(p̄(1 − p̄)/n) with each sample's n.
 * Limits are cut off at 0 and 1, beyond which no share can fall.
 *
 * @param samples  successes out of trials in time order, at least one trial each
 * @param options  known centre (strictly between 0 and 1), baseline, run length (8)
 * @returns limits and signals per place; a share exactly on a limit is not out. p̄ is total successes over total trials.
 *   `insufficientData` without a baseline sample; `noVariation` when the baseline is all successes or all failures.
 *   Where n·p̄ is below about 5 the 3σ limits are coarse.
 * @throws RangeError on contradictory counts, a sample without a trial, a centre outside (0, 1), a bad option
 * @source NIST/SEMATECH e-Handbook 6.3.3.2; runs Western Electric (1956)
 * @oracle test/oracles/statistics-regression/published-files.spec.ts (NIST wafer fractions); cases by hand in the spec
 * @example proportionChart([{ successes: 0, trials: 9 }]) // => { kind: 'noVariation', centre: 0 }
 */
export function proportionChart(
  samples: readonly BinomialCount[],
  options: ControlChartOptions = {},
): ControlChartOutcome {
  samples.forEach((sample, i) => {
    requireBinomialCount(sample);
    if (sample.trials === 0) throw new RangeError(`sample ${i} has no trial`);
  });
  const { centre: given, baseline, runLength } = checkedOptions(options, samples.length);
  if (given !== undefined && !(given > 0 && given < 1)) {
    throw new RangeError(`centre must lie strictly between 0 and 1, got ${given}`);
  }
  if (given === undefined && baseline === 0) return insufficientData('baselinePlaces', 1, 0);
  const base = samples.slice(0, baseline);
  const centre =
    given ??
    base.reduce((sum, { successes }) => sum + successes, 0) /
      base.reduce((sum, { trials }) => sum + trials, 0);
  if (centre === 0 || centre === 1) return { kind: 'noVariation', centre };
  const places = samples.map(({ successes, trials }) => {
    const half = limitWidth * Math.sqrt((centre * (1 - centre)) / trials);
    return {
      value: successes / trials,
      lower: Math.max(0, centre - half),
      upper: Math.min(1, centre + half),
    };
  });
  return {
    kind: 'estimated',
    chart: 'proportion',
    centre,
    runLine: centre,
    places: judgedPlaces(places, centre, runLength),
  };
}
