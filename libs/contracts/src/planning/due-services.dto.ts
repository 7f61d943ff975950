import {
  attentionReasons,
  dueBases,
  dueStandings,
  type AttentionReason,
  type DueBasis,
  type DueStanding,
} from '@endfloat/reliability';
import {
  EnumField,
  FlagField,
  IdField,
  InstantField,
  IntegerField,
  ListField,
  LocalDateField,
  NestedField,
  NumberField,
  QueryIntegerField,
  QueryListField,
  TextField,
} from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';

/** Which vehicles, and what is soon. */
export class FleetPageQuery extends PageQuery {
  @IdField({ description: 'Vehicles this customer owns now.', optional: true })
  customerId?: string;

  @IdField({ description: 'One vehicle.', optional: true })
  vehicleId?: string;

  @QueryIntegerField({ description: 'Days ahead that are soon.', optional: true, digits: 4, default: '30' })
  withinDays?: string;

  @QueryIntegerField({ description: 'Km ahead that are soon.', optional: true, digits: 6, default: '1000' })
  withinKm?: string;

  @InstantField({ description: 'What was due at this moment, as it was known then.', optional: true })
  asOf?: string;
}

export class ListDueServicesQuery extends FleetPageQuery {
  @QueryListField({
    description: 'Standings, separated by commas; all where absent.',
    optional: true,
    values: dueStandings,
    max: dueStandings.length,
  })
  standing?: string;
}

export class FleetVehicleDto {
  @IdField({ description: 'The vehicle.' })
  vehicleId!: string;

  @TextField({ description: 'What the shop calls it.', nullable: true, max: 60 })
  label!: string | null;

  @TextField({ description: 'Plate.', nullable: true, max: 20 })
  plate!: string | null;
}

export class DueServiceResponse extends FleetVehicleDto {
  @IdField({ description: 'Item of the plan.' })
  planItemId!: string;

  @TextField({ description: 'What is to be done.', max: 120 })
  name!: string;

  @EnumField({ description: 'How it stands.', values: dueStandings, enumName: 'DueStanding', open: true })
  standing!: DueStanding;

  @EnumField({
    description:
      'From what it is counted: when it was last done, first use of the vehicle, or nothing that is known.',
    values: dueBases,
    enumName: 'DueBasis',
  })
  basis!: DueBasis;

  @InstantField({
    description: 'When it was last done; null: never, as far as anybody knows.',
    nullable: true,
  })
  lastDoneAt!: string | null;

  @NumberField({ description: 'Distance then, km.', nullable: true })
  lastDoneKm!: number | null;

  @LocalDateField({ description: 'Day on which it is due by date.', nullable: true })
  dueOn!: string | null;

  @NumberField({ description: 'Distance at which it is due, km.', nullable: true })
  dueKm!: number | null;

  @NumberField({ description: 'Days left by date, below 0 when past.', nullable: true })
  daysLeft!: number | null;

  @NumberField({
    description: 'Km left, below 0 when past; from the expected present distance.',
    nullable: true,
  })
  kmLeft!: number | null;

  @LocalDateField({
    description: 'Day on which the first of the two is expected to be reached.',
    nullable: true,
  })
  expectedOn!: string | null;

  @EnumField({
    description: 'Which of the two is reached first.',
    values: ['date', 'distance'],
    enumName: 'ReachedFirst',
    nullable: true,
  })
  reachedFirst!: 'date' | 'distance' | null;

  @FlagField({ description: 'It has a distance that cannot be counted: the date alone stands.' })
  isDistanceUnknown!: boolean;

  @NumberField({ description: 'Last reliable reading of the odometer, km.', nullable: true })
  readKm!: number | null;

  @InstantField({ description: 'When that was read.', nullable: true })
  readAt!: string | null;
}

export class DueCountsDto {
  @IntegerField({ description: 'Past its day or its distance.' })
  overdue!: number;

  @IntegerField({ description: 'Due within the days or the distance asked for.' })
  dueSoon!: number;

  @IntegerField({ description: 'Due later.' })
  later!: number;

  @IntegerField({ description: 'Nobody knows.' })
  unknown!: number;
}

export class DueServicePage extends pageOf(() => DueServiceResponse) {
  @NestedField({
    description: 'Over all vehicles asked for, whatever the standing.',
    type: () => DueCountsDto,
  })
  counts!: DueCountsDto;

  @IntegerField({ description: 'Vehicles in use for which the plan has an item.' })
  vehicles!: number;
}

export class AttentionDto {
  @EnumField({
    description: 'Why the vehicle needs attention, the most pressing first.',
    values: attentionReasons,
    enumName: 'AttentionReason',
    open: true,
  })
  reason!: AttentionReason;

  @IntegerField({ description: 'How many things lie behind it.', min: 1 })
  count!: number;
}

export class VehicleOutlookResponse extends FleetVehicleDto {
  @IntegerField({ description: 'Place in the order, from 1.', min: 1 })
  rank!: number;

  @ListField({
    description: 'Reasons in order of urgency.',
    max: attentionReasons.length,
    type: () => AttentionDto,
  })
  reasons!: AttentionDto[];

  @NumberField({
    description: 'Days until the next service by the plan is expected to be due, below 0 when past.',
    nullable: true,
  })
  daysToService!: number | null;
}

export class VehicleOutlookPage extends pageOf(() => VehicleOutlookResponse) {
  @IntegerField({ description: 'Days back over which complaints and comebacks count.' })
  lookBackDays!: number;

  @TextField({ description: 'How the order is made.', max: 400 })
  method!: string;
}

export class ListVehicleOutlooksQuery extends FleetPageQuery {}
