import {
  croston,
  expectedBackorders,
  newsvendorNormal,
  newsvendorPoisson,
  newsvendorPoissonCost,
  poissonBaseStock,
  syntetosBoylan,
  type IntermittentMethod,
  type ServiceMeasure,
} from '@endfloat/statistics';
import { calculated, type CalculationMethod } from './calculation-method.js';
import { refusing } from './refusing.js';

export const baseStocks: CalculationMethod = {
  id: 'base-stocks',
  title: 'Smallest stock level that keeps a service measure, Poisson demand over the lead time',
  name: 'poissonBaseStock',
  variant:
    'cycleService: P(demand <= level); readyRate (the fill rate of one-for-one replenishment): P(demand <= level - 1); expected backorders beside it',
  source: 'Snyder & Shen (2019), Fundamentals of Supply Chain Theory, 2nd ed., ch. 4; Poisson distribution',
  caseIds: ['poisson-base-stocks'],
};

/** Base stock for a named measure. */
export function calculateBaseStock({
  leadTimeDemand,
  target,
  measure,
}: {
  readonly leadTimeDemand: number;
  readonly target: number;
  readonly measure: ServiceMeasure;
}) {
  const result = refusing(['leadTimeDemand', 'target'], () => {
    const found = poissonBaseStock(leadTimeDemand, target, measure);
    return found.kind === 'found'
      ? { ...found, backordersBelow: expectedBackorders(Math.max(0, found.level - 1), leadTimeDemand) }
      : found;
  });
  return calculated(baseStocks, 0, { result });
}

export const newsvendors: CalculationMethod = {
  id: 'newsvendors',
  title: 'Stock for one period between the cost of too much and of too little',
  name: 'newsvendor',
  variant:
    'smallest level with F(level) >= under / (under + over); normal or Poisson demand; expected cost of that level',
  source: 'Snyder & Shen (2019), Fundamentals of Supply Chain Theory, 2nd ed., 4.3',
  caseIds: ['newsvendor-normal', 'newsvendor-poisson'],
};

export type NewsvendorDemand =
  | { readonly kind: 'normal'; readonly mean: number; readonly standardDeviation: number }
  | { readonly kind: 'poisson'; readonly mean: number };

export interface NewsvendorCommand {
  readonly over: number;
  readonly under: number;
  readonly demand: NewsvendorDemand;
  readonly atLevels?: readonly number[] | undefined;
}

/** Newsvendor level, and for Poisson demand the cost of other levels. */
export function calculateNewsvendor({ over, under, demand, atLevels = [] }: NewsvendorCommand) {
  const costs = { over, under };
  const found = refusing(['demand', 'over', 'under', 'atLevels'], () => ({
    result:
      demand.kind === 'normal'
        ? newsvendorNormal(costs, demand.mean, demand.standardDeviation)
        : newsvendorPoisson(costs, demand.mean),
    costs:
      demand.kind === 'normal'
        ? []
        : atLevels.map((level) => ({
            level,
            expectedCost: newsvendorPoissonCost(costs, demand.mean, level),
          })),
  }));
  return calculated(newsvendors, 0, found);
}

export const intermittentForecasts: CalculationMethod = {
  id: 'intermittent-forecasts',
  title: 'Demand per period where most periods have none',
  name: 'croston',
  variant:
    'size and interval smoothed only at demands, first demand and first interval as start values; syntetosBoylan multiplies by 1 - smoothing / 2',
  source:
    'Croston (1972), Operational Research Quarterly 23:289-303; Syntetos & Boylan (2005), Int. J. Forecasting 21:303-314',
  caseIds: ['product-c-croston'],
};

/** Croston's forecast or the bias-corrected one. */
export function calculateIntermittentForecast({
  series,
  smoothing,
  form = 'croston',
}: {
  readonly series: readonly number[];
  readonly smoothing: number;
  readonly form?: IntermittentMethod | undefined;
}) {
  const result = refusing(['series', 'smoothing'], () =>
    form === 'croston' ? croston(series, smoothing) : syntetosBoylan(series, smoothing),
  );
  return calculated(intermittentForecasts, series.length, { result });
}
