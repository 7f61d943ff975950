import { DecimalField, decimalText, type DecimalLimits } from './decimal.field.js';
import { EnumField } from './enum.field.js';
import type { FieldOptions } from './field.js';
import type { FieldClass } from './json-schema.js';
import { NestedField } from './nested.field.js';

/** A quantity on the wire: decimal text and the UCUM code of its unit. */
export interface QuantityDto<U extends string = string> {
  value: string;
  unit: U;
}

export interface QuantityChoice extends DecimalLimits {
  /** Name of the component, e.g. `Length`; one name always stands for one list of units and one set of limits. */
  readonly name: string;
  /** UCUM codes this member accepts; a tuple of the metrology room. */
  readonly units: readonly string[];
}

/** Decimal text with a unit from a list, always sent complete. */
export const QuantityField = (options: FieldOptions & QuantityChoice): PropertyDecorator => {
  const { name, units, integerDigits, scale, signed, ...common } = options;
  const limits = {
    ...(integerDigits === undefined ? {} : { integerDigits }),
    ...(scale === undefined ? {} : { scale }),
    ...(signed === undefined ? {} : { signed }),
  };
  return NestedField({ ...common, type: () => quantityClass({ name, units, ...limits }) });
};

const made = new Map<string, FieldClass>();

function quantityClass({ name, units, ...limits }: QuantityChoice): FieldClass<QuantityDto> {
  const key = JSON.stringify([name, units, decimalText(limits).pattern]);
  const known = made.get(key);
  if (known !== undefined) return known as FieldClass<QuantityDto>;
  const type = { [`${name}Quantity`]: class {} }[`${name}Quantity`] as FieldClass<QuantityDto>;
  DecimalField({ description: 'Exact number as decimal text.', example: '0.12', ...limits })(
    type.prototype as object,
    'value',
  );
  EnumField({ description: 'UCUM code of the unit.', values: units, enumName: `${name}Unit` })(
    type.prototype as object,
    'unit',
  );
  made.set(key, type);
  return type;
}
