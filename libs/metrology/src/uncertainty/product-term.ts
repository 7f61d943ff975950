/**
 * Second-order contribution of a product of two inputs whose first-order terms vanish (a length times a difference of
 * expansion coefficients times a temperature offset, both estimated as zero): |d2f / dx dy| u(x) u(y).
 *
 * @param mixedDerivative  second derivative of the result by both inputs
 * @param first            standard uncertainty of the first input, not negative
 * @param second           standard uncertainty of the second input, not negative
 * @returns contribution to the combined standard uncertainty, to be added as a further component
 * @throws RangeError on a non-finite number or a negative uncertainty
 * @source JCGM 100:2008, 5.1.2 note and H.1.7
 * @oracle libs/metrology/src/published-cases
 * @example productTermUncertainty(2, 3, 4) // => 24
 */
export function productTermUncertainty(mixedDerivative: number, first: number, second: number): number {
  if (![mixedDerivative, first, second].every(Number.isFinite) || first < 0 || second < 0) {
    throw new RangeError(
      'derivative and standard uncertainties are finite, the uncertainties not below zero',
    );
  }
  return Math.abs(mixedDerivative) * first * second;
}
