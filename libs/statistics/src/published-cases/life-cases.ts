import { fitLifeDistribution, type LifeFamily, type LifeFit } from '../survival/fit-life-distribution.js';
import {
  failureProbability,
  lifeMoments,
  lifeQuantile,
  lifeScale,
  weibullShape,
} from '../survival/life-estimates.js';
import { rightCensoredLives, type LifeSample } from '../survival/life-sample.js';
import { profileQuantileLimits, profileShapeLimits } from '../survival/profile-limits.js';
import { ballBearings, generatorFans, heatExchanger, locomotiveControls, nistLives } from './life-data.js';
import {
  answered,
  exactly,
  figuresOf,
  given,
  maximum,
  printed,
  profile,
  type StatisticsPublishedCase,
} from './published-case.js';

const fitted = (family: LifeFamily, sample: LifeSample): LifeFit =>
  answered(fitLifeDistribution(family, sample), 'estimated');

const nist = (first: number): LifeSample =>
  rightCensoredLives({ ...nistLives, ages: [first, ...nistLives.ages.slice(1)] });

export const handbook = 'NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.1.3';

function weibullFigures(sample: LifeSample): Readonly<Record<string, number>> {
  const fit = fitted('weibull', sample);
  const [shape, scale, b10] = [weibullShape(fit), lifeScale(fit), lifeQuantile(fit, 0.1)];
  const { mean, standardDeviation } = lifeMoments(fit);
  return {
    shape: shape.estimate,
    scale: scale.estimate,
    logLikelihood: fit.logLikelihood,
    akaike: fit.akaike,
    shapeLower: shape.lower,
    shapeUpper: shape.upper,
    scaleLower: scale.lower,
    scaleUpper: scale.upper,
    b10: b10.estimate,
    b10Lower: b10.lower,
    b10Upper: b10.upper,
    mean,
    standardDeviation,
  };
}

function printedFigures(first: number): Readonly<Record<string, number>> {
  const { scale, shape, mean, standardDeviation } = weibullFigures(nist(first));
  return {
    printedScale: given(scale),
    printedShape: given(shape),
    printedMean: given(mean),
    printedStandardDeviation: given(standardDeviation),
  };
}

export const heatExchangerLives: LifeSample = {
  lower: heatExchanger.lower,
  upper: heatExchanger.upper.map((end) => end ?? Infinity),
  weights: heatExchanger.weights,
};

/** Distributions of lives. */
export const lifeCases: readonly StatisticsPublishedCase[] = [
  {
    id: 'nist-weibull-54-hours',
    title: 'Weibull distribution of ten failures among 20 units',
    source: `${handbook}; prints 606.5280, 1.7208, 540.737, 323.806`,
    provenance: ['published', 'computed'],
    input: 'ten failures from 54 h on, ten units taken off at 500 h',
    figures: [
      ...figuresOf(maximum, {
        shape: 1.7207972608,
        scale: 606.527558004,
        logLikelihood: -75.1346181645,
        akaike: 154.269236329,
        shapeLower: 0.971266101954,
        shapeUpper: 3.048745556778,
        scaleLower: 405.089293533,
        scaleUpper: 908.134785319,
        b10: 164.02243866,
        b10Lower: 83.8751295255,
        b10Upper: 320.7549190824,
        mean: 540.73702547,
        standardDeviation: 323.805824313,
      }),
      ...figuresOf(printed(1e-3), {
        printedScale: 606.528,
        printedMean: 540.737,
        printedStandardDeviation: 323.806,
      }),
      ...figuresOf(printed(5e-5), { printedShape: 1.7208 }),
      ...figuresOf(maximum, { lognormalAkaike: 154.392541558 }),
    ],
    compute: () => ({
      ...weibullFigures(nist(54)),
      ...printedFigures(54),
      lognormalAkaike: fitted('lognormal', nist(54)).akaike,
    }),
  },
  {
    id: 'nist-weibull-55-hours',
    title: 'The same with the first failure as the listing has it',
    source: `${handbook}, listing; prints 606.005, 1.72563, 540.175, 322.647`,
    provenance: ['published', 'computed'],
    input: 'ten failures from 55 h on, ten units taken off at 500 h',
    figures: [
      ...figuresOf(maximum, { shape: 1.72562575314, scale: 606.004797956, logLikelihood: -75.1218456335 }),
      ...figuresOf(printed(5e-4), {
        printedScale: 606.005,
        printedMean: 540.175,
        printedStandardDeviation: 322.647,
      }),
      ...figuresOf(printed(5e-6), { printedShape: 1.72563 }),
    ],
    compute: () => ({ ...weibullFigures(nist(55)), ...printedFigures(55) }),
  },
  {
    id: 'generator-fans-weibull',
    title: 'Weibull distribution of lives with few failures, with both kinds of limits',
    source:
      'Nelson (1982), Applied Life Data Analysis, table 1.1 of chapter 4; figures by R package survival',
    provenance: ['computed', 'memory'],
    input: '70 fans, 12 failed',
    figures: [
      ...figuresOf(maximum, {
        shape: 1.05844584994,
        scale: 26296.8451748,
        logLikelihood: -135.152719943,
        b10: 3137.24077789,
        b10Lower: 1686.20737204,
        b10Upper: 5836.93314457,
        shapeLower: 0.644082311525,
        shapeUpper: 1.739385785352,
        failedBy8000: 0.247067206628,
      }),
      ...figuresOf(profile, {
        profileShapeLower: 0.605974189512,
        profileShapeUpper: 1.657940856502,
        profileB10Lower: 1420.24657677,
        profileB10Upper: 5662.48431408,
      }),
    ],
    compute: () => {
      const sample = rightCensoredLives(generatorFans);
      const fit = fitted('weibull', sample);
      const [ofShape, ofB10] = [profileShapeLimits(sample, fit), profileQuantileLimits(sample, fit, 0.1)];
      return {
        ...weibullFigures(sample),
        failedBy8000: failureProbability(fit, 8000).estimate,
        profileShapeLower: given(ofShape.lower),
        profileShapeUpper: given(ofShape.upper),
        profileB10Lower: given(ofB10.lower),
        profileB10Upper: given(ofB10.upper),
      };
    },
  },
  {
    id: 'ball-bearings-weibull',
    title: 'Weibull distribution of complete lives',
    source: 'Lieblein & Zelen (1956), J. Res. NBS 57:273-316; figures by R package survival',
    provenance: ['published', 'computed'],
    input: '23 ball bearings, all failed',
    figures: figuresOf(maximum, {
      shape: 2.10184686376,
      scale: 81.8745587241,
      logLikelihood: -113.691959088,
      b10: 28.0650889629,
      b10Lower: 18.0564494824,
      b10Upper: 43.6214893335,
    }),
    compute: () => weibullFigures({ lower: ballBearings, upper: ballBearings }),
  },
  {
    id: 'heat-exchanger-weibull',
    title: 'Weibull distribution where cracks are found at inspections only',
    source:
      'Meeker & Escobar (1998), Statistical Methods for Reliability Data, ch. 3; figures by R package survival',
    provenance: ['published', 'computed'],
    input: '300 tubes, 11 found cracked between yearly inspections',
    figures: figuresOf(maximum, {
      shape: 1.34551502814,
      scale: 23.6199239186,
      logLikelihood: -54.4147053343,
      b10: 4.43530091325,
      b10Lower: 2.40043931534,
      b10Upper: 8.19512247835,
    }),
    compute: () => weibullFigures(heatExchangerLives),
  },
  {
    id: 'locomotive-controls',
    title: 'Weibull and lognormal distribution of the same lives',
    source: 'Nelson (1982), Applied Life Data Analysis; figures by R package survival',
    provenance: ['published', 'computed'],
    input: '96 controls, 37 failed before 135 thousand miles',
    figures: [
      ...figuresOf(maximum, {
        shape: 2.33125321946,
        scale: 183.398801065,
        logLikelihood: -237.382513436,
        mu: 5.11692472,
        sigma: 0.705494029,
        lognormalLogLikelihood: -237.093545,
        failedBy80: 0.14878034,
      }),
      ...figuresOf(exactly, { events: 37 }),
    ],
    compute: () => {
      const sample = rightCensoredLives(locomotiveControls);
      const lognormal = fitted('lognormal', sample);
      return {
        ...weibullFigures(sample),
        mu: lognormal.mu,
        sigma: lognormal.sigma,
        lognormalLogLikelihood: lognormal.logLikelihood,
        failedBy80: failureProbability(lognormal, 80).estimate,
        events: lognormal.events,
      };
    },
  },
];
