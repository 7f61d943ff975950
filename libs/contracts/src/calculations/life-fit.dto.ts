import { lifeFamilies, noMaximumReasons, type LifeFamily } from '@endfloat/statistics';
import {
  EnumField,
  FlagField,
  JoinTypes,
  KindField,
  ListField,
  NestedField,
  NumberField,
  UnionField,
} from '../fields/index.js';
import {
  AnswerUnitField,
  CalculationNeedsMoreDto,
  CalculationNotConvergedDto,
  CalculationResponse,
  ColumnUnitField,
  LevelField,
  OpenLimitsDto,
  UsedLevelField,
  type UnitCode,
} from './calculation.dto.js';
import { mostNumbers, NumbersField } from './numbers.field.js';

const SharesField = (): PropertyDecorator =>
  NumbersField({
    description: 'Shares failed whose life is asked for, such as 0.1 for B10.',
    max: 20,
    from: 1e-9,
    to: 1 - 1e-9,
    optional: true,
    default: [0.1],
  });

export class LifeFitRequest {
  @ColumnUnitField('Unit of the ages.')
  unit?: UnitCode;

  @EnumField({ description: 'Distribution to fit.', values: lifeFamilies, enumName: 'LifeFamily' })
  family!: LifeFamily;

  @NumbersField({
    description: 'Last age at which each unit was known to be good; the life itself where it is known.',
    max: mostNumbers,
    from: 0,
  })
  lower!: number[];

  @NumbersField({
    description:
      'First age at which it had failed: the same as lower for a known life, null while it is still good.',
    max: mostNumbers,
    from: 0,
    holes: true,
  })
  upper!: (number | null)[];

  @NumbersField({
    description: 'Age from which each unit was observed; 0 where left out.',
    max: mostNumbers,
    from: 0,
    optional: true,
  })
  entryAges?: number[];

  @NumbersField({
    description: 'How many like units each row stands for; 1 where left out.',
    max: mostNumbers,
    from: 0,
    optional: true,
  })
  weights?: number[];

  @LevelField()
  level?: number;

  @SharesField()
  failedShares?: number[];

  @NumbersField({
    description: 'Ages at which the share failed is asked for.',
    max: 20,
    from: 1e-300,
    optional: true,
  })
  atAges?: number[];

  @FlagField({
    description: 'Whether limits by the likelihood ratio are searched as well, up to 5000 rows.',
    optional: true,
    default: false,
  })
  withProfileLimits?: boolean;
}

/** An estimate with its Wald limits. */
export class WaldEstimateDto {
  @NumberField({ description: 'The estimate.' })
  estimate!: number;

  @NumberField({ description: 'Lower Wald limit.' })
  lower!: number;

  @NumberField({ description: 'Upper Wald limit.' })
  upper!: number;

  @NumberField({
    description:
      'Standard error on the scale on which the limits are symmetric (the logarithm; for a share the standardised deviate).',
  })
  standardError!: number;

  @UsedLevelField()
  level!: number;
}

class ProfileLimitsDto {
  @NestedField({
    description: 'Limits by the likelihood ratio; null where not asked for.',
    type: () => OpenLimitsDto,
    nullable: true,
  })
  profileLimits!: OpenLimitsDto | null;
}

export class WeibullShapeDto extends JoinTypes(WaldEstimateDto, ProfileLimitsDto) {}

export class LifeOfShareDto extends JoinTypes(WaldEstimateDto, ProfileLimitsDto) {
  @NumberField({ description: 'Share failed.' })
  failedShare!: number;
}

export class FailedByAgeDto extends WaldEstimateDto {
  @NumberField({ description: 'Age, in the unit.' })
  age!: number;
}

export class EstimatedLifeFitDto {
  @KindField('estimated')
  kind!: 'estimated';

  @EnumField({ description: 'Distribution that was fitted.', values: lifeFamilies, enumName: 'LifeFamily' })
  family!: LifeFamily;

  @NumberField({ description: 'Location of the logarithm of the life.' })
  mu!: number;

  @NumberField({ description: 'Scale of the logarithm of the life.' })
  sigma!: number;

  @NumberField({ description: 'Logarithm of the likelihood.' })
  logLikelihood!: number;

  @NumberField({ description: "Akaike's criterion; compares families on the same data." })
  akaike!: number;

  @NumberField({ description: 'Units, by weight.' })
  units!: number;

  @NumberField({ description: 'Lives with a finite upper end, by weight.' })
  events!: number;

  @NumberField({ description: 'Mean life, in the unit.' })
  mean!: number;

  @NumberField({ description: 'Standard deviation of lives, in the unit.' })
  standardDeviation!: number;

  @NestedField({
    description: 'Characteristic life (Weibull), mean (exponential) or median (lognormal), in the unit.',
    type: () => WaldEstimateDto,
  })
  scale!: WaldEstimateDto;

  @NestedField({
    description: 'Weibull shape; null for a lognormal.',
    type: () => WeibullShapeDto,
    nullable: true,
  })
  shape!: WeibullShapeDto | null;

  @ListField({
    description: 'Life by which each share has failed, in the unit.',
    max: 20,
    type: () => LifeOfShareDto,
  })
  lives!: readonly LifeOfShareDto[];

  @ListField({ description: 'Share failed by each age.', max: 20, type: () => FailedByAgeDto })
  failedBy!: readonly FailedByAgeDto[];
}

export class NoLifeMaximumDto {
  @KindField('noMaximum')
  kind!: 'noMaximum';

  @EnumField({
    description: 'Why the likelihood has no maximum.',
    values: noMaximumReasons,
    enumName: 'NoMaximumReason',
  })
  reason!: (typeof noMaximumReasons)[number];

  @NumberField({ description: 'Lives with a finite upper end, by weight.' })
  events!: number;
}

export class ZeroLivesDto {
  @KindField('zeroLives', 'lives of exactly 0, which no such distribution allows')
  kind!: 'zeroLives';

  @NumberField({ description: 'How many; give them as failed before the first age anybody looked.' })
  count!: number;
}

export class LifeFitResponse extends CalculationResponse {
  @AnswerUnitField('Unit of the ages.')
  unit!: UnitCode;

  @UnionField({
    description: 'The fit, or why there is none.',
    types: () => [
      EstimatedLifeFitDto,
      NoLifeMaximumDto,
      ZeroLivesDto,
      CalculationNeedsMoreDto,
      CalculationNotConvergedDto,
    ],
  })
  result!:
    | EstimatedLifeFitDto
    | NoLifeMaximumDto
    | ZeroLivesDto
    | CalculationNeedsMoreDto
    | CalculationNotConvergedDto;
}
