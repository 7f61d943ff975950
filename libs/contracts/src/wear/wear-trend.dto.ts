import { unitCodes, type UnitCode } from '@endfloat/metrology';
import { borrowedStrengths, wearDirections, type BorrowedStrength, type WearDirection } from '@endfloat/wear';
import {
  EnumField,
  FlagField,
  IdField,
  IntegerField,
  KindField,
  ListField,
  NestedField,
  NumberField,
  TextField,
  UnionField,
} from '../fields/index.js';
import {
  AllTiedDto,
  CalculationLimitsDto,
  CalculationMethodDto,
  CalculationNeedsMoreDto,
  EstimatedInverseDto,
  EstimatedMannKendallDto,
  EstimatedTheilSenDto,
  ExactlyDeterminedLineDto,
  SlopeNotSignificantDto,
} from '../calculations/index.js';
import {
  ReadingLeftOutDto,
  WearChanceField,
  WearLimitDto,
  WearPointDto,
  type WearChanceCaseDto,
} from './wear-parts.dto.js';

export class WearLevelDto {
  @NumberField({ description: 'Level now, in the unit.' })
  value!: number;

  @NumberField({ description: 'Its standard uncertainty, in the unit.', min: 0 })
  standardUncertainty!: number;
}

export class WearRateDto extends CalculationLimitsDto {
  @NumberField({ description: 'Wear, unit per 1000 km in the direction of wear.' })
  perThousandKm!: number;
}

export class DistanceToLimitDto {
  @NumberField({
    description: 'Median distance from now to the limit, km; null: farther than 10 million.',
    nullable: true,
  })
  median!: number | null;

  @NumberField({ description: 'Lower end of the interval, km.' })
  lower!: number;

  @NumberField({ description: 'Upper end, km; null: farther than 10 million.', nullable: true })
  upper!: number | null;

  @NumberField({ description: 'Two-sided level of the interval.', min: 0, max: 1 })
  level!: number;
}

export class AccelerationTestDto {
  @KindField('tested')
  kind!: 'tested';

  @NumberField({ description: 'Curvature over its standard error; positive: faster and faster.' })
  z!: number;

  @NumberField({ description: 'P(z at least this large) at a steady rate.', min: 0, max: 1 })
  pAccelerating!: number;

  @NumberField({ description: 'Two-sided p-value.', min: 0, max: 1 })
  pTwoSided!: number;

  @FlagField({ description: 'Whether a steady rate is too hopeful (p below 0.05).' })
  isAccelerating!: boolean;
}

export class InstrumentBiasDto {
  @IdField({ description: 'The instrument.' })
  instrumentId!: string;

  @IntegerField({ description: 'Points by it.' })
  points!: number;

  @NumberField({
    description: 'What it is found to read too much, in the unit; the trend has allowed for it.',
  })
  bias!: number;

  @NumberField({ description: 'Its standard uncertainty, in the unit.', min: 0 })
  standardUncertainty!: number;
}

export class CheckedLineDto {
  @KindField('estimated')
  kind!: 'estimated';

  @NumberField({ description: 'Slope, unit per km.' })
  slope!: number;

  @NumberField({ description: 'Its standard error, unit per km.' })
  slopeStandardError!: number;

  @NumberField({ description: 'Height at fitting, in the unit.' })
  intercept!: number;
}

export class NoLineDto {
  @KindField('noLine')
  kind!: 'noLine';
}

const lineCases = () => [CheckedLineDto, ExactlyDeterminedLineDto, CalculationNeedsMoreDto];
const toLimitCases = () => [EstimatedInverseDto, SlopeNotSignificantDto, NoLineDto];

export class WearHandChecksDto {
  @UnionField({
    description: 'Weighted least squares; an interval from it would cover too little.',
    types: lineCases,
  })
  leastSquares!: InstanceType<ReturnType<typeof lineCases>[number]>;

  @UnionField({ description: 'Where that line meets the limit, km from now.', types: toLimitCases })
  leastSquaresToLimit!: InstanceType<ReturnType<typeof toLimitCases>[number]>;

  @UnionField({
    description: 'Theil-Sen slope, unit per km.',
    types: () => [EstimatedTheilSenDto, CalculationNeedsMoreDto],
  })
  theilSen!: EstimatedTheilSenDto | CalculationNeedsMoreDto;

  @UnionField({
    description: 'Mann-Kendall test.',
    types: () => [EstimatedMannKendallDto, AllTiedDto, CalculationNeedsMoreDto],
  })
  mannKendall!: EstimatedMannKendallDto | AllTiedDto | CalculationNeedsMoreDto;
}

export class EstimatedWearDto {
  @KindField('estimated')
  kind!: 'estimated';

  @EnumField({
    description: "Whose strength it rests on beside the part's own readings.",
    values: borrowedStrengths,
    enumName: 'BorrowedStrength',
  })
  borrowed!: BorrowedStrength;

  @NumberField({ description: 'Distance since fitting at present, km.', min: 0 })
  nowKm!: number;

  @NestedField({ description: 'Level at present.', type: () => WearLevelDto })
  level!: WearLevelDto;

  @NestedField({ description: 'Rate of wear with its interval.', type: () => WearRateDto })
  rate!: WearRateDto;

  @NestedField({ description: 'Distance left to the limit.', type: () => DistanceToLimitDto })
  distanceToLimit!: DistanceToLimitDto;

  @NumberField({ description: 'Probability that the limit is reached already.', min: 0, max: 1 })
  reachedNow!: number;

  @UnionField({
    description: 'Whether wear gets faster.',
    types: () => [AccelerationTestDto, CalculationNeedsMoreDto],
  })
  acceleration!: AccelerationTestDto | CalculationNeedsMoreDto;

  @NumberField({ description: 'Distance between first and last point, km.', min: 0 })
  observedKm!: number;

  @FlagField({ description: 'The median lies farther beyond the last point than the points lie apart.' })
  isBeyondData!: boolean;

  @ListField({
    description: 'Bias of each instrument where more than one was used.',
    max: 100,
    type: () => InstrumentBiasDto,
  })
  instruments!: readonly InstrumentBiasDto[];

  @NestedField({ description: 'What a person would check beside it.', type: () => WearHandChecksDto })
  handChecks!: WearHandChecksDto;
}

export class RiseWithinUncertaintyDto {
  @KindField(
    'riseWithinUncertainty',
    'the points differ by less than their doubt, and no fleet lends strength',
  )
  kind!: 'riseWithinUncertainty';

  @NumberField({ description: 'Greatest difference of two points, in the unit.' })
  rise!: number;

  @NumberField({ description: 'Expanded uncertainty (k = 2) of that difference, in the unit.' })
  expandedUncertainty!: number;
}

export class NoWearLimitDto {
  @KindField(
    'noWearLimit',
    'no limit that may be judged by applies to this vehicle: set one, or confirm a published one',
  )
  kind!: 'noWearLimit';
}

const wearCases = () => [EstimatedWearDto, RiseWithinUncertaintyDto, NoWearLimitDto, CalculationNeedsMoreDto];

export class WearSeriesDto {
  @IdField({ description: 'The fitted part.' })
  fittedPartId!: string;

  @TextField({
    description: 'One of several like places of the part; null where there is only one.',
    nullable: true,
    max: 80,
  })
  place!: string | null;

  @TextField({ description: 'Id of the characteristic.', max: 120 })
  characteristic!: string;

  @EnumField({ description: 'Unit of every level of the series.', values: unitCodes, enumName: 'AnyUnit' })
  unit!: UnitCode;

  @EnumField({
    description: 'Which way it goes as the part wears.',
    values: wearDirections,
    enumName: 'TrendDirection',
  })
  direction!: WearDirection;

  @NestedField({
    description: 'The limit distance is counted to; null where none applies.',
    type: () => WearLimitDto,
    nullable: true,
  })
  limit!: WearLimitDto | null;

  @NestedField({ description: 'How the trend is made.', type: () => CalculationMethodDto })
  method!: CalculationMethodDto;

  @IntegerField({ description: 'As-found readings behind the points.' })
  readings!: number;

  @ListField({
    description: 'Gauge studies the repeatability of the readings was taken from.',
    max: 100,
    ids: true,
  })
  gaugeStudyIds!: readonly string[];

  @ListField({ description: 'Points, by distance.', max: 10_000, type: () => WearPointDto })
  points!: readonly WearPointDto[];

  @ListField({
    description: 'Readings that are kept out, with the reason.',
    max: 10_000,
    type: () => ReadingLeftOutDto,
  })
  leftOut!: readonly ReadingLeftOutDto[];

  @UnionField({ description: 'The trend, or why there is none.', types: wearCases })
  trend!: InstanceType<ReturnType<typeof wearCases>[number]>;

  @WearChanceField()
  chance!: WearChanceCaseDto | null;
}
