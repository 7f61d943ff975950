import {
  ballBearings,
  battingHits,
  defectiveChips,
  generatorFans,
  handbookFailures,
  heatExchanger,
  nistLives,
  nistRepairs,
  norris,
  productSales,
  sleepTimes,
  sulfateSamples,
  thermostat,
  timesAtBat,
  valveSeats,
  waferDefects,
} from '@endfloat/statistics';
import { CalculationsModule } from '../../apps/api/src/modules/calculations/calculations.module.js';
import { openTrial, type Trial } from '../support/http.js';

/** A figure of an answer: where it stands, what it should be, how close it must come. */
type Figure = readonly [path: string, expected: number, tolerance: number, isAbsolute?: 'absolute'];

interface PublishedRequest {
  readonly source: string;
  readonly path: string;
  readonly body: object;
  readonly figures: readonly Figure[];
}

const closed = 1e-9;
const maximum = 1e-6;
const profile = 1e-5;

const lives = ({ ages, events }: { ages: readonly number[]; events: readonly number[] }) => ({
  lower: ages,
  upper: ages.map((age, row) => (events[row] === 1 ? age : null)),
});

const aiag = (() => {
  // AIAG, Measurement Systems Analysis, 4th ed.: ten parts, appraisers A, B and C, three trials each.
  const rows: Record<string, string> = {
    A: '0.29 -0.56 1.34 0.47 -0.8 0.02 0.59 -0.31 2.26 -1.36|0.41 -0.68 1.17 0.5 -0.92 -0.11 0.75 -0.2 1.99 -1.25|0.64 -0.58 1.27 0.64 -0.84 -0.21 0.66 -0.17 2.01 -1.31',
    B: '0.08 -0.47 1.19 0.01 -0.56 -0.2 0.47 -0.63 1.8 -1.68|0.25 -1.22 0.94 1.03 -1.2 0.22 0.55 0.08 2.12 -1.62|0.07 -0.68 1.34 0.2 -1.28 0.06 0.83 -0.34 2.19 -1.5',
    C: '0.04 -1.38 0.88 0.14 -1.46 -0.29 0.02 -0.46 1.77 -1.49|-0.11 -1.13 1.09 0.2 -1.07 -0.67 0.01 -0.56 1.45 -1.77|-0.15 -0.96 0.67 0.11 -1.45 -0.49 0.21 -0.49 1.87 -2.16',
  };
  return Object.entries(rows).flatMap(([appraiser, trials]) =>
    trials
      .split('|')
      .flatMap((trial) =>
        trial
          .split(' ')
          .map((value, part) => ({ object: `part ${part + 1}`, appraiser, value: Number(value) })),
      ),
  );
})();

const published: readonly PublishedRequest[] = [
  {
    source: 'NIST/SEMATECH e-Handbook 8.4.1.3, Kaplan-Meier of 20 units',
    path: 'kaplan-meier-curves',
    body: { unit: 'h', ...nistLives, limitForm: 'log', atAges: [386], failedShares: [0.25] },
    figures: [
      ['result.survival.0', 0.95, closed],
      ['result.at.0.survival', 0.5, closed],
      ['result.at.0.lower', 0.3225786, 5e-9, 'absolute'],
      ['result.at.0.upper', 0.77500491, 5e-9, 'absolute'],
      ['result.standardErrors.9', 0.111803399, 5e-10, 'absolute'],
      ['result.quantiles.0.age', 244, 0, 'absolute'],
    ],
  },
  {
    source: 'NIST/SEMATECH e-Handbook 8.4.1.3, Weibull (prints 606.5280, 1.7208)',
    path: 'life-fits',
    body: { unit: 'h', family: 'weibull', ...lives(nistLives), weights: nistLives.weights },
    figures: [
      ['result.shape.estimate', 1.7207972608, maximum],
      ['result.scale.estimate', 606.527558004, maximum],
      ['result.scale.estimate', 606.528, 1e-3, 'absolute'],
      ['result.logLikelihood', -75.1346181645, maximum],
      ['result.lives.0.estimate', 164.02243866, maximum],
      ['result.lives.0.lower', 83.8751295255, maximum],
      ['result.lives.0.upper', 320.7549190824, maximum],
      ['result.mean', 540.73702547, maximum],
    ],
  },
  {
    source: 'Nelson (1982), generator fans, with profile limits by R package survival',
    path: 'life-fits',
    body: {
      unit: 'h',
      family: 'weibull',
      ...lives(generatorFans),
      weights: generatorFans.weights,
      withProfileLimits: true,
      atAges: [8000],
    },
    figures: [
      ['result.shape.estimate', 1.05844584994, maximum],
      ['result.shape.lower', 0.644082311525, maximum],
      ['result.shape.profileLimits.lower', 0.605974189512, profile],
      ['result.shape.profileLimits.upper', 1.657940856502, profile],
      ['result.lives.0.profileLimits.lower', 1420.24657677, profile],
      ['result.lives.0.profileLimits.upper', 5662.48431408, profile],
      ['result.failedBy.0.estimate', 0.247067206628, maximum],
    ],
  },
  {
    source: 'Nelson (1982), generator fans, exponential: 344440 h over 12 failures',
    path: 'weibayes-estimates',
    body: { unit: 'h', ...generatorFans, shape: 1 },
    figures: [['result.characteristicLife', 344440 / 12, closed]],
  },
  {
    source: 'Lieblein & Zelen (1956), ball bearings',
    path: 'life-fits',
    body: { family: 'weibull', lower: ballBearings, upper: ballBearings },
    figures: [
      ['result.shape.estimate', 2.10184686376, maximum],
      ['result.scale.estimate', 81.8745587241, maximum],
      ['result.lives.0.lower', 18.0564494824, maximum],
    ],
  },
  {
    source: 'Meeker & Escobar (1998) ch. 3, heat exchanger, Weibull from inspections',
    path: 'life-fits',
    body: { family: 'weibull', ...heatExchanger },
    figures: [
      ['result.shape.estimate', 1.34551502814, maximum],
      ['result.scale.estimate', 23.6199239186, maximum],
      ['result.lives.0.estimate', 4.43530091325, maximum],
    ],
  },
  {
    source: 'Meeker & Escobar (1998) ch. 3, heat exchanger, without a distribution',
    path: 'turnbull-estimates',
    body: heatExchanger,
    figures: [
      ['result.survival.0', 1 - 4 / 300, closed],
      ['result.survival.1', 1 - 0.03837563, 5e-9, 'absolute'],
      ['result.standardErrors.1', 0.012802115, maximum],
      ['result.survival.2', 1 - 0.05820294, 5e-9, 'absolute'],
    ],
  },
  {
    source: 'Nelson (1995), Technometrics 37, valve seats of 41 engines',
    path: 'mean-cumulative-functions',
    body: { unit: 'd', ...valveSeats, atAges: [61, 400, 621, 653] },
    figures: [
      ['result.at.0.mean', 0.024390244, 5e-10, 'absolute'],
      ['result.at.1.standardError', 0.131841648, 5e-10, 'absolute'],
      ['result.at.2.mean', 1.118542214, 5e-10, 'absolute'],
      ['result.at.2.standardError', 0.207502883, 5e-10, 'absolute'],
      ['result.at.3.lower', 1.03828585, 5e-9, 'absolute'],
      ['result.at.3.upper', 2.29212867, 5e-9, 'absolute'],
    ],
  },
  {
    source: 'NIST/SEMATECH e-Handbook 8.4.5.2, modified estimates and 80 % limits',
    path: 'power-law-processes',
    body: {
      unit: 'h',
      level: 0.8,
      data: { kind: 'exact', eventAges: nistRepairs, end: 1500, termination: 'time' },
    },
    figures: [
      ['result.shape', 0.537228866034, closed],
      ['result.unbiasedRate', 0.2913003, 5e-8, 'absolute'],
      ['result.unbiasedMeanTime.estimate', 310.234, 5e-4, 'absolute'],
      ['result.unbiasedMeanTime.lower', 157.7138, 5e-4, 'absolute'],
      ['result.unbiasedMeanTime.upper', 548.5566, 5e-4, 'absolute'],
    ],
  },
  {
    source: 'MIL-HDBK-189 (1981), appendix C, individual failure times',
    path: 'power-law-processes',
    body: { data: { kind: 'exact', eventAges: handbookFailures, end: 300, termination: 'time' } },
    figures: [
      ['result.shape', 0.716339262366, closed],
      ['result.rate', 0.453841861373, closed],
      ['result.cramerVonMises', 0.0910611223862, closed],
      ['result.meanTimeAtEnd', 15.5109620467, closed],
    ],
  },
  {
    source: 'NIST/SEMATECH e-Handbook 8.2.3.4, trend tests of ten repairs',
    path: 'trend-tests',
    body: { systems: [{ eventAges: nistRepairs, end: 1500, termination: 'time' }] },
    figures: [
      ['laplace.statistic', -1.32694918265, closed],
      ['chiSquare.chiSquare', 37.2280814835, closed],
      ['chiSquare.degreesOfFreedom', 20, 0],
      ['reverseArrangements.reversals', 33, 0],
      ['reverseArrangements.greatest', 45, 0],
    ],
  },
  {
    source: 'NIST Statistical Reference Datasets, Norris',
    path: 'straight-lines',
    body: { ...norris, predictAt: [500] },
    figures: [
      ['result.intercept', -0.262323073774029, 1e-10],
      ['result.slope', 1.00211681802045, 1e-10],
      ['result.interceptStandardError', 0.232818234301152, 1e-10],
      ['result.residualStandardDeviation', 0.884796396144373, 1e-10],
      ['result.predictions.0.predictionInterval.lower', 498.97179405418, closed],
      ['result.predictions.0.predictionInterval.upper', 502.62037781872, closed],
    ],
  },
  {
    source: 'Graybill & Iyer (1994) p. 431, inverse prediction of a thermostat',
    path: 'straight-lines',
    body: { xUnit: '[degF]', yUnit: '[degF]', ...thermostat, reach: [{ y: 104 }] },
    figures: [
      ['result.reached.0.outcome.x', 103.994915646, 1e-8],
      ['result.reached.0.outcome.interval.lower', 103.404051142, 1e-8],
      ['result.reached.0.outcome.interval.upper', 104.589459385, 1e-8],
    ],
  },
  {
    source: 'USEPA (2009) Unified Guidance, example 17-6, slope with limits',
    path: 'theil-sen-slopes',
    body: sulfateSamples,
    figures: [
      ['result.slope', 80 / 3, maximum],
      ['result.interval.lower', 20, maximum],
      ['result.interval.upper', 35.7118240305, maximum],
    ],
  },
  {
    source: 'USEPA (2009) Unified Guidance, example 17-6, test',
    path: 'mann-kendall-tests',
    body: sulfateSamples,
    figures: [
      ['result.score', 194, 0],
      ['result.variance', 1428, 0],
      ['result.pTwoSided', 3.26757357072e-7, maximum],
    ],
  },
  {
    source: 'Gilbert (1987) 16.4.1, table A18, exact tail of four values',
    path: 'mann-kendall-tests',
    body: { x: [1, 2, 3, 4], y: [10, 15, 14, 20] },
    figures: [['result.pUpward', 1 / 6, closed]],
  },
  {
    source: 'Belenky et al. (2003), sleep study as R package lme4 prints it',
    path: 'mixed-lines',
    body: { units: sleepTimes.map((times) => ({ x: times.map((_time, day) => day), y: times })) },
    figures: [
      ['result.remlCriterion', 1743.6, 0.05, 'absolute'],
      ['result.residualVariance', 654.94, 5e-3, 'absolute'],
      ['result.mean.slope', 10.467, 5e-4, 'absolute'],
      ['result.mean.slopeStandardError', 1.546, 5e-4, 'absolute'],
      ['result.between.level', 612.1, 0.05, 'absolute'],
    ],
  },
  {
    source: 'Newcombe (1998a) table I, 81 of 263, Wilson',
    path: 'proportions',
    body: { successes: 81, trials: 263 },
    figures: [
      ['result.lower', 0.2553, 5e-5, 'absolute'],
      ['result.upper', 0.3662, 5e-5, 'absolute'],
    ],
  },
  {
    source: 'Newcombe (1998a) table I, 0 of 20, Clopper-Pearson',
    path: 'proportions',
    body: { successes: 0, trials: 20, interval: 'clopperPearson' },
    figures: [
      ['result.lower', 0, 0],
      ['result.upper', 0.1684, 5e-5, 'absolute'],
    ],
  },
  {
    source: 'Newcombe (1998b) table II, method 10, 56/70 - 48/80',
    path: 'proportion-differences',
    body: { first: { successes: 56, trials: 70 }, second: { successes: 48, trials: 80 } },
    figures: [
      ['result.lower', 0.0524, 5e-5, 'absolute'],
      ['result.upper', 0.3339, 5e-5, 'absolute'],
    ],
  },
  {
    source: 'Efron & Morris (1975), batting averages, arcsine form',
    path: 'shrinkages',
    body: {
      form: 'arcsine',
      groups: battingHits.map((successes) => ({ successes, trials: timesAtBat })),
    },
    figures: [
      ['result.factor', 0.208974232098, closed],
      ['result.proportions.0', 0.29, 5e-4, 'absolute'],
      ['result.proportions.17', 0.239, 5e-4, 'absolute'],
    ],
  },
  {
    source: 'Efron & Morris batting averages, beta-binomial',
    path: 'shrinkages',
    body: { groups: battingHits.map((successes) => ({ successes, trials: timesAtBat })) },
    figures: [
      ['result.groups.0.mean', 0.272656634692, maximum],
      ['result.alpha', 210.550881554, 1e-4],
    ],
  },
  {
    source: 'NIST/SEMATECH e-Handbook 6.3.3.1, defects of 25 wafers',
    path: 'control-charts',
    body: { data: { kind: 'counts', counts: waferDefects } },
    figures: [
      ['result.centre', 16, 0],
      ['result.places.0.upper', 28, 0],
      ['result.places.0.lower', 4, 0],
    ],
  },
  {
    source: 'NIST/SEMATECH e-Handbook 6.3.3.2, defective chips of 30 wafers',
    path: 'control-charts',
    body: {
      data: {
        kind: 'proportions',
        samples: defectiveChips.map((successes) => ({ successes, trials: 50 })),
      },
    },
    figures: [
      ['result.centre', 347 / 1500, closed],
      ['result.places.0.upper', 0.410239118595, closed],
    ],
  },
  {
    source: 'Spiegelhalter (2005), funnel limits about 0.08',
    path: 'funnel-limits',
    body: { target: 0.08, trials: [10, 100] },
    figures: [
      ['limits.0.upper', 0.243984880139, closed],
      ['limits.1.lower', 0.0253973754676, closed],
      ['limits.3.upper', 0.169532271948, closed],
    ],
  },
  {
    source: 'Jardine & Tsang ch. 2 problem 2, uniform life up to 40 000 km',
    path: 'age-replacements',
    body: {
      unit: 'km',
      life: { kind: 'uniform', from: 0, to: 40000 },
      plannedCost: 100,
      failureCost: 200,
      atAges: [10000, 30000],
    },
    figures: [
      ['result.age', 29282.0323028, 1e-8],
      ['result.costRate', 0.00933012701892, 1e-8],
      ['costRates.0.costRate', 0.0143, 5e-5, 'absolute'],
      ['costRates.1.costRate', 0.0093, 5e-5, 'absolute'],
    ],
  },
  {
    source: 'Barlow & Hunter (1960) model, Weibull life',
    path: 'age-replacements',
    body: { life: { kind: 'weibull', shape: 2, scale: 1000 }, plannedCost: 1, failureCost: 10 },
    figures: [
      ['result.age', 336.451191255, maximum],
      ['result.saving', 0.463290211376, maximum],
    ],
  },
  {
    source: 'textbook truck: replace after year 5 at 2700 a year',
    path: 'economic-lives',
    body: {
      price: 6000,
      periods: [
        [1000, 3000],
        [1200, 1500],
        [1400, 750],
        [1800, 375],
        [2300, 200],
        [2800, 200],
        [3400, 200],
        [4000, 200],
      ].map(([running, resale]) => ({ running, resale })),
    },
    figures: [
      ['result.periods', 5, 0],
      ['result.cost', 2700, 0],
      ['result.costs.3', 2756.25, 0],
    ],
  },
  {
    source: 'Poisson base stock, mean 4.2, computed with R',
    path: 'base-stocks',
    body: { leadTimeDemand: 4.2, target: 0.95, measure: 'cycleService' },
    figures: [
      ['result.level', 8, 0],
      ['result.service', 0.972067809042, closed],
    ],
  },
  {
    source: 'Snyder & Shen (2019) example 4.3, normal demand',
    path: 'newsvendors',
    body: { over: 0.18, under: 0.7, demand: { kind: 'normal', mean: 50, standardDeviation: 8 } },
    figures: [
      ['result.level', 56.6039559274, 1e-8],
      ['result.expectedCost', 1.9976051932, 1e-8],
    ],
  },
  {
    source: 'Snyder & Shen (2019) example 4.7, Poisson demand',
    path: 'newsvendors',
    body: { over: 1, under: 4, demand: { kind: 'poisson', mean: 6 }, atLevels: [5] },
    figures: [
      ['result.level', 8, 0],
      ['result.expectedCost', 3.5701069458, 1e-8],
      ['costs.0.expectedCost', 6.5902960246, 1e-8],
    ],
  },
  {
    source: 'Hyndman & Athanasopoulos, product C, smoothing 0.1',
    path: 'intermittent-forecasts',
    body: { series: productSales, smoothing: 0.1 },
    figures: [['result.perPeriod', 0.984596521358, closed]],
  },
  {
    source: 'Eddy (1982); Gigerenzer & Hoffrage (1995), prints 7.8 %',
    path: 'bayes-posteriors',
    body: { prior: 0.01, sensitivity: 0.8, falsePositiveRate: 0.096, isPositive: true },
    figures: [['result.probability', 0.0776397515528, 1e-12, 'absolute']],
  },
  {
    source: 'Russell & Norvig, fever table, with priors .10 .05 .01',
    path: 'noisy-or-posteriors',
    body: {
      priors: [0.1, 0.05, 0.01],
      findings: [{ present: true, strengths: [0.4, 0.8, 0.9], leak: 0 }],
    },
    figures: [
      ['whenAllHold.0', 0.988, 1e-12],
      ['result.marginals.0', 0.49505389, 1e-9, 'absolute'],
      ['result.marginals.1', 0.467001329, 1e-9, 'absolute'],
      ['result.marginals.2', 0.10471726, 1e-9, 'absolute'],
    ],
  },
  {
    source: 'JCGM 100:2008, H.1, end gauge (prints u_c 32 nm, t 2.92 at 99 %)',
    path: 'uncertainty-budgets',
    body: {
      level: 0.99,
      components: [
        [25, 18],
        [5.8, 24],
        [3.9, 5],
        [6.7, 8],
        [2.9, 50],
        [50e6 * 11.5e-6 * 0.029, 2],
      ].map(([standardUncertainty, degreesOfFreedom], row) => ({
        name: `contribution ${row + 1}`,
        standardUncertainty,
        degreesOfFreedom,
      })),
    },
    figures: [
      ['result.standardUncertainty', 31.7049779215, closed],
      ['result.coverageDegreesOfFreedom', 16, 0],
      ['result.coverageFactor', 2.92078162243, closed],
    ],
  },
  {
    source: 'JCGM 106:2012, 7.3 and 7.4, breakdown voltage (prints 0.92)',
    path: 'conformances',
    body: {
      unit: 'V',
      value: -5.47,
      standardUncertainty: 0.05,
      permitted: { lower: null, upper: -5.4 },
    },
    figures: [['result.inside', 0.919243340766, closed]],
  },
  {
    source: 'JCGM 106:2012, 9.5.4, ball bearings',
    path: 'global-risks',
    body: {
      unit: 'um',
      population: { kind: 'gamma', shape: 4, rate: 4 },
      standardUncertainty: 0.25,
      permitted: { lower: null, upper: 2 },
      wantedConsumerRisk: 0.001,
    },
    figures: [
      ['result.nonconforming', 0.0423801119917, maximum],
      ['result.consumerRisk', 0.00801911188429, maximum],
      ['acceptanceLimit.acceptanceLimit', 1.67182877156, maximum],
    ],
  },
  {
    source: 'AIAG, Measurement Systems Analysis, 4th ed., by analysis of variance',
    path: 'gauge-studies',
    body: { measurements: aiag },
    figures: [
      ['result.sources.objects.sumOfSquares', 88.361934444444, 1e-8],
      ['result.interactionTest.f', 0.433721030135, 1e-8],
      ['result.variation.gauge', 0.302371522323, 1e-8],
      ['result.variation.gaugePercentOfTotal', 27.860650881142, 1e-8],
      ['result.variation.distinctCategories', 4, 0],
    ],
  },
  {
    source: 'AIAG, Measurement Systems Analysis, 4th ed., by averages and ranges',
    path: 'gauge-studies',
    body: { design: 'averageAndRange', measurements: aiag },
    figures: [
      ['result.meanRange', 0.341666666667, 1e-8],
      ['result.variation.gauge', 0.30575, 1e-4, 'absolute'],
      ['result.variation.distinctCategories', 5, 0],
    ],
  },
  {
    source: 'NIST SP 811 (2008) B.9, inch of mercury; 18 inHg',
    path: 'unit-conversions',
    body: { quantity: { value: '18', unit: "[in_i'Hg]" }, quantityKind: 'vacuum', unit: 'kPa' },
    figures: [['result.value', 60.9549955261, 1e-11]],
  },
  {
    source: '49 CFR 565, table V: sum 411',
    path: 'vehicle-numbers',
    body: { number: '1G4AH59H45G118341', market: 'northAmerica' },
    figures: [
      ['checkDigit.sum', 411, 0],
      ['modelYear.year', 2005, 0],
    ],
  },
];

const at = (body: unknown, path: string): number =>
  Number(
    path
      .split('.')
      .reduce<unknown>((inside, step) => (inside as Record<string, unknown> | undefined)?.[step], body),
  );

describe('calculations', () => {
  let trial: Trial;
  beforeAll(async () => {
    trial = await openTrial([], {}, { imports: [CalculationsModule] });
  });
  afterAll(() => trial.app.close());

  const calculate = (path: string, body: unknown) =>
    trial.request({
      method: 'POST',
      url: `/v1/calculations/${path}`,
      headers: { ...trial.owner, 'content-type': 'application/json' },
      payload: typeof body === 'string' ? body : JSON.stringify(body),
    });

  describe('on published data', () => {
    it.each(published.map((each) => [each.source, each] as const))(
      'reproduce %s',
      async (_source, { path, body, figures }) => {
        const answer = await calculate(path, body);
        expect(answer.status).toBe(200);
        const missed = figures.filter(([name, expected, tolerance, isAbsolute]) => {
          const allowed = isAbsolute === 'absolute' ? tolerance : tolerance * Math.abs(expected);
          return !(Math.abs(at(answer.body, name) - expected) <= allowed);
        });
        expect(missed.map((figure) => [...figure, at(answer.body, figure[0])])).toEqual([]);
      },
    );

    it('flag the wafers that the handbook flags, and not the one exactly on the limit', async () => {
      const { body } = await calculate('control-charts', { data: { kind: 'counts', counts: waferDefects } });
      const out = body.result.places.flatMap(({ signals }: { signals: string[] }, place: number) =>
        signals.includes('aboveUpperLimit') ? [place + 1] : [],
      );
      expect(out).toEqual([24]);
    });

    it('put values on the edge of a guard band to the clear side (ILAC-G8:09/2019, 4.2.3)', async () => {
      const zones = [];
      for (const value of [0.25, 0.26, 0.27, 0.3, 0.31, 0.34, 0.35]) {
        const { body } = await calculate('conformances', {
          value,
          standardUncertainty: 0.02,
          permitted: { lower: null, upper: 0.3 },
          guardBand: 0.04,
        });
        zones.push(body.zones.atUpper);
      }
      expect(zones).toEqual([
        'pass',
        'pass',
        'conditionalPass',
        'conditionalPass',
        'conditionalFail',
        'fail',
        'fail',
      ]);
    });
  });

  describe('the list of calculations', () => {
    it('runs every published case again and says of each figure what it came to', async () => {
      const { status, body } = await trial.request({ url: '/v1/calculations', headers: trial.owner });
      expect(status).toBe(200);
      expect(body.areAllReproduced).toBe(true);
      const figures = body.items.flatMap(({ cases }: { cases: { figures: object[] }[] }) =>
        cases.flatMap((each) => each.figures),
      );
      expect(figures.length).toBeGreaterThan(200);
      for (const { computed, expected, allowed } of figures) {
        expect(Math.abs(computed - expected)).toBeLessThanOrEqual(allowed);
      }
    });

    it('names an address for each that answers, and a source for its formula', async () => {
      const { body } = await trial.request({ url: '/v1/calculations', headers: trial.owner });
      expect(body.items.length).toBeGreaterThanOrEqual(28);
      for (const { address, method, cases } of body.items) {
        expect(method.source.length).toBeGreaterThan(10);
        expect(cases.length).toBeGreaterThan(0);
        const wrong = await calculate(address.replace('/v1/calculations/', ''), { nonsense: true });
        expect([wrong.status, wrong.body.type]).toEqual([422, expect.stringContaining('invalid-body')]);
      }
    });

    it('is open to every role and to nobody without a key', async () => {
      const auditor = trial.credentials.add({
        shopId: '0193f2c0-0000-7000-8000-000000000001',
        userId: '0193f2c0-0000-7000-8000-0000000000ab',
        roles: ['auditor'],
      });
      expect((await trial.request({ url: '/v1/calculations', headers: auditor })).status).toBe(200);
      expect((await trial.request({ url: '/v1/calculations' })).status).toBe(401);
    });
  });

  describe('JOB rule 14: every number has its unit, its interval, its observations and its method', () => {
    it.each(published.map((each) => [each.source, each] as const))('%s', async (_source, { path, body }) => {
      const answer = await calculate(path, body);
      expect(answer.body.method).toEqual({
        name: expect.any(String),
        variant: expect.any(String),
        source: expect.any(String),
      });
      expect(Number.isInteger(answer.body.observations)).toBe(true);
      expect(answer.text).not.toMatch(/NaN|Infinity/);
    });

    it('the unit that was sent comes back', async () => {
      const { body } = await calculate('kaplan-meier-curves', { unit: 'km', ages: [1, 2], events: [1, 0] });
      expect(body.unit).toBe('km');
      expect(body.result).toMatchObject({ level: 0.95, limitForm: 'logLog' });
    });
  });

  describe('API row 33: too little data is an answer', () => {
    it.each([
      ['kaplan-meier-curves', { ages: [], events: [] }, 'insufficientData'],
      ['kaplan-meier-curves', { ages: [5, 6], events: [0, 0] }, 'noEvents'],
      ['turnbull-estimates', { lower: [], upper: [] }, 'insufficientData'],
      ['life-fits', { family: 'weibull', lower: [], upper: [] }, 'insufficientData'],
      ['life-fits', { family: 'weibull', lower: [5, 6], upper: [null, null] }, 'insufficientData'],
      ['life-fits', { family: 'weibull', lower: [5, 5, 5], upper: [5, 5, 5] }, 'noMaximum'],
      ['life-fits', { family: 'weibull', lower: [0, 5], upper: [0, 5] }, 'zeroLives'],
      ['weibayes-estimates', { ages: [100, 200], events: [0, 0], shape: 2 }, 'lowerLimitOnly'],
      ['weibayes-estimates', { ages: [], events: [], shape: 2 }, 'insufficientData'],
      [
        'mean-cumulative-functions',
        { eventUnits: [], eventAges: [], spanUnits: [0], spanEnds: [9] },
        'noEvents',
      ],
      [
        'mean-cumulative-functions',
        { eventUnits: [], eventAges: [], spanUnits: [], spanEnds: [] },
        'insufficientData',
      ],
      [
        'power-law-processes',
        { data: { kind: 'exact', eventAges: [], end: 5, termination: 'time' } },
        'insufficientData',
      ],
      [
        'power-law-processes',
        { data: { kind: 'exact', eventAges: [0, 3], end: 5, termination: 'time' } },
        'zeroAgeEvents',
      ],
      [
        'power-law-processes',
        { data: { kind: 'grouped', starts: [], ends: [], counts: [] } },
        'insufficientData',
      ],
      ['straight-lines', { x: [], y: [] }, 'insufficientData'],
      ['straight-lines', { x: [1, 2], y: [3, 4] }, 'exactlyDetermined'],
      ['straight-lines', { x: [1, 1, 1], y: [3, 4, 5] }, 'insufficientData'],
      ['theil-sen-slopes', { x: [1], y: [2] }, 'insufficientData'],
      ['mann-kendall-tests', { x: [1, 2, 3, 4], y: [7, 7, 7, 7] }, 'allTied'],
      ['mixed-lines', { units: [] }, 'insufficientData'],
      ['proportions', { successes: 0, trials: 0 }, 'insufficientData'],
      [
        'proportion-differences',
        { first: { successes: 0, trials: 0 }, second: { successes: 1, trials: 2 } },
        'insufficientData',
      ],
      ['shrinkages', { groups: [] }, 'insufficientData'],
      [
        'shrinkages',
        {
          groups: [
            { successes: 0, trials: 5 },
            { successes: 0, trials: 4 },
          ],
        },
        'allAlike',
      ],
      ['control-charts', { data: { kind: 'counts', counts: [] } }, 'insufficientData'],
      ['control-charts', { data: { kind: 'counts', counts: [0, 0, 0] } }, 'noVariation'],
      [
        'age-replacements',
        { life: { kind: 'weibull', shape: 0.8, scale: 10 }, plannedCost: 1, failureCost: 5 },
        'runToFailure',
      ],
      ['economic-lives', { price: 5, periods: [] }, 'insufficientData'],
      ['base-stocks', { leadTimeDemand: 2, target: 1, measure: 'cycleService' }, 'unattainable'],
      ['intermittent-forecasts', { series: [0, 0, 0], smoothing: 0.1 }, 'insufficientData'],
      [
        'bayes-posteriors',
        { prior: 0, sensitivity: 0.9, falsePositiveRate: 0, isPositive: true },
        'impossibleResult',
      ],
      [
        'noisy-or-posteriors',
        { priors: [0.5], findings: [{ present: true, strengths: [0], leak: 0 }] },
        'impossibleFindings',
      ],
      [
        'conformances',
        {
          value: -9,
          standardUncertainty: 0.1,
          permitted: { lower: null, upper: 1 },
          possible: { lower: 0, upper: null },
        },
        'contradictsPhysicalBound',
      ],
      ['gauge-studies', { measurements: [] }, 'insufficientData'],
      [
        'gauge-studies',
        {
          measurements: [
            { object: 'a', appraiser: 'x', value: 1 },
            { object: 'a', appraiser: 'x', value: 2 },
            { object: 'b', appraiser: 'x', value: 1 },
            { object: 'a', appraiser: 'y', value: 1 },
            { object: 'a', appraiser: 'y', value: 2 },
            { object: 'b', appraiser: 'y', value: 1 },
          ],
        },
        'notBalanced',
      ],
    ] as const)('%s with %j: %s', async (path, body, kind) => {
      const answer = await calculate(path, body);
      expect([answer.status, answer.body.result?.kind]).toEqual([200, kind]);
    });

    it('says of a line that is level that no height is reached', async () => {
      const { body } = await calculate('straight-lines', {
        x: [1, 2, 3, 4],
        y: [5, 5.2, 4.8, 5],
        reach: [{ y: 9 }],
      });
      expect(body.result.reached[0].outcome.kind).toBe('slopeNotSignificant');
    });

    it('tests no trend without events', async () => {
      const { body } = await calculate('trend-tests', { systems: [] });
      expect([body.laplace.kind, body.chiSquare.kind, body.reverseArrangements.kind]).toEqual([
        'insufficientData',
        'insufficientData',
        'insufficientData',
      ]);
    });

    it('reads no curve beyond the last age observed', async () => {
      const { body } = await calculate('kaplan-meier-curves', {
        ages: [1, 2, 3],
        events: [1, 0, 0],
        atAges: [9],
        failedShares: [0.9],
      });
      expect(body.result.at[0]).toMatchObject({ age: 9, survival: null });
      expect(body.result.quantiles[0]).toMatchObject({ age: null });
    });
  });

  describe('refuse nonsense and say where it is', () => {
    it.each([
      ['kaplan-meier-curves', '{"ages":[1,NaN],"events":[1,1]}', 400, undefined],
      ['kaplan-meier-curves', { ages: [1, 'NaN'], events: [1, 1] }, 422, '/ages'],
      ['kaplan-meier-curves', '{"ages":[1,1e309],"events":[1,1]}', 'refused', undefined],
      ['kaplan-meier-curves', { ages: [1, -2], events: [1, 1] }, 422, '/ages'],
      ['kaplan-meier-curves', { ages: [1, null], events: [1, 1] }, 422, '/ages'],
      ['kaplan-meier-curves', { ages: [1, 2], events: [1] }, 422, '/events'],
      ['kaplan-meier-curves', { ages: [1, 2], events: [1, 2] }, 422, '/events'],
      ['kaplan-meier-curves', { ages: [1, 2], events: [1, 1], entryAges: [0, 3] }, 422, '/entryAges/1'],
      ['kaplan-meier-curves', { ages: 'all', events: [] }, 422, '/ages'],
      ['kaplan-meier-curves', { unit: 'furlong', ages: [1], events: [1] }, 422, '/unit'],
      ['kaplan-meier-curves', { ages: [1], events: [1], level: 1.5 }, 422, '/level'],
      ['kaplan-meier-curves', { ages: [1], events: [1], colour: 'blue' }, 422, '/colour'],
      ['life-fits', { family: 'cauchy', lower: [1], upper: [1] }, 422, '/family'],
      ['life-fits', { family: 'weibull', lower: [5], upper: [3] }, 422, '/upper/0'],
      ['life-fits', { family: 'weibull', lower: [5], upper: [6, 7] }, 422, '/upper'],
      [
        'mean-cumulative-functions',
        { eventUnits: [0], eventAges: [9], spanUnits: [0], spanEnds: [5] },
        422,
        '/eventAges',
      ],
      [
        'power-law-processes',
        { data: { kind: 'exact', eventAges: [9], end: 5, termination: 'time' } },
        422,
        '/data/eventAges',
      ],
      ['power-law-processes', { data: { kind: 'sideways' } }, 422, '/data'],
      ['straight-lines', { x: [1, 2, 3], y: [1, 2] }, 422, '/y'],
      ['straight-lines', { x: [1, 2, 3], y: [1, 2, 3], weights: [1, 0, 1] }, 422, '/weights'],
      ['proportions', { successes: 5, trials: 3 }, 422, '/successes'],
      ['proportions', { successes: 1.5, trials: 3 }, 422, '/successes'],
      ['control-charts', { data: { kind: 'counts', counts: [1, -1] } }, 422, '/data/counts'],
      ['funnel-limits', { target: 0.1, trials: [] }, 422, '/trials'],
      [
        'age-replacements',
        { life: { kind: 'uniform', from: 9, to: 5 }, plannedCost: 1, failureCost: 2 },
        422,
        '/life',
      ],
      ['base-stocks', { leadTimeDemand: -1, target: 0.9, measure: 'cycleService' }, 422, '/leadTimeDemand'],
      ['uncertainty-budgets', { components: [] }, 422, '/components'],
      [
        'conformances',
        { value: 1, standardUncertainty: 0, permitted: { lower: 0, upper: 1 } },
        422,
        '/standardUncertainty',
      ],
      [
        'conformances',
        { value: 1, standardUncertainty: 1, permitted: { lower: null, upper: null } },
        422,
        '/permitted',
      ],
      [
        'conformances',
        { value: 1, standardUncertainty: 1, permitted: { lower: 2, upper: 1 } },
        422,
        '/permitted',
      ],
      [
        'unit-conversions',
        { quantity: { value: '1', unit: 'mm' }, quantityKind: 'length', unit: 'kPa' },
        422,
        '/unit',
      ],
      [
        'unit-conversions',
        { quantity: { value: '1', unit: 'parsec' }, quantityKind: 'length', unit: 'mm' },
        422,
        '/quantity/unit',
      ],
      ['vehicle-numbers', { number: '1G4АH59H45G118341' }, 422, '/number'],
    ] as const)('%s with %j', async (path, body, status, pointer) => {
      const answer = await calculate(path, body);
      if (status === 'refused') expect([400, 422]).toContain(answer.status);
      else expect(answer.status).toBe(status);
      if (pointer !== undefined)
        expect(answer.body.errors.map((error: { pointer: string }) => error.pointer)).toContain(pointer);
    });

    it('refuses more rows than are worked through, and a body beyond the limit', async () => {
      const many = Array.from({ length: 100_001 }, (_each, row) => row);
      const answer = await calculate('kaplan-meier-curves', { ages: many, events: many.map(() => 0) });
      expect([answer.status, answer.body.errors[0].pointer]).toEqual([422, '/ages']);
      const pairs = many.slice(0, 5001);
      expect((await calculate('theil-sen-slopes', { x: pairs, y: pairs })).status).toBe(422);
      const huge = `{"ages":[${'1,'.repeat(5 * 1024 * 1024)}1],"events":[]}`;
      expect((await calculate('kaplan-meier-curves', huge)).status).toBe(413);
    });

    it('answers nothing where a figure would be beyond what a number can hold', async () => {
      const answer = await calculate('weibayes-estimates', {
        ages: [1e308, 1e308],
        events: [1, 0],
        shape: 0.01,
      });
      expect([answer.status, answer.body.errors[0].rule]).toEqual([422, 'range']);
    });

    it('refuses numbers of trials whose tables would fill the memory', async () => {
      const groups = [1, 2, 3].map(() => ({ successes: 1_000_000_000, trials: 2_000_000_000 }));
      const answer = await calculate('shrinkages', { groups });
      expect([answer.status, answer.body.errors[0].pointer]).toEqual([422, '/groups/0/successes']);
    });

    it('takes the hundred thousand rows it says it takes', async () => {
      const ages = Array.from({ length: 100_000 }, (_each, row) => 1 + ((row * 7919) % 100_003) / 7);
      const { status, body } = await calculate('kaplan-meier-curves', {
        ages,
        events: ages.map((_age, row) => row % 2),
      });
      expect([status, body.observations]).toEqual([200, 100_000]);
    });
  });
});
