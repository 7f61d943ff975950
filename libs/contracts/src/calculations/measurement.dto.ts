import { guardBandZones, quantityKinds, type GuardBandZone, type QuantityKind } from '@endfloat/metrology';
import {
  EnumField,
  KindField,
  ListField,
  NestedField,
  NumberField,
  QuantityField,
  TextField,
  UnionField,
  type QuantityDto,
} from '../fields/index.js';
import {
  AnswerUnitField,
  CalculationResponse,
  ColumnUnitField,
  LevelField,
  OpenLimitsDto,
  UsedLevelField,
  type UnitCode,
} from './calculation.dto.js';

export class BudgetComponentDto {
  @TextField({ description: 'Where the doubt comes from.', max: 80 })
  name!: string;

  @NumberField({ description: 'Standard uncertainty of the input.', min: 0, max: 1e12 })
  standardUncertainty!: number;

  @NumberField({
    description: 'Degrees of freedom; infinite where null or left out.',
    min: 1e-3,
    max: 1e12,
    nullable: true,
    optional: true,
  })
  degreesOfFreedom?: number | null;

  @NumberField({
    description: 'Change of the result per change of the input.',
    min: -1e12,
    max: 1e12,
    optional: true,
    default: 1,
  })
  sensitivity?: number;
}

export class UncertaintyBudgetRequest {
  @ColumnUnitField('Unit of the result.')
  unit?: UnitCode;

  @ListField({ description: 'Independent contributions.', min: 1, max: 200, type: () => BudgetComponentDto })
  components!: BudgetComponentDto[];

  @LevelField({ description: 'Coverage of the expanded uncertainty.' })
  level?: number;
}

export class BudgetShareDto {
  @TextField({ description: 'Where the doubt comes from.', max: 80 })
  name!: string;

  @NumberField({ description: 'Contribution to the result, in the unit.' })
  standardUncertainty!: number;

  @NumberField({ description: 'Share of the variance.', min: 0, max: 1 })
  share!: number;
}

export class CombinedUncertaintyDto {
  @NumberField({ description: 'Combined standard uncertainty, in the unit.' })
  standardUncertainty!: number;

  @NumberField({ description: 'Effective degrees of freedom; null: infinite.', nullable: true })
  effectiveDegreesOfFreedom!: number | null;

  @NumberField({ description: 'Expanded uncertainty, in the unit.' })
  expanded!: number;

  @NumberField({ description: 'Coverage factor.' })
  coverageFactor!: number;

  @NumberField({ description: 'Degrees of freedom of that factor; null: infinite.', nullable: true })
  coverageDegreesOfFreedom!: number | null;

  @UsedLevelField()
  level!: number;

  @ListField({ description: 'The contributions in the order given.', max: 200, type: () => BudgetShareDto })
  contributions!: readonly BudgetShareDto[];
}

export class UncertaintyBudgetResponse extends CalculationResponse {
  @AnswerUnitField('Unit of the result.')
  unit!: UnitCode;

  @NestedField({ description: 'The budget.', type: () => CombinedUncertaintyDto })
  result!: CombinedUncertaintyDto;
}

export class NormalPriorDto {
  @NumberField({ description: 'Mean of the values beforehand.', min: -1e12, max: 1e12 })
  mean!: number;

  @NumberField({ description: 'Their standard deviation.', min: 1e-12, max: 1e12 })
  standardDeviation!: number;
}

export class ConformanceRequest {
  @ColumnUnitField('Unit of every value.')
  unit?: UnitCode;

  @NumberField({ description: 'Measured value.', min: -1e12, max: 1e12 })
  value!: number;

  @NumberField({ description: 'Its standard uncertainty.', min: 1e-12, max: 1e12 })
  standardUncertainty!: number;

  @NumberField({
    description: 'Degrees of freedom; infinite where null or left out.',
    min: 1e-3,
    max: 1e12,
    nullable: true,
    optional: true,
  })
  degreesOfFreedom?: number | null;

  @NestedField({ description: 'Limits that are to be met.', type: () => OpenLimitsDto })
  permitted!: OpenLimitsDto;

  @NestedField({
    description: 'Values that can be at all; any where left out.',
    type: () => OpenLimitsDto,
    optional: true,
  })
  possible?: OpenLimitsDto;

  @NestedField({
    description: 'What was known of the value beforehand.',
    type: () => NormalPriorDto,
    nullable: true,
    optional: true,
  })
  prior?: NormalPriorDto | null;

  @NumberField({
    description: 'Inside at this probability or more.',
    min: 0,
    max: 1,
    optional: true,
    default: 0.95,
  })
  insideFrom?: number;

  @NumberField({
    description: 'Outside at this probability or less.',
    min: 0,
    max: 1,
    optional: true,
    default: 0.05,
  })
  outsideTo?: number;

  @NumberField({
    description: 'Width of a guard band, where zones are asked for.',
    min: 0,
    max: 1e12,
    optional: true,
  })
  guardBand?: number;
}

const outcomes = ['inside', 'outside', 'undecided'] as const;

export class ConformanceProbabilityDto {
  @KindField('probability')
  kind!: 'probability';

  @NumberField({ description: 'Probability that the limits are met.', min: 0, max: 1 })
  inside!: number;

  @TextField({ description: 'Distribution of the value.', max: 80 })
  method!: string;

  @EnumField({ description: 'The verdict.', values: outcomes, enumName: 'CalculatedOutcome' })
  outcome!: (typeof outcomes)[number];
}

export class ContradictsBoundDto {
  @KindField('contradictsPhysicalBound', 'the value lies where no value can be')
  kind!: 'contradictsPhysicalBound';

  @NumberField({ description: 'Probability of a possible value.', min: 0, max: 1 })
  possibleProbability!: number;
}

const ZoneField = (description: string): PropertyDecorator =>
  EnumField({ description, values: guardBandZones, enumName: 'GuardBandZone', nullable: true });

export class GuardBandZonesDto {
  @NumberField({ description: 'Width of the guard band, in the unit.' })
  guardBand!: number;

  @ZoneField('Zone at the lower limit; null without one.')
  atLower!: GuardBandZone | null;

  @ZoneField('Zone at the upper limit; null without one.')
  atUpper!: GuardBandZone | null;
}

export class ConformanceResponse extends CalculationResponse {
  @AnswerUnitField('Unit of every value.')
  unit!: UnitCode;

  @UnionField({
    description: 'The probability, or why there is none.',
    types: () => [ConformanceProbabilityDto, ContradictsBoundDto],
  })
  result!: ConformanceProbabilityDto | ContradictsBoundDto;

  @NestedField({
    description: 'Guard-band zones; null where not asked for.',
    type: () => GuardBandZonesDto,
    nullable: true,
  })
  zones!: GuardBandZonesDto | null;
}

export class UnitConversionRequest {
  @QuantityField({ description: 'What is to be converted.', kind: 'any' })
  quantity!: QuantityDto;

  @EnumField({
    description: 'What it is a quantity of.',
    values: quantityKinds,
    enumName: 'QuantityKind',
    open: true,
  })
  quantityKind!: QuantityKind;

  @AnswerUnitField('Unit it is wanted in.')
  unit!: UnitCode;
}

/** A converted value may have more digits than one that is sent in. */
export class ConvertedQuantityDto {
  @TextField({
    description: 'Exact or correctly rounded decimal number.',
    max: 80,
    pattern: '^-?[0-9]+(?:\\.[0-9]+)?(?:e[+-]?[0-9]+)?$',
  })
  value!: string;

  @AnswerUnitField('Its unit.')
  unit!: UnitCode;
}

export class UnitConversionResponse extends CalculationResponse {
  @NestedField({ description: 'The same quantity.', type: () => ConvertedQuantityDto })
  result!: ConvertedQuantityDto;
}
