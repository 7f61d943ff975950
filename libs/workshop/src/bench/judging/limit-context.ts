import { isUnitCode, parseDecimalText, type ContextValue, type LimitContext } from '@endfloat/metrology';
import type { Vehicle } from '../../ports/records/vehicles.records.js';

/** "3500 kg" is a quantity, "N1" a text; the unit is never guessed. */
export function contextValue(text: string): ContextValue {
  const [value, unit, ...more] = text.split(' ');
  if (value === undefined || unit === undefined || more.length > 0) return text;
  return isUnitCode(unit) && parseDecimalText(value).kind === 'decimal' ? { value, unit } : text;
}

export function contextOfTexts(texts: Readonly<Record<string, string>>): LimitContext {
  return Object.fromEntries(Object.entries(texts).map(([key, text]) => [key, contextValue(text)]));
}

/** What limits may ask of a vehicle. */
export function contextOfVehicle(vehicle: Vehicle): LimitContext {
  return {
    ...contextOfTexts(vehicle.attributes),
    ...(vehicle.firstUsedOn === null ? {} : { firstUsedOn: vehicle.firstUsedOn }),
    ...(vehicle.application === null ? {} : { application: vehicle.application }),
  };
}
