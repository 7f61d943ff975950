import { randomEffectsLine } from '../mixed/random-effects-line.js';
import { recentreLine } from '../mixed/recentre-line.js';
import { mannKendall } from '../rank/mann-kendall.js';
import { theilSenSlope } from '../rank/theil-sen-slope.js';
import { inversePrediction } from '../regression/inverse-prediction.js';
import { ordinaryLeastSquares } from '../regression/ordinary-least-squares.js';
import type { Point } from '../regression/point.js';
import { predictOnLine } from '../regression/predict-on-line.js';
import { norris, sleepTimes, sulfateSamples, thermostat } from './line-data.js';
import {
  answered,
  closedForm,
  exactly,
  figuresOf,
  given,
  maximum,
  printed,
  type StatisticsPublishedCase,
} from './published-case.js';

const pointsOf = ({
  x,
  y,
}: {
  readonly x: readonly number[];
  readonly y: readonly number[];
}): readonly Point[] => x.map((value, index): Point => [value, y[index]!]);

const guidance = 'USEPA (2009), Unified Guidance, EPA 530/R-09-007, example 17-6';

/** Lines and trends. */
export const lineCases: readonly StatisticsPublishedCase[] = [
  {
    id: 'nist-norris',
    title: 'Straight line of a calibration',
    source: 'NIST Statistical Reference Datasets, Norris',
    provenance: ['published', 'computed'],
    input: '36 points; prediction at 500',
    figures: [
      ...figuresOf(
        { kind: 'relative', value: 1e-10 },
        {
          intercept: -0.262323073774029,
          slope: 1.00211681802045,
          interceptError: 0.232818234301152,
          slopeError: 0.000429796848199937,
          residual: 0.884796396144373,
          rSquared: 0.999993745883712,
        },
      ),
      ...figuresOf(closedForm, { predictionLower: 498.97179405418, predictionUpper: 502.62037781872 }),
      ...figuresOf(exactly, { degreesOfFreedom: 34 }),
    ],
    compute: () => {
      const fit = answered(ordinaryLeastSquares(pointsOf(norris)), 'estimated');
      const { lower, upper } = predictOnLine(fit, 500).predictionInterval;
      return {
        intercept: fit.intercept,
        slope: fit.slope,
        interceptError: fit.interceptStandardError,
        slopeError: fit.slopeStandardError,
        residual: fit.residualStandardDeviation,
        rSquared: given(fit.rSquared),
        predictionLower: lower,
        predictionUpper: upper,
        degreesOfFreedom: given(fit.degreesOfFreedom),
      };
    },
  },
  {
    id: 'thermostat-inverse-prediction',
    title: 'Which temperature was set, from the one shown',
    source: 'Graybill & Iyer (1994), Regression Analysis, p. 431; prints 103.995 (103.4 to 104.6)',
    provenance: ['published', 'computed'],
    input: 'eight points; 104 at 95 %, 100 at 90 %, one observation',
    figures: [
      ...figuresOf(
        { kind: 'relative', value: 1e-8 },
        {
          x104: 103.994915646,
          lower104: 103.404051142,
          upper104: 104.589459385,
          x100: 100.1123180032,
          lower100: 99.6294028953,
          upper100: 100.5885031323,
        },
      ),
      ...figuresOf(printed(5e-4), { printed104: 103.995 }),
    ],
    compute: () => {
      const fit = answered(ordinaryLeastSquares(pointsOf(thermostat)), 'estimated');
      const at104 = answered(inversePrediction(fit, 104), 'estimated');
      const at100 = answered(inversePrediction(fit, 100, { confidence: 0.9 }), 'estimated');
      return {
        x104: at104.x,
        lower104: at104.interval.lower,
        upper104: at104.interval.upper,
        x100: at100.x,
        lower100: at100.interval.lower,
        upper100: at100.interval.upper,
        printed104: at104.x,
      };
    },
  },
  {
    id: 'epa-sulfate-mann-kendall',
    title: 'Does sulfate rise?',
    source: guidance,
    provenance: ['published', 'computed'],
    input: '23 samples',
    figures: [
      ...figuresOf(exactly, { score: 194, variance: 1428 }),
      ...figuresOf(maximum, {
        z: 5.10732159684,
        pTwoSided: 3.26757357072e-7,
        tauA: 194 / 253,
        tauB: 0.774489668814,
      }),
    ],
    compute: () => {
      const { score, variance, z, pTwoSided, tauA, tauB } = answered(
        mannKendall(pointsOf(sulfateSamples)),
        'estimated',
      );
      return { score, variance, z, pTwoSided, tauA, tauB };
    },
  },
  {
    id: 'gilbert-four-points',
    title: 'Exact tail probability of four values',
    source: 'Gilbert (1987), 16.4.1 and table A18; prints 0.167',
    provenance: ['memory', 'computed'],
    input: '10, 15, 14, 20 in this order',
    figures: [...figuresOf(exactly, { score: 4 }), ...figuresOf(closedForm, { pUpward: 1 / 6 })],
    compute: () => {
      const points: readonly Point[] = [10, 15, 14, 20].map((y, x): Point => [x, y]);
      const { score, pUpward } = answered(mannKendall(points), 'estimated');
      return { score, pUpward };
    },
  },
  {
    id: 'epa-sulfate-theil-sen',
    title: 'How fast sulfate rises',
    source: `${guidance}; limits by Gilbert's interpolation`,
    provenance: ['published', 'computed'],
    input: '23 samples; 95 % and 90 % limits',
    figures: figuresOf(maximum, {
      slope: 80 / 3,
      intercept: -1909.33333333,
      lower95: 20,
      upper95: 35.7118240305,
      lower90: 20,
      upper90: 34.3373744759,
    }),
    compute: () => {
      const points = pointsOf(sulfateSamples);
      const at95 = answered(theilSenSlope(points), 'estimated');
      const at90 = answered(theilSenSlope(points, 0.9), 'estimated');
      return {
        slope: at95.slope,
        intercept: at95.intercept,
        lower95: given(at95.interval?.lower),
        upper95: given(at95.interval?.upper),
        lower90: given(at90.interval?.lower),
        upper90: given(at90.interval?.upper),
      };
    },
  },
  {
    id: 'sleep-study',
    title: 'Reaction times of 18 subjects, each with a line of its own',
    source: 'Belenky et al. (2003), J. Sleep Research 12:1-12; figures as R package lme4 prints them',
    provenance: ['published', 'computed'],
    input: '18 subjects, days 0 to 9',
    figures: [
      ...figuresOf(printed(0.05), { remlCriterion: 1743.6 }),
      ...figuresOf(printed(5e-3), { residualVariance: 654.94, slopeVariance: 35.07 }),
      ...figuresOf(printed(0.05), { interceptVariance: 612.1 }),
      ...figuresOf(printed(5e-4), {
        intercept: 251.405,
        slope: 10.467,
        interceptError: 6.825,
        slopeError: 1.546,
      }),
    ],
    compute: () => {
      const units = sleepTimes.map((times) => times.map((time, day): Point => [day, time]));
      const fit = answered(randomEffectsLine(units), 'estimated');
      const between = recentreLine({ ...fit.mean, covariance: fit.between }, 0).covariance;
      const mean = recentreLine(fit.mean, 0);
      return {
        remlCriterion: fit.remlCriterion,
        residualVariance: fit.residualVariance,
        interceptVariance: between.level,
        slopeVariance: between.slope,
        intercept: mean.level,
        slope: mean.slope,
        interceptError: Math.sqrt(mean.covariance.level),
        slopeError: Math.sqrt(mean.covariance.slope),
      };
    },
  },
];
