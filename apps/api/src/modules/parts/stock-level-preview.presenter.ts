import type { StockLevelPreviewRequest, StockLevelPreviewResponse } from '@endfloat/contracts';
import type { StockLevelPreview, StockLevelPreviewCommand } from '@endfloat/workshop';
import { presentLevel } from './order-proposals.presenter.js';
import { presentPoints, presentSummary } from './part-needs.presenter.js';

export function toPreview({ demand, leadTimeDays, aim }: StockLevelPreviewRequest): StockLevelPreviewCommand {
  return {
    demand:
      demand.kind === 'chances'
        ? { kind: demand.kind, chances: demand.vans.map(({ chance }) => chance) }
        : { ...demand },
    leadTimeDays,
    aim: { ...aim },
  };
}

export function presentPreview(found: StockLevelPreview): StockLevelPreviewResponse {
  if (found.kind === 'insufficientData') return { outcome: { ...found } };
  const { kind, demand, summary, forecast, level, cheapest } = found;
  return {
    outcome: {
      kind,
      demand: presentSummary(summary),
      points: presentPoints(demand),
      forecast: forecast === null ? null : { ...forecast },
      level: level === null ? null : presentLevel(level),
      cheapest: cheapest === null ? null : { ...cheapest },
    },
  };
}
