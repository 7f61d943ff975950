import {
  jobOutcomeFilters,
  rateDimensions,
  type JobOutcomeFilter,
  type RateDimension,
} from '@endfloat/workshop/ports';
import { windowClosings, type WindowClosing } from '@endfloat/reliability';
import { currencyCodes } from '@endfloat/metrology';
import {
  EnumField,
  IdField,
  InstantField,
  IntegerField,
  ListField,
  MoneyField,
  NestedField,
  TextField,
} from '../fields/index.js';
import { CalculationMethodDto } from '../calculations/calculation.dto.js';
import { pageOf } from '../paging/index.js';
import type { MoneyDto } from '../quantity/index.js';
import { RateField, type RateDto } from '../quantity/index.js';
import { comebacksAgainst, type ComebacksAgainst } from './rate-query.dto.js';

/** What an answer about comebacks rests on. */
export class ComebackBasisResponse {
  @InstantField({ description: 'Windows as they stood at this moment.' })
  at!: string;

  @InstantField({ description: 'As known at this moment; null: as known now.', nullable: true })
  asOf!: string | null;

  @EnumField({
    description: 'Comebacks that were counted.',
    values: comebacksAgainst,
    enumName: 'ComebacksAgainst',
  })
  against!: ComebacksAgainst;

  @EnumField({
    description: 'Currency of the shop, of all amounts.',
    values: currencyCodes,
    enumName: 'Currency',
    open: true,
  })
  currency!: string;

  @IntegerField({
    description:
      'Vehicles whose latest records are not in these numbers yet; 0 unless very much was recorded at once.',
  })
  unsettledVehicles!: number;

  @NestedField({ description: 'How it was computed.', type: () => CalculationMethodDto })
  method!: CalculationMethodDto;
}

/** Counts of a group of jobs. */
export class ComebackCountsDto {
  @IntegerField({ description: 'Windows still running: neither success nor comeback.' })
  pending!: number;

  @IntegerField({ description: 'Of those, come back already.' })
  pendingComebacks!: number;

  @IntegerField({ description: 'Window elapsed, vehicle never seen since: in neither number of the rate.' })
  notSeenSince!: number;

  @IntegerField({
    description: 'At risk, and last seen while the window ran: the rest of it is taken on trust.',
  })
  seenOnlyInsideWindow!: number;

  @IntegerField({
    description: 'Came back, but not attributed yet: in neither number of a rate of one process.',
  })
  notAttributed!: number;

  @IntegerField({
    description: 'Comebacks of these jobs, those of comebacks included and windows still running too.',
  })
  comebacks!: number;
}

export class ComebackGroupDto extends ComebackCountsDto {
  @TextField({ description: 'Value of the dimension; null: jobs without one.', nullable: true, max: 200 })
  value!: string | null;

  @TextField({ description: 'What it is called, where there is a name for it.', nullable: true, max: 200 })
  label!: string | null;

  @RateField({
    description: 'Jobs that came back, of those whose window has elapsed and whose outcome is known.',
  })
  rate!: RateDto;

  @MoneyField({
    description: 'What these comebacks cost the shop at the full door rate; null for users of a customer.',
    nullable: true,
  })
  cost!: MoneyDto | null;

  @IntegerField({
    description: 'Lines without minutes or price, or in another currency: left out of the cost.',
  })
  costGaps!: number;

  @TextField({ description: 'Where the jobs behind it are listed.', max: 2000 })
  jobs!: string;
}

export class ComebackRatesResponse extends ComebackBasisResponse {
  @EnumField({
    description: 'What it is told by; null: all jobs together.',
    values: rateDimensions,
    enumName: 'RateDimension',
    nullable: true,
  })
  by!: RateDimension | null;

  @ListField({ description: 'By value, those without one last.', max: 1000, type: () => ComebackGroupDto })
  groups!: ComebackGroupDto[];

  @IntegerField({ description: 'Groups with the fewest jobs that are not shown.' })
  groupsLeftOut!: number;
}

export class ComebackJobDto {
  @IdField({ description: 'The job.' })
  jobId!: string;

  @IdField({ description: 'Its vehicle.' })
  vehicleId!: string;

  @InstantField({ description: 'When it was released.' })
  releasedAt!: string;

  @InstantField({
    description: 'When its window closes: by days, or by the sighting that showed the distance.',
  })
  closesAt!: string;

  @EnumField({ description: 'What closes it.', values: windowClosings, enumName: 'WindowClosing' })
  closedBy!: WindowClosing;

  @EnumField({ description: 'What it counts as.', values: jobOutcomeFilters, enumName: 'JobOutcome' })
  outcome!: JobOutcomeFilter;

  @InstantField({ description: 'First comeback inside the window.', nullable: true })
  comebackAt!: string | null;

  @InstantField({ description: 'When the vehicle was last seen after the release.', nullable: true })
  lastSeenAt!: string | null;

  @IntegerField({ description: 'Comebacks that count for it, those of comebacks included.' })
  comebacks!: number;

  @ListField({ description: 'Those comebacks.', max: 1000, ids: true })
  comebackIds!: string[];

  @MoneyField({ description: 'What they cost the shop; null for users of a customer.', nullable: true })
  cost!: MoneyDto | null;

  @TextField({ description: 'Kind of job that a fair comparison takes as like.', max: 200 })
  mix!: string;
}

export class ComebackJobPage extends pageOf(() => ComebackJobDto) {}
