/**
 * Codes of the units a value may be written in.
 *
 * They are UCUM codes (case sensitive form), with two exceptions: UCUM has no code for the inch of mercury at a stated
 * temperature. `[in_i'Hg_32degF]` and `[in_i'Hg_60degF]` are codes of this library. They are deliberately *not* written
 * with a curly-brace annotation, because UCUM lets a reader drop annotations: such a reader would take the 60 degF inch
 * for the conventional one, 0.3 % away. A UCUM reader refuses the square-bracket form instead.
 *
 * Sixteenths and thirty-seconds of an inch are no units of their own: "2/32" is read by `parseReadingText` as 0.0625
 * `[in_i]`, exactly, and the text is kept.
 *
 * @source The Unified Code for Units of Measure (UCUM), version 2.1
 */
export const unitCodes = [
  // length, distance
  'um',
  'mm',
  'cm',
  'm',
  'km',
  '[in_i]',
  '[mil_i]',
  '[ft_i]',
  '[mi_i]',
  // pressure, gauge or absolute
  'Pa',
  'kPa',
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
  // mass, force, torque
  'g',
  'kg',
  't',
  '[lb_av]',
  'N',
  'kN',
  'kgf',
  '[lbf_av]',
  'N.m',
  'kgf.m',
  '[lbf_av].[ft_i]',
  '[lbf_av].[in_i]',
  // electrical
  'mOhm',
  'Ohm',
  'kOhm',
  'MOhm',
  'mV',
  'V',
  'mA',
  'A',
  'mA.h',
  'A.h',
  // rotation, angle
  '/min',
  '{rev}/min',
  'deg',
  "'",
  // ratio
  '1',
  '%',
  '[ppm]',
  // temperature
  'Cel',
  '[degF]',
  'K',
  // volume, consumption, speed
  'mL',
  'L',
  '[gal_us]',
  '[gal_br]',
  'L/(100.km)',
  'km/L',
  '[mi_i]/[gal_us]',
  '[mi_i]/[gal_br]',
  'm/s',
  'km/h',
  '[mi_i]/h',
  // time
  'ms',
  's',
  'min',
  'h',
  'd',
] as const;

/** A code of `unitCodes`. */
export type UnitCode = (typeof unitCodes)[number];

/**
 * Tells whether a text is one of `unitCodes`; case matters, as in UCUM.
 *
 * @param text  any text
 * @returns true for a known code
 * @source UCUM, as `unitCodes`
 * @example isUnitCode('mm') // => true
 */
export function isUnitCode(text: string): text is UnitCode {
  return (unitCodes as readonly string[]).includes(text);
}
