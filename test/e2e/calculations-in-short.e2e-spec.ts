import { placeboRemissions, treatedRemissions } from '@endfloat/statistics';
import { CalculationsModule } from '../../apps/api/src/modules/calculations/calculations.module.js';
import { openTrial, type Trial } from '../support/http.js';

describe('calculations of samples, groups, expectations and instruments', () => {
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

  describe('give what is published', () => {
    it('NIST StRD NumAcc1: mean 10000002, standard deviation 1', async () => {
      const { status, body } = await calculate('sample-summaries', {
        unit: 'km',
        values: [10000001, 10000003, 10000002],
        probabilities: [0.25],
        level: 0.9,
      });
      expect(status).toBe(200);
      expect(body).toMatchObject({
        unit: 'km',
        observations: 3,
        result: { mean: 10000002, variance: 1, standardDeviation: 1, least: 10000001, greatest: 10000003 },
      });
      expect(body.result.quantiles).toEqual([{ probability: 0.25, quantile: 10000001.5 }]);
      // t with 2 degrees of freedom at 0.95 is 2.919986 (NIST/SEMATECH e-Handbook 1.3.6.7.2).
      expect(body.result.meanInterval.upper).toBeCloseTo(10000002 + 2.919986 / Math.sqrt(3), 5);
    });

    it('Freireich et al. (1963), remissions: chi-square 16.79', async () => {
      const { status, body } = await calculate('log-rank-tests', {
        unit: 'd',
        first: treatedRemissions,
        second: placeboRemissions,
      });
      expect(status).toBe(200);
      expect(body.observations).toBe(42);
      expect(body.result).toMatchObject({ kind: 'tested', observed: [9, 21] });
      expect(body.result.chiSquare).toBeCloseTo(16.79, 2);
    });

    it('Garwood (1936): 10 events have the limits 4.795 and 18.390', async () => {
      const { status, body } = await calculate('observed-to-expected-ratios', { observed: 10, expected: 4 });
      expect([status, body.observations]).toEqual([200, 10]);
      expect(body.result).toMatchObject({ ratio: 2.5, finding: 'moreThanExpected', level: 0.95 });
      expect(body.result.interval.lower).toBeCloseTo(4.79538869613 / 4, 10);
      expect(body.result.interval.upper).toBeCloseTo(18.39035604202 / 4, 10);
    });

    it('JCGM 100:2008, 4.3.7: the voltmeter has 8.7 uV, told in the unit of the reading', async () => {
      const { status, body } = await calculate('instrument-uncertainties', {
        quantityKind: 'voltage',
        reading: { value: '928.571', unit: 'mV' },
        errorModel: {
          kind: 'percentOfReadingPlusDigits',
          percent: '0.0014',
          digits: 2,
          digit: { value: '0.000001', unit: 'V' },
        },
        resolution: { value: '0.001', unit: 'mV' },
      });
      expect(status).toBe(200);
      expect(body.unit).toBe('mV');
      expect(body.result.ofError).toBeCloseTo(0.0087, 4);
      expect(body.result.ofResolution).toBeCloseTo(0.001 / Math.sqrt(12), 12);
      expect(body.result.halfWidth).toBeCloseTo(0.015, 6);
    });

    it('worked by hand: 1.645 x 0.02 / sqrt(n) is below 0.01 from the eleventh reading on', async () => {
      const { status, body } = await calculate('further-reading-counts', {
        unit: 'mm',
        mean: 0.29,
        count: 1,
        standardDeviation: 0.02,
        permitted: { lower: null, upper: 0.3 },
      });
      expect([status, body.result]).toEqual([200, { kind: 'needed', count: 10 }]);
    });
  });

  describe('API row 33: too little data is an answer', () => {
    const noLives = { ages: [], events: [] };

    it.each([
      ['sample-summaries', { values: [] }, 'insufficientData'],
      ['log-rank-tests', { first: noLives, second: { ages: [1], events: [1] } }, 'insufficientData'],
      [
        'log-rank-tests',
        { first: { ages: [1], events: [1] }, second: { ages: [5], events: [1], entryAges: [3] } },
        'notComparable',
      ],
      ['observed-to-expected-ratios', { observed: 0, expected: 0 }, 'insufficientData'],
      ['observed-to-expected-ratios', { observed: 3, expected: 0 }, 'nothingExpected'],
      [
        'instrument-uncertainties',
        { quantityKind: 'length', reading: { value: '1', unit: 'mm' }, errorModel: { kind: 'unknown' } },
        'unknown',
      ],
      [
        'further-reading-counts',
        { mean: 0, count: 3, standardDeviation: 1, permitted: { lower: null, upper: 9 } },
        'none',
      ],
      [
        'further-reading-counts',
        {
          mean: 0,
          count: 3,
          standardDeviation: 0,
          otherStandardUncertainty: 1,
          permitted: { lower: null, upper: 0 },
        },
        'noNumberSettles',
      ],
    ] as const)('%s with %j: %s', async (path, body, kind) => {
      const answer = await calculate(path, body);
      expect([answer.status, answer.body.result?.kind]).toEqual([200, kind]);
    });

    it('a single value has quantiles and no spread', async () => {
      const { body } = await calculate('sample-summaries', { values: [7], probabilities: [0, 1] });
      expect(body.result).toMatchObject({ mean: 7, median: 7, variance: null, meanInterval: null });
      expect(body.result.quantiles.map(({ quantile }: { quantile: number }) => quantile)).toEqual([7, 7]);
    });
  });

  describe('refuse nonsense and say where it is', () => {
    const reading = { value: '1', unit: 'mm' };
    const lives = { ages: [1, 2], events: [1, 0] };

    it.each([
      ['sample-summaries', { values: [1, 'NaN'] }, '/values'],
      ['sample-summaries', { values: [1, null] }, '/values'],
      ['sample-summaries', { values: 'all' }, '/values'],
      ['sample-summaries', { values: [1], probabilities: [1.5] }, '/probabilities'],
      ['sample-summaries', { values: [1e308, -1e308, 1e308] }, ''],
      ['sample-summaries', { unit: 'furlong', values: [1] }, '/unit'],
      ['log-rank-tests', { first: lives, second: { ages: [1, -2], events: [1, 1] } }, '/second/ages'],
      ['log-rank-tests', { first: { ages: [1], events: [1, 0] }, second: lives }, '/first/events'],
      [
        'log-rank-tests',
        { first: lives, second: { ages: [1, 2], events: [1, 1], entryAges: [0, 2] } },
        '/second/entryAges/1',
      ],
      ['log-rank-tests', { first: lives }, '/second'],
      ['log-rank-tests', { first: lives, second: null }, '/second'],
      ['observed-to-expected-ratios', { observed: 1.5, expected: 2 }, '/observed'],
      ['observed-to-expected-ratios', { observed: 1, expected: '2' }, '/expected'],
      ['observed-to-expected-ratios', { observed: 1, expected: -2 }, '/expected'],
      [
        'instrument-uncertainties',
        {
          quantityKind: 'length',
          reading,
          errorModel: { kind: 'maximumPermissibleError', limit: { value: '1', unit: 'kPa' } },
        },
        '/errorModel/limit/unit',
      ],
      [
        'instrument-uncertainties',
        {
          quantityKind: 'length',
          reading,
          errorModel: { kind: 'maximumPermissibleError', limit: { value: '-1', unit: 'mm' } },
        },
        '/errorModel/limit/value',
      ],
      [
        'instrument-uncertainties',
        { quantityKind: 'length', reading: { value: 'NaN', unit: 'mm' }, errorModel: { kind: 'unknown' } },
        '/reading/value',
      ],
      [
        'instrument-uncertainties',
        { quantityKind: 'vacuum', reading, errorModel: { kind: 'unknown' } },
        '/reading/unit',
      ],
      [
        'instrument-uncertainties',
        {
          quantityKind: 'length',
          reading,
          errorModel: { kind: 'percentOfReadingPlusDigits', percent: '-1', digits: 1, digit: reading },
        },
        '/errorModel/percent',
      ],
      ['instrument-uncertainties', { quantityKind: 'length', reading, errorModel: null }, '/errorModel'],
      [
        'further-reading-counts',
        { mean: 0, count: 1, standardDeviation: 0, permitted: { lower: null, upper: 1 } },
        '/standardDeviation',
      ],
      [
        'further-reading-counts',
        { mean: 0, count: 0, standardDeviation: 1, permitted: { lower: null, upper: 1 } },
        '/count',
      ],
      [
        'further-reading-counts',
        { mean: 0, count: 1, standardDeviation: 1, permitted: { lower: null, upper: null } },
        '/permitted',
      ],
      [
        'further-reading-counts',
        { mean: 0, count: 1, standardDeviation: 1, permitted: { lower: 2, upper: 1 } },
        '/permitted',
      ],
    ] as const)('%s with %j', async (path, body, pointer) => {
      const answer = await calculate(path, body);
      expect(answer.status).toBe(422);
      expect(answer.body.errors.map((error: { pointer: string }) => error.pointer)).toContain(pointer);
    });
  });
});
