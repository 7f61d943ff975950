import {
  countChart,
  eventsBetweenChart,
  funnelLimits,
  proportionChart,
  rateChart,
  timeBetweenChart,
  type BinomialCount,
  type EventCount,
} from '@endfloat/statistics';
import { calculated, type CalculationMethod } from './calculation-method.js';
import { refusing } from './refusing.js';

export const controlCharts: CalculationMethod = {
  id: 'control-charts',
  title: 'Did a count, a share, a rate or the gap between events change?',
  name: 'controlChart',
  variant:
    'c, p and u charts at three standard deviations, lower limit not below 0; g and time-between charts at the same tail probabilities; a value on a limit is not out; run of equal side of the centre (8 unless told)',
  source: 'NIST/SEMATECH e-Handbook 6.3.3; Montgomery, Introduction to Statistical Quality Control',
  caseIds: ['nist-wafer-counts', 'nist-wafer-proportions'],
};

export type ChartData =
  | { readonly kind: 'counts'; readonly counts: readonly number[] }
  | { readonly kind: 'proportions'; readonly samples: readonly BinomialCount[] }
  | { readonly kind: 'rates'; readonly samples: readonly EventCount[] }
  | { readonly kind: 'eventsBetween'; readonly gaps: readonly number[] }
  | { readonly kind: 'timesBetween'; readonly times: readonly number[] };

export interface ControlChartCommand {
  readonly data: ChartData;
  readonly centre?: number | undefined;
  readonly baseline?: number | undefined;
  readonly runLength?: number | undefined;
}

/** Control chart with its signals. */
export function calculateControlChart({ data, centre, baseline, runLength }: ControlChartCommand) {
  const options = {
    ...(centre === undefined ? {} : { centre }),
    ...(baseline === undefined ? {} : { baseline }),
    ...(runLength === undefined ? {} : { runLength }),
  };
  const names = ['data', 'centre', 'baseline', 'runLength'] as const;
  const { chart, rows } = refusing([...names], () => {
    switch (data.kind) {
      case 'counts':
        return { chart: countChart(data.counts, options), rows: data.counts.length };
      case 'proportions':
        return { chart: proportionChart(data.samples, options), rows: data.samples.length };
      case 'rates':
        return { chart: rateChart(data.samples, options), rows: data.samples.length };
      case 'eventsBetween':
        return { chart: eventsBetweenChart(data.gaps, options), rows: data.gaps.length };
      case 'timesBetween':
        return { chart: timeBetweenChart(data.times, options), rows: data.times.length };
    }
  });
  return calculated(controlCharts, rows, { result: chart });
}

export const funnelLimitSets: CalculationMethod = {
  id: 'funnel-limits',
  title: 'How far a share may lie from a target by chance, by number of trials',
  name: 'funnelLimits',
  variant: 'exact binomial quantiles with linear interpolation, not below 0 nor above 1',
  source: 'Spiegelhalter (2005), Statistics in Medicine 24:1185-1202, appendix',
  caseIds: ['spiegelhalter-funnel'],
};

/** Limits about a target for each number of trials. */
export function calculateFunnelLimits({
  target,
  trials,
  coverages = [0.95, 0.998],
}: {
  readonly target: number;
  readonly trials: readonly number[];
  readonly coverages?: readonly number[] | undefined;
}) {
  const limits = refusing(['trials', 'target', 'coverages'], () =>
    coverages.flatMap((coverage) =>
      trials.map((size) => ({ trials: size, coverage, ...funnelLimits(target, size, coverage) })),
    ),
  );
  return calculated(funnelLimitSets, trials.length, { target, limits });
}
