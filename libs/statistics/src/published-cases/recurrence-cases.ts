import { meanAtAge } from '../recurrence/curve-at-age.js';
import { meanCumulativeFunction } from '../recurrence/mean-cumulative-function.js';
import { powerLawProcess, type PowerLawFit } from '../recurrence/power-law-process.js';
import { laplaceTrendTest, powerLawTrendTest, reverseArrangements } from '../recurrence/trend-tests.js';
import { handbookFailures, nistRepairs, valveSeats } from './recurrence-data.js';
import {
  answered,
  closedForm,
  exactly,
  figuresOf,
  given,
  printed,
  type StatisticsPublishedCase,
} from './published-case.js';

const nistSystem = { eventAges: nistRepairs, end: 1500, termination: 'time' } as const;
const handbookSystem = { eventAges: handbookFailures, end: 300, termination: 'time' } as const;

function processFigures(fit: PowerLawFit): Readonly<Record<string, number>> {
  return {
    shape: fit.shape,
    rate: fit.rate,
    shapeLower: fit.shapeLimits.lower,
    shapeUpper: fit.shapeLimits.upper,
    unbiasedShape: given(fit.unbiasedShape),
    intensity: fit.intensityAtEnd,
    meanTime: fit.meanTimeAtEnd,
  };
}

/** Recurring events. */
export const recurrenceCases: readonly StatisticsPublishedCase[] = [
  {
    id: 'valve-seats',
    title: 'Mean number of valve seats replaced per engine',
    source:
      'Nelson & Doganaksoy (1989); Nelson (1995), Technometrics 37:147-157; figures by R package survival',
    provenance: ['published', 'computed'],
    input: '41 engines, 48 replacements; at 61, 400, 621, 646 and 653 days',
    figures: [
      ...figuresOf(printed(5e-10), {
        mean61: 0.024390244,
        mean400: 0.658536585,
        mean621: 1.118542214,
        mean646: 1.320465291,
        mean653: 1.542687514,
        error400: 0.131841648,
        error621: 0.207502883,
        error646: 0.228505155,
        error653: 0.311656075,
      }),
      ...figuresOf(printed(5e-9), { lower653: 1.03828585, upper653: 2.29212867 }),
    ],
    compute: () => {
      const curve = answered(meanCumulativeFunction(valveSeats, { limitForm: 'log' }), 'estimated');
      const figures: Record<string, number> = {};
      for (const age of [61, 400, 621, 646, 653]) {
        const { mean, standardError, lower, upper } = answered(meanAtAge(curve, age), 'estimated');
        figures[`mean${age}`] = mean;
        figures[`error${age}`] = given(standardError);
        figures[`lower${age}`] = given(lower);
        figures[`upper${age}`] = given(upper);
      }
      return figures;
    },
  },
  {
    id: 'nist-repairs-power-law',
    title: 'Repairs of one system that improves',
    source: 'NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.5.2 (prints the modified estimates)',
    provenance: ['published', 'computed'],
    input: 'ten repairs until 1500 h; 80 % limits of the mean time',
    figures: [
      ...figuresOf(closedForm, {
        shape: 0.537228866034,
        rate: 0.196658215714,
        unbiasedShape: 0.483505979431,
        meanTime: 279.210611126,
      }),
      ...figuresOf(printed(5e-7), { modifiedRate: 0.2913003, modifiedShape: 0.483506 }),
      ...figuresOf(printed(5e-4), { modifiedMeanTime: 310.234, lower80: 157.7138, upper80: 548.5566 }),
    ],
    compute: () => {
      const fit = answered(powerLawProcess(nistSystem, 0.8), 'estimated');
      return {
        ...processFigures(fit),
        modifiedRate: given(fit.unbiasedRate),
        modifiedShape: given(fit.unbiasedShape),
        modifiedMeanTime: given(fit.unbiasedMeanTime?.estimate),
        lower80: given(fit.unbiasedMeanTime?.lower),
        upper80: given(fit.unbiasedMeanTime?.upper),
      };
    },
  },
  {
    id: 'mil-hdbk-189-power-law',
    title: 'Failures of one system under development',
    source: 'MIL-HDBK-189 (1981), appendix C, individual failure times',
    provenance: ['published', 'computed'],
    input: '27 failures until 300, one age twice; 90 % limits',
    figures: figuresOf(closedForm, {
      shape: 0.716339262366,
      rate: 0.453841861373,
      shapeLower: 0.505632287612,
      shapeUpper: 0.957151511971,
      unbiasedShape: 0.689808178575,
      intensity: 0.0644705336129,
      meanTime: 15.5109620467,
      cramerVonMises: 0.0910611223862,
    }),
    compute: () => {
      const fit = answered(powerLawProcess(handbookSystem, 0.9), 'estimated');
      return { ...processFigures(fit), cramerVonMises: given(fit.cramerVonMises) };
    },
  },
  {
    id: 'nist-repairs-trend-tests',
    title: 'Do these repairs come at a steady rate?',
    source: 'NIST/SEMATECH e-Handbook of Statistical Methods, 8.2.3.4',
    provenance: ['published', 'computed'],
    input: 'ten repairs until 1500 h',
    figures: [
      ...figuresOf(closedForm, {
        chiSquare: 37.2280814835,
        lowerTail: 0.989013642884,
        laplace: -1.32694918265,
        laplaceP: 0.184525493367,
      }),
      ...figuresOf(exactly, { degreesOfFreedom: 20, reversals: 33, greatest: 45 }),
    ],
    compute: () => trendFigures(nistSystem),
  },
  {
    id: 'mil-hdbk-189-trend-tests',
    title: 'Do these failures come at a steady rate?',
    source: 'MIL-HDBK-189 (1981), appendix C',
    provenance: ['published', 'computed'],
    input: '27 failures until 300',
    figures: [
      ...figuresOf(closedForm, {
        chiSquare: 75.3832755469,
        lowerTail: 0.971135307385,
        laplace: -2.318,
        laplaceP: 0.0204493210583,
      }),
      ...figuresOf(exactly, { degreesOfFreedom: 54 }),
    ],
    compute: () => trendFigures(handbookSystem),
  },
];

function trendFigures(system: typeof nistSystem | typeof handbookSystem): Readonly<Record<string, number>> {
  const laplace = answered(laplaceTrendTest([system]), 'tested');
  const test = answered(powerLawTrendTest([system]), 'tested');
  const reversed = answered(reverseArrangements(system.eventAges), 'tested');
  return {
    chiSquare: test.chiSquare,
    degreesOfFreedom: test.degreesOfFreedom,
    lowerTail: test.lowerTail,
    laplace: laplace.statistic,
    laplaceP: laplace.pValue,
    reversals: reversed.reversals,
    greatest: reversed.greatest,
  };
}
