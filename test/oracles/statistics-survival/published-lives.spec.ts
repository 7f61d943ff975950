import {
  failureProbability,
  fitLifeDistribution,
  laplaceTrendTest,
  lifeMoments,
  lifeQuantile,
  lifeScale,
  logLinearProcess,
  powerLawProcess,
  powerLawTrendTest,
  rightCensoredLives,
  turnbullEstimate,
  weibullShape,
  type LifeFamily,
  type LifeFit,
  type LifeSample,
} from '@endfloat/statistics';
import { itWithPublished } from '../../support/published-case-folder.js';

// Expected values by generate.R beside this file (R 4.2.2, survival 3.5-3), 12 digits.
// Tolerances: maximum-likelihood values 1e-6, closed forms 1e-9, both relative; log-likelihood 1e-6 absolute.

const near = (actual: number | null | undefined, expected: number, relative: number): void => {
  expect(Math.abs((actual ?? NaN) - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));
};

const fitted = (family: LifeFamily, sample: LifeSample): LifeFit => {
  const outcome = fitLifeDistribution(family, sample);
  if (outcome.kind !== 'estimated') throw new Error(outcome.kind);
  return outcome;
};

interface WeibullValues {
  readonly beta: number;
  readonly betaLimits: readonly [number, number];
  readonly eta: number;
  readonly etaLimits: readonly [number, number];
  readonly logLikelihood: number;
  readonly b10: number;
  readonly b10Limits: readonly [number, number];
  readonly mean: number;
}

function expectWeibull(fit: LifeFit, values: WeibullValues): void {
  const shape = weibullShape(fit);
  const scale = lifeScale(fit);
  const b10 = lifeQuantile(fit, 0.1);
  for (const [actual, expected] of [
    [shape.estimate, values.beta],
    [shape.lower, values.betaLimits[0]],
    [shape.upper, values.betaLimits[1]],
    [scale.estimate, values.eta],
    [scale.lower, values.etaLimits[0]],
    [scale.upper, values.etaLimits[1]],
    [b10.estimate, values.b10],
    [b10.lower, values.b10Limits[0]],
    [b10.upper, values.b10Limits[1]],
    [lifeMoments(fit).mean, values.mean],
  ] as const) {
    near(actual, expected, 1e-6);
  }
  expect(Math.abs(fit.logLikelihood - values.logLikelihood)).toBeLessThan(1e-6);
}

describe('published lives', () => {
  // Lieblein & Zelen (1956), J. Res. NBS 57:273–316: 23 ball bearings, millions of revolutions, complete.
  itWithPublished('A_05_lzbearing.csv', 'gives the Weibull fit of the ball bearings', (rows) => {
    const ages = rows.map((row) => Number(row['megacycles']));
    expectWeibull(fitted('weibull', { lower: ages, upper: ages }), {
      beta: 2.10184686376,
      betaLimits: [1.54704203656, 2.8556174521],
      eta: 81.8745587241,
      etaLimits: [66.6392664369, 100.5929945615],
      logLikelihood: -113.691959088,
      b10: 28.0650889629,
      b10Limits: [18.0564494824, 43.6214893335],
      mean: 72.5153552405,
    });
  });

  // Meeker & Escobar (1998), ch. 3: 300 heat exchanger tubes found cracked, or not, at yearly inspections.
  itWithPublished('A_05_heatexchanger.csv', 'gives both estimates of the inspected tubes', (rows) => {
    const sample = {
      lower: rows.map((row) => (row['event'] === 'Left' ? 0 : Number(row['lower']))),
      upper: rows.map((row) => (row['event'] === 'Right' ? Infinity : Number(row['upper']))),
      weights: rows.map((row) => Number(row['count'])),
    };
    expectWeibull(fitted('weibull', sample), {
      beta: 1.34551502814,
      betaLimits: [0.708447913067, 2.555460546303],
      eta: 23.6199239186,
      etaLimits: [4.94004326965, 112.93439661717],
      logLikelihood: -54.4147053343,
      b10: 4.43530091325,
      b10Limits: [2.40043931534, 8.19512247835],
      mean: 21.6721219942,
    });
    const curve = turnbullEstimate(sample, { limitForm: 'log' });
    if (curve.kind !== 'estimated') throw new Error(curve.kind);
    expect(curve.units).toBe(300);
    expect(curve.upperAges).toEqual([1, 2, 3, Infinity]);
    // 4 of 300 by the first year; the later values are printed by R to 8 digits (5.1e-9).
    near(curve.survival[0], 1 - 4 / 300, 1e-9);
    for (const [actual, expected] of [
      [curve.survival[1], 0.96162437],
      [curve.survival[2], 0.94179706],
      [curve.standardErrors[1], 0.012802115],
      [curve.standardErrors[2], 0.01870063],
      [curve.lower[1], 0.93685721],
      [curve.upper[1], 0.98704628],
      [curve.lower[2], 0.90584855],
      [curve.upper[2], 0.97917218],
    ] as const) {
      expect(Math.abs((actual ?? NaN) - expected)).toBeLessThan(1e-8);
    }
  });

  // Nelson (1982): 96 locomotive controls, thousands of miles, 59 still running at 135.
  itWithPublished('A_05_locomotivecontrol.csv', 'gives both fits of the locomotive controls', (rows) => {
    const sample = rightCensoredLives({
      ages: rows.map((row) => Number(row['kilomiles'])),
      events: rows.map((row) => row['event'] === 'Failed'),
      weights: rows.map((row) => Number(row['count'])),
    });
    expectWeibull(fitted('weibull', sample), {
      beta: 2.33125321946,
      betaLimits: [1.72106052363, 3.15778643379],
      eta: 183.398801065,
      etaLimits: [153.770068312, 218.736458931],
      logLikelihood: -237.382513436,
      b10: 69.8506461267,
      b10Limits: [55.5072195534, 87.9005074218],
      mean: 162.503352502,
    });
    const lognormal = fitted('lognormal', sample);
    near(lognormal.mu, 5.11692471854, 1e-6);
    near(lognormal.sigma, 0.705494029284, 1e-6);
    near(lifeScale(lognormal).standardError, 0.1041572337, 1e-6);
    near(failureProbability(lognormal, 80).estimate, 0.148780340119, 1e-6);
    expect(Math.abs(lognormal.logLikelihood + 237.093545341)).toBeLessThan(1e-6);
    expect([lognormal.units, lognormal.events]).toEqual([96, 37]);
  });
});

describe('published recurrences', () => {
  // Lee (1980), Technometrics 22:195–199; Ascher & Feingold (1984): repairs of a ship's engine in 16 thousand hours.
  itWithPublished('A_06_grampus.csv', 'gives the processes and tests of the engine repairs', (rows) => {
    const eventAges = rows.filter((row) => row['event'] === 'Repair').map((row) => Number(row['kilohours']));
    const system = { eventAges, end: 16, termination: 'time' } as const;
    const fit = powerLawProcess(system);
    if (fit.kind !== 'estimated') throw new Error(fit.kind);
    for (const [actual, expected] of [
      [fit.events, 56],
      [fit.shape, 1.13507077442],
      [fit.shapeLimits.lower, 0.857420264688],
      [fit.shapeLimits.upper, 1.45106758603],
      [fit.rate, 2.40672586754],
      [fit.unbiasedShape, 1.11480165345],
      [fit.unbiasedRate, 2.54585156925],
      [fit.intensityAtEnd, 3.97274771047],
      [fit.meanTimeAtEnd, 0.251714952189],
      [fit.cramerVonMises, 0.0729782026182],
    ] as const) {
      near(actual, expected, 1e-9);
    }
    const chi = powerLawTrendTest([system]);
    if (chi.kind !== 'tested') throw new Error(chi.kind);
    near(chi.chiSquare, 98.6722612581, 1e-9);
    near(chi.lowerTail, 0.188490156676, 1e-9);
    expect(chi.degreesOfFreedom).toBe(112);
    const laplace = laplaceTrendTest([system]);
    if (laplace.kind !== 'tested') throw new Error(laplace.kind);
    near(laplace.statistic, 0.397379345949, 1e-9);
    near(laplace.pValue, 0.691087743878, 1e-9);
    const zeros = eventAges.map(() => 0);
    const logLinear = logLinearProcess({ eventUnits: zeros, eventAges, spanUnits: [0], spanEnds: [16] });
    if (logLinear.kind !== 'estimated') throw new Error(logLinear.kind);
    near(logLinear.slope, 0.0115034204279, 1e-6);
    near(logLinear.logRate, 1.15932449739, 1e-6);
  });
});
