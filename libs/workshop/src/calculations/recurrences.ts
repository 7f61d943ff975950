import type { UnitCode } from '@endfloat/metrology';
import {
  groupedPowerLawProcess,
  laplaceTrendTest,
  meanAtAge,
  meanCumulativeFunction,
  powerLawProcess,
  powerLawTrendTest,
  type RecurrenceCurve,
  type RecurrenceLimitForm,
  type RecurrenceSample,
  reverseArrangements,
  type SingleSystem,
} from '@endfloat/statistics';
import { calculated, type CalculationMethod } from './calculation-method.js';
import { refusing, requireColumns } from './refusing.js';

export const meanCumulativeFunctions: CalculationMethod = {
  id: 'mean-cumulative-functions',
  title: 'Mean number (or cost) of recurring events per unit by age',
  name: 'meanCumulativeFunction',
  variant:
    'Nelson-Aalen form with units at risk at start < age <= end; robust variance of Lawless and Nadeau; limits plain or on the logarithm (the default), pointwise',
  source: 'Nelson (1995), Technometrics 37:147-157; Lawless & Nadeau (1995), Technometrics 37:158-168',
  caseIds: ['valve-seats'],
};

export interface MeanCumulativeFunctionCommand extends RecurrenceSample {
  readonly unit?: UnitCode | undefined;
  readonly eventUnits: readonly number[];
  readonly eventAges: readonly number[];
  readonly spanUnits: readonly number[];
  readonly spanEnds: readonly number[];
  readonly limitForm?: RecurrenceLimitForm | undefined;
  readonly level?: number | undefined;
  readonly atAges?: readonly number[] | undefined;
}

/** Mean cumulative function with what it says at chosen ages. */
export function calculateMeanCumulativeFunction(command: MeanCumulativeFunctionCommand) {
  const { unit = '1', limitForm = 'log', level = 0.95, atAges = [], ...sample } = command;
  const { eventUnits, eventAges, eventSizes, spanUnits, spanStarts, spanEnds } = sample;
  requireColumns({ eventUnits, eventAges, eventSizes });
  requireColumns({ spanUnits, spanStarts, spanEnds });
  const names = ['eventAges', 'eventUnits', 'eventSizes', 'spanUnits', 'spanStarts', 'spanEnds'] as const;
  const curve = refusing([...names], () => meanCumulativeFunction(sample, { limitForm, level }));
  const result =
    curve.kind === 'estimated' ? { ...curve, at: atAges.map((age) => atAge(curve, age)) } : curve;
  return calculated(meanCumulativeFunctions, eventAges.length, { unit, result });
}

function atAge(curve: RecurrenceCurve, age: number) {
  const found = meanAtAge(curve, age);
  if (found.kind === 'beyondObservation')
    return { age, mean: null, standardError: null, lower: null, upper: null };
  const { mean, standardError, lower, upper } = found;
  return { age, mean, standardError, lower, upper };
}

export const powerLawProcesses: CalculationMethod = {
  id: 'power-law-processes',
  title: 'Repairs that come ever faster or ever slower: E N(t) = rate x t^shape',
  name: 'powerLawProcess',
  variant:
    'maximum likelihood of one system from exact ages (chi-square limits of the shape with 2n degrees of freedom by time, 2(n - 1) by failure; unbiased shape (n - 1)/n or (n - 2)/n times it), or from counts in intervals (likelihood with Wald limits on the logarithm)',
  source: 'MIL-HDBK-189 (1981), appendix C; NIST/SEMATECH e-Handbook 8.4.5.2',
  caseIds: ['nist-repairs-power-law', 'mil-hdbk-189-power-law'],
};

export type PowerLawData =
  | ({ readonly kind: 'exact'; readonly eventAges: readonly number[] } & SingleSystem)
  | {
      readonly kind: 'grouped';
      readonly starts: readonly number[];
      readonly ends: readonly number[];
      readonly counts: readonly number[];
    };

export interface PowerLawCommand {
  readonly unit?: UnitCode | undefined;
  readonly data: PowerLawData;
  readonly level?: number | undefined;
}

/** Power-law process from exact ages or from counts. */
export function calculatePowerLawProcess({ unit = '1', data, level = 0.95 }: PowerLawCommand) {
  if (data.kind === 'exact') {
    const fit = refusing(['eventAges', 'end'], () => powerLawProcess(data, level), '/data');
    const result = fit.kind === 'estimated' ? { ...fit, kind: 'estimatedFromAges' as const } : fit;
    return calculated(powerLawProcesses, data.eventAges.length, { unit, result });
  }
  requireColumns({ 'data/starts': data.starts, 'data/ends': data.ends, 'data/counts': data.counts });
  const fit = refusing(['starts', 'ends', 'counts'], () => groupedPowerLawProcess(data, level), '/data');
  const result = fit.kind === 'estimated' ? { ...fit, kind: 'estimatedFromCounts' as const } : fit;
  return calculated(powerLawProcesses, data.starts.length, { unit, result });
}

export const trendTests: CalculationMethod = {
  id: 'trend-tests',
  title: 'Do the repairs of systems come at a steady rate?',
  name: 'laplaceAndChiSquare',
  variant:
    'Laplace statistic above 0 for deterioration; MIL-HDBK-189 chi-square of 2 sum ln(T/t), low for deterioration; two-sided p-values; last event of a failure-terminated system left out; reverse arrangements of the gaps of the first system',
  source:
    'Ascher & Feingold (1984), Repairable Systems Reliability; MIL-HDBK-189 (1981); NIST/SEMATECH e-Handbook 8.2.3.4',
  caseIds: ['nist-repairs-trend-tests', 'mil-hdbk-189-trend-tests'],
};

export interface TrendTestCommand {
  readonly unit?: UnitCode | undefined;
  readonly systems: readonly ({ readonly eventAges: readonly number[] } & SingleSystem)[];
}

/** Tests of a steady rate against a trend. */
export function calculateTrendTests({ unit = '1', systems }: TrendTestCommand) {
  const [first] = systems;
  const result = refusing(['systems'], () => ({
    laplace: laplaceTrendTest(systems),
    chiSquare: powerLawTrendTest(systems),
    reverseArrangements: reverseArrangements(first?.eventAges ?? []),
  }));
  const observations = systems.reduce((sum, { eventAges }) => sum + eventAges.length, 0);
  return calculated(trendTests, observations, { unit, ...result });
}
