import {
  CalculationMethodDto,
  CalculationNeedsMoreDto,
  CalculationNotConvergedDto,
} from '../calculations/calculation.dto.js';
import { IntegerField, KindField, NestedField, NumberField, TextField, UnionField } from '../fields/index.js';

export class LaplaceTrendDto {
  @KindField('tested')
  kind!: 'tested';

  @NumberField({ description: 'Standard normal without a trend; above 0 events come ever faster.' })
  statistic!: number;

  @NumberField({ description: 'Two-sided p-value.', min: 0, max: 1 })
  pValue!: number;

  @IntegerField({ description: 'Events that count.' })
  events!: number;
}

export class PowerLawTrendDto {
  @KindField('tested')
  kind!: 'tested';

  @NumberField({ description: 'Chi-square; small values mean deterioration, great ones improvement.' })
  chiSquare!: number;

  @IntegerField({ description: 'Degrees of freedom.' })
  degreesOfFreedom!: number;

  @NumberField({ description: 'Two-sided p-value.', min: 0, max: 1 })
  pValue!: number;
}

export class EventsAtAgeZeroDto {
  @KindField('zeroAgeEvents')
  kind!: 'zeroAgeEvents';

  @IntegerField({ description: 'Events at age 0, whose logarithm has no bound.' })
  count!: number;
}

export class FleetPowerLawDto {
  @KindField('estimated')
  kind!: 'estimated';

  @NumberField({ description: 'Shape; above 1 events come ever faster.' })
  shape!: number;

  @NumberField({ description: 'Lower limit of the shape.' })
  shapeLower!: number;

  @NumberField({ description: 'Upper limit of the shape.' })
  shapeUpper!: number;

  @NumberField({ description: 'Expected events of one vehicle by an age in days are rate x age^shape.' })
  rate!: number;

  @NumberField({ description: 'Two-sided level of the limits.', min: 0, max: 1 })
  level!: number;
}

export class NoPowerLawDto {
  @KindField('noMaximum')
  kind!: 'noMaximum';

  @TextField({ description: 'Why no shape fits best.', max: 60, example: 'allEventsAtEnd' })
  reason!: string;
}

/** Whether it comes ever faster or ever slower as vehicles age. */
export class RecurrenceTrendDto {
  @UnionField({
    description: "Laplace's test, each stretch of observation taken as a system of its own.",
    types: () => [LaplaceTrendDto, CalculationNeedsMoreDto],
  })
  laplace!: LaplaceTrendDto | CalculationNeedsMoreDto;

  @UnionField({
    description: 'Chi-square test of MIL-HDBK-189, each stretch of observation taken as a system of its own.',
    types: () => [PowerLawTrendDto, EventsAtAgeZeroDto, CalculationNeedsMoreDto],
  })
  powerLawTest!: PowerLawTrendDto | EventsAtAgeZeroDto | CalculationNeedsMoreDto;

  @UnionField({
    description: 'Power-law process common to all vehicles.',
    types: () => [
      FleetPowerLawDto,
      EventsAtAgeZeroDto,
      NoPowerLawDto,
      CalculationNeedsMoreDto,
      CalculationNotConvergedDto,
    ],
  })
  powerLaw!:
    | FleetPowerLawDto
    | EventsAtAgeZeroDto
    | NoPowerLawDto
    | CalculationNeedsMoreDto
    | CalculationNotConvergedDto;

  @NestedField({ description: 'How it was computed.', type: () => CalculationMethodDto })
  method!: CalculationMethodDto;
}
