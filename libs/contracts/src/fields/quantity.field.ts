import { quantityKindTable, unitCodes, type QuantityKind, type UnitCode } from '@endfloat/metrology';
import { DecimalField, type DecimalLimits } from './decimal.field.js';
import { EnumField } from './enum.field.js';
import type { FieldOptions } from './field.js';
import type { FieldClass } from './json-schema.js';
import { NestedField } from './nested.field.js';

/** A quantity on the wire: decimal text and the code of its unit. */
export interface QuantityDto<U extends string = UnitCode> {
  value: string;
  unit: U;
}

export interface QuantityChoice {
  /** Kind of quantity, which fixes the units; `any` where the kind depends on what is measured. */
  readonly kind: QuantityKind | 'any';
}

/**
 * Decimal text with a unit of the kind, always sent complete.
 * A minus sign is admitted where the kind has negative values. The component is named after the kind, e.g. `LengthQuantity`.
 */
export const QuantityField = (options: FieldOptions & QuantityChoice): PropertyDecorator =>
  NestedField({ ...options, type: () => quantityClass(options.kind) });

const made = new Map<QuantityChoice['kind'], FieldClass<QuantityDto>>();

/** The class of quantities of one kind; the same class each time. */
export function quantityClass(kind: QuantityChoice['kind']): FieldClass<QuantityDto> {
  const known = made.get(kind);
  if (known !== undefined) return known;
  const start = kind.charAt(0).toUpperCase() + kind.slice(1);
  const name = `${start}Quantity`;
  const type = { [name]: class {} }[name] as FieldClass<QuantityDto>;
  const { units, limits } = choiceOf(kind);
  DecimalField({ description: 'Exact number as decimal text.', example: '12.5', ...limits })(
    type.prototype as object,
    'value',
  );
  EnumField({ description: 'Code of the unit (UCUM).', values: units, enumName: `${start}Unit` })(
    type.prototype as object,
    'unit',
  );
  made.set(kind, type);
  return type;
}

function choiceOf(kind: QuantityChoice['kind']): { units: readonly UnitCode[]; limits: DecimalLimits } {
  if (kind === 'any') return { units: unitCodes, limits: { signed: true } };
  const { units, lowest } = quantityKindTable[kind];
  return { units, limits: { signed: lowest === null || lowest.startsWith('-') } };
}
