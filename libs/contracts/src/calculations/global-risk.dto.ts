import { KindField, NestedField, NumberField, UnionField } from '../fields/index.js';
import {
  AnswerUnitField,
  CalculationResponse,
  ColumnUnitField,
  OpenLimitsDto,
  type UnitCode,
} from './calculation.dto.js';

export class NormalPopulationDto {
  @KindField('normal')
  kind!: 'normal';

  @NumberField({ description: 'Mean of the true values.', min: -1e12, max: 1e12 })
  mean!: number;

  @NumberField({ description: 'Their standard deviation.', min: 1e-12, max: 1e12 })
  standardDeviation!: number;
}

export class GammaPopulationDto {
  @KindField('gamma')
  kind!: 'gamma';

  @NumberField({ description: 'Shape of the true values.', min: 0.01, max: 1e6 })
  shape!: number;

  @NumberField({ description: 'Rate, per unit.', min: 1e-9, max: 1e9 })
  rate!: number;
}

export class GlobalRiskRequest {
  @ColumnUnitField('Unit of every value.')
  unit?: UnitCode;

  @UnionField({
    description: 'How the true values are spread.',
    types: () => [NormalPopulationDto, GammaPopulationDto],
  })
  population!: NormalPopulationDto | GammaPopulationDto;

  @NumberField({ description: 'Standard uncertainty of a measurement.', min: 1e-12, max: 1e12 })
  standardUncertainty!: number;

  @NestedField({ description: 'Limits that true values are to meet.', type: () => OpenLimitsDto })
  permitted!: OpenLimitsDto;

  @NestedField({
    description: 'Limits that measured values are to meet; the same where left out.',
    type: () => OpenLimitsDto,
    optional: true,
  })
  acceptance?: OpenLimitsDto;

  @NumberField({
    description: 'Consumer risk whose acceptance limit is asked for (a single upper limit).',
    min: 1e-9,
    max: 0.5,
    optional: true,
  })
  wantedConsumerRisk?: number;
}

export class GlobalRiskDto {
  @NumberField({ description: 'Share of true values that do not meet the limits.', min: 0, max: 1 })
  nonconforming!: number;

  @NumberField({ description: 'Share that is bad and accepted.', min: 0, max: 1 })
  consumerRisk!: number;

  @NumberField({ description: 'Share that is good and refused.', min: 0, max: 1 })
  producerRisk!: number;
}

export class EstimatedAcceptanceDto {
  @KindField('estimated')
  kind!: 'estimated';

  @NumberField({ description: 'Accept measured values up to this, in the unit.' })
  acceptanceLimit!: number;

  @NestedField({ description: 'Risks with that limit.', type: () => GlobalRiskDto })
  risk!: GlobalRiskDto;
}

export class AcceptanceNotReachableDto {
  @KindField('notReachable', 'no acceptance limit has this risk')
  kind!: 'notReachable';

  @NumberField({ description: 'Least consumer risk there is.' })
  leastConsumerRisk!: number;

  @NumberField({ description: 'Greatest consumer risk there is.' })
  greatestConsumerRisk!: number;
}

export class AcceptanceNotFoundDto {
  @KindField('notConverged', 'the search ended before its criterion was met')
  kind!: 'notConverged';
}

export class GlobalRiskResponse extends CalculationResponse {
  @AnswerUnitField('Unit of every value.')
  unit!: UnitCode;

  @NestedField({ description: 'The risks.', type: () => GlobalRiskDto })
  result!: GlobalRiskDto;

  @UnionField({
    description: 'Acceptance limit of the wanted risk; null where none was wanted.',
    types: () => [EstimatedAcceptanceDto, AcceptanceNotReachableDto, AcceptanceNotFoundDto],
    nullable: true,
  })
  acceptanceLimit!: EstimatedAcceptanceDto | AcceptanceNotReachableDto | AcceptanceNotFoundDto | null;
}
