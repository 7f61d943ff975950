import { DecimalField } from '../fields/decimal.field.js';
import { TextField } from '../fields/text.field.js';

/** Money on the wire: decimal text and an ISO 4217 code. */
export class MoneyDto {
  @DecimalField({
    description: 'Amount as decimal text, with no more decimals than the currency has.',
    integerDigits: 12,
    scale: 4,
    signed: true,
    example: '129.90',
  })
  amount!: string;

  @TextField({ description: 'ISO 4217 code.', max: 3, min: 3, pattern: '^[A-Z]{3}$', example: 'EUR' })
  currency!: string;
}
