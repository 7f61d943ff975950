import { AnswerUnitField, CalculationResponse, ColumnUnitField, type UnitCode } from './calculation.dto.js';

/** Units of the two columns of a line. */
export const UnitOfX = (): PropertyDecorator => ColumnUnitField('Unit of x.');
export const UnitOfY = (): PropertyDecorator => ColumnUnitField('Unit of y.');

export class LineResponse extends CalculationResponse {
  @AnswerUnitField('Unit of x.')
  xUnit!: UnitCode;

  @AnswerUnitField('Unit of y; slopes are in it per unit of x.')
  yUnit!: UnitCode;
}
