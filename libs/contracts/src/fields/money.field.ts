import type { FieldOptions } from './field.js';
import { NestedField } from './nested.field.js';
import { MoneyDto } from '../quantity/money.dto.js';

/** An amount with its currency, always sent complete. */
export const MoneyField = (options: FieldOptions): PropertyDecorator =>
  NestedField({ ...options, type: () => MoneyDto });
