import { chartKinds, chartSignals, type ChartKind, type ChartSignal } from '@endfloat/statistics';
import { EnumField, IntegerField, KindField, ListField, NumberField, UnionField } from '../fields/index.js';
import { CalculationLimitsDto, CalculationNeedsMoreDto, CalculationResponse } from './calculation.dto.js';
import { NumbersField } from './numbers.field.js';
import { BinomialCountDto } from './proportion.dto.js';

const mostPlaces = 5000;

export class CountsDto {
  @KindField('counts')
  kind!: 'counts';

  @ListField({
    description: 'Events of each place, over equal opportunity (c chart).',
    max: mostPlaces,
    integers: { min: 0, max: 1_000_000 },
  })
  counts!: number[];
}

export class ProportionsDto {
  @KindField('proportions')
  kind!: 'proportions';

  @ListField({
    description: 'Successes out of trials of each place (p chart).',
    max: mostPlaces,
    type: () => BinomialCountDto,
  })
  samples!: BinomialCountDto[];
}

export class EventCountDto {
  @IntegerField({ description: 'Events.' })
  events!: number;

  @NumberField({ description: 'Opportunity, in any one measure.', min: 0 })
  exposure!: number;
}

export class RatesDto {
  @KindField('rates')
  kind!: 'rates';

  @ListField({
    description: 'Events over exposure of each place (u chart).',
    max: mostPlaces,
    type: () => EventCountDto,
  })
  samples!: EventCountDto[];
}

export class EventsBetweenDto {
  @KindField('eventsBetween')
  kind!: 'eventsBetween';

  @ListField({
    description: 'Good ones between one bad one and the next (g chart).',
    max: mostPlaces,
    integers: { min: 0, max: 1_000_000_000 },
  })
  gaps!: number[];
}

export class TimesBetweenDto {
  @KindField('timesBetween')
  kind!: 'timesBetween';

  @NumbersField({ description: 'Time or distance between events.', max: mostPlaces, from: 0 })
  times!: number[];
}

export class ControlChartRequest {
  @UnionField({
    description: 'What is charted.',
    types: () => [CountsDto, ProportionsDto, RatesDto, EventsBetweenDto, TimesBetweenDto],
  })
  data!: CountsDto | ProportionsDto | RatesDto | EventsBetweenDto | TimesBetweenDto;

  @NumberField({ description: 'Centre known beforehand; estimated where left out.', min: 0, optional: true })
  centre?: number;

  @IntegerField({
    description: 'How many first places the centre is estimated from; all where left out.',
    min: 1,
    max: mostPlaces,
    optional: true,
  })
  baseline?: number;

  @IntegerField({
    description: 'Places in a row on one side of the centre that are a signal.',
    min: 2,
    max: 100,
    optional: true,
    default: 8,
  })
  runLength?: number;
}

export class ChartPlaceDto extends CalculationLimitsDto {
  @NumberField({ description: 'Value charted.' })
  value!: number;

  @ListField({
    description: 'What is pointed out here.',
    max: 4,
    choice: { values: chartSignals, enumName: 'ChartSignal' },
  })
  signals!: readonly ChartSignal[];
}

export class EstimatedChartDto {
  @KindField('estimated')
  kind!: 'estimated';

  @EnumField({ description: 'Kind of chart.', values: chartKinds, enumName: 'ChartKind' })
  chart!: ChartKind;

  @NumberField({ description: 'Centre line.' })
  centre!: number;

  @NumberField({ description: 'Line whose sides are compared for runs.' })
  runLine!: number;

  @ListField({ description: 'The places with their limits.', max: mostPlaces, type: () => ChartPlaceDto })
  places!: readonly ChartPlaceDto[];
}

export class NoChartVariationDto {
  @KindField('noVariation', 'the chart has no width at this centre')
  kind!: 'noVariation';

  @NumberField({ description: 'Centre line.' })
  centre!: number;
}

export class ControlChartResponse extends CalculationResponse {
  @UnionField({
    description: 'The chart, or why there is none.',
    types: () => [EstimatedChartDto, NoChartVariationDto, CalculationNeedsMoreDto],
  })
  result!: EstimatedChartDto | NoChartVariationDto | CalculationNeedsMoreDto;
}

export class FunnelLimitsRequest {
  @NumberField({ description: 'Share aimed at.', min: 0, max: 1 })
  target!: number;

  @ListField({ description: 'Numbers of trials.', min: 1, max: 500, integers: { min: 1, max: 1_000_000 } })
  trials!: number[];

  @NumbersField({
    description: 'Shares of like groups that lie inside.',
    max: 5,
    from: 0.001,
    to: 0.9999999,
    optional: true,
    default: [0.95, 0.998],
  })
  coverages?: number[];
}

export class FunnelLimitDto extends CalculationLimitsDto {
  @IntegerField({ description: 'Trials.' })
  trials!: number;

  @NumberField({ description: 'Share of like groups that lie inside.', min: 0, max: 1 })
  coverage!: number;
}

export class FunnelLimitsResponse extends CalculationResponse {
  @NumberField({ description: 'Share aimed at.', min: 0, max: 1 })
  target!: number;

  @ListField({ description: 'Limits, by coverage and trials.', max: 2500, type: () => FunnelLimitDto })
  limits!: readonly FunnelLimitDto[];
}
