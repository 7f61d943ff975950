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
// inference
export type { Interval } from './inference/interval.js';
// regression
export { inversePrediction, inverseTargets } from './regression/inverse-prediction.js';
export type {
  InversePrediction,
  InversePredictionOptions,
  InverseTarget,
} from './regression/inverse-prediction.js';
export { leastSquaresThroughOrigin } from './regression/least-squares-through-origin.js';
export { lineModels, scatterSources } from './regression/line-fit.js';
export type {
  ExactlyDeterminedLine,
  LineFit,
  LineFitOutcome,
  LineModel,
  ScatterSource,
} from './regression/line-fit.js';
export { ordinaryLeastSquares } from './regression/ordinary-least-squares.js';
export type { Point } from './regression/point.js';
export { predictOnLine } from './regression/predict-on-line.js';
export type { LinePrediction, LinePredictionOptions } from './regression/predict-on-line.js';
export { slopeInterval } from './regression/slope-interval.js';
export type { SlopeInterval } from './regression/slope-interval.js';
export { weightedLeastSquares } from './regression/weighted-least-squares.js';
export type { WeightedPoint } from './regression/weighted-least-squares.js';
// descriptive
export type { Convergence, InsufficientData, NotConverged } from './descriptive/outcomes.js';
export { compensatedSum } from './descriptive/compensated-sum.js';
export { mean, type MeanOutcome } from './descriptive/mean.js';
export { sampleVariance, type VarianceOutcome } from './descriptive/sample-variance.js';
export { median, sampleQuantile, type SampleQuantileOutcome } from './descriptive/sample-quantile.js';
// optimise
export { findRoot, type RootOptions, type RootOutcome } from './optimise/find-root.js';
export {
  minimiseOnInterval,
  type MinimumOptions,
  type MinimumOutcome,
} from './optimise/minimise-on-interval.js';
export {
  maximiseByNewton,
  type MaximumOutcome,
  type NewtonOptions,
  type SecondOrder,
} from './optimise/maximise-by-newton.js';
// rank
export { mannKendall, mannKendallMethods } from './rank/mann-kendall.js';
export type { MannKendallMethod, MannKendallOutcome, MannKendallTest } from './rank/mann-kendall.js';
export { theilSenSlope } from './rank/theil-sen-slope.js';
export type { TheilSenOutcome, TheilSenSlope } from './rank/theil-sen-slope.js';
// proportions
export { betaBinomialFit } from './proportions/beta-binomial-fit.js';
export type { BetaBinomialFit, BetaBinomialOutcome } from './proportions/beta-binomial-fit.js';
export { betaPosterior } from './proportions/beta-posterior.js';
export type { BetaParameters, BetaPosterior } from './proportions/beta-posterior.js';
export type { BinomialCount } from './proportions/binomial-count.js';
export { brierScore } from './proportions/brier-score.js';
export type { BrierScore } from './proportions/brier-score.js';
export { clopperPearsonInterval } from './proportions/clopper-pearson-interval.js';
export type { Forecast } from './proportions/forecast.js';
export { jamesSteinForms, jamesSteinProportions } from './proportions/james-stein-proportions.js';
export type {
  JamesSteinForm,
  JamesSteinProportions,
  JamesSteinProportionsOutcome,
} from './proportions/james-stein-proportions.js';
export { jamesSteinShrinkage } from './proportions/james-stein-shrinkage.js';
export type { JamesSteinShrinkage } from './proportions/james-stein-shrinkage.js';
export { jeffreysInterval } from './proportions/jeffreys-interval.js';
export { modifiedJeffreysInterval } from './proportions/modified-jeffreys-interval.js';
export { newcombeDifference } from './proportions/newcombe-difference.js';
export type { ProportionDifference } from './proportions/newcombe-difference.js';
export { proportionIntervalMethods } from './proportions/proportion-interval.js';
export type {
  ProportionInterval,
  ProportionIntervalMethod,
  ProportionIntervalOutcome,
} from './proportions/proportion-interval.js';
export { reliabilityFindings, reliabilityTable } from './proportions/reliability-table.js';
export type {
  ReliabilityFinding,
  ReliabilityOptions,
  ReliabilityRow,
  ReliabilityTable,
} from './proportions/reliability-table.js';
export { wilsonInterval } from './proportions/wilson-interval.js';
// charts
export { chartKinds, chartSignals } from './charts/control-chart.js';
export type {
  ChartKind,
  ChartPlace,
  ChartSignal,
  ControlChart,
  ControlChartOptions,
  ControlChartOutcome,
} from './charts/control-chart.js';
export { countChart } from './charts/count-chart.js';
export { eventsBetweenChart } from './charts/events-between-chart.js';
export { expectedCount } from './charts/expected-count.js';
export type { Stratum } from './charts/expected-count.js';
export { funnelLimits } from './charts/funnel-limits.js';
export { expectationFindings, observedToExpected } from './charts/observed-to-expected.js';
export type {
  ExpectationFinding,
  ObservedToExpected,
  ObservedToExpectedOutcome,
} from './charts/observed-to-expected.js';
export { proportionChart } from './charts/proportion-chart.js';
export { rateChart } from './charts/rate-chart.js';
export type { EventCount } from './charts/rate-chart.js';
export { timeBetweenChart } from './charts/time-between-chart.js';
// survival
export type { CensoredSample } from './survival/censored-sample.js';
export { curveLimitForms, type CurveLimitForm, type Limits } from './survival/curve-limits.js';
export {
  kaplanMeier,
  type CurveOptions,
  type NoEvents,
  type SurvivalCurve,
} from './survival/kaplan-meier.js';
export {
  curveQuantile,
  survivalAtAge,
  type CurveQuantile,
  type SurvivalAtAge,
} from './survival/curve-lookup.js';
export { logRankTest, type LogRankOutcome } from './survival/log-rank-test.js';
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
export {
  failureProbability,
  lifeMoments,
  lifeQuantile,
  lifeScale,
  weibullShape,
  type WaldEstimate,
} from './survival/life-estimates.js';
export { profileQuantileLimits, profileShapeLimits } from './survival/profile-limits.js';
export { weibayes, type WeibayesOutcome } from './survival/weibayes.js';
// recurrence
export type { RecurrenceSample } from './recurrence/recurrence-sample.js';
export {
  meanCumulativeFunction,
  recurrenceLimitForms,
  type NoRecurrences,
  type RecurrenceCurve,
  type RecurrenceLimitForm,
  type RecurrenceOptions,
  type RecurrenceOutcome,
} from './recurrence/mean-cumulative-function.js';
// replacement
export { ageReplacement } from './replacement/age-replacement.js';
export { ageReplacementCostRate } from './replacement/age-replacement-cost-rate.js';
export { challengerRule } from './replacement/challenger-rule.js';
export type { ChallengerDecision } from './replacement/challenger-rule.js';
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
export { weibullAgeReplacement } from './replacement/weibull-age-replacement.js';
export type { WeibullLife } from './replacement/weibull-age-replacement.js';
// stock levels
export { croston, intermittentMethods } from './stock-levels/croston.js';
export type { IntermittentForecast, IntermittentMethod } from './stock-levels/croston.js';
export { expectedBackorders } from './stock-levels/expected-backorders.js';
export type { NewsvendorCosts, NewsvendorLevel } from './stock-levels/newsvendor-costs.js';
export { newsvendorNormal } from './stock-levels/newsvendor-normal.js';
export { newsvendorPoisson, newsvendorPoissonCost } from './stock-levels/newsvendor-poisson.js';
export { poissonBaseStock } from './stock-levels/poisson-base-stock.js';
export type { BaseStock, BaseStockOutcome } from './stock-levels/poisson-base-stock.js';
export { serviceMeasures } from './stock-levels/service-measure.js';
export type { ServiceMeasure } from './stock-levels/service-measure.js';
export { syntetosBoylan } from './stock-levels/syntetos-boylan.js';
export { meanAtAge, type MeanAtAge } from './recurrence/curve-at-age.js';
export {
  meanCumulativeDifference,
  type RecurrenceDifference,
  type RecurrenceDifferenceOutcome,
} from './recurrence/mean-cumulative-difference.js';
export {
  terminations,
  type GroupedCounts,
  type SingleSystem,
  type Termination,
} from './recurrence/process-spans.js';
export { powerLawProcess, type PowerLawFit, type PowerLawOutcome } from './recurrence/power-law-process.js';
export {
  groupedPowerLawProcess,
  type GroupedPowerLawFit,
  type GroupedPowerLawOutcome,
} from './recurrence/grouped-power-law-process.js';
export {
  pooledPowerLawProcess,
  type PooledPowerLawFit,
  type PooledPowerLawOutcome,
} from './recurrence/pooled-power-law-process.js';
export {
  logLinearProcess,
  type LogLinearFit,
  type LogLinearOutcome,
} from './recurrence/log-linear-process.js';
export {
  laplaceTrendTest,
  powerLawTrendTest,
  reverseArrangements,
  type LaplaceTest,
  type PowerLawTrendTest,
  type ReverseArrangements,
} from './recurrence/trend-tests.js';
// inference: exact reasoning with few hypotheses
export { bayesBinary } from './inference/bayes-binary.js';
export type { BinaryTest, PosteriorOutcome } from './inference/bayes-binary.js';
export { entropy } from './inference/entropy.js';
export { informationGain } from './inference/information-gain.js';
export type { InformationGain, TestedCase } from './inference/information-gain.js';
export { noisyOr } from './inference/noisy-or.js';
export { mostHypotheses, noisyOrPosterior } from './inference/noisy-or-posterior.js';
export type {
  NoisyOrFinding,
  NoisyOrPosterior,
  NoisyOrPosteriorOutcome,
} from './inference/noisy-or-posterior.js';
export { standardErrorsUpTo, turnbullEstimate, type TurnbullCurve } from './survival/turnbull-estimate.js';
// mixed: lines of several units
export { betweenVariations } from './mixed/minimise-reml.js';
export type { BetweenVariation } from './mixed/minimise-reml.js';
export { predictOnUncertainLine } from './mixed/predict-on-uncertain-line.js';
export type { UncertainLinePrediction } from './mixed/predict-on-uncertain-line.js';
export { randomEffectsLine } from './mixed/random-effects-line.js';
export type { RandomEffectsLine, RandomEffectsLineOutcome } from './mixed/random-effects-line.js';
export { recentreLine } from './mixed/recentre-line.js';
export { shrunkenLine } from './mixed/shrunken-line.js';
export type { LinePopulation, ShrunkenLine } from './mixed/shrunken-line.js';
export type { LineCovariance, UncertainLine } from './mixed/uncertain-line.js';
// worked examples from outside
export * from './published-cases/index.js';
