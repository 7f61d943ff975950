import type {
  ComebackChartResponse,
  ComebackCostRowDto,
  ComebackCostsResponse,
  ComebackCurveResponse,
} from '@endfloat/contracts';
import type { ComebackChartView, ComebackCostsView, ComebackCurveView } from '@endfloat/workshop';
import { presentAmount, presentBasis } from './comeback-basis.presenter.js';

export function presentCurve({ basis, curve, neverSeen }: ComebackCurveView): ComebackCurveResponse {
  return { ...presentBasis(basis, 'curve'), curve: curveOf(curve), neverSeen };
}

function curveOf(curve: ComebackCurveView['curve']): ComebackCurveResponse['curve'] {
  switch (curve.kind) {
    case 'insufficientData':
      return { kind: 'insufficientData', of: 'jobsSeenAgain', needed: curve.needed, got: curve.got };
    case 'noEvents':
      return { kind: 'noEvents', jobs: curve.units, lastDay: curve.lastAge };
    case 'estimated':
      return {
        kind: 'estimated',
        jobs: curve.units,
        comebacks: curve.comebacks,
        level: curve.level,
        limitForm: curve.limitForm,
        lastDay: curve.lastAge,
        exhaustedEarly: curve.exhaustedEarly,
        points: curve.ages.map((days, at) => ({
          days,
          atRisk: curve.atRisk[at] ?? 0,
          comebacks: curve.events[at] ?? 0,
          notComeBack: curve.survival[at] ?? 0,
          standardError: curve.standardErrors[at] ?? null,
          lower: curve.lower[at] ?? null,
          upper: curve.upper[at] ?? null,
        })),
      };
  }
}

const units = { proportion: 'share', rate: 'perJob', eventsBetween: 'jobs', timeBetween: 'days' } as const;

export function presentChart(view: ComebackChartView): ComebackChartResponse {
  const { basis, chart, choice, period } = view;
  return { ...presentBasis(basis, 'chart'), chart, choice, period, result: resultOf(view) };
}

function resultOf({ chart, outcome, places }: ComebackChartView): ComebackChartResponse['result'] {
  switch (outcome.kind) {
    case 'insufficientData':
      return { kind: 'insufficientData', of: outcome.of, needed: outcome.needed, got: outcome.got };
    case 'noVariation':
      return { kind: 'noVariation', centre: outcome.centre };
    case 'estimated':
      return {
        kind: 'estimated',
        unit: units[chart],
        centre: outcome.centre,
        runLine: outcome.runLine,
        places: outcome.places.map(({ value, lower, upper, signals }, at) => ({
          label: places[at]?.label ?? '',
          value,
          lower,
          upper,
          signals,
          jobs: places[at]?.jobs ?? null,
          events: places[at]?.events ?? null,
          pending: places[at]?.pending ?? null,
        })),
      };
  }
}

export function presentCosts({ basis, by, rows, total }: ComebackCostsView): ComebackCostsResponse {
  const present = (row: ComebackCostsView['total']): ComebackCostRowDto => ({
    value: row.value,
    comebacks: row.comebacks,
    labour: presentAmount(row.labour, basis.currency),
    parts: presentAmount(row.parts, basis.currency),
    handling: presentAmount(row.handling, basis.currency),
    total: presentAmount(row.total, basis.currency),
    gaps: row.gaps,
  });
  return { ...presentBasis(basis, 'costs'), by, rows: rows.map(present), total: present(total) };
}
