import {
  parseDecimalText,
  quantityKindTable,
  type InstrumentProperties,
  type Quantity,
  type UnitCode,
} from '@endfloat/metrology';
import type { Fault } from '../errors/domain.errors.js';

/**
 * What is wrong with an instrument's figures; null when they can be computed with. Every figure is a difference, so none
 * is negative, and all are of one kind of quantity.
 *
 * @param pointer  JSON Pointer of the properties in the request
 */
export function instrumentFault(properties: InstrumentProperties, pointer = ''): Fault | null {
  const { errorModel, resolution } = properties;
  const figures: [string, Quantity][] = [];
  if (resolution !== null) figures.push([`${pointer}/resolution`, resolution]);
  const at = `${pointer}/errorModel`;
  switch (errorModel.kind) {
    case 'maximumPermissibleError':
      figures.push([`${at}/limit`, errorModel.limit]);
      break;
    case 'percentOfReadingPlusDigits':
      figures.push([`${at}/digit`, errorModel.digit]);
      break;
    case 'accuracyClassOfSpan':
      figures.push([`${at}/span`, errorModel.span]);
      break;
    case 'bladeSet':
      figures.push([`${at}/permissibleError`, errorModel.permissibleError]);
      errorModel.blades.forEach((blade, index) => figures.push([`${at}/blades/${String(index)}`, blade]));
      break;
    case 'expandedUncertainty':
      figures.push([`${at}/expanded`, errorModel.expanded]);
      break;
    case 'unknown':
      break;
  }
  return wrongFigure(figures) ?? wrongStep(`${pointer}/resolution`, resolution);
}

function wrongFigure(figures: readonly (readonly [string, Quantity])[]): Fault | null {
  const [first] = figures;
  for (const [pointer, { value, unit }] of figures) {
    if (parseDecimalText(value).kind !== 'decimal' || value.startsWith('-'))
      return { pointer, rule: 'notNegative', detail: 'Give a decimal number that is not below zero.' };
    if (first !== undefined && !ofOneKind(first[1].unit, unit)) {
      return {
        pointer: `${pointer}/unit`,
        rule: 'sameKind',
        detail: `${unit} is no unit of what ${first[1].unit} measures. An instrument with several ranges is recorded once for each quantity.`,
      };
    }
  }
  return null;
}

function wrongStep(pointer: string, resolution: Quantity | null): Fault | null {
  if (resolution === null || Number(resolution.value) > 0) return null;
  return {
    pointer: `${pointer}/value`,
    rule: 'aboveZero',
    detail: 'A step that can be read is above zero; null says that it is not known.',
  };
}

const ofOneKind = (one: UnitCode, other: UnitCode): boolean =>
  Object.values(quantityKindTable).some(({ units }) => units.includes(one) && units.includes(other));
