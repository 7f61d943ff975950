import fc from 'fast-check';
import { aiagStudy } from '../published-cases/aiag-study.js';
import { averageAndRangeStudy } from './average-and-range-study.js';
import { crossedGaugeStudy } from './crossed-gauge-study.js';
import type { GaugeMeasurement } from './gauge-study.js';
import { nestedGaugeStudy } from './nested-gauge-study.js';

const rows = (
  table: readonly (readonly [appraiser: string, object: string, ...values: number[]])[],
): GaugeMeasurement[] =>
  table.flatMap(([appraiser, object, ...values]) => values.map((value) => ({ appraiser, object, value })));

describe('a crossed study worked by hand', () => {
  // Two objects, two appraisers, two trials. Cell means 2, 4 / 6, 12; object means 3 and 9; appraiser means 4 and 8; grand 6.
  const study = rows([
    ['a', 'p', 1, 3],
    ['b', 'p', 3, 5],
    ['a', 'q', 5, 7],
    ['b', 'q', 11, 13],
  ]);

  it('has the sums of squares 72, 32, 8 and 8', () => {
    // objects 4 x (9 + 9) = 72, appraisers 4 x (4 + 4) = 32; interaction 2 x 4 x 1 = 8, error 8 x 1 = 8
    const result = crossedGaugeStudy(study, { poolingLevel: 1, tolerance: 12 });
    if (result.kind !== 'estimated') throw new Error(result.kind);
    const { sources, variation } = result;
    expect(
      [sources.objects, sources.appraisers, sources.interaction, sources.error].map(
        ({ sumOfSquares }) => sumOfSquares,
      ),
    ).toEqual([72, 32, 8, 8]);
    expect(
      [sources.objects, sources.appraisers, sources.interaction, sources.error].map(
        ({ degreesOfFreedom }) => degreesOfFreedom,
      ),
    ).toEqual([1, 1, 1, 4]);
    // kept: error 2; interaction (8 - 2) / 2 = 3; appraisers (32 - 8) / 4 = 6; objects (72 - 8) / 4 = 16
    expect(variation.repeatability ** 2).toBeCloseTo(2, 12);
    expect(variation.reproducibility ** 2).toBeCloseTo(9, 12);
    expect(variation.objects ** 2).toBeCloseTo(16, 12);
    // gauge sqrt(11); 6 x sqrt(11) / 12; categories trunc(1.41 x sqrt(16 / 11)) = 1
    expect(variation.gaugePercentOfTolerance).toBeCloseTo(50 * Math.sqrt(11), 9);
    expect(variation.distinctCategories).toBe(1);
  });

  it('pools the interaction when its p-value is above the level, and hands repeatability with its degrees on', () => {
    const result = crossedGaugeStudy(study, { poolingLevel: 0.05, tolerance: null });
    if (result.kind !== 'estimated') throw new Error(result.kind);
    // F = 8 / 2 = 4 on 1 and 4 degrees: p = 0.116
    expect(result.interactionTest?.pValue).toBeCloseTo(0.1161, 4);
    expect(result.isInteractionPooled).toBe(true);
    expect(result.repeatability.degreesOfFreedom).toBe(5);
    expect(result.repeatability.standardDeviation ** 2).toBeCloseTo(16 / 5, 12);
  });
});

describe('a nested study worked by hand', () => {
  // Appraiser a: objects 1 (1, 3) and 2 (5, 7); b: objects 3 (9, 11) and 4 (17, 19). Object means 2, 6, 10, 18; a 4, b 14; grand 9.
  const study = rows([
    ['a', '1', 1, 3],
    ['a', '2', 5, 7],
    ['b', '3', 9, 11],
    ['b', '4', 17, 19],
  ]);

  it('has the sums of squares 200, 80 and 8 and the variances 2, 19 and 40', () => {
    // appraisers 4 x (25 + 25) = 200 (1); objects 2 x (4 + 4 + 16 + 16) = 80 (2); error 8 (4)
    // error 2; objects (40 - 2) / 2 = 19; appraisers (200 - 40) / 4 = 40
    const result = nestedGaugeStudy(study);
    if (result.kind !== 'estimated') throw new Error(result.kind);
    expect(result.sources.appraisers).toEqual({ sumOfSquares: 200, degreesOfFreedom: 1, meanSquare: 200 });
    expect(result.sources.objectsWithinAppraisers).toEqual({
      sumOfSquares: 80,
      degreesOfFreedom: 2,
      meanSquare: 40,
    });
    expect(result.sources.error).toEqual({ sumOfSquares: 8, degreesOfFreedom: 4, meanSquare: 2 });
    expect(result.variation.repeatability ** 2).toBeCloseTo(2, 12);
    expect(result.variation.objects ** 2).toBeCloseTo(19, 12);
    expect(result.variation.reproducibility ** 2).toBeCloseTo(40, 12);
    expect(result.repeatability).toEqual({ standardDeviation: Math.sqrt(2), degreesOfFreedom: 4 });
  });

  it('says what is missing', () => {
    expect(nestedGaugeStudy(study.slice(0, 4))).toMatchObject({
      kind: 'insufficientData',
      needed: 'two appraisers',
    });
    expect(nestedGaugeStudy(study.slice(0, 7))).toMatchObject({ kind: 'notBalanced', object: '4', count: 1 });
    expect(nestedGaugeStudy(study.slice(0, 6))).toMatchObject({
      kind: 'notBalanced',
      appraiser: 'b',
      count: 1,
    });
    const single = study.filter((_, index) => index % 2 === 0);
    expect(nestedGaugeStudy(single)).toMatchObject({ kind: 'insufficientData', needed: 'two trials' });
  });
});

describe('studies in general', () => {
  const estimated = <T extends { readonly kind: string }>(result: T): Extract<T, { kind: 'estimated' }> => {
    if (result.kind !== 'estimated') throw new Error(result.kind);
    return result as Extract<T, { kind: 'estimated' }>;
  };

  it('do not depend on the order of the measurements', () => {
    expect(crossedGaugeStudy([...aiagStudy].reverse())).toEqual(crossedGaugeStudy(aiagStudy));
    expect(averageAndRangeStudy([...aiagStudy].reverse())).toEqual(averageAndRangeStudy(aiagStudy));
  });

  it('do not care about a shift of all values and scale with them', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.double({ min: 0.1, max: 20, noNaN: true }),
        (shift, factor) => {
          const moved = aiagStudy.map((measurement) => ({
            ...measurement,
            value: shift + factor * measurement.value,
          }));
          const [before, after] = [aiagStudy, moved].map(
            (study) => estimated(crossedGaugeStudy(study)).variation,
          );
          expect(after!.repeatability / before!.repeatability).toBeCloseTo(factor, 6);
          expect(after!.gaugePercentOfTotal).toBeCloseTo(before!.gaugePercentOfTotal, 6);
          const ranges = estimated(averageAndRangeStudy(moved)).variation;
          expect(ranges.objects / estimated(averageAndRangeStudy(aiagStudy)).variation.objects).toBeCloseTo(
            factor,
            6,
          );
        },
      ),
      { seed: 20260504, numRuns: 50 },
    );
  });

  it('of a perfect gauge have no number of categories and test no interaction', () => {
    const perfect = rows([
      ['a', 'p', 1, 1],
      ['b', 'p', 1, 1],
      ['a', 'q', 2, 2],
      ['b', 'q', 2, 2],
    ]);
    const result = estimated(crossedGaugeStudy(perfect));
    expect(result.variation).toMatchObject({ gauge: 0, gaugePercentOfTotal: 0, distinctCategories: null });
    expect(result.interactionTest).toBeNull();
  });

  it('of nothing but equal values are zero everywhere, never a division by zero', () => {
    const flat = rows([
      ['a', 'p', 1, 1],
      ['b', 'p', 1, 1],
      ['a', 'q', 1, 1],
      ['b', 'q', 1, 1],
    ]);
    expect(estimated(crossedGaugeStudy(flat)).variation).toMatchObject({ total: 0, gaugePercentOfTotal: 0 });
    expect(estimated(averageAndRangeStudy(flat)).percentOfTotal).toEqual({
      repeatability: 0,
      reproducibility: 0,
      objects: 0,
    });
  });

  it('say what is missing and refuse what is no number', () => {
    expect(crossedGaugeStudy([])).toEqual({ kind: 'insufficientData', needed: 'two objects', got: 0 });
    expect(crossedGaugeStudy(aiagStudy.filter(({ appraiser }) => appraiser === 'A'))).toMatchObject({
      needed: 'two appraisers',
    });
    expect(crossedGaugeStudy(aiagStudy.slice(1))).toMatchObject({ kind: 'notBalanced' });
    expect(() => crossedGaugeStudy([{ object: 'p', appraiser: 'a', value: Number.NaN }])).toThrow(RangeError);
    expect(() => crossedGaugeStudy(aiagStudy, { poolingLevel: 2, tolerance: null })).toThrow(RangeError);
    expect(() => crossedGaugeStudy(aiagStudy, { poolingLevel: 0.25, tolerance: 0 })).toThrow(RangeError);
    for (const study of [averageAndRangeStudy, nestedGaugeStudy])
      expect(() => study([], -1)).toThrow(RangeError);
    const eleven = Array.from({ length: 11 }, (_, object) =>
      rows([
        ['a', String(object), object, object + 1],
        ['b', String(object), object, object + 2],
      ]),
    ).flat();
    expect(averageAndRangeStudy(eleven)).toMatchObject({
      kind: 'insufficientData',
      needed: 'two to ten objects',
      got: 11,
    });
  });
});
