import { currencyCodes } from '@endfloat/metrology';
import { DecimalField } from '../fields/decimal.field.js';
import { EnumField } from '../fields/enum.field.js';

/** Money on the wire: decimal text and an ISO 4217 code. More decimals than the currency has are refused by its reader. */
export class MoneyDto {
  @DecimalField({
    description: 'Amount as decimal text, with no more decimals than the currency has.',
    integerDigits: 12,
    scale: 4,
    signed: true,
    example: '129.90',
  })
  amount!: string;

  @EnumField({
    description: 'ISO 4217 code.',
    values: currencyCodes,
    enumName: 'Currency',
    open: true,
    example: 'EUR',
  })
  currency!: string;
}
