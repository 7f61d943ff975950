import fc from 'fast-check';
import { valveSeat } from '../../../../test/oracles/statistics-survival/valveseat.js';
import { valveSeatMcf } from '../../../../test/oracles/statistics-survival/valveseat-mcf.js';
import {
  meanCumulativeFunction,
  type RecurrenceCurve,
  type RecurrenceOptions,
} from './mean-cumulative-function.js';
import type { RecurrenceSample } from './recurrence-sample.js';

const curveOf = (sample: RecurrenceSample, options?: RecurrenceOptions): RecurrenceCurve => {
  const outcome = meanCumulativeFunction(sample, options);
  if (outcome.kind !== 'estimated') throw new Error(outcome.kind);
  return outcome;
};

interface Unit {
  readonly spans: readonly (readonly [number, number])[];
  readonly events: readonly number[];
}

const sampleOf = (units: readonly Unit[]): RecurrenceSample => ({
  eventUnits: units.flatMap(({ events }, unit) => events.map(() => unit)),
  eventAges: units.flatMap(({ events }) => events),
  spanUnits: units.flatMap(({ spans }, unit) => spans.map(() => unit)),
  spanStarts: units.flatMap(({ spans }) => spans.map(([start]) => start)),
  spanEnds: units.flatMap(({ spans }) => spans.map(([, end]) => end)),
});

/** The definition written out, O(units × ages). */
function byDefinition(
  units: readonly Unit[],
): { age: number; atRisk: number; mean: number; variance: number }[] {
  const ages = [...new Set(units.flatMap(({ events }) => events))].sort((a, b) => a - b);
  const contributions = units.map(() => 0);
  let mean = 0;
  return ages.map((age) => {
    const risk = units.map(({ spans }) =>
      spans.some(([start, end]) => (start < age || start === 0) && end >= age),
    );
    const atRisk = risk.filter(Boolean).length;
    const counts = units.map(({ events }) => events.filter((event) => event === age).length);
    const share = counts.reduce((sum, count) => sum + count, 0) / atRisk;
    mean += share;
    units.forEach((_, i) => {
      if (risk[i]) contributions[i]! += (counts[i]! - share) / atRisk;
    });
    return { age, atRisk, mean, variance: contributions.reduce((sum, c) => sum + c * c, 0) };
  });
}

describe('meanCumulativeFunction', () => {
  it('gives the whole published table of the valve seats', () => {
    const sample = {
      eventUnits: valveSeat.eventUnits,
      eventAges: valveSeat.eventAges,
      spanUnits: valveSeat.ends.map((_, unit) => unit),
      spanEnds: valveSeat.ends,
    };
    const log = curveOf(sample);
    const plain = curveOf(sample, { limitForm: 'plain' });
    expect(log.units).toBe(41);
    expect(log.ages).toEqual(valveSeatMcf.map(([age]) => age));
    // The table is printed to 8 significant digits of its smallest entry; 6e-9 absolute covers its rounding.
    valveSeatMcf.forEach(([, atRisk, events, mean, variance, se, logLower, logUpper, lower, upper], i) => {
      expect([log.atRisk[i], log.events[i]]).toEqual([atRisk, events]);
      for (const [actual, expected] of [
        [log.mean[i], mean],
        [log.standardErrors[i]! ** 2, variance],
        [log.standardErrors[i], se],
        [log.lower[i], logLower],
        [log.upper[i], logUpper],
        [plain.lower[i], lower],
        [plain.upper[i], upper],
      ] as const) {
        expect(Math.abs(actual! - expected!)).toBeLessThan(6e-9);
      }
    });
  });

  it('gives the value worked by hand, with a late start and a gap', () => {
    // Units: A (0, 10], events 2 and 8; B (0, 4] and (6, 10], event 8; C (5, 10], no event.
    // Age 2: A, B at risk, 1/2. Contributions A +1/4, B −1/4; variance 1/8.
    // Age 8: A, B, C at risk, 2/3. A 1/4 + 1/9, B −1/4 + 1/9, C −2/9; sum of squares 1/8 + 2/81 + 4/81.
    const curve = curveOf(
      sampleOf([
        { spans: [[0, 10]], events: [2, 8] },
        {
          spans: [
            [6, 10],
            [0, 4],
          ],
          events: [8],
        },
        { spans: [[5, 10]], events: [] },
      ]),
      { limitForm: 'plain', level: 0.6826894921370859 },
    );
    expect(curve).toMatchObject({
      ages: [2, 8],
      atRisk: [2, 3],
      events: [1, 2],
      gaps: [],
      firstAge: 0,
      lastAge: 10,
      units: 3,
    });
    expect(curve.mean[1]).toBeCloseTo(1 / 2 + 2 / 3, 14);
    expect(curve.standardErrors[0]).toBeCloseTo(Math.sqrt(1 / 8), 13);
    expect(curve.standardErrors[1]).toBeCloseTo(Math.sqrt(1 / 8 + 6 / 81), 13);
    expect(curve.lower[0]).toBeCloseTo(1 / 2 - Math.sqrt(1 / 8), 12);
  });

  it('names the ages at which nothing was observed', () => {
    const curve = curveOf(
      sampleOf([
        {
          spans: [
            [1, 3],
            [7, 9],
          ],
          events: [8],
        },
        { spans: [[2, 5]], events: [3] },
      ]),
    );
    expect(curve).toMatchObject({ firstAge: 1, lastAge: 9, gaps: [{ from: 5, to: 7 }] });
  });

  it('adds sizes where events have them', () => {
    const sample = {
      ...sampleOf([
        { spans: [[0, 5]], events: [1] },
        { spans: [[0, 5]], events: [2] },
      ]),
      eventSizes: [30, 50],
    };
    expect(curveOf(sample)).toMatchObject({ events: [30, 50], mean: [15, 40] });
    expect(curveOf({ ...sample, eventSizes: [0, 50] })).toMatchObject({ mean: [0, 25] });
    expect(curveOf({ ...sample, eventSizes: [0, 50] }).lower[0]).toBe(0);
  });

  it('answers degenerate samples plainly', () => {
    expect(meanCumulativeFunction(sampleOf([]))).toEqual({
      kind: 'insufficientData',
      of: 'units',
      needed: 1,
      got: 0,
    });
    expect(meanCumulativeFunction(sampleOf([{ spans: [[4, 4]], events: [] }])).kind).toBe('insufficientData');
    expect(meanCumulativeFunction(sampleOf([{ spans: [[1, 4]], events: [] }]))).toEqual({
      kind: 'noEvents',
      units: 1,
      firstAge: 1,
      lastAge: 4,
    });
    const single = curveOf(sampleOf([{ spans: [[0, 4]], events: [1, 1, 2] }]));
    expect(single).toMatchObject({
      mean: [2, 3],
      standardErrors: [null, null],
      lower: [null, null],
      upper: [null, null],
    });
    const atZero = curveOf(
      sampleOf([
        { spans: [[0, 0]], events: [0] },
        { spans: [[0, 4]], events: [] },
      ]),
    );
    expect(atZero).toMatchObject({ ages: [0], atRisk: [2], mean: [0.5] });
    // All units alike: no spread between them.
    const alike = curveOf(
      sampleOf([
        { spans: [[0, 4]], events: [3] },
        { spans: [[0, 4]], events: [3] },
      ]),
    );
    expect(alike).toMatchObject({ mean: [1], standardErrors: [0] });
  });

  it.each<[string, readonly Unit[]]>([
    ['an event after the end', [{ spans: [[0, 4]], events: [5] }]],
    [
      'an event in a gap',
      [
        {
          spans: [
            [0, 4],
            [6, 8],
          ],
          events: [5],
        },
      ],
    ],
    ['an event at the start of a span', [{ spans: [[6, 8]], events: [6] }]],
    [
      'overlapping spans',
      [
        {
          spans: [
            [0, 4],
            [3, 8],
          ],
          events: [],
        },
      ],
    ],
    ['a span that ends before it starts', [{ spans: [[5, 4]], events: [] }]],
    ['an age below zero', [{ spans: [[0, 4]], events: [-1] }]],
  ])('refuses %s', (_, units) => {
    expect(() => meanCumulativeFunction(sampleOf(units))).toThrow(RangeError);
  });

  it('refuses unit numbers that are not whole and columns of unlike length', () => {
    const sample = sampleOf([{ spans: [[0, 4]], events: [1] }]);
    expect(() => meanCumulativeFunction({ ...sample, eventUnits: [0.5] })).toThrow(RangeError);
    expect(() => meanCumulativeFunction({ ...sample, eventUnits: [3] })).toThrow(RangeError);
    expect(() => meanCumulativeFunction({ ...sample, eventUnits: [] })).toThrow(RangeError);
    expect(() => meanCumulativeFunction({ ...sample, spanUnits: [] })).toThrow(RangeError);
    expect(() => meanCumulativeFunction(sample, { level: 1 })).toThrow(RangeError);
  });

  const unit: fc.Arbitrary<Unit> = fc
    .uniqueArray(fc.integer({ min: 0, max: 30 }), { minLength: 2, maxLength: 6 })
    .map((cuts) => [...cuts].sort((a, b) => a - b))
    .chain((cuts) => {
      const spans: [number, number][] = [];
      for (let i = 0; i + 1 < cuts.length; i += 2) spans.push([cuts[i]!, cuts[i + 1]!]);
      const inside = spans.flatMap(([start, end]) =>
        Array.from({ length: end - start }, (_, i) => start + 1 + i),
      );
      return fc.array(fc.constantFrom(...inside), { maxLength: 6 }).map((events) => ({ spans, events }));
    });
  const units = fc
    .array(unit, { minLength: 2, maxLength: 12 })
    .filter((all) => all.some(({ events }) => events.length > 0));
  const options = { seed: 13, numRuns: 80, endOnFailure: true };

  it('agrees with the definition written out, whatever the spans and ties', () => {
    fc.assert(
      fc.property(units, (all) => {
        const curve = curveOf(sampleOf(all));
        const expected = byDefinition(all);
        expect(curve.ages).toEqual(expected.map(({ age }) => age));
        expected.forEach(({ atRisk, mean, variance }, i) => {
          expect(curve.atRisk[i]).toBe(atRisk);
          expect(curve.mean[i]).toBeCloseTo(mean, 12);
          expect(curve.standardErrors[i]! ** 2).toBeCloseTo(variance, 12);
        });
      }),
      options,
    );
  });

  it('rises, does not depend on the order of units, and moves with the unit of age', () => {
    fc.assert(
      fc.property(units, (all) => {
        const curve = curveOf(sampleOf(all));
        curve.mean.forEach((mean, i) => expect(mean).toBeGreaterThan(i === 0 ? 0 : curve.mean[i - 1]!));
        const reversed = curveOf(sampleOf([...all].reverse()));
        reversed.mean.forEach((mean, i) => expect(mean).toBeCloseTo(curve.mean[i]!, 12));
        const doubled = all.map(({ spans, events }) => ({
          spans: spans.map(([start, end]) => [2 * start, 2 * end] as const),
          events: events.map((age) => 2 * age),
        }));
        const moved = curveOf(sampleOf(doubled));
        expect(moved.mean).toEqual(curve.mean);
        expect(moved.ages).toEqual(curve.ages.map((age) => 2 * age));
      }),
      options,
    );
  });

  it('is the Nelson–Aalen sum when each unit has at most one event and leaves with it', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 1, max: 20 }), fc.boolean()), { minLength: 2, maxLength: 15 }),
        (rows) => {
          fc.pre(rows.some(([, event]) => event));
          const curve = curveOf(
            sampleOf(rows.map(([age, event]) => ({ spans: [[0, age]], events: event ? [age] : [] }))),
          );
          let sum = 0;
          curve.ages.forEach((age, i) => {
            const atRisk = rows.filter(([end]) => end >= age).length;
            sum += rows.filter(([end, event]) => event && end === age).length / atRisk;
            expect(curve.mean[i]).toBeCloseTo(sum, 12);
          });
        },
      ),
      options,
    );
  });

  it('handles many rows held in typed arrays', () => {
    const unitCount = 50_000;
    const eventUnits = Uint32Array.from({ length: 4 * unitCount }, (_, i) => i % unitCount);
    const eventAges = Float64Array.from({ length: 4 * unitCount }, (_, i) => 1 + ((i * 7919) % 1000));
    const curve = curveOf({
      eventUnits,
      eventAges,
      spanUnits: Uint32Array.from({ length: unitCount }, (_, i) => i),
      spanEnds: new Float64Array(unitCount).fill(1000),
    });
    expect(curve.mean.at(-1)).toBeCloseTo(4, 9);
    // Every unit has four events by the end: no spread is left between them.
    expect(curve.standardErrors.at(-1)).toBeLessThan(1e-6);
  });
});
