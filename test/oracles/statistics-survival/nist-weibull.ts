/**
 * Twenty units on test for 500 hours: ten failures, ten removed in working order.
 * NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.1.3. The page gives the first failure at 54 h, the listing of its
 * R code at 55 h; both are used.
 */
export const nistWeibull = (firstFailure: 54 | 55): { ages: number[]; events: number[] } => ({
  ages: [
    firstFailure,
    187,
    216,
    240,
    244,
    335,
    361,
    373,
    375,
    386,
    500,
    500,
    500,
    500,
    500,
    500,
    500,
    500,
    500,
    500,
  ],
  events: [1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
});
