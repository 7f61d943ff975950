import { CalculationsModule } from '../../apps/api/src/modules/calculations/calculations.module.js';
import { openTrial, type Trial } from '../support/http.js';

type Json = null | boolean | number | string | readonly Json[] | { readonly [name: string]: Json };

/** A small body that each calculation takes; what is tried below is made of these. */
const bodies: Readonly<Record<string, Json>> = {
  'sample-summaries': { values: [3, 1, 2], probabilities: [0.2] },
  'kaplan-meier-curves': {
    ages: [1, 2, 3, 4],
    events: [1, 0, 1, 1],
    entryAges: [0, 0, 1, 1],
    weights: [1, 2, 1, 1],
    atAges: [2],
    failedShares: [0.5],
  },
  'turnbull-estimates': { lower: [0, 1, 2, 3], upper: [1, 3, 4, null], weights: [1, 2, 1, 1] },
  'log-rank-tests': {
    first: { ages: [1, 3, 5], events: [1, 0, 1] },
    second: { ages: [2, 3], events: [1, 1] },
  },
  'life-fits': {
    family: 'weibull',
    lower: [1, 2, 3, 5],
    upper: [1, 4, 3, null],
    entryAges: [0, 1, 0, 2],
    weights: [1, 1, 2, 1],
    failedShares: [0.1],
    atAges: [2],
    withProfileLimits: true,
  },
  'weibayes-estimates': { ages: [5, 7], events: [1, 0], weights: [1, 2], shape: 2 },
  'mean-cumulative-functions': {
    eventUnits: [0, 0, 1],
    eventAges: [2, 4, 3],
    eventSizes: [1, 2, 1],
    spanUnits: [0, 1],
    spanStarts: [0, 1],
    spanEnds: [6, 5],
    atAges: [3],
  },
  'power-law-processes': { data: { kind: 'exact', eventAges: [1, 3, 4], end: 9, termination: 'time' } },
  'trend-tests': { systems: [{ eventAges: [1, 3, 4], end: 9, termination: 'time' }] },
  'straight-lines': {
    x: [1, 2, 3, 4],
    y: [2, 3, 5, 6],
    weights: [1, 2, 1, 1],
    predictAt: [7],
    reach: [{ y: 9 }],
  },
  'theil-sen-slopes': { x: [1, 2, 3, 4, 5], y: [2, 3, 5, 6, 9] },
  'mann-kendall-tests': { x: [1, 2, 3, 4], y: [2, 3, 5, 6] },
  'mixed-lines': {
    units: [
      { x: [0, 1, 2], y: [1, 2.1, 2.9] },
      { x: [0, 1, 2], y: [2, 3.4, 5.1] },
      { x: [0, 1, 2], y: [1.5, 2.2, 3.3] },
    ],
  },
  proportions: { successes: 3, trials: 9, interval: 'jeffreys' },
  'proportion-differences': { first: { successes: 3, trials: 9 }, second: { successes: 1, trials: 8 } },
  shrinkages: {
    groups: [
      { successes: 3, trials: 9 },
      { successes: 1, trials: 8 },
      { successes: 7, trials: 8 },
      { successes: 2, trials: 8 },
    ],
  },
  'control-charts': { data: { kind: 'counts', counts: [1, 3, 2, 9] } },
  'funnel-limits': { target: 0.1, trials: [10, 50] },
  'observed-to-expected-ratios': { observed: 4, expected: 2.5 },
  'age-replacements': {
    life: { kind: 'weibull', shape: 2, scale: 10 },
    plannedCost: 1,
    failureCost: 5,
    atAges: [4],
  },
  'economic-lives': {
    price: 9,
    periods: [
      { running: 1, resale: 5 },
      { running: 2, resale: 3 },
    ],
    discountRate: 0.1,
    challengerCost: 4,
  },
  'expected-costs': {
    rates: {
      labourPerHour: { amount: '80.00', currency: 'EUR' },
      downtimePerDay: { amount: '60.00', currency: 'EUR' },
      comebackHandling: { amount: '250.00', currency: 'EUR' },
      followUpRepair: { amount: '654.00', currency: 'EUR' },
    },
    options: [
      {
        optionId: 'adjust-only',
        parts: { amount: '0.00', currency: 'EUR' },
        labourHours: '1.2',
        downtimeDays: '0',
        probabilityOfComeback: '0.60',
        comebackConsequence: 'handlingPlusFollowUpRepair',
        core: null,
      },
    ],
  },
  'base-stocks': { leadTimeDemand: 2, target: 0.9, measure: 'cycleService' },
  newsvendors: { over: 1, under: 3, demand: { kind: 'poisson', mean: 4 }, atLevels: [3] },
  'intermittent-forecasts': { series: [0, 2, 0, 0, 3], smoothing: 0.1 },
  'bayes-posteriors': { prior: 0.1, sensitivity: 0.9, falsePositiveRate: 0.2, isPositive: true },
  'noisy-or-posteriors': {
    priors: [0.1, 0.2],
    findings: [{ present: true, strengths: [0.4, 0.8], leak: 0.01 }],
  },
  'instrument-uncertainties': {
    quantityKind: 'length',
    reading: { value: '0.4', unit: 'mm' },
    errorModel: { kind: 'maximumPermissibleError', limit: { value: '0.02', unit: 'mm' } },
    resolution: { value: '0.01', unit: 'mm' },
  },
  'uncertainty-budgets': { components: [{ name: 'scale', standardUncertainty: 2, degreesOfFreedom: 4 }] },
  conformances: {
    value: 3,
    standardUncertainty: 1,
    degreesOfFreedom: 5,
    permitted: { lower: 1, upper: 4 },
    possible: { lower: 0, upper: null },
    prior: { mean: 2, standardDeviation: 1 },
    guardBand: 1,
  },
  'further-reading-counts': {
    mean: 2,
    count: 3,
    standardDeviation: 1,
    degreesOfFreedom: 2,
    otherStandardUncertainty: 0.1,
    permitted: { lower: null, upper: 3 },
  },
  'global-risks': {
    population: { kind: 'gamma', shape: 0.1, rate: 2 },
    standardUncertainty: 0.2,
    permitted: { lower: null, upper: 2 },
    wantedConsumerRisk: 0.001,
  },
  'gauge-studies': {
    measurements: [
      ...['a', 'b'].flatMap((object) =>
        ['x', 'y'].flatMap((appraiser, place) => [
          { object, appraiser, value: 1 + place },
          { object, appraiser, value: 2.5 },
        ]),
      ),
    ],
    tolerance: 4,
  },
  'unit-conversions': { quantity: { value: '1', unit: 'mm' }, quantityKind: 'length', unit: '[in_i]' },
  'vehicle-numbers': { number: '11111111111111111', market: 'northAmerica' },
};

/** What stands in the place of a number, of a text, of a list. */
const instead = {
  number: [0, -1, 1e-300, 1e300, -1e300, 0.5, 1e9, null, 'NaN', '1', true, [1], { value: 1 }],
  string: ['', 'NaN', '1e309', '-', '\u0000', null, 7, ['mm']],
  list: [[], null, 'all', [[1]], [null, null], {}],
};

/** The body with one of its parts replaced, for every part and every replacement. */
function* replaced(value: Json): Generator<Json> {
  if (typeof value === 'number') yield* instead.number;
  else if (typeof value === 'string') yield* instead.string;
  else if (Array.isArray(value)) {
    const list = value as readonly Json[];
    yield* instead.list;
    const [first] = list;
    if (first !== undefined) {
      yield [first];
      yield list.map(() => first);
      for (const each of replaced(first)) yield [each, ...list.slice(1)];
    }
    if (list.every((each) => typeof each === 'number')) {
      for (const number of [0, 1e-300, 1e300, -5]) yield list.map(() => number);
    }
  } else if (typeof value === 'object' && value !== null) {
    const record = value as { readonly [name: string]: Json };
    for (const [name, part] of Object.entries(record)) {
      for (const each of replaced(part)) yield { ...record, [name]: each };
    }
  }
}

describe('calculations on values at and beyond the edge', () => {
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
      payload: JSON.stringify(body),
    });

  it('has a body for every calculation of the list', async () => {
    const { body } = await trial.request({ url: '/v1/calculations', headers: trial.owner });
    expect(body.items.map(({ id }: { id: string }) => id).sort()).toEqual(Object.keys(bodies).sort());
  });

  it.each(Object.entries(bodies))(
    '%s answers, or says what is wrong and where; every answer fits the document',
    async (path, body) => {
      expect((await calculate(path, body)).status).toBe(200);
      const wrong: unknown[] = [];
      for (const changed of replaced(body)) {
        const answer = await calculate(path, changed);
        const isSaid = answer.status === 200 || (answer.status === 422 && answer.body.errors.length > 0);
        const isOwnNumber = answer.status === 422 && /got (?:NaN|-?Infinity)/u.test(answer.text);
        if (!isSaid || isOwnNumber) wrong.push([answer.status, changed, answer.text.slice(0, 300)]);
      }
      expect(wrong).toEqual([]);
    },
  );
});
