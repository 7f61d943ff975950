import {
  vehicleMarkets,
  vehicleNumberWarningCodes,
  type VehicleMarket,
  type VehicleNumberWarningCode,
} from '@endfloat/catalogue';
import {
  EnumField,
  FlagField,
  IntegerField,
  KindField,
  ListField,
  TextField,
  UnionField,
} from '../fields/index.js';
import { CalculationResponse } from './calculation.dto.js';

export class VehicleNumberRequest {
  @TextField({ description: 'Number as read.', max: 40, example: '1M8GDM9AXKP042788' })
  number!: string;

  @EnumField({
    description: 'Market it was built for; a check digit is mandatory in North America only.',
    values: vehicleMarkets,
    enumName: 'VehicleMarket',
    optional: true,
  })
  market?: VehicleMarket;
}

export class CheckDigitDto {
  @KindField('checkDigit')
  kind!: 'checkDigit';

  @IntegerField({ description: 'Sum of weighted values.' })
  sum!: number;

  @TextField({ description: 'Digit that belongs in position 9.', max: 1 })
  digit!: string;

  @FlagField({ description: 'Whether it is there.' })
  matches!: boolean;
}

const notVinReasons = ['length', 'alphabet'] as const;

export class NotAVinDto {
  @KindField('notAVin', 'not a number of 17 characters of the alphabet; older chassis numbers are not')
  kind!: 'notAVin';

  @EnumField({ description: 'Why.', values: notVinReasons, enumName: 'NotAVinReason' })
  reason!: (typeof notVinReasons)[number];
}

export class ModelYearDto {
  @KindField('modelYear')
  kind!: 'modelYear';

  @IntegerField({ description: 'Year by position 10, cycle by position 7.' })
  year!: number;

  @IntegerField({ description: 'Year of the other cycle.' })
  otherCycleYear!: number;
}

const notCodedReasons = ['length', 'code'] as const;

export class YearNotCodedDto {
  @KindField('notCoded')
  kind!: 'notCoded';

  @EnumField({ description: 'Why.', values: notCodedReasons, enumName: 'YearNotCodedReason' })
  reason!: (typeof notCodedReasons)[number];
}

export class VehicleNumberResponse extends CalculationResponse {
  @TextField({ description: 'The number without separators, in capitals.', max: 40, min: 0 })
  normalised!: string;

  @EnumField({ description: 'What it is.', values: ['vin', 'chassisNumber'], enumName: 'VehicleNumberKind' })
  numberKind!: 'vin' | 'chassisNumber';

  @UnionField({ description: 'Its check digit.', types: () => [CheckDigitDto, NotAVinDto] })
  checkDigit!: CheckDigitDto | NotAVinDto;

  @UnionField({ description: 'Its model year.', types: () => [ModelYearDto, YearNotCodedDto] })
  modelYear!: ModelYearDto | YearNotCodedDto;

  @ListField({
    description: 'What looks odd; nothing is refused for it.',
    max: 10,
    choice: { values: vehicleNumberWarningCodes, enumName: 'VehicleNumberWarning' },
  })
  warnings!: readonly VehicleNumberWarningCode[];
}
