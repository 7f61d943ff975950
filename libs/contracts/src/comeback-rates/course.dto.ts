import {
  chartChoices,
  comebackChartKinds,
  type ChartChoice,
  type ComebackChartKind,
} from '@endfloat/reliability';
import { chartSignals, type ChartSignal } from '@endfloat/statistics';
import { costDimensions, type CostDimension } from '@endfloat/workshop/ports';
import {
  EnumField,
  FlagField,
  IntegerField,
  KindField,
  ListField,
  MoneyField,
  NestedField,
  NumberField,
  TextField,
  UnionField,
} from '../fields/index.js';
import { CalculationNeedsMoreDto } from '../calculations/calculation.dto.js';
import type { MoneyDto } from '../quantity/index.js';
import { ComebackBasisResponse } from './rate.dto.js';
import { chartPeriodNames } from './rate-query.dto.js';

export class ComebackCurvePointDto {
  @IntegerField({ description: 'Days since release, counted up.' })
  days!: number;

  @IntegerField({ description: 'Jobs still observed and not come back, just before.' })
  atRisk!: number;

  @IntegerField({ description: 'Jobs that came back on that day.' })
  comebacks!: number;

  @NumberField({ description: 'Share not come back by then.', min: 0, max: 1 })
  notComeBack!: number;

  @NumberField({ description: "Greenwood's standard error; null at 0.", nullable: true, min: 0 })
  standardError!: number | null;

  @NumberField({ description: 'Lower limit; null where there is none.', nullable: true })
  lower!: number | null;

  @NumberField({ description: 'Upper limit; null where there is none.', nullable: true })
  upper!: number | null;
}

export class EstimatedComebackCurveDto {
  @KindField('estimated')
  kind!: 'estimated';

  @IntegerField({ description: 'Jobs observed.' })
  jobs!: number;

  @IntegerField({ description: 'Of those, come back.' })
  comebacks!: number;

  @NumberField({ description: 'Level of the limits, two-sided and pointwise.', min: 0, max: 1 })
  level!: number;

  @TextField({ description: 'Form of the limits.', max: 20, example: 'logLog' })
  limitForm!: string;

  @IntegerField({ description: 'The curve says nothing beyond this day.' })
  lastDay!: number;

  @FlagField({ description: 'The curve fell to 0 before the last day.' })
  exhaustedEarly!: boolean;

  @ListField({ description: 'At the days of comebacks.', max: 40000, type: () => ComebackCurvePointDto })
  points!: ComebackCurvePointDto[];
}

export class NoComebackCurveDto {
  @KindField('noEvents', 'nothing came back: the curve stays at 1')
  kind!: 'noEvents';

  @IntegerField({ description: 'Jobs observed.' })
  jobs!: number;

  @IntegerField({ description: 'Longest observation in days.' })
  lastDay!: number;
}

export class ComebackCurveResponse extends ComebackBasisResponse {
  @UnionField({
    description: 'Time from release to the first comeback, inside its window or not.',
    types: () => [EstimatedComebackCurveDto, NoComebackCurveDto, CalculationNeedsMoreDto],
  })
  curve!: EstimatedComebackCurveDto | NoComebackCurveDto | CalculationNeedsMoreDto;

  @IntegerField({ description: 'Jobs whose vehicle was never seen again: left out, they say nothing.' })
  neverSeen!: number;
}

export class ComebackChartPlaceDto {
  @TextField({ description: 'Period, or moment of the release or complaint that ends a gap.', max: 40 })
  label!: string;

  @NumberField({ description: 'Value charted, in the unit of the chart.', min: 0 })
  value!: number;

  @NumberField({ description: 'Lower limit.', min: 0 })
  lower!: number;

  @NumberField({ description: 'Upper limit.', min: 0 })
  upper!: number;

  @ListField({
    description: 'What is pointed out here.',
    max: 4,
    choice: { values: chartSignals, enumName: 'ChartSignal' },
  })
  signals!: readonly ChartSignal[];

  @IntegerField({ description: 'Jobs of the period whose outcome is known.', nullable: true })
  jobs!: number | null;

  @IntegerField({ description: 'Of those, come back.', nullable: true })
  events!: number | null;

  @IntegerField({ description: 'Windows still running: the place can still change.', nullable: true })
  pending!: number | null;
}

export const comebackChartUnits = ['share', 'perJob', 'jobs', 'days'] as const;

export class EstimatedComebackChartDto {
  @KindField('estimated')
  kind!: 'estimated';

  @EnumField({
    description: 'Unit of the values.',
    values: comebackChartUnits,
    enumName: 'ComebackChartUnit',
  })
  unit!: (typeof comebackChartUnits)[number];

  @NumberField({ description: 'Centre line.', min: 0 })
  centre!: number;

  @NumberField({ description: 'Line whose sides are compared for runs.', min: 0 })
  runLine!: number;

  @ListField({ description: 'In the order of time.', max: 5000, type: () => ComebackChartPlaceDto })
  places!: ComebackChartPlaceDto[];
}

export class NoComebackChartDto {
  @KindField('noVariation', 'no event, or nothing but events: the chart has no width')
  kind!: 'noVariation';

  @NumberField({ description: 'Centre line.', min: 0 })
  centre!: number;
}

export class ComebackChartResponse extends ComebackBasisResponse {
  @EnumField({ description: 'The chart.', values: comebackChartKinds, enumName: 'ComebackChartKind' })
  chart!: ComebackChartKind;

  @EnumField({ description: 'Why this chart.', values: chartChoices, enumName: 'ChartChoice' })
  choice!: ChartChoice;

  @EnumField({ description: 'Periods of release.', values: chartPeriodNames, enumName: 'ChartPeriodName' })
  period!: (typeof chartPeriodNames)[number];

  @UnionField({
    description: 'The chart, or why there is none.',
    types: () => [EstimatedComebackChartDto, NoComebackChartDto, CalculationNeedsMoreDto],
  })
  result!: EstimatedComebackChartDto | NoComebackChartDto | CalculationNeedsMoreDto;
}

export class ComebackCostRowDto {
  @TextField({
    description: 'Cause class or period; null: not attributed yet, or the total.',
    nullable: true,
    max: 60,
  })
  value!: string | null;

  @IntegerField({ description: 'Comebacks.' })
  comebacks!: number;

  @MoneyField({ description: "Minutes of the repeat at the shop's full rate." })
  labour!: MoneyDto;

  @MoneyField({ description: 'Parts used in the repeat.' })
  parts!: MoneyDto;

  @MoneyField({ description: 'Taking in, apologising, looking again.' })
  handling!: MoneyDto;

  @MoneyField({ description: 'All three.' })
  total!: MoneyDto;

  @IntegerField({ description: 'Lines without minutes or price, or in another currency: left out.' })
  gaps!: number;
}

export class ComebackCostsResponse extends ComebackBasisResponse {
  @EnumField({ description: 'What it is told by.', values: costDimensions, enumName: 'CostDimension' })
  by!: CostDimension;

  @ListField({
    description: 'By value, those without one last.',
    max: 10000,
    type: () => ComebackCostRowDto,
  })
  rows!: ComebackCostRowDto[];

  @NestedField({ description: 'All of them.', type: () => ComebackCostRowDto })
  total!: ComebackCostRowDto;
}
