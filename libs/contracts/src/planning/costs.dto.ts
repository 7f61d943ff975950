import {
  IdField,
  InstantField,
  IntegerField,
  KindField,
  ListField,
  MoneyField,
  NestedField,
  NumberField,
  TextField,
  UnionField,
} from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';
import { MoneyDto } from '../quantity/index.js';
import { FleetVehicleDto } from './due-services.dto.js';

export class VehicleCostsQuery {
  @InstantField({ description: 'Beginning of the time; a year before its end where absent.', optional: true })
  from?: string;

  @InstantField({ description: 'End of the time; now where absent.', optional: true })
  until?: string;

  @InstantField({ description: 'The answer as it was known at this moment.', optional: true })
  asOf?: string;
}

export class FleetCostsQuery extends PageQuery {
  @IdField({ description: 'Vehicles this customer owns now.', optional: true })
  customerId?: string;

  @InstantField({ description: 'Beginning of the time; a year before its end where absent.', optional: true })
  from?: string;

  @InstantField({ description: 'End of the time; now where absent.', optional: true })
  until?: string;

  @InstantField({ description: 'The answer as it was known at this moment.', optional: true })
  asOf?: string;
}

export class DowntimeDto {
  @NumberField({ description: 'Days in the workshop; overlapping visits count once.', min: 0 })
  days!: number;

  @IntegerField({ description: 'Visits.' })
  visits!: number;

  @NumberField({ description: 'Days in work.', min: 0 })
  inWork!: number;

  @NumberField({ description: 'Days waiting for consent.', min: 0 })
  waitingForConsent!: number;

  @NumberField({ description: 'Days waiting for a part.', min: 0 })
  waitingForPart!: number;

  @NumberField({ description: 'Days waiting for a bay.', min: 0 })
  waitingForBay!: number;

  @NumberField({ description: 'Days between the end of the work and the release.', min: 0 })
  waitingForRelease!: number;
}

export class CostPerKmDto {
  @KindField('known')
  kind!: 'known';

  @NumberField({ description: 'Cost of a km, in the currency of the answer.', min: 0 })
  amountPerKm!: number;

  @NumberField({ description: 'Km driven between the readings used.', min: 0 })
  km!: number;

  @NumberField({ description: 'Days of the time that lie between the readings used.', min: 0 })
  coveredDays!: number;
}

export class DistanceNotKnownDto {
  @KindField('insufficientData')
  kind!: 'insufficientData';

  @TextField({ description: 'What there is too little of.', max: 80 })
  of!: string;

  @IntegerField({ description: 'How many are needed.' })
  needed!: number;

  @IntegerField({ description: 'How many there are.' })
  got!: number;
}

export class YearOfCostsDto {
  @IntegerField({ description: 'Calendar year (UTC).' })
  year!: number;

  @MoneyField({ description: 'Labour at the present rate.' })
  labour!: MoneyDto;

  @MoneyField({ description: 'Parts.' })
  parts!: MoneyDto;

  @IntegerField({ description: 'Work lines done.' })
  lines!: number;
}

/** Amounts of a vehicle or of a fleet. */
export class CostSumsDto {
  @MoneyField({ description: 'Labour: minutes of work done at the present rate.' })
  labour!: MoneyDto;

  @MoneyField({ description: 'Parts that went in, at the price recorded.' })
  parts!: MoneyDto;

  @MoneyField({ description: 'Days in the workshop at what a day off the road costs the owner.' })
  downtimeCost!: MoneyDto;

  @MoneyField({ description: 'All of it.' })
  total!: MoneyDto;

  @NestedField({ description: 'Days in the workshop by reason.', type: () => DowntimeDto })
  downtime!: DowntimeDto;

  @UnionField({
    description: 'Cost of a km, or why it is not known.',
    types: () => [CostPerKmDto, DistanceNotKnownDto],
  })
  perKm!: CostPerKmDto | DistanceNotKnownDto;
}

export class VehicleCostsDto extends CostSumsDto {
  @NestedField({ description: 'The vehicle.', type: () => FleetVehicleDto })
  vehicle!: FleetVehicleDto;

  @IntegerField({ description: 'Work lines done.' })
  lines!: number;

  @NumberField({ description: 'Hours of work.', min: 0 })
  hours!: number;

  @IntegerField({ description: 'Work lines whose minutes nobody recorded: they cost nothing here.' })
  linesWithoutMinutes!: number;

  @IntegerField({ description: 'Parts that went in without a price: they cost nothing here.' })
  partsWithoutPrice!: number;

  @ListField({
    description: 'Parts priced in other currencies; they are in no sum.',
    max: 200,
    type: () => MoneyDto,
  })
  otherCurrencies!: MoneyDto[];

  @ListField({ description: 'Year by year.', max: 200, type: () => YearOfCostsDto })
  years!: YearOfCostsDto[];
}

/** The time, the rate and how it was computed. */
export class CostTermsDto {
  @InstantField({ description: 'Beginning of the time.' })
  from!: string;

  @InstantField({ description: 'End of the time.' })
  until!: string;

  @MoneyField({ description: 'Labour rate an hour that was used.' })
  labourRatePerHour!: MoneyDto;

  @TextField({ description: 'How it was computed.', max: 600 })
  method!: string;
}

export class VehicleCostsResponse extends VehicleCostsDto {
  @NestedField({ description: 'The time and the rate.', type: () => CostTermsDto })
  terms!: CostTermsDto;
}

export class FleetCostsPage extends pageOf(() => VehicleCostsDto) {
  @IntegerField({ description: 'Vehicles counted.' })
  vehicles!: number;

  @IntegerField({ description: 'Vehicles whose distance is known: the cost of a km is theirs.' })
  vehiclesWithDistance!: number;

  @NestedField({ description: 'All vehicles together.', type: () => CostSumsDto })
  together!: CostSumsDto;

  @NestedField({ description: 'The time and the rate.', type: () => CostTermsDto })
  terms!: CostTermsDto;
}
