import { decisionPublishedCases } from '@endfloat/decision';
import { diagnosisPublishedCases } from '@endfloat/diagnosis';
import { metrologyPublishedCases, type PublishedCase } from '@endfloat/metrology';
import { statisticsPublishedCases } from '@endfloat/statistics';
import { bayesPosteriors, noisyOrs } from './beliefs.js';
import type { CalculationMethod } from './calculation-method.js';
import { controlCharts, funnelLimitSets } from './charts.js';
import { logRankTests, observedToExpectedRatios } from './comparisons.js';
import { expectedCosts } from './expected-costs.js';
import { gaugeStudies } from './gauge-studies.js';
import { furtherReadingCounts, instrumentUncertainties } from './instrument-errors.js';
import { lifeFits, weibayesEstimates } from './life-fits.js';
import { mannKendallTests, straightLines, theilSenSlopes } from './lines.js';
import { conformances, globalRisks, uncertaintyBudgets, unitConversions } from './measurements.js';
import { mixedLines } from './mixed-lines.js';
import { proportionDifferences, proportions, shrinkages } from './proportions.js';
import { meanCumulativeFunctions, powerLawProcesses, trendTests } from './recurrences.js';
import { ageReplacements, economicLives } from './replacements.js';
import { sampleSummaries } from './sample-summaries.js';
import { baseStocks, intermittentForecasts, newsvendors } from './stock-levels.js';
import { survivalCurves, turnbullEstimates } from './survival-curves.js';
import { vehicleNumbers } from './vehicle-numbers.js';
import { vehicleNumberCases } from './vehicle-number-cases.js';

/** Every calculation that can be asked for without storing anything, in the order of the list. */
export const allCalculations: readonly CalculationMethod[] = [
  sampleSummaries,
  survivalCurves,
  turnbullEstimates,
  logRankTests,
  lifeFits,
  weibayesEstimates,
  meanCumulativeFunctions,
  powerLawProcesses,
  trendTests,
  straightLines,
  theilSenSlopes,
  mannKendallTests,
  mixedLines,
  proportions,
  proportionDifferences,
  shrinkages,
  controlCharts,
  funnelLimitSets,
  observedToExpectedRatios,
  ageReplacements,
  economicLives,
  expectedCosts,
  baseStocks,
  newsvendors,
  intermittentForecasts,
  bayesPosteriors,
  noisyOrs,
  instrumentUncertainties,
  uncertaintyBudgets,
  conformances,
  furtherReadingCounts,
  globalRisks,
  gaugeStudies,
  unitConversions,
  vehicleNumbers,
];

/** Published cases of all rooms by id. */
export const publishedCases: ReadonlyMap<string, PublishedCase> = new Map(
  [
    ...statisticsPublishedCases,
    ...metrologyPublishedCases,
    ...diagnosisPublishedCases,
    ...decisionPublishedCases,
    ...vehicleNumberCases,
  ].map((each) => [each.id, each]),
);
