/**
 * Graybill & Iyer (1994), Regression Analysis, p. 431: pairs [temperature set, temperature shown], 8 observations; as
 * distributed with the R package investr.
 */
export const thermostat: readonly (readonly [number, number])[] = [
  [96, 95.71],
  [98, 98.16],
  [100, 99.52],
  [102, 102.09],
  [104, 103.79],
  [106, 106.18],
  [108, 108.14],
  [110, 110.21],
];
