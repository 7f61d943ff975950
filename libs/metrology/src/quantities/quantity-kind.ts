import type { UnitCode } from './unit-code.js';

/**
 * What a value is a value of. A kind fixes the units that may be used and the canonical one.
 *
 * `distance` is what an odometer counts, `length` what a rule or a dial shows. `gaugePressure` counts up from the
 * surrounding air, `absolutePressure` from nothing, `vacuum` down from the surrounding air (a positive number): three
 * kinds, never converted into one another, although they share units. A `temperatureDifference` has no offset.
 */
export const quantityKinds = [
  'length',
  'distance',
  'gaugePressure',
  'absolutePressure',
  'vacuum',
  'mass',
  'force',
  'torque',
  'resistance',
  'voltage',
  'current',
  'electricCharge',
  'rotationalSpeed',
  'angle',
  'ratio',
  'volumeFraction',
  'temperature',
  'temperatureDifference',
  'volume',
  'fuelConsumption',
  'speed',
  'duration',
  'count',
] as const;

/** A kind of `quantityKinds`. */
export type QuantityKind = (typeof quantityKinds)[number];

/** Units of one kind: canonical first in meaning, all allowed ones listed, and the lowest value that can exist. */
export interface QuantityKindDefinition {
  readonly canonical: UnitCode;
  readonly units: readonly UnitCode[];
  /** Lowest possible value in the canonical unit; null where a negative value has a meaning. */
  readonly lowest: string | null;
}

const pressureUnits = [
  'kPa',
  'Pa',
  'MPa',
  'mbar',
  'bar',
  '[psi]',
  'kgf/cm2',
  "[in_i'Hg]",
  "[in_i'Hg_32degF]",
  "[in_i'Hg_60degF]",
  'mm[Hg]',
  "[in_i'H2O]",
  'mm[H2O]',
] as const satisfies readonly UnitCode[];

/** Canonical unit, allowed units and lowest possible value of every kind. */
export const quantityKindTable: Readonly<Record<QuantityKind, QuantityKindDefinition>> = {
  length: { canonical: 'mm', units: ['mm', 'um', 'cm', 'm', '[in_i]', '[mil_i]', '[ft_i]'], lowest: null },
  distance: { canonical: 'km', units: ['km', 'm', '[mi_i]'], lowest: null },
  gaugePressure: { canonical: 'kPa', units: pressureUnits, lowest: null },
  absolutePressure: { canonical: 'kPa', units: pressureUnits, lowest: '0' },
  vacuum: { canonical: 'kPa', units: pressureUnits, lowest: '0' },
  mass: { canonical: 'kg', units: ['kg', 'g', 't', '[lb_av]'], lowest: '0' },
  force: { canonical: 'N', units: ['N', 'kN', 'kgf', '[lbf_av]'], lowest: null },
  torque: { canonical: 'N.m', units: ['N.m', 'kgf.m', '[lbf_av].[ft_i]', '[lbf_av].[in_i]'], lowest: null },
  resistance: { canonical: 'Ohm', units: ['Ohm', 'mOhm', 'kOhm', 'MOhm'], lowest: null },
  voltage: { canonical: 'V', units: ['V', 'mV'], lowest: null },
  current: { canonical: 'A', units: ['A', 'mA'], lowest: null },
  electricCharge: { canonical: 'A.h', units: ['A.h', 'mA.h'], lowest: '0' },
  rotationalSpeed: { canonical: '{rev}/min', units: ['{rev}/min', '/min'], lowest: '0' },
  angle: { canonical: 'deg', units: ['deg', "'"], lowest: null },
  ratio: { canonical: '1', units: ['1', '%', '[ppm]'], lowest: null },
  volumeFraction: { canonical: '%', units: ['%', '[ppm]'], lowest: null },
  temperature: { canonical: 'Cel', units: ['Cel', '[degF]', 'K'], lowest: '-273.15' },
  temperatureDifference: { canonical: 'K', units: ['K', 'Cel', '[degF]'], lowest: null },
  volume: { canonical: 'L', units: ['L', 'mL', '[gal_us]', '[gal_br]'], lowest: '0' },
  fuelConsumption: {
    canonical: 'L/(100.km)',
    units: ['L/(100.km)', 'km/L', '[mi_i]/[gal_us]', '[mi_i]/[gal_br]'],
    lowest: '0',
  },
  speed: { canonical: 'km/h', units: ['km/h', 'm/s', '[mi_i]/h'], lowest: null },
  duration: { canonical: 's', units: ['s', 'ms', 'min', 'h', 'd'], lowest: null },
  count: { canonical: '1', units: ['1'], lowest: '0' },
};

/**
 * Tells whether a unit may be used for a kind of quantity.
 *
 * @param kind  what is measured
 * @param unit  code of the unit
 * @returns true where the kind lists the unit
 * @source `quantityKindTable`
 * @example isUnitOfKind('vacuum', "[in_i'Hg]") // => true
 */
export function isUnitOfKind(kind: QuantityKind, unit: UnitCode): boolean {
  return quantityKindTable[kind].units.includes(unit);
}
