import fc from 'fast-check';
import { genfan } from '../../../../test/oracles/statistics-survival/genfan.js';
import {
  genfanTable,
  nistWeibullTable,
} from '../../../../test/oracles/statistics-survival/kaplan-meier-tables.js';
import { nistWeibull } from '../../../../test/oracles/statistics-survival/nist-weibull.js';
import type { CensoredSample } from './censored-sample.js';
import { curveLimitForms } from './curve-limits.js';
import { curveQuantile, survivalAtAge } from './curve-lookup.js';
import { kaplanMeier, type CurveOptions, type SurvivalCurve } from './kaplan-meier.js';

const curveOf = (sample: CensoredSample, options?: CurveOptions): SurvivalCurve => {
  const outcome = kaplanMeier(sample, options);
  if (outcome.kind !== 'estimated') throw new Error(outcome.kind);
  return outcome;
};

/** The tables are printed to 8 significant digits. */
const expectColumn = (actual: readonly (number | null)[], expected: readonly number[]): void => {
  expect(actual).toHaveLength(expected.length);
  actual.forEach((value, i) => {
    expect(Math.abs(value! - expected[i]!)).toBeLessThanOrEqual(5.1e-9 * Math.max(1, Math.abs(expected[i]!)));
  });
};

const column = (table: readonly (readonly number[])[], index: number): number[] =>
  table.map((row) => row[index]!);

describe('kaplanMeier', () => {
  it('gives the table of the NIST handbook units in all three forms of limits', () => {
    const curve = curveOf(nistWeibull(54), { limitForm: 'log' });
    expect(curve.ages).toEqual(column(nistWeibullTable, 0));
    expect(curve.atRisk).toEqual(column(nistWeibullTable, 1));
    expect(curve.events).toEqual(column(nistWeibullTable, 2));
    expectColumn(curve.survival, column(nistWeibullTable, 3));
    expectColumn(curve.standardErrors, column(nistWeibullTable, 4));
    expectColumn(curve.lower, column(nistWeibullTable, 5));
    expectColumn(curve.upper, column(nistWeibullTable, 6));
    const logLog = curveOf(nistWeibull(54), { limitForm: 'logLog' });
    expectColumn(logLog.lower, column(nistWeibullTable, 7));
    expectColumn(logLog.upper, column(nistWeibullTable, 8));
    const plain = curveOf(nistWeibull(54), { limitForm: 'plain' });
    expectColumn(plain.lower, column(nistWeibullTable, 9));
    expectColumn(plain.upper, column(nistWeibullTable, 10));
  });

  it('gives the table of the generator fans', () => {
    const curve = curveOf(genfan);
    expect(curve.limitForm).toBe('logLog');
    expect([curve.ages, curve.atRisk, curve.events]).toEqual([0, 1, 2].map((i) => column(genfanTable, i)));
    expectColumn(curve.survival, column(genfanTable, 3));
    expectColumn(curve.standardErrors, column(genfanTable, 4));
    expectColumn(curve.lower, column(genfanTable, 5));
    expectColumn(curve.upper, column(genfanTable, 6));
    expect(curve.lastAge).toBe(11500);
  });

  it('counts late entries as worked by hand', () => {
    // Spans: (0, 4] event, (0, 2] censored, (3, 6] event, (1, 4] censored. At 4 three are at risk and one has the
    // event: 2/3, Greenwood 1/(3·2) = 1/6. At 6 only the third is left: 0.
    const sample = { ages: [4, 2, 6, 4], events: [1, 0, 1, 0], entryAges: [0, 0, 3, 1] };
    const curve = curveOf(sample, { limitForm: 'plain', level: 0.6826894921370859 });
    expect(curve.ages).toEqual([4, 6]);
    expect(curve.atRisk).toEqual([3, 1]);
    expect(curve.survival[0]).toBeCloseTo(2 / 3, 14);
    expect(curve.standardErrors[0]).toBeCloseTo(2 / 3 / Math.sqrt(6), 14);
    expect(curve.lower[0]).toBeCloseTo(2 / 3 - 2 / 3 / Math.sqrt(6), 12);
    expect([curve.survival[1], curve.standardErrors[1], curve.lower[1], curve.upper[1]]).toEqual([
      0,
      null,
      null,
      null,
    ]);
    expect(curve.exhaustedEarly).toBe(false);
  });

  it('says when late entry left a moment with no survivor though older units follow', () => {
    const curve = curveOf({ ages: [2, 9, 8], events: [1, 1, 0], entryAges: [0, 5, 5] });
    expect(curve.survival).toEqual([0, 0]);
    expect(curve.exhaustedEarly).toBe(true);
  });

  it('answers degenerate samples plainly', () => {
    expect(kaplanMeier({ ages: [], events: [] })).toEqual({
      kind: 'insufficientData',
      of: 'units',
      needed: 1,
      got: 0,
    });
    expect(kaplanMeier({ ages: [3], events: [1], weights: [0] }).kind).toBe('insufficientData');
    expect(kaplanMeier({ ages: [3, 7], events: [0, 0] })).toEqual({ kind: 'noEvents', units: 2, lastAge: 7 });
    expect(curveOf({ ages: [3], events: [1] })).toMatchObject({ ages: [3], survival: [0], lastAge: 3 });
    expect(curveOf({ ages: [5, 5, 5], events: [1, 1, 0] })).toMatchObject({
      ages: [5],
      atRisk: [3],
      survival: [1 / 3],
    });
    expect(curveOf({ ages: [0, 2], events: [true, false] })).toMatchObject({
      ages: [0],
      atRisk: [2],
      survival: [0.5],
    });
  });

  it.each([
    [{ ages: [1, 2], events: [1] }],
    [{ ages: [-1], events: [1] }],
    [{ ages: [NaN], events: [1] }],
    [{ ages: [1], events: [2] }],
    [{ ages: [1], events: [1], entryAges: [2] }],
    [{ ages: [1], events: [1], entryAges: [1] }],
    [{ ages: [1], events: [1], weights: [-1] }],
  ])('refuses %j', (sample) => {
    expect(() => kaplanMeier(sample)).toThrow(RangeError);
  });

  const row = fc.record({
    age: fc.integer({ min: 1, max: 30 }),
    event: fc.boolean(),
    weight: fc.integer({ min: 1, max: 4 }),
  });
  const rows = fc.array(row, { minLength: 1, maxLength: 40 });
  const options = { seed: 21, numRuns: 80 };
  const sampleOf = (data: readonly { age: number; event: boolean }[]): CensoredSample => ({
    ages: data.map(({ age }) => age),
    events: data.map(({ event }) => event),
  });

  it('is the share still alive when nothing is censored, whatever the order', () => {
    fc.assert(
      fc.property(rows, (data) => {
        const complete = data.map(({ age }) => ({ age, event: true }));
        const curve = curveOf(sampleOf(complete));
        expect(curve.ages).toEqual([...new Set(complete.map(({ age }) => age))].sort((a, b) => a - b));
        curve.ages.forEach((age, i) => {
          const alive = complete.filter((unit) => unit.age > age).length / complete.length;
          expect(curve.survival[i]).toBeCloseTo(alive, 12);
        });
        expect(curveOf(sampleOf([...complete].reverse()))).toEqual(curve);
      }),
      options,
    );
  });

  it('falls along the ages, keeps its limits around it, and moves with the unit of age', () => {
    fc.assert(
      fc.property(rows, fc.constantFrom(...curveLimitForms), (data, limitForm) => {
        fc.pre(data.some(({ event }) => event));
        const curve = curveOf(sampleOf(data), { limitForm });
        curve.survival.forEach((survival, i) => {
          if (i > 0) expect(survival).toBeLessThan(curve.survival[i - 1]!);
          const [lower, upper] = [curve.lower[i], curve.upper[i]];
          if (survival === 0) expect([lower, upper]).toEqual([null, null]);
          else {
            expect(lower!).toBeLessThanOrEqual(survival);
            expect(upper!).toBeGreaterThanOrEqual(survival);
            expect(lower!).toBeGreaterThanOrEqual(0);
            expect(upper!).toBeLessThanOrEqual(1);
          }
        });
        const inHalves = curveOf(sampleOf(data.map((unit) => ({ ...unit, age: unit.age / 2 }))), {
          limitForm,
        });
        expect(inHalves.survival).toEqual(curve.survival);
        expect(inHalves.ages).toEqual(curve.ages.map((age) => age / 2));
      }),
      options,
    );
  });

  it('takes a weight as that many like rows, and entry 0 as no entry', () => {
    fc.assert(
      fc.property(rows, (data) => {
        fc.pre(data.some(({ event }) => event));
        const weighted = { ...sampleOf(data), weights: data.map(({ weight }) => weight) };
        const repeated = sampleOf(data.flatMap((unit) => Array.from({ length: unit.weight }, () => unit)));
        expect(curveOf(weighted)).toEqual(curveOf(repeated));
        expect(curveOf({ ...weighted, entryAges: data.map(() => 0) })).toEqual(curveOf(weighted));
      }),
      options,
    );
  });

  it('handles many rows held in typed arrays', () => {
    const size = 200_000;
    const ages = Float64Array.from({ length: size }, (_, i) => ((i * 7919) % size) + 1);
    const events = Uint8Array.from({ length: size }, (_, i) => i % 2);
    const curve = curveOf({ ages, events });
    expect(curve.ages.length).toBe(size / 2);
    expect(curve.atRisk[0]! + curve.ages[0]! - 1).toBe(size);
  });
});

describe('reading a curve', () => {
  const curve = curveOf({ ages: [2, 4, 4, 6, 9], events: [1, 1, 0, 1, 0] });
  // By hand: S(2) = 4/5, S(4) = 4/5 · 3/4 = 3/5, S(6) = 3/5 · 1/2 = 3/10.

  it('gives the step at, between and before the event ages', () => {
    expect(survivalAtAge(curve, 1)).toEqual({ kind: 'estimated', survival: 1, lower: null, upper: null });
    expect(survivalAtAge(curve, 4)).toMatchObject({ survival: curve.survival[1] });
    expect(survivalAtAge(curve, 5.9)).toMatchObject({ survival: curve.survival[1] });
    expect(survivalAtAge(curve, 9)).toMatchObject({ survival: curve.survival[2] });
    expect(survivalAtAge(curve, 9.1)).toEqual({ kind: 'beyondObservation', lastAge: 9 });
    expect(() => survivalAtAge(curve, -1)).toThrow(RangeError);
  });

  it('gives the age by which a share has failed', () => {
    expect(curveQuantile(curve, 0.5)).toMatchObject({ kind: 'estimated', age: 6 });
    expect(curveQuantile(curve, 0.2)).toMatchObject({ kind: 'estimated', age: 2 });
    expect(curveQuantile(curve, 0.8)).toMatchObject({ kind: 'notReached', lastAge: 9 });
    expect(() => curveQuantile(curve, 1)).toThrow(RangeError);
  });
});
