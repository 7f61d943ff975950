import {
  chartThatFits,
  comebackChart,
  timeToComeback,
  type ChartChoice,
  type ChartData,
  type ComebackChartKind,
  type ComebackCurve,
} from '@endfloat/reliability';
import type { ControlChartOutcome } from '@endfloat/statistics';
import type { Clock } from '../ports/clock.port.js';
import type { Caller } from '../ports/roles.js';
import type { RateQuestion, RateTally, SettledJobReads } from '../ports/settled-jobs.port.js';
import type { UnitOfWork } from '../ports/unit-of-work.port.js';
import { askSettledJobs, type RateBasis, type RateQuery } from './ask-settled-jobs.js';

export interface ComebackCurveView {
  readonly basis: RateBasis;
  readonly curve: ComebackCurve;
  /** jobs whose vehicle was never seen again: they say nothing */
  readonly neverSeen: number;
}

/** How soon jobs come back, if they do. */
export class ShowComebackCurveUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(caller: Caller, query: RateQuery): Promise<ComebackCurveView> {
    return askSettledJobs(
      { work: this.work, clock: this.clock },
      caller,
      query,
      async ({ reads, question, basis }) => {
        const tallies = await reads.ages(question);
        const known = tallies.flatMap(({ day, ...rest }) => (day === null ? [] : [{ day, ...rest }]));
        const neverSeen = tallies.find(({ day }) => day === null)?.lastSeen ?? 0;
        return { basis, curve: timeToComeback(known), neverSeen };
      },
    );
  }
}

export const chartPeriods = ['month', 'quarter', 'year'] as const;
export type ChartPeriodName = (typeof chartPeriods)[number];

export interface ComebackChartView {
  readonly basis: RateBasis;
  readonly chart: ComebackChartKind;
  readonly choice: ChartChoice;
  readonly period: ChartPeriodName;
  readonly outcome: ControlChartOutcome;
  /** one a place: period, or release of the job, or complaint that a gap ends with */
  readonly places: readonly ChartPlaceLabel[];
}

export interface ChartPlaceLabel {
  readonly label: string;
  readonly jobs: number | null;
  readonly events: number | null;
  /** of a period: windows still running, so that its place can still change */
  readonly pending: number | null;
}

/** Places of a chart of gaps at most, the latest. */
const mostPlaces = 1000;

/** How comebacks change over time, by the chart that fits their number. */
export class ShowComebackChartUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    query: RateQuery & {
      readonly chart?: ComebackChartKind | undefined;
      readonly period: ChartPeriodName;
      readonly baseline?: number | undefined;
    },
  ): Promise<ComebackChartView> {
    const { chart: wanted, period, baseline, ...narrowed } = query;
    return askSettledJobs(
      { work: this.work, clock: this.clock },
      caller,
      narrowed,
      async ({ reads, question, basis }) => {
        const periods = (await reads.tally(question, period)).filter(({ atRisk }) => atRisk > 0);
        const fitting = chartThatFits(periods.map(countsOf));
        const chart = wanted ?? fitting;
        const { data, places } = await charted(chart, periods, reads, question);
        const choice =
          wanted !== undefined ? 'askedFor' : fitting === 'proportion' ? 'eventsAreMany' : 'eventsAreRare';
        const options = baseline === undefined ? {} : { baseline: Math.min(baseline, places.length) };
        return { basis, chart, choice, period, outcome: comebackChart(data, options), places };
      },
    );
  }
}

const countsOf = ({ atRisk, events, comebacks }: RateTally) => ({ atRisk, events, comebacks });

async function charted(
  chart: ComebackChartKind,
  periods: readonly RateTally[],
  reads: SettledJobReads,
  question: RateQuestion,
): Promise<{ readonly data: ChartData; readonly places: readonly ChartPlaceLabel[] }> {
  const blank = { jobs: null, events: null, pending: null };
  switch (chart) {
    case 'proportion':
    case 'rate':
      return {
        data: { chart, periods: periods.map(countsOf) },
        places: periods.map(({ value, atRisk, events, pending }) => ({
          label: value ?? '',
          jobs: atRisk,
          events,
          pending,
        })),
      };
    case 'eventsBetween': {
      const found = await reads.eventPlaces(question, mostPlaces + 1);
      const isWhole = found.length <= mostPlaces;
      const gaps = found.map(({ place }, at) => place - (found[at - 1]?.place ?? 0) - 1);
      const labels = found.map(({ releasedAt }) => ({ ...blank, label: releasedAt }));
      // The first gap is known only where the list begins with the first job.
      return {
        data: { chart, gaps: isWhole ? gaps : gaps.slice(1) },
        places: isWhole ? labels : labels.slice(1),
      };
    }
    case 'timeBetween': {
      const times = await reads.comebackTimes(question, mostPlaces + 1);
      const days = times.slice(1).map((time, at) => (Date.parse(time) - Date.parse(times[at]!)) / 86_400_000);
      return { data: { chart, days }, places: times.slice(1).map((label) => ({ ...blank, label })) };
    }
  }
}
