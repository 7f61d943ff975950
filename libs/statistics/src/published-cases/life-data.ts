/** Ages in hours of 20 units on test until 500 h: ten failures, ten taken off.
 *
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.1.3; the page uses 54 h for the first failure, its listing 55 h
 */
export const nistLives = {
  ages: [54, 187, 216, 240, 244, 335, 361, 373, 375, 386, 500],
  events: [1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 0],
  weights: [1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 10],
} as const;

/** Hours of 70 fans of diesel generators, 12 of them failed; like rows are grouped.
 *
 * @source Nelson (1982), Applied Life Data Analysis, table 1.1 of chapter 4; data set `genfan` of R package survival
 */
export const generatorFans = {
  ages: [
    450, 460, 1150, 1560, 1600, 1660, 1850, 2030, 2070, 2080, 2200, 3000, 3100, 3200, 3450, 3750, 4150, 4300,
    4600, 4850, 5000, 6100, 6100, 6300, 6450, 6700, 7450, 7800, 8100, 8200, 8500, 8750, 8750, 9400, 9900,
    10100, 11500,
  ],
  events: [
    1, 0, 1, 0, 1, 0, 0, 0, 1, 1, 0, 0, 1, 0, 1, 0, 0, 0, 1, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 0, 0, 0,
    0, 0,
  ],
  weights: [
    1, 1, 2, 1, 1, 1, 5, 3, 2, 1, 1, 4, 1, 1, 1, 2, 4, 4, 1, 4, 3, 1, 3, 1, 2, 1, 1, 2, 2, 1, 3, 1, 2, 1, 1,
    3, 1,
  ],
} as const;

/** Millions of turns until 23 ball bearings failed.
 *
 * @source Lieblein & Zelen (1956), J. Res. NBS 57:273-316
 */
export const ballBearings = [
  17.88, 28.92, 33, 41.52, 42.12, 45.6, 48.4, 51.84, 51.96, 54.12, 55.56, 67.8, 68.64, 68.64, 68.88, 84.12,
  93.12, 98.64, 105.12, 105.84, 127.92, 128.04, 173.4,
] as const;

/** Years between inspections of 300 heat exchanger tubes of three plants; an upper end of null: no crack was found.
 *
 * @source Meeker & Escobar (1998), Statistical Methods for Reliability Data, chapter 3
 */
export const heatExchanger = {
  lower: [0, 1, 2, 3, 0, 1, 2, 0, 1],
  upper: [1, 2, 3, null, 1, 2, null, 1, null],
  weights: [1, 2, 2, 95, 2, 3, 95, 1, 99],
} as const;

/** Thousands of miles of 96 locomotive controls, 37 of them failed before 135.
 *
 * @source Nelson (1982), Applied Life Data Analysis
 */
export const locomotiveControls = {
  ages: [
    22.5, 37.5, 46, 48.5, 51.5, 53, 54.5, 57.5, 66.5, 68, 69.5, 76.5, 77, 78.5, 80, 81.5, 82, 83, 84, 91.5,
    93.5, 102.5, 107, 108.5, 112.5, 113.5, 116, 117, 118.5, 119, 120, 122.5, 123, 127.5, 131, 132.5, 134, 135,
  ],
  events: [
    1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1,
    1, 1, 0,
  ],
  weights: [
    1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1,
    1, 1, 59,
  ],
} as const;

/** Weeks of remission of 21 patients with a drug, 9 of whom relapsed.
 *
 * @source Freireich et al. (1963), Blood 21:699-716, as in Gehan (1965), Biometrika 52:203-223
 */
export const treatedRemissions = {
  ages: [6, 6, 6, 7, 10, 13, 16, 22, 23, 6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35],
  events: [1, 1, 1, 1, 1, 1, 1, 1, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
} as const;

/** The same of 21 patients without it, all of whom relapsed. */
export const placeboRemissions = {
  ages: [1, 1, 2, 2, 3, 4, 4, 5, 5, 8, 8, 8, 8, 11, 11, 12, 12, 15, 17, 22, 23],
  events: Array.from({ length: 21 }, () => 1),
};
