/**
 * Efron & Morris (1975), J. Amer. Statist. Assoc. 70:311-319: successes of 18 players in their first 45 trials each, in
 * the order of the paper; as distributed with the R package pscl.
 */
export const battingTrials = 45;
export const battingSuccesses: readonly number[] = [
  18, 17, 16, 15, 14, 14, 13, 12, 11, 11, 10, 10, 10, 10, 10, 9, 8, 7,
];
