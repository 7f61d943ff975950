import { needSources, type NeedSource } from '@endfloat/stock';
import {
  EnumField,
  IdField,
  InstantField,
  IntegerField,
  KindField,
  ListField,
  LocalDateField,
  NestedField,
  NumberField,
  QueryIntegerField,
  TextField,
  TextMapField,
  textPatterns,
  UnionField,
} from '../fields/index.js';
import { CalculationNeedsMoreDto } from '../calculations/index.js';

export class DaysAheadDto {
  @KindField('days')
  kind!: 'days';

  @IntegerField({ description: 'Days from today.', max: 3653 })
  days!: number;
}

export class DistanceAheadDto {
  @KindField('distance')
  kind!: 'distance';

  @NumberField({ description: 'Further km of each van.', min: 0 })
  km!: number;
}

export class DemandSummaryDto {
  @NumberField({ description: 'Mean number of pieces.', min: 0 })
  mean!: number;

  @NumberField({ description: 'Standard deviation, pieces.', min: 0 })
  standardDeviation!: number;

  @IntegerField({ description: 'Median, pieces.' })
  median!: number;

  @IntegerField({ description: 'Lower end of the interval, pieces.' })
  lower!: number;

  @IntegerField({ description: 'Upper end of the interval, pieces.' })
  upper!: number;

  @NumberField({ description: 'Confidence of the equal-tailed interval.', min: 0, max: 1 })
  confidence!: number;
}

export class DemandPointDto {
  @IntegerField({ description: 'Pieces.' })
  pieces!: number;

  @NumberField({ description: 'Chance of exactly so many.', min: 0, max: 1 })
  chance!: number;
}

export const demandMethods = ['chancesOfVans', 'pastUse'] as const;
export type DemandMethod = (typeof demandMethods)[number];

export class NeedEstimateDto {
  @KindField('estimated')
  kind!: 'estimated';

  @EnumField({
    description:
      '`chancesOfVans`: exact distribution of the sum of vans, each with its own chance (Poisson binomial). `pastUse`: Poisson with the Syntetos–Boylan mean of past use, where nothing better is known.',
    values: demandMethods,
    enumName: 'DemandMethod',
  })
  method!: DemandMethod;

  @NestedField({ description: 'Pieces needed.', type: () => DemandSummaryDto })
  pieces!: DemandSummaryDto;

  @ListField({
    description: 'Chance of each number of pieces; numbers with less than 1e-9 are left out.',
    max: 12_000,
    type: () => DemandPointDto,
  })
  points!: DemandPointDto[];
}

export class NeedReasonDto {
  @EnumField({
    description: 'What makes the van need the part.',
    values: needSources,
    enumName: 'NeedSource',
  })
  source!: NeedSource;

  @NumberField({ description: 'Chance by this reason alone.', min: 0, max: 1 })
  chance!: number;

  @TextMapField({
    description: 'Characteristic and readings, or the job, behind it.',
    maxEntries: 10,
    max: 200,
    pattern: '^[^\\u0000-\\u001F]*$',
  })
  about!: Record<string, string>;
}

export class VanChanceDto {
  @IdField({ description: 'The van.' })
  vehicleId!: string;

  @TextField({ description: 'What the shop calls it.', nullable: true, max: 200 })
  label!: string | null;

  @TextField({ description: 'Where the part sits.', max: 64 })
  position!: string;

  @NumberField({ description: 'Chance that it needs one.', min: 0, max: 1 })
  chance!: number;

  @ListField({
    description: 'Why; the reasons are taken as independent.',
    max: 50,
    type: () => NeedReasonDto,
  })
  reasons!: NeedReasonDto[];
}

export class CountedChanceDto {
  @NumberField({ description: 'Chance that is reckoned with.', min: 0, max: 1 })
  chance!: number;

  @IntegerField({ description: 'Times it happened.' })
  events!: number;

  @IntegerField({ description: 'Times it could have happened.' })
  of!: number;
}

export class PastUseDto {
  @KindField('estimated')
  kind!: 'estimated';

  @NumberField({ description: 'Pieces a day.', min: 0 })
  perDay!: number;

  @IntegerField({ description: 'Whole months looked at.' })
  months!: number;

  @IntegerField({ description: 'Of them, months in which one was used.' })
  monthsWithUse!: number;
}

export class LivesBehindDto {
  @IntegerField({ description: 'Lives that ended.' })
  ended!: number;

  @IntegerField({ description: 'Parts still running.' })
  running!: number;

  @IntegerField({ description: 'Parts left out, because their age or their observation is not known.' })
  leftOut!: number;
}

export class PartNeedDto {
  @TextField({ description: 'Kind of part.', max: 64 })
  componentType!: string;

  @LocalDateField({ description: 'Today in the shop.' })
  today!: string;

  @UnionField({ description: 'How far ahead.', types: () => [DaysAheadDto, DistanceAheadDto] })
  horizon!: DaysAheadDto | DistanceAheadDto;

  @UnionField({
    description: 'How many will be needed.',
    types: () => [NeedEstimateDto, CalculationNeedsMoreDto],
  })
  outcome!: NeedEstimateDto | CalculationNeedsMoreDto;

  @ListField({ description: 'The vans, the likeliest first.', max: 5000, type: () => VanChanceDto })
  vans!: VanChanceDto[];

  @IntegerField({
    description: 'Vans about which neither wear nor lives nor jobs say anything; they are not in the number.',
  })
  vansWithoutAnswer!: number;

  @NestedField({ description: 'Lives of such parts in the shop.', type: () => LivesBehindDto })
  lives!: LivesBehindDto;

  @NestedField({
    description: 'Planned replacements that are done in the end.',
    type: () => CountedChanceDto,
  })
  planned!: CountedChanceDto;

  @NestedField({
    description: 'Repairs without a new part that come back and get one.',
    type: () => CountedChanceDto,
  })
  comebacks!: CountedChanceDto;

  @UnionField({
    description: 'What was used in the past.',
    types: () => [PastUseDto, CalculationNeedsMoreDto],
  })
  pastUse!: PastUseDto | CalculationNeedsMoreDto;
}

export class PartNeedList {
  @ListField({ description: 'One a kind of part.', max: 200, type: () => PartNeedDto })
  items!: PartNeedDto[];
}

export class ListPartNeedsQuery {
  @TextField({
    description: 'One kind of part; every kind in the list of parts where left out.',
    optional: true,
    max: 64,
    pattern: textPatterns.catalogueId,
  })
  componentType?: string;

  @QueryIntegerField({
    description: 'The next so many days, at most 3653; this or `km`.',
    digits: 4,
    optional: true,
  })
  days?: string;

  @QueryIntegerField({
    description: 'The next so many km of each van; this or `days`.',
    digits: 6,
    optional: true,
  })
  km?: string;

  @InstantField({ description: 'As it was known at this moment.', optional: true })
  asOf?: string;
}
