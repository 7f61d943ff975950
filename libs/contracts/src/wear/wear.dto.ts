import {
  IdField,
  InstantField,
  IntegerField,
  JoinTypes,
  ListField,
  LocalDateField,
  NestedField,
  QueryIntegerField,
  TextField,
  textPatterns,
} from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';
import { FleetWearDto } from './wear-parts.dto.js';
import { WearSeriesDto } from './wear-trend.dto.js';

const characteristicOptions = { max: 120, pattern: textPatterns.catalogueId };

export class WearQuery {
  @TextField({
    description: 'One characteristic; all that wear where left out.',
    optional: true,
    ...characteristicOptions,
  })
  characteristic?: string;

  @QueryIntegerField({
    description: 'Chance of reaching the limit within so many km from now.',
    digits: 7,
    optional: true,
  })
  withinKm?: string;

  @LocalDateField({
    description: 'Chance of reaching it before this day; not together with withinKm.',
    optional: true,
  })
  until?: string;

  @InstantField({ description: 'As it was known at this moment.', optional: true })
  asOf?: string;
}

export class CharacteristicWearDto {
  @TextField({ description: 'Id of the characteristic.', max: 120 })
  characteristic!: string;

  @TextField({ description: 'Its name.', max: 200 })
  name!: string;

  @NestedField({
    description:
      'The parts of the kind in the shop, whose strength is lent; null where there is no point to lend it to.',
    type: () => FleetWearDto,
    nullable: true,
  })
  fleet!: FleetWearDto | null;

  @ListField({ description: 'One series a place of the part.', max: 100, type: () => WearSeriesDto })
  series!: readonly WearSeriesDto[];
}

export class PartWearResponse {
  @IdField({ description: 'The fitted part.' })
  fittedPartId!: string;

  @IdField({ description: 'The vehicle it is or was on.' })
  vehicleId!: string;

  @TextField({ description: 'Kind of part.', max: 64 })
  componentType!: string;

  @TextField({ description: 'Where on the vehicle.', max: 80 })
  position!: string;

  @ListField({
    description: 'What of it wears and can be measured.',
    max: 100,
    type: () => CharacteristicWearDto,
  })
  characteristics!: readonly CharacteristicWearDto[];
}

export class VehicleWearResponse {
  @IdField({ description: 'The vehicle.' })
  vehicleId!: string;

  @ListField({ description: 'Its parts that are fitted.', max: 1000, type: () => PartWearResponse })
  parts!: readonly PartWearResponse[];
}

export class WearOutlooksQuery extends PageQuery {
  @TextField({ description: 'Kind of part.', max: 64, pattern: textPatterns.catalogueId })
  componentType!: string;

  @TextField({ description: 'What of it wears.', ...characteristicOptions })
  characteristic!: string;

  @QueryIntegerField({
    description: 'Distance until the next visit, km from now; this or `until`.',
    digits: 7,
    optional: true,
  })
  withinKm?: string;

  @LocalDateField({ description: 'Day of the next visit; this or `withinKm`.', optional: true })
  until?: string;

  @InstantField({ description: 'As it was known at this moment.', optional: true })
  asOf?: string;
}

export class WearOutlookDto extends WearSeriesDto {
  @IdField({ description: 'The vehicle.' })
  vehicleId!: string;

  @TextField({ description: 'What the shop calls it.', nullable: true, max: 80 })
  label!: string | null;

  @TextField({ description: 'Its plate.', nullable: true, max: 20 })
  plate!: string | null;

  @TextField({ description: 'Where on the vehicle the part is.', max: 80 })
  position!: string;
}

class FleetOfOutlooksDto {
  @NestedField({
    description: 'The parts of the kind in the shop, whose strength is lent.',
    type: () => FleetWearDto,
  })
  fleet!: FleetWearDto;

  @IntegerField({
    description:
      'Fitted parts that were left out because more than 4000 were asked about: the ones recorded first.',
  })
  partsLeftOut!: number;
}

export class WearOutlookPage extends JoinTypes(
  pageOf(() => WearOutlookDto),
  FleetOfOutlooksDto,
) {}
