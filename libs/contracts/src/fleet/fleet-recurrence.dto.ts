import { watchWarnings, type WatchWarning } from '@endfloat/reliability';
import { fleetEventKinds, type FleetEventKind } from '@endfloat/workshop/ports';
import { CalculationMethodDto, CalculationNeedsMoreDto } from '../calculations/calculation.dto.js';
import {
  EnumField,
  IdField,
  InstantField,
  IntegerField,
  KindField,
  ListField,
  NestedField,
  NumberField,
  TextField,
  textPatterns,
  UnionField,
} from '../fields/index.js';
import { EstimatedRecurrenceDto, NoRecurrenceDto, RecurrenceNeedsMoreDto } from './fleet.dto.js';
import { RecurrenceTrendDto } from './recurrence-trend.dto.js';

/** What recurs, and until when. */
export class RecurrenceSubjectQuery {
  @EnumField({
    description:
      'What recurs: parts of a kind that came off, complaints, or complaints confirmed as comebacks; replacements where absent.',
    values: fleetEventKinds,
    enumName: 'FleetEventKind',
    optional: true,
  })
  of?: FleetEventKind;

  @TextField({
    description:
      'Kind of part; needed for replacements. Of complaints: those that point to it, or whose job worked on it; of comebacks: those of jobs that worked on it.',
    optional: true,
    max: 64,
    pattern: textPatterns.catalogueId,
  })
  componentType?: string;

  @TextField({
    description: 'Complaints in which this symptom is present.',
    optional: true,
    max: 64,
    pattern: textPatterns.catalogueId,
  })
  symptom?: string;

  @InstantField({ description: 'End of the observation; now where absent.', optional: true })
  until?: string;

  @InstantField({ description: 'The answer as it was known at this moment.', optional: true })
  asOf?: string;
}

export class FleetRecurrenceQuery extends RecurrenceSubjectQuery {
  @IdField({
    description: 'Vehicles while this customer owned them; all of the shop where absent.',
    optional: true,
  })
  customerId?: string;

  @TextField({
    description: "Vehicles with this application, the shop's own word.",
    optional: true,
    max: 120,
  })
  application?: string;
}

export class WatchOddityDto {
  @EnumField({
    description: 'What looks odd about when vehicles were observed; nothing is refused for it.',
    values: watchWarnings,
    enumName: 'WatchWarning',
    open: true,
  })
  code!: WatchWarning;

  @ListField({ description: 'The vehicles.', max: 100000, ids: true })
  vehicleIds!: string[];
}

export class FleetRecurrenceResponse {
  @EnumField({ description: 'What recurs.', values: fleetEventKinds, enumName: 'FleetEventKind' })
  of!: FleetEventKind;

  @UnionField({
    description: 'The curve, or why there is none.',
    types: () => [EstimatedRecurrenceDto, NoRecurrenceDto, RecurrenceNeedsMoreDto],
  })
  recurrence!: EstimatedRecurrenceDto | NoRecurrenceDto | RecurrenceNeedsMoreDto;

  @NestedField({
    description: 'Tests for a trend; null where nothing recurred.',
    nullable: true,
    type: () => RecurrenceTrendDto,
  })
  trend!: RecurrenceTrendDto | null;

  @IntegerField({ description: 'Vehicles left out because nobody knows when they were first used.' })
  withoutFirstUse!: number;

  @IntegerField({ description: 'Vehicles left out because they were not observed at all.' })
  neverWatched!: number;

  @ListField({ description: 'What looks odd about the observation.', max: 10, type: () => WatchOddityDto })
  oddities!: WatchOddityDto[];
}

/** By what two fleets are told apart, and which they are. */
export class FleetComparisonQuery extends RecurrenceSubjectQuery {
  @EnumField({
    description: 'By what the two fleets are told apart.',
    values: ['customer', 'application'],
    enumName: 'FleetGrouping',
  })
  by!: 'customer' | 'application';

  @TextField({ description: 'First fleet: id of the customer, or the application.', max: 120 })
  first!: string;

  @TextField({ description: 'Second fleet.', max: 120 })
  second!: string;
}

export class RecurrenceDifferencePointDto {
  @NumberField({ description: 'Age in days since first use.', min: 0 })
  ageDays!: number;

  @NumberField({ description: 'Mean of the first fleet less that of the second, events per vehicle.' })
  difference!: number;

  @NumberField({ description: 'Standard error; null where a fleet is a single vehicle.', nullable: true })
  standardError!: number | null;

  @NumberField({ description: 'Lower limit, pointwise.', nullable: true })
  lower!: number | null;

  @NumberField({ description: 'Upper limit, pointwise.', nullable: true })
  upper!: number | null;
}

export class TestedFleetsDto {
  @KindField('tested')
  kind!: 'tested';

  @NumberField({ description: 'Difference at the last age to which both were observed, events per vehicle.' })
  difference!: number;

  @NumberField({ description: 'Robust standard error of the difference.', min: 0 })
  standardError!: number;

  @NumberField({ description: 'Difference over its standard error.' })
  statistic!: number;

  @NumberField({ description: 'Two-sided p-value, normal.', min: 0, max: 1 })
  pValue!: number;

  @NumberField({ description: 'Two-sided, pointwise level of the limits.', min: 0, max: 1 })
  level!: number;

  @ListField({
    description: 'The difference along the ages.',
    max: 200000,
    type: () => RecurrenceDifferencePointDto,
  })
  points!: RecurrenceDifferencePointDto[];
}

export class FleetsNotComparableDto {
  @KindField('notComparable', 'no age at which both fleets were observed and something recurred')
  kind!: 'notComparable';
}

export class FleetsWithoutSpreadDto {
  @KindField('noSpread', 'every vehicle of each fleet recurred exactly alike')
  kind!: 'noSpread';

  @NumberField({ description: 'Difference at the last age to which both were observed.' })
  difference!: number;
}

export class FleetCountDto {
  @IntegerField({ description: 'Vehicles observed.' })
  vehicles!: number;

  @IntegerField({ description: 'Events of those vehicles, those outside their observation included.' })
  events!: number;
}

export class FleetComparisonResponse {
  @EnumField({ description: 'What recurs.', values: fleetEventKinds, enumName: 'FleetEventKind' })
  of!: FleetEventKind;

  @NestedField({ description: 'First fleet.', type: () => FleetCountDto })
  first!: FleetCountDto;

  @NestedField({ description: 'Second fleet.', type: () => FleetCountDto })
  second!: FleetCountDto;

  @UnionField({
    description:
      'The test at the last common age, with the whole curve of differences, or why there is none.',
    types: () => [TestedFleetsDto, FleetsNotComparableDto, FleetsWithoutSpreadDto, CalculationNeedsMoreDto],
  })
  comparison!: TestedFleetsDto | FleetsNotComparableDto | FleetsWithoutSpreadDto | CalculationNeedsMoreDto;

  @NestedField({ description: 'How it was computed.', type: () => CalculationMethodDto })
  method!: CalculationMethodDto;
}
