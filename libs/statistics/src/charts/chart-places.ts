import type { ChartPlace, ChartSignal, ControlChartOptions } from './control-chart.js';

/** Standard deviations between centre and limits. */
export const limitWidth = 3;

/** Relative rounding error within which a value counts as lying exactly on a limit. */
const ON_THE_LINE = 1e-9;

const clearlyAbove = (value: number, limit: number): boolean =>
  value - limit > ON_THE_LINE * Math.max(Math.abs(value), Math.abs(limit));

export interface UnjudgedPlace {
  readonly value: number;
  readonly lower: number;
  readonly upper: number;
}

export interface CheckedOptions {
  readonly centre: number | undefined;
  readonly baseline: number;
  readonly runLength: number;
}

/** Options with their defaults; refuses a run length below 2 and a baseline longer than the series. */
export function checkedOptions(options: ControlChartOptions, places: number): CheckedOptions {
  const { centre, baseline = places, runLength = 8 } = options;
  if (!Number.isSafeInteger(runLength) || runLength < 2) {
    throw new RangeError(`runLength must be a whole number, 2 or more, got ${runLength}`);
  }
  if (!Number.isSafeInteger(baseline) || baseline < 0 || baseline > places) {
    throw new RangeError(`baseline must be a whole number between 0 and ${places}, got ${baseline}`);
  }
  return { centre, baseline, runLength };
}

function limitSignals({ value, lower, upper }: UnjudgedPlace): ChartSignal[] {
  if (clearlyAbove(value, upper)) return ['aboveUpperLimit'];
  return clearlyAbove(lower, value) ? ['belowLowerLimit'] : [];
}

/**
 * Signals of every place. A place exactly on a limit is not out; one exactly on the run line ends a run. A run is
 * signalled from the place that completes it on, as long as it lasts.
 */
export function judgedPlaces(
  places: readonly UnjudgedPlace[],
  runLine: number,
  runLength: number,
): readonly ChartPlace[] {
  let side = 0;
  let run = 0;
  return places.map((place) => {
    const here = clearlyAbove(place.value, runLine) ? 1 : clearlyAbove(runLine, place.value) ? -1 : 0;
    run = here === 0 ? 0 : here === side ? run + 1 : 1;
    side = here;
    const signals = limitSignals(place);
    if (run >= runLength) signals.push(side > 0 ? 'runAboveCentre' : 'runBelowCentre');
    return { ...place, signals };
  });
}
