import {
  eventsBetweenChart,
  proportionChart,
  rateChart,
  timeBetweenChart,
  type ControlChartOptions,
  type ControlChartOutcome,
} from '@endfloat/statistics';

export const comebackChartKinds = ['proportion', 'rate', 'eventsBetween', 'timeBetween'] as const;
export type ComebackChartKind = (typeof comebackChartKinds)[number];

/** Jobs released in one period whose outcome is known. */
export interface ChartPeriod {
  readonly atRisk: number;
  /** jobs that came back */
  readonly events: number;
  /** comebacks of them, those of comebacks included */
  readonly comebacks: number;
}

/** Why a chart was taken. */
export const chartChoices = ['askedFor', 'eventsAreMany', 'eventsAreRare'] as const;
export type ChartChoice = (typeof chartChoices)[number];

/**
 * Which chart fits: shares by period where a usual period expects five events or more, else the jobs between one event
 * and the next, whose limits hold for rare events.
 *
 * @param periods  any order; those without a job do not count
 * @returns `proportion` where the median of n times the common share is 5 or more; `eventsBetween` else, also for none
 * @source NIST/SEMATECH e-Handbook 6.3.3.2 (3 sigma limits of a p chart are coarse under n p = 5); Benneyan (2001)
 * @example chartThatFits([{ atRisk: 100, events: 8, comebacks: 9 }]) // => 'proportion'
 */
export function chartThatFits(periods: readonly ChartPeriod[]): 'proportion' | 'eventsBetween' {
  const known = periods
    .filter(({ atRisk }) => atRisk > 0)
    .map(({ atRisk }) => atRisk)
    .sort((a, b) => a - b);
  const jobs = known.reduce((sum, atRisk) => sum + atRisk, 0);
  if (jobs === 0) return 'eventsBetween';
  const share = periods.reduce((sum, { events }) => sum + events, 0) / jobs;
  const median = (known[Math.floor((known.length - 1) / 2)]! + known[Math.floor(known.length / 2)]!) / 2;
  return median * share >= 5 ? 'proportion' : 'eventsBetween';
}

/** What is charted, in the order of release or of complaint. */
export type ChartData =
  | { readonly chart: 'proportion' | 'rate'; readonly periods: readonly ChartPeriod[] }
  /** jobs released between one job that came back and the next */
  | { readonly chart: 'eventsBetween'; readonly gaps: readonly number[] }
  /** days between one comeback and the next */
  | { readonly chart: 'timeBetween'; readonly days: readonly number[] };

/**
 * Control chart of comebacks: p (jobs that came back of jobs), u (comebacks per job), g (jobs between) or t (days between).
 *
 * @param data     periods without a job at risk must be left out
 * @param options  centre known beforehand, baseline, run length
 * @returns limits and signals by place, or why there are none
 * @throws RangeError as the charts themselves
 * @source as `proportionChart`, `rateChart`, `eventsBetweenChart`, `timeBetweenChart`
 * @oracle the charts' own; a case worked by hand in the spec
 */
export function comebackChart(data: ChartData, options: ControlChartOptions = {}): ControlChartOutcome {
  switch (data.chart) {
    case 'proportion':
      return proportionChart(
        data.periods.map(({ events, atRisk }) => ({ successes: events, trials: atRisk })),
        options,
      );
    case 'rate':
      return rateChart(
        data.periods.map(({ comebacks, atRisk }) => ({ events: comebacks, exposure: atRisk })),
        options,
      );
    case 'eventsBetween':
      return eventsBetweenChart(data.gaps, options);
    case 'timeBetween':
      return timeBetweenChart(data.days, options);
  }
}
