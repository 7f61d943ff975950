import {
  normalCdf,
  normalLogCdf,
  normalLogPdf,
  normalQuantile,
  normalSurvival,
} from '../distributions/normal.js';

/** Distribution of z = (ln life − mu) / sigma. */
export interface StandardFamily {
  readonly logDensity: (z: number) => number;
  /** First and second derivative of the log density. */
  readonly slope: (z: number) => number;
  readonly curvature: (z: number) => number;
  readonly logSurvival: (z: number) => number;
  readonly logCdf: (z: number) => number;
  /** ln of F(high) − F(low). */
  readonly logBetween: (low: number, high: number) => number;
  readonly cdf: (z: number) => number;
  readonly survival: (z: number) => number;
  readonly quantile: (probability: number) => number;
}

/** Smallest extreme value distribution, F(z) = 1 − exp(−eᶻ): ln of a Weibull life. */
export const smallestExtremeValue: StandardFamily = {
  logDensity: (z) => z - Math.exp(z),
  slope: (z) => 1 - Math.exp(z),
  curvature: (z) => -Math.exp(z),
  logSurvival: (z) => -Math.exp(z),
  logCdf: (z) => Math.log(-Math.expm1(-Math.exp(z))),
  logBetween: (low, high) => {
    const hazard = Math.exp(low);
    return -hazard + Math.log(-Math.expm1(-hazard * Math.expm1(high - low)));
  },
  cdf: (z) => -Math.expm1(-Math.exp(z)),
  survival: (z) => Math.exp(-Math.exp(z)),
  quantile: (probability) => Math.log(-Math.log1p(-probability)),
};

/** Standard normal distribution: ln of a lognormal life. */
export const standardNormal: StandardFamily = {
  logDensity: (z) => normalLogPdf(z),
  slope: (z) => -z,
  curvature: () => -1,
  logSurvival: (z) => normalLogCdf(-z),
  logCdf: (z) => normalLogCdf(z),
  logBetween: (low, high) => {
    // In the tail on the side of the interval both logarithms keep their digits.
    const [outer, inner] =
      low > 0 ? [normalLogCdf(-high), normalLogCdf(-low)] : [normalLogCdf(low), normalLogCdf(high)];
    return inner + Math.log(-Math.expm1(outer - inner));
  },
  cdf: (z) => normalCdf(z),
  survival: (z) => normalSurvival(z),
  quantile: (probability) => normalQuantile(probability),
};
