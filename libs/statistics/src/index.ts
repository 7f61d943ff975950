// distributions
export * from './distributions/special-functions.js';
export {
  inverseRegularisedGamma,
  regularisedGammaLower,
  regularisedGammaUpper,
} from './distributions/incomplete-gamma.js';
export * from './distributions/normal.js';
export * from './distributions/student-t.js';
export * from './distributions/chi-square.js';
export * from './distributions/f.js';
export * from './distributions/beta.js';
export * from './distributions/gamma.js';
export * from './distributions/weibull.js';
export * from './distributions/lognormal.js';
export * from './distributions/exponential.js';
export * from './distributions/poisson.js';
export * from './distributions/binomial.js';
// inference
export * from './inference/interval.js';
// regression
export * from './regression/inverse-prediction.js';
export * from './regression/least-squares-through-origin.js';
export * from './regression/line-fit.js';
export * from './regression/ordinary-least-squares.js';
export type { Point } from './regression/point.js';
export * from './regression/predict-on-line.js';
export * from './regression/slope-interval.js';
export { weightedLeastSquares } from './regression/weighted-least-squares.js';
export type { WeightedPoint } from './regression/weighted-least-squares.js';
// descriptive
export type { Convergence, InsufficientData, NotConverged } from './descriptive/outcomes.js';
export * from './descriptive/compensated-sum.js';
export * from './descriptive/mean.js';
export * from './descriptive/mean-interval.js';
export * from './descriptive/sample-variance.js';
export * from './descriptive/sample-quantile.js';
// optimise
export * from './optimise/find-root.js';
export * from './optimise/minimise-on-interval.js';
export * from './optimise/maximise-by-newton.js';
// rank
export { mannKendall, mannKendallMethods } from './rank/mann-kendall.js';
export type { MannKendallMethod, MannKendallOutcome, MannKendallTest } from './rank/mann-kendall.js';
export * from './rank/theil-sen-slope.js';
// proportions
export * from './proportions/beta-binomial-fit.js';
export * from './proportions/beta-posterior.js';
export type { BinomialCount } from './proportions/binomial-count.js';
export * from './proportions/brier-score.js';
export * from './proportions/clopper-pearson-interval.js';
export type { Forecast } from './proportions/forecast.js';
export * from './proportions/james-stein-proportions.js';
export * from './proportions/james-stein-shrinkage.js';
export * from './proportions/jeffreys-interval.js';
export * from './proportions/modified-jeffreys-interval.js';
export * from './proportions/newcombe-difference.js';
export * from './proportions/proportion-interval.js';
export * from './proportions/reliability-table.js';
export * from './proportions/wilson-interval.js';
// charts
export * from './charts/control-chart.js';
export * from './charts/count-chart.js';
export * from './charts/events-between-chart.js';
export * from './charts/expected-count.js';
export * from './charts/funnel-limits.js';
export * from './charts/observed-to-expected.js';
export * from './charts/proportion-chart.js';
export { rateChart } from './charts/rate-chart.js';
export type { EventCount } from './charts/rate-chart.js';
export * from './charts/time-between-chart.js';
// survival
export type { CensoredSample } from './survival/censored-sample.js';
export { curveLimitForms, type CurveLimitForm, type Limits } from './survival/curve-limits.js';
export * from './survival/kaplan-meier.js';
export {
  curveQuantile,
  survivalAtAge,
  type CurveQuantile,
  type SurvivalAtAge,
} from './survival/curve-lookup.js';
export * from './survival/log-rank-test.js';
export { rightCensoredLives, type LifeSample } from './survival/life-sample.js';
export {
  fitLifeDistribution,
  lifeFamilies,
  noMaximumReasons,
  type LifeCovariance,
  type LifeFamily,
  type LifeFit,
  type LifeFitOutcome,
  type NoMaximum,
  type ZeroLives,
} from './survival/fit-life-distribution.js';
export * from './survival/life-estimates.js';
export * from './survival/profile-limits.js';
export * from './survival/weibayes.js';
// recurrence
export type { RecurrenceSample } from './recurrence/recurrence-sample.js';
export * from './recurrence/mean-cumulative-function.js';
// replacement
export * from './replacement/age-replacement.js';
export * from './replacement/age-replacement-cost-rate.js';
export * from './replacement/challenger-rule.js';
export { economicLife } from './replacement/economic-life.js';
export type { EconomicLife, EconomicLifeOptions, HoldingPeriod } from './replacement/economic-life.js';
export type { LifeDistribution } from './replacement/life-distribution.js';
export { runToFailureReasons } from './replacement/replacement-costs.js';
export type {
  OptimalAge,
  ReplacementCosts,
  RunToFailure,
  RunToFailureReason,
} from './replacement/replacement-costs.js';
export * from './replacement/weibull-age-replacement.js';
// stock levels
export * from './stock-levels/croston.js';
export * from './stock-levels/expected-backorders.js';
export type { NewsvendorCosts, NewsvendorLevel } from './stock-levels/newsvendor-costs.js';
export * from './stock-levels/newsvendor-normal.js';
export * from './stock-levels/newsvendor-poisson.js';
export * from './stock-levels/poisson-base-stock.js';
export * from './stock-levels/service-measure.js';
export * from './stock-levels/syntetos-boylan.js';
export * from './recurrence/curve-at-age.js';
export * from './recurrence/mean-cumulative-difference.js';
export {
  terminations,
  type GroupedCounts,
  type SingleSystem,
  type Termination,
} from './recurrence/process-spans.js';
export * from './recurrence/power-law-process.js';
export * from './recurrence/grouped-power-law-process.js';
export * from './recurrence/pooled-power-law-process.js';
export * from './recurrence/log-linear-process.js';
export * from './recurrence/trend-tests.js';
// inference: exact reasoning with few hypotheses
export * from './inference/bayes-binary.js';
export { entropy } from './inference/entropy.js';
export * from './inference/information-gain.js';
export * from './inference/noisy-or.js';
export * from './inference/noisy-or-posterior.js';
export * from './survival/turnbull-estimate.js';
// mixed: lines of several units
export { betweenVariations } from './mixed/minimise-reml.js';
export type { BetweenVariation } from './mixed/minimise-reml.js';
export * from './mixed/predict-on-uncertain-line.js';
export * from './mixed/random-effects-line.js';
export * from './mixed/recentre-line.js';
export * from './mixed/shrunken-line.js';
export type { LineCovariance, UncertainLine } from './mixed/uncertain-line.js';
// worked examples from outside
export * from './published-cases/index.js';
