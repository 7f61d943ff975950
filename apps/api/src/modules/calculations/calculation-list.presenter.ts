import type { CalculationList, CalculationListItem, CaseFigureDto } from '@endfloat/contracts';
import type { CaseOutcome } from '@endfloat/metrology';
import type { ProvedCalculation } from '@endfloat/workshop';

export function presentCalculations(calculations: readonly ProvedCalculation[]): CalculationList {
  const items = calculations.map(presentCalculation);
  return {
    areAllReproduced: items.every(({ cases }) => cases.every(({ isReproduced }) => isReproduced)),
    items,
  };
}

function presentCalculation({ method, cases }: ProvedCalculation): CalculationListItem {
  const { id, title, name, variant, source } = method;
  return {
    id,
    address: `/v1/calculations/${id}`,
    title,
    method: { name, variant, source },
    cases: cases.map(({ outcome, ...shown }) => ({
      id: shown.id,
      title: shown.title,
      source: shown.source,
      provenance: shown.provenance,
      input: shown.input,
      isReproduced: outcome.isReproduced,
      figures: outcome.figures.map(presentFigure),
    })),
  };
}

function presentFigure(figure: CaseOutcome['figures'][number]): CaseFigureDto {
  const { name, expected, computed, tolerance, isReproduced } = figure;
  const allowed = tolerance.kind === 'relative' ? tolerance.value * Math.abs(expected) : tolerance.value;
  return { name, expected, computed, allowed, isReproduced };
}
