import { croston, syntetosBoylan, type IntermittentMethod } from '@endfloat/statistics';
import {
  cheapestLevel,
  demandOfChances,
  mixtureOfDemands,
  poissonDemand,
  smallestLevel,
  summariseDemand,
  type CostLevel,
  type DemandDistribution,
  type DemandSummary,
  type StockLevelOutcome,
  type StockServiceMeasure,
} from '@endfloat/stock';
import { invalidInput } from '../errors/domain.errors.js';

/** Demand as somebody names it, for asking what if. */
export type NamedDemand =
  | { readonly kind: 'rate'; readonly perDay: number }
  | { readonly kind: 'chances'; readonly chances: readonly number[] }
  | {
      readonly kind: 'series';
      readonly pieces: readonly number[];
      readonly periodDays: number;
      readonly smoothing: number;
      readonly form: IntermittentMethod;
    };

export type StockAim =
  | { readonly kind: 'service'; readonly measure: StockServiceMeasure; readonly target: number }
  | { readonly kind: 'costs'; readonly over: number; readonly under: number };

export interface StockLevelPreviewCommand {
  readonly demand: NamedDemand;
  /** lead times that occur, each as often as the others; not for chances, which are over the lead time already */
  readonly leadTimeDays: readonly number[];
  readonly aim: StockAim;
}

export interface IntermittentPreview {
  readonly form: IntermittentMethod;
  readonly perPeriod: number;
  readonly size: number;
  readonly interval: number;
  readonly demands: number;
}

export type StockLevelPreview =
  | {
      readonly kind: 'estimated';
      readonly demand: DemandDistribution;
      readonly summary: DemandSummary;
      readonly forecast: IntermittentPreview | null;
      readonly level: StockLevelOutcome | null;
      readonly cheapest: CostLevel | null;
    }
  | { readonly kind: 'insufficientData'; readonly of: string; readonly needed: number; readonly got: number };

/** Most pieces in a lead time that a preview answers for. */
const mostMean = 5000;

/** A stock level for a demand, lead times and an aim that somebody names. Nothing is read or stored. */
export function previewStockLevel({
  demand,
  leadTimeDays,
  aim,
}: StockLevelPreviewCommand): StockLevelPreview {
  const isOverLeadTime = demand.kind === 'chances';
  if (isOverLeadTime && leadTimeDays.length > 0)
    throw invalidInput('/leadTimeDays', 'absent', 'Chances are over the lead time already: name no days.');
  if (!isOverLeadTime && leadTimeDays.length === 0)
    throw invalidInput('/leadTimeDays', 'required', 'Name the days of at least one lead time.');
  if (demand.kind !== 'series') {
    const over =
      demand.kind === 'chances'
        ? demandOfChances(demand.chances)
        : overLeadTimes(demand.perDay, leadTimeDays);
    return answer(over, null, aim);
  }
  const found = forecastOf(demand);
  if (found.kind === 'insufficientData') return found;
  const { perPeriod, size, interval, demands } = found;
  const forecast = { form: demand.form, perPeriod, size, interval, demands };
  return answer(overLeadTimes(perPeriod / demand.periodDays, leadTimeDays), forecast, aim);
}

function answer(
  demand: DemandDistribution,
  forecast: IntermittentPreview | null,
  aim: StockAim,
): StockLevelPreview {
  return {
    kind: 'estimated',
    demand,
    summary: summariseDemand(demand),
    forecast,
    level: aim.kind === 'service' ? smallestLevel(demand, aim.measure, aim.target) : null,
    cheapest: aim.kind === 'costs' ? cheapestLevel(demand, aim) : null,
  };
}

const forecastOf = ({ pieces, smoothing, form }: Extract<NamedDemand, { kind: 'series' }>) =>
  form === 'croston' ? croston(pieces, smoothing) : syntetosBoylan(pieces, smoothing);

function overLeadTimes(perDay: number, days: readonly number[]): DemandDistribution {
  if (perDay * Math.max(...days) > mostMean)
    throw invalidInput(
      '/demand',
      'range',
      `More than ${String(mostMean)} pieces in a lead time are not worked out piece by piece.`,
    );
  return mixtureOfDemands(days.map((each) => ({ weight: 1, demand: poissonDemand(perDay * each) })));
}
