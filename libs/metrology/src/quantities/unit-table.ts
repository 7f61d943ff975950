import type { UnitCode } from './unit-code.js';

/** What a unit measures, whatever it is used for. Gauge and absolute pressure share units, not quantity kinds. */
export type Dimension =
  | 'length'
  | 'pressure'
  | 'mass'
  | 'force'
  | 'torque'
  | 'resistance'
  | 'voltage'
  | 'current'
  | 'charge'
  | 'rotation'
  | 'angle'
  | 'fraction'
  | 'temperature'
  | 'volume'
  | 'consumption'
  | 'speed'
  | 'duration';

/**
 * Exact definition of a unit against the base unit of its dimension.
 * Ordinary: base = (value + shift) x numerator / denominator. Reciprocal: base = numerator / (denominator x value).
 */
export interface UnitDefinition {
  readonly dimension: Dimension;
  readonly numerator: string;
  readonly denominator: string;
  readonly shift: string;
  readonly isReciprocal: boolean;
}

const linear = (dimension: Dimension, numerator: string, denominator = '1', shift = '0'): UnitDefinition => ({
  dimension,
  numerator,
  denominator,
  shift,
  isReciprocal: false,
});

const reciprocal = (dimension: Dimension, numerator: string, denominator: string): UnitDefinition => ({
  dimension,
  numerator,
  denominator,
  shift: '0',
  isReciprocal: true,
});

/**
 * Every unit against its base unit: m, Pa, kg, N, N.m, Ohm, V, A, A.h, /min, deg, 1, K, L, L/(100.km), km/h, s.
 *
 * Exact by definition: inch 0.0254 m, mile 1609.344 m, pound 0.45359237 kg, standard gravity 9.80665 m/s2,
 * US gallon 3.785411784 L, British gallon 4.54609 L. The conventional inch of mercury is 13595.1 kg/m3 x 9.80665 m/s2 x
 * 0.0254 m = 3386.388640341 Pa exactly; UCUM's own table rounds the metre of mercury to 133.322 kPa, 2.9e-6 less.
 * The inch of mercury at 32 degF and at 60 degF are the printed six digits of SP 811.
 *
 * @source NIST SP 811 (2008), Appendix B.8 and B.9
 * @oracle test/oracles/metrology/unit-table.spec.ts (an independent UCUM implementation)
 */
export const unitTable: Readonly<Record<UnitCode, UnitDefinition>> = {
  um: linear('length', '0.000001'),
  mm: linear('length', '0.001'),
  cm: linear('length', '0.01'),
  m: linear('length', '1'),
  km: linear('length', '1000'),
  '[in_i]': linear('length', '0.0254'),
  '[mil_i]': linear('length', '0.0000254'),
  '[ft_i]': linear('length', '0.3048'),
  '[mi_i]': linear('length', '1609.344'),
  Pa: linear('pressure', '1'),
  kPa: linear('pressure', '1000'),
  MPa: linear('pressure', '1000000'),
  mbar: linear('pressure', '100'),
  bar: linear('pressure', '100000'),
  '[psi]': linear('pressure', '4.4482216152605', '0.00064516'),
  'kgf/cm2': linear('pressure', '98066.5'),
  "[in_i'Hg]": linear('pressure', '3386.388640341'),
  "[in_i'Hg_32degF]": linear('pressure', '3386.38'),
  "[in_i'Hg_60degF]": linear('pressure', '3376.85'),
  'mm[Hg]': linear('pressure', '133.322387415'),
  "[in_i'H2O]": linear('pressure', '249.08891'),
  'mm[H2O]': linear('pressure', '9.80665'),
  g: linear('mass', '0.001'),
  kg: linear('mass', '1'),
  t: linear('mass', '1000'),
  '[lb_av]': linear('mass', '0.45359237'),
  N: linear('force', '1'),
  kN: linear('force', '1000'),
  kgf: linear('force', '9.80665'),
  '[lbf_av]': linear('force', '4.4482216152605'),
  'N.m': linear('torque', '1'),
  'kgf.m': linear('torque', '9.80665'),
  '[lbf_av].[ft_i]': linear('torque', '1.3558179483314004'),
  '[lbf_av].[in_i]': linear('torque', '0.1129848290276167'),
  mOhm: linear('resistance', '0.001'),
  Ohm: linear('resistance', '1'),
  kOhm: linear('resistance', '1000'),
  MOhm: linear('resistance', '1000000'),
  mV: linear('voltage', '0.001'),
  V: linear('voltage', '1'),
  mA: linear('current', '0.001'),
  A: linear('current', '1'),
  'mA.h': linear('charge', '0.001'),
  'A.h': linear('charge', '1'),
  '/min': linear('rotation', '1'),
  '{rev}/min': linear('rotation', '1'),
  deg: linear('angle', '1'),
  "'": linear('angle', '1', '60'),
  '1': linear('fraction', '1'),
  '%': linear('fraction', '0.01'),
  '[ppm]': linear('fraction', '0.000001'),
  Cel: linear('temperature', '1', '1', '273.15'),
  '[degF]': linear('temperature', '5', '9', '459.67'),
  K: linear('temperature', '1'),
  mL: linear('volume', '0.001'),
  L: linear('volume', '1'),
  '[gal_us]': linear('volume', '3.785411784'),
  '[gal_br]': linear('volume', '4.54609'),
  'L/(100.km)': linear('consumption', '1'),
  'km/L': reciprocal('consumption', '100', '1'),
  '[mi_i]/[gal_us]': reciprocal('consumption', '378.5411784', '1.609344'),
  '[mi_i]/[gal_br]': reciprocal('consumption', '454.609', '1.609344'),
  'm/s': linear('speed', '3.6'),
  'km/h': linear('speed', '1'),
  '[mi_i]/h': linear('speed', '1.609344'),
  ms: linear('duration', '0.001'),
  s: linear('duration', '1'),
  min: linear('duration', '60'),
  h: linear('duration', '3600'),
  d: linear('duration', '86400'),
};
