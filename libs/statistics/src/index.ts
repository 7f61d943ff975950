// distributions
export {
  digamma,
  logGamma,
  regularisedBeta,
  regularisedBetaUpper,
} from './distributions/special-functions.js';
export {
  inverseRegularisedGamma,
  regularisedGammaLower,
  regularisedGammaUpper,
} from './distributions/incomplete-gamma.js';
export {
  normalCdf,
  normalLogCdf,
  normalLogPdf,
  normalPdf,
  normalQuantile,
  normalSurvival,
} from './distributions/normal.js';
export {
  studentTCdf,
  studentTLogPdf,
  studentTQuantile,
  studentTSurvival,
} from './distributions/student-t.js';
export {
  chiSquareCdf,
  chiSquareLogPdf,
  chiSquareQuantile,
  chiSquareSurvival,
} from './distributions/chi-square.js';
export { fCdf, fLogPdf, fQuantile, fSurvival } from './distributions/f.js';
export { betaCdf, betaLogPdf, betaQuantile, betaSurvival } from './distributions/beta.js';
export { gammaCdf, gammaLogPdf, gammaQuantile, gammaSurvival } from './distributions/gamma.js';
export { weibullCdf, weibullLogPdf, weibullQuantile, weibullSurvival } from './distributions/weibull.js';
export {
  lognormalCdf,
  lognormalLogPdf,
  lognormalQuantile,
  lognormalSurvival,
} from './distributions/lognormal.js';
export {
  exponentialCdf,
  exponentialLogPdf,
  exponentialQuantile,
  exponentialSurvival,
} from './distributions/exponential.js';
export { poissonCdf, poissonLogPmf, poissonQuantile, poissonSurvival } from './distributions/poisson.js';
export { binomialCdf, binomialLogPmf, binomialQuantile, binomialSurvival } from './distributions/binomial.js';
