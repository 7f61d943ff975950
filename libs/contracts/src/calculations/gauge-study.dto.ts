import {
  EnumField,
  FlagField,
  IntegerField,
  KindField,
  ListField,
  NestedField,
  NumberField,
  TextField,
  UnionField,
} from '../fields/index.js';
import { AnswerUnitField, CalculationResponse, ColumnUnitField, type UnitCode } from './calculation.dto.js';

export class GaugeMeasurementDto {
  @TextField({ description: 'The thing that was measured.', max: 80 })
  object!: string;

  @TextField({ description: 'Who or what measured it.', max: 80 })
  appraiser!: string;

  @NumberField({ description: 'The reading.', min: -1e12, max: 1e12 })
  value!: number;
}

/** How a study is laid out. */
export const gaugeDesigns = ['crossed', 'averageAndRange', 'nested'] as const;

export class GaugeStudyRequest {
  @ColumnUnitField('Unit of the readings.')
  unit?: UnitCode;

  @EnumField({
    description: 'How the study is laid out and worked.',
    values: gaugeDesigns,
    enumName: 'GaugeDesign',
    optional: true,
    default: 'crossed',
  })
  design?: (typeof gaugeDesigns)[number];

  @ListField({ description: 'Every reading, any order.', max: 5000, type: () => GaugeMeasurementDto })
  measurements!: GaugeMeasurementDto[];

  @NumberField({
    description: 'The interaction is pooled above this p-value (crossed).',
    min: 0,
    max: 1,
    optional: true,
    default: 0.25,
  })
  poolingLevel?: number;

  @NumberField({ description: 'Width of the tolerance.', min: 1e-12, max: 1e12, optional: true })
  tolerance?: number;
}

export class VarianceSourceDto {
  @NumberField({ description: 'Sum of squares.' })
  sumOfSquares!: number;

  @IntegerField({ description: 'Degrees of freedom.' })
  degreesOfFreedom!: number;

  @NumberField({ description: 'Mean square.' })
  meanSquare!: number;
}

export class CrossedSourcesDto {
  @NestedField({ description: 'Between objects.', type: () => VarianceSourceDto })
  objects!: VarianceSourceDto;

  @NestedField({ description: 'Between appraisers.', type: () => VarianceSourceDto })
  appraisers!: VarianceSourceDto;

  @NestedField({ description: 'Interaction of the two.', type: () => VarianceSourceDto })
  interaction!: VarianceSourceDto;

  @NestedField({ description: 'Repeats.', type: () => VarianceSourceDto })
  error!: VarianceSourceDto;
}

export class NestedSourcesDto {
  @NestedField({ description: 'Between appraisers.', type: () => VarianceSourceDto })
  appraisers!: VarianceSourceDto;

  @NestedField({ description: 'Between objects of one appraiser.', type: () => VarianceSourceDto })
  objectsWithinAppraisers!: VarianceSourceDto;

  @NestedField({ description: 'Repeats.', type: () => VarianceSourceDto })
  error!: VarianceSourceDto;
}

export class ContributionPercentDto {
  @NumberField({ description: 'Repeatability, % of the variance.' })
  repeatability!: number;

  @NumberField({ description: 'Reproducibility, % of the variance.' })
  reproducibility!: number;

  @NumberField({ description: 'Gauge, % of the variance.' })
  gauge!: number;

  @NumberField({ description: 'Objects, % of the variance.' })
  objects!: number;
}

export class GaugeVariationDto {
  @NumberField({ description: 'Repeatability (EV), standard deviation in the unit.' })
  repeatability!: number;

  @NumberField({ description: 'Reproducibility (AV), standard deviation in the unit.' })
  reproducibility!: number;

  @NumberField({ description: 'Both together (GRR), standard deviation in the unit.' })
  gauge!: number;

  @NumberField({ description: 'Objects (PV), standard deviation in the unit.' })
  objects!: number;

  @NumberField({ description: 'Total (TV), standard deviation in the unit.' })
  total!: number;

  @NumberField({ description: 'GRR as % of the total standard deviation.' })
  gaugePercentOfTotal!: number;

  @NestedField({ description: 'Shares of the variance.', type: () => ContributionPercentDto })
  contributionPercent!: ContributionPercentDto;

  @NumberField({
    description: 'Six sigma of the gauge as % of the tolerance; null without one.',
    nullable: true,
  })
  gaugePercentOfTolerance!: number | null;

  @IntegerField({
    description: 'Categories that can be told apart; null where the gauge shows no variation.',
    nullable: true,
  })
  distinctCategories!: number | null;
}

export class InteractionTestDto {
  @NumberField({ description: 'F of the interaction.' })
  f!: number;

  @NumberField({ description: 'Its p-value.', min: 0, max: 1 })
  pValue!: number;
}

class WithVariationDto {
  @NestedField({ description: 'What varies how much.', type: () => GaugeVariationDto })
  variation!: GaugeVariationDto;
}

export class CrossedGaugeStudyDto extends WithVariationDto {
  @KindField('crossed')
  kind!: 'crossed';

  @NestedField({ description: 'Table of the analysis of variance.', type: () => CrossedSourcesDto })
  sources!: CrossedSourcesDto;

  @NestedField({
    description: 'Test of the interaction; null where there is nothing to test by.',
    type: () => InteractionTestDto,
    nullable: true,
  })
  interactionTest!: InteractionTestDto | null;

  @FlagField({ description: 'Whether the interaction was pooled into repeatability.' })
  isInteractionPooled!: boolean;
}

export class AverageAndRangeStudyDto extends WithVariationDto {
  @KindField('averageAndRange')
  kind!: 'averageAndRange';

  @NumberField({ description: 'Mean range of the repeats, in the unit.' })
  meanRange!: number;

  @NumberField({ description: 'Range of the appraisers’ means, in the unit.' })
  appraiserRange!: number;

  @NumberField({ description: 'Range of the objects’ means, in the unit.' })
  objectRange!: number;
}

export class NestedGaugeStudyDto extends WithVariationDto {
  @KindField('nested')
  kind!: 'nested';

  @NestedField({ description: 'Table of the analysis of variance.', type: () => NestedSourcesDto })
  sources!: NestedSourcesDto;
}

export class GaugeStudyNeedsMoreDto {
  @KindField('insufficientData')
  kind!: 'insufficientData';

  @TextField({ description: 'What is needed.', max: 120 })
  needed!: string;

  @IntegerField({ description: 'How many there are.' })
  got!: number;
}

export class GaugeStudyNotBalancedDto {
  @KindField('notBalanced', 'not every appraiser measured every object equally often')
  kind!: 'notBalanced';

  @TextField({ description: 'Object with another number of readings.', max: 80 })
  object!: string;

  @TextField({ description: 'Appraiser who has them.', max: 80 })
  appraiser!: string;

  @IntegerField({ description: 'How many.' })
  count!: number;
}

const studyResults = () => [
  CrossedGaugeStudyDto,
  AverageAndRangeStudyDto,
  NestedGaugeStudyDto,
  GaugeStudyNeedsMoreDto,
  GaugeStudyNotBalancedDto,
];

export class GaugeStudyResponse extends CalculationResponse {
  @AnswerUnitField('Unit of the readings.')
  unit!: UnitCode;

  @UnionField({ description: 'The study, or why there is none.', types: studyResults })
  result!: InstanceType<ReturnType<typeof studyResults>[number]>;
}
