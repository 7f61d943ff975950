/** Hits of 18 batters in their first 45 times at bat of a season.
 *
 * @source Efron & Morris (1975), JASA 70:311-319
 */
export const battingHits = [18, 17, 16, 15, 14, 14, 13, 12, 11, 11, 10, 10, 10, 10, 10, 9, 8, 7] as const;
export const timesAtBat = 45;

/** Defects on 25 wafers.
 *
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.3.1
 */
export const waferDefects = [
  16, 14, 28, 16, 12, 20, 10, 12, 10, 17, 19, 17, 14, 16, 15, 13, 14, 16, 11, 20, 11, 19, 16, 31, 13,
] as const;

/** Defective chips among 50 on each of 30 wafers.
 *
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.3.2
 */
export const defectiveChips = [
  12, 15, 8, 10, 4, 7, 16, 9, 14, 10, 5, 6, 17, 12, 22, 8, 10, 5, 13, 11, 20, 18, 24, 15, 9, 12, 7, 13, 9, 6,
] as const;

/** Monthly sales of one product over three years.
 *
 * @source Hyndman & Athanasopoulos, Forecasting: Principles and Practice, 2nd ed., product C
 */
export const productSales = [
  0, 2, 0, 1, 0, 11, 0, 0, 0, 0, 2, 0, 6, 3, 0, 0, 0, 0, 0, 7, 0, 0, 0, 0, 0, 0, 0, 3, 1, 0, 0, 1, 0, 1, 0, 0,
] as const;
