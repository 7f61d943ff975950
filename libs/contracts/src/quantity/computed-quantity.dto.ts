import { unitCodes, type UnitCode } from '@endfloat/metrology';
import { DecimalField } from '../fields/decimal.field.js';
import { EnumField } from '../fields/enum.field.js';

/** A quantity that was converted or averaged: it may have more digits than one that is entered. */
export class ComputedQuantityDto {
  @DecimalField({
    description: 'Number as decimal text, at most 24 significant digits.',
    integerDigits: 24,
    scale: 40,
    signed: true,
    example: '3.38638864',
  })
  value!: string;

  @EnumField({ description: 'Code of the unit (UCUM).', values: unitCodes, enumName: 'UnitCode', open: true })
  unit!: UnitCode;
}
