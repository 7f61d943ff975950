import fc from 'fast-check';
import { brierScore } from './brier-score.js';
import type { Forecast } from './forecast.js';
import { reliabilityTable } from './reliability-table.js';

const stated = (probability: number, outcomes: readonly number[]): Forecast[] =>
  outcomes.map((outcome) => ({ probability, occurred: outcome === 1 }));

describe('brierScore', () => {
  it('agrees with four forecasts worked by hand', () => {
    // 0.8 yes: 0.04; 0.8 no: 0.64; 0.3 no: 0.09; 0.1 no: 0.01. Mean 0.195. Base rate 1/4, reference 3/16.
    const found = brierScore([...stated(0.8, [1, 0]), ...stated(0.3, [0]), ...stated(0.1, [0])]);
    if (found.kind !== 'estimated') throw new Error(found.kind);
    expect(found.score).toBeCloseTo(0.195, 15);
    expect(found.baseRate).toBe(0.25);
    expect(found.referenceScore).toBe(3 / 16);
    expect(found.skill).toBeCloseTo(1 - 0.195 / (3 / 16), 14);
  });

  it('has no skill to state when the event always occurred', () => {
    expect(brierScore(stated(0.9, [1, 1]))).toMatchObject({ skill: null, baseRate: 1 });
    expect(brierScore([])).toEqual({ kind: 'insufficientData', of: 'forecasts', needed: 1, got: 0 });
    expect(() => brierScore(stated(1.1, [1]))).toThrow(RangeError);
  });
});

describe('reliabilityTable', () => {
  it('agrees with a table worked by hand', () => {
    // Ten forecasts of 0.25 with two events, ten of 0.75 with nine. Base rate 11/20.
    // Reliability (0.05² + 0.15²)/2 = 0.0125; resolution (0.35² + 0.35²)/2 = 0.1225; uncertainty 0.2475.
    const forecasts = [
      ...stated(0.25, [1, 1, 0, 0, 0, 0, 0, 0, 0, 0]),
      ...stated(0.75, [1, 1, 1, 1, 1, 1, 1, 1, 1, 0]),
    ];
    const table = reliabilityTable(forecasts, { borders: [0.5] });
    if (table.kind !== 'estimated') throw new Error(table.kind);
    expect(table.reliability).toBeCloseTo(0.0125, 14);
    expect(table.resolution).toBeCloseTo(0.1225, 14);
    expect(table.uncertainty).toBeCloseTo(0.2475, 14);
    expect(table.rows).toMatchObject([
      { from: 0, to: 0.5, forecasts: 10, occurred: 2, observed: { share: 0.2, finding: 'withinInterval' } },
      { from: 0.5, to: 1, forecasts: 10, occurred: 9, observed: { share: 0.9, finding: 'withinInterval' } },
    ]);
  });

  it('names classes whose stated probability misses the interval', () => {
    // Wilson limits of 0/20: 0 to 0.161; of 20/20: 0.839 to 1.
    const table = reliabilityTable(
      [
        ...stated(
          0.25,
          Array.from({ length: 20 }, () => 0),
        ),
        ...stated(
          0.75,
          Array.from({ length: 20 }, () => 1),
        ),
      ],
      { borders: [0.5, 0.9] },
    );
    if (table.kind !== 'estimated') throw new Error(table.kind);
    expect(table.rows.map((row) => row.observed?.finding ?? null)).toEqual([
      'statedTooHigh',
      'statedTooLow',
      null,
    ]);
  });

  it('puts a border into the class above and 1 into the last', () => {
    const table = reliabilityTable([...stated(0.1, [0]), ...stated(1, [1])]);
    if (table.kind !== 'estimated') throw new Error(table.kind);
    expect(table.rows.map(({ forecasts }) => forecasts)).toEqual([0, 1, 0, 0, 0, 0, 0, 0, 0, 1]);
    expect(() => reliabilityTable([], { borders: [0.5, 0.5] })).toThrow(RangeError);
    expect(() => reliabilityTable([], { borders: [1] })).toThrow(RangeError);
    expect(() => reliabilityTable([], { confidence: 1 })).toThrow(RangeError);
  });

  it('adds up to the Brier score when each class states one probability', () => {
    const forecast = fc.record({
      probability: fc.constantFrom(0.05, 0.35, 0.65, 0.95),
      occurred: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(forecast, { minLength: 1, maxLength: 60 }), (forecasts) => {
        const table = reliabilityTable(forecasts);
        const score = brierScore(forecasts);
        if (table.kind !== 'estimated' || score.kind !== 'estimated') throw new Error('expected estimates');
        expect(table.reliability - table.resolution + table.uncertainty).toBeCloseTo(score.score, 12);
        expect(table.rows.reduce((sum, row) => sum + row.forecasts, 0)).toBe(forecasts.length);
      }),
      { seed: 21, numRuns: 200 },
    );
  });
});
