import {
  leadTimeSources,
  stockServiceMeasures,
  type LeadTimeSource,
  type StockServiceMeasure,
} from '@endfloat/stock';
import { EnumField, IntegerField, KindField, ListField, NumberField } from '../fields/index.js';

export class LeadTimeCaseDto {
  @IntegerField({ description: 'Days from order to arrival.' })
  days!: number;

  @NumberField({ description: 'Share of the orders.', min: 0, max: 1 })
  share!: number;
}

export class LeadTimesDto {
  @EnumField({
    description:
      '`delivered`: as this supplier has delivered, each slip of the past counted the same. `promisedOnly`: nothing has come yet. `given`: by the question.',
    values: leadTimeSources,
    enumName: 'LeadTimeSource',
  })
  source!: LeadTimeSource;

  @NumberField({ description: 'Mean, days.', min: 0 })
  meanDays!: number;

  @IntegerField({ description: 'Days that nine in ten orders keep.' })
  ninetiethDays!: number;

  @IntegerField({ description: 'Deliveries behind it.' })
  deliveries!: number;

  @ListField({ description: 'The lead times that occur.', max: 1000, type: () => LeadTimeCaseDto })
  cases!: LeadTimeCaseDto[];
}

export class StockLevelDto {
  @KindField('found')
  kind!: 'found';

  @IntegerField({ description: 'Pieces on hand and on order that keep the promise.' })
  level!: number;

  @EnumField({
    description:
      'What is promised over one lead time. `cycleService`: chance that nobody waits, P(D ≤ S). `readyRate`: chance that a piece is left, P(D ≤ S − 1). `fillRate`: share of the pieces that is there, 1 − E(D − S)⁺/E(D).',
    values: stockServiceMeasures,
    enumName: 'StockServiceMeasure',
  })
  measure!: StockServiceMeasure;

  @NumberField({ description: 'The service wanted.', min: 0, max: 1 })
  target!: number;

  @NumberField({ description: 'The service at that level.', min: 0, max: 1 })
  service!: number;

  @NumberField({
    description: 'The service with one piece less; null at level 0.',
    nullable: true,
    min: 0,
    max: 1,
  })
  serviceBelow!: number | null;

  @NumberField({ description: 'Pieces missing in a lead time on average, at that level.', min: 0 })
  expectedShort!: number;
}

export class UnattainableLevelDto {
  @KindField('unattainable')
  kind!: 'unattainable';

  @NumberField({ description: 'No finite stock is certain to do.', min: 0, max: 1 })
  target!: number;
}
