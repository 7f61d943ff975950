import { unitCodes, type UnitCode } from '@endfloat/metrology';
import { notTrendableReasons, type NotTrendableReason } from '@endfloat/wear';
import {
  EnumField,
  FlagField,
  IdField,
  IntegerField,
  KindField,
  NestedField,
  NumberField,
  TextField,
  UnionField,
} from '../fields/index.js';
import { CalculationNeedsMoreDto, CalculationNotConvergedDto } from '../calculations/index.js';

export class WearLimitDto {
  @TextField({ description: 'Id of the limit.', max: 120 })
  limitId!: string;

  @NumberField({ description: 'Its value, in the unit of the series.' })
  value!: number;

  @EnumField({ description: 'Unit of the value.', values: unitCodes, enumName: 'AnyUnit' })
  unit!: UnitCode;

  @TextField({ description: 'Where it comes from.', max: 60, example: 'judgement' })
  origin!: string;

  @TextField({ description: 'Its source in words.', max: 600, min: 0 })
  source!: string;
}

export class WearPointDto {
  @NumberField({ description: 'Distance since fitting, km.', min: 0 })
  km!: number;

  @NumberField({ description: "Mean of the inspection's as-found readings by one instrument, in the unit." })
  value!: number;

  @NumberField({
    description: 'Its standard uncertainty without the bias of the instrument, in the unit.',
    min: 0,
  })
  standardUncertainty!: number;

  @IdField({ description: 'The instrument.' })
  instrumentId!: string;

  @NumberField({
    description: 'Standard uncertainty of its bias, common to all its readings, in the unit.',
    min: 0,
  })
  biasStandardUncertainty!: number;

  @FlagField({
    description:
      'The calibration of the instrument had run out, failed or never happened on that day, as known: the point is told so and used all the same.',
  })
  isInstrumentOverdue!: boolean;

  @FlagField({
    description:
      'By another instrument than most points of the series: its bias is a term of its own, so that the change does not look like wear.',
  })
  isOtherInstrument!: boolean;
}

export class ReadingLeftOutDto {
  @IdField({ description: 'The reading.' })
  readingId!: string;

  @EnumField({
    description: 'Why it is kept out of the trend.',
    values: notTrendableReasons,
    enumName: 'NotTrendableReason',
  })
  reason!: NotTrendableReason;
}

export class FleetLearnedDto {
  @KindField('estimated')
  kind!: 'estimated';

  @IntegerField({ description: 'Inspections the fleet was learned from.' })
  points!: number;

  @NumberField({ description: 'Typical level of a part at fitting, in the unit.' })
  startMean!: number;

  @NumberField({ description: 'Standard deviation of it from part to part, in the unit.' })
  startSd!: number;

  @NumberField({ description: 'Median rate of wear, unit per 1000 km in the direction of wear.' })
  medianRatePerThousandKm!: number;

  @NumberField({ description: 'Standard deviation of the logarithm of the rate from part to part.' })
  logRateSd!: number;
}

export class FleetWearTooSmallDto {
  @KindField('wearWithinUncertainty', 'the readings of the fleet do not tell wear from none: nothing is lent')
  kind!: 'wearWithinUncertainty';

  @IntegerField({ description: 'Parts.' })
  parts!: number;

  @IntegerField({ description: 'Inspections.' })
  points!: number;
}

const fleetCases = () => [
  FleetLearnedDto,
  FleetWearTooSmallDto,
  CalculationNeedsMoreDto,
  CalculationNotConvergedDto,
];

export class FleetWearDto {
  @IntegerField({ description: 'Parts of the kind the shop knows.' })
  partsOfKind!: number;

  @IntegerField({ description: 'Of these, the ones recorded last that were looked at; at most 100.' })
  partsLookedAt!: number;

  @IntegerField({ description: 'Of these, parts with a point of a trend.' })
  partsWithPoints!: number;

  @UnionField({ description: 'What the fleet lends, fitted once for this request.', types: fleetCases })
  model!: InstanceType<ReturnType<typeof fleetCases>[number]>;
}

export class YearlyDistanceDto {
  @NumberField({ description: 'Distance a year, km.', min: 0 })
  kmPerYear!: number;

  @NumberField({ description: 'Its standard uncertainty, km (a fifth of it: judgement).', min: 0 })
  standardUncertainty!: number;

  @EnumField({
    description: 'What the owner expects, or what the odometer shows.',
    values: ['stated', 'odometer'],
    enumName: 'YearlyDistanceBasis',
  })
  basis!: 'stated' | 'odometer';
}

export class WearChanceDto {
  @KindField('estimated')
  kind!: 'estimated';

  @NumberField({ description: 'Probability that the limit is reached before then.', min: 0, max: 1 })
  probability!: number;

  @NumberField({
    description: 'Distance from now that was asked about, km; null where a day was.',
    nullable: true,
  })
  withinKm!: number | null;

  @TextField({ description: 'Day that was asked about; null where a distance was.', nullable: true, max: 10 })
  until!: string | null;

  @NestedField({
    description: 'Distance a year the day stands for; null where a distance was asked about.',
    type: () => YearlyDistanceDto,
    nullable: true,
  })
  yearlyDistance!: YearlyDistanceDto | null;
}

export class YearlyDistanceUnknownDto {
  @KindField(
    'yearlyDistanceUnknown',
    'a day cannot be turned into a distance: state expectedKmPerYear, or read the odometer over 90 days',
  )
  kind!: 'yearlyDistanceUnknown';
}

export class NoTrendDto {
  @KindField('noTrend', 'there is no trend to ask')
  kind!: 'noTrend';
}

const chanceCases = () => [WearChanceDto, YearlyDistanceUnknownDto, NoTrendDto];

export type WearChanceCaseDto = InstanceType<ReturnType<typeof chanceCases>[number]>;

/** A chance, or why there is none. */
export const WearChanceField = (): PropertyDecorator =>
  UnionField({
    description: 'Chance of reaching the limit before the distance or day asked about; null where none was.',
    types: chanceCases,
    nullable: true,
  });
