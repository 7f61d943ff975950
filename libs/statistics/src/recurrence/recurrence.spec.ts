import fc from 'fast-check';
import { milHdbk189 } from '../../../../test/oracles/statistics-survival/milhdbk189.js';
import { nistRepairs } from '../../../../test/oracles/statistics-survival/nist-repairs.js';
import { chiSquareCdf } from '../distributions/chi-square.js';
import { meanAtAge } from './curve-at-age.js';
import { groupedPowerLawProcess } from './grouped-power-law-process.js';
import { logLinearProcess } from './log-linear-process.js';
import { meanCumulativeDifference } from './mean-cumulative-difference.js';
import { meanCumulativeFunction } from './mean-cumulative-function.js';
import { pooledPowerLawProcess } from './pooled-power-law-process.js';
import { powerLawProcess, type PowerLawFit } from './power-law-process.js';
import type { SingleSystem } from './process-spans.js';
import type { RecurrenceSample } from './recurrence-sample.js';
import { laplaceTrendTest, powerLawTrendTest, reverseArrangements } from './trend-tests.js';

const near = (actual: number | null | undefined, expected: number, relative: number): void => {
  expect(Math.abs(actual! - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));
};

const fitOf = (system: SingleSystem, level?: number): PowerLawFit => {
  const outcome = powerLawProcess(system, level);
  if (outcome.kind !== 'estimated') throw new Error(outcome.kind);
  return outcome;
};

function only<T extends { readonly kind: string }, K extends T['kind']>(
  outcome: T,
  kind: K,
): Extract<T, { kind: K }> {
  if (outcome.kind !== kind) throw new Error(JSON.stringify(outcome));
  return outcome as Extract<T, { kind: K }>;
}

const oneSystem = (eventAges: readonly number[], end: number): RecurrenceSample => ({
  eventUnits: eventAges.map(() => 0),
  eventAges,
  spanUnits: [0],
  spanEnds: [end],
});

const repairs: SingleSystem = { ...nistRepairs, termination: 'time' };
const growthTest: SingleSystem = { ...milHdbk189, termination: 'time' };

// Closed forms: relative 1e-9 of the 12-digit values of generate.R (R 4.2.2); printed values to half a unit.
describe('published single-system data', () => {
  it('gives the repairs of the NIST handbook', () => {
    const fit = fitOf(repairs, 0.8);
    near(fit.shape, 0.537228866034, 1e-9);
    near(fit.rate, 0.196658215714, 1e-9);
    near(fit.unbiasedShape, 0.483505979431, 1e-9);
    near(fit.unbiasedRate, 0.291300268566, 1e-9);
    near(fit.intensityAtEnd, 0.00358152577356, 1e-9);
    near(fit.meanTimeAtEnd, 279.210611126, 1e-9);
    near(fit.shapeLimits.lower, 0.334226441832, 1e-9);
    near(fit.shapeLimits.upper, 0.763186805555, 1e-9);
    near(fit.cramerVonMises, 0.053768685229, 1e-9);
    // The handbook prints growth 0.516494, a 0.2913, mean time 310.234 and its 80 % limits 157.7139 and 548.5565.
    expect(1 - fit.unbiasedShape!).toBeCloseTo(0.516494, 6);
    near(fit.unbiasedMeanTime?.estimate, 310.234012362, 1e-9);
    near(fit.unbiasedMeanTime?.lower, 157.713834039, 1e-9);
    near(fit.unbiasedMeanTime?.upper, 548.556597731, 1e-9);
    const chi = only(powerLawTrendTest([repairs]), 'tested');
    near(chi.chiSquare, 37.2280814835, 1e-9);
    expect(chi.degreesOfFreedom).toBe(20);
    near(chi.lowerTail, 0.989013642884, 1e-9);
    near(chi.upperTail, 0.0109863571158, 1e-9);
    const laplace = only(laplaceTrendTest([repairs]), 'tested');
    near(laplace.statistic, -1.32694918265, 1e-9);
    near(laplace.pValue, 0.184525493367, 1e-9);
    const reverse = only(reverseArrangements(nistRepairs.eventAges), 'tested');
    expect(reverse).toMatchObject({ reversals: 33, greatest: 45, expected: 22.5 });
    near(reverse.statistic, 1.9677398202, 1e-9);
  });

  it('gives the failure times of MIL-HDBK-189, appendix C, one of them twice', () => {
    const fit = fitOf(growthTest, 0.9);
    near(fit.shape, 0.716339262366, 1e-9);
    near(fit.rate, 0.453841861373, 1e-9);
    near(fit.unbiasedShape, 0.689808178575, 1e-9);
    near(fit.unbiasedRate, 0.527989472551, 1e-9);
    near(fit.intensityAtEnd, 0.0644705336129, 1e-9);
    near(fit.meanTimeAtEnd, 15.5109620467, 1e-9);
    near(fit.shapeLimits.lower, 0.505632287612, 1e-9);
    near(fit.shapeLimits.upper, 0.957151511971, 1e-9);
    near(fit.cramerVonMises, 0.0910611223862, 1e-9);
    const chi = only(powerLawTrendTest([growthTest]), 'tested');
    near(chi.chiSquare, 75.3832755469, 1e-9);
    near(chi.lowerTail, 0.971135307385, 1e-9);
    near(only(laplaceTrendTest([growthTest]), 'tested').statistic, -2.318, 1e-9);
  });
});

describe('cases worked by hand', () => {
  it('gives a failure-terminated process', () => {
    // Ages 1, e, e²; end e²: Σ ln(T/t) = 2 + 1 + 0 = 3, shape 3/3 = 1, rate 3/e²; unbiased (3 − 2)/3; limits by χ²(4).
    const fit = fitOf({ eventAges: [Math.exp(2), 1, Math.E], termination: 'failure' }, 0.9);
    near(fit.shape, 1, 1e-12);
    near(fit.rate, 3 / Math.exp(2), 1e-12);
    near(fit.unbiasedShape, 1 / 3, 1e-12);
    expect(chiSquareCdf(6 * fit.shapeLimits.lower, 4)).toBeCloseTo(0.05, 10);
    expect(chiSquareCdf(6 * fit.shapeLimits.upper, 4)).toBeCloseTo(0.95, 10);
    const chi = only(
      powerLawTrendTest([{ eventAges: [1, Math.E, Math.exp(2)], termination: 'failure' }]),
      'tested',
    );
    near(chi.chiSquare, 6, 1e-12);
    expect(chi.degreesOfFreedom).toBe(4);
    // χ² with 4 degrees: upper tail e⁻³ (1 + 3).
    near(chi.upperTail, 4 * Math.exp(-3), 1e-12);
  });

  it('gives a grouped process that meets two shares exactly', () => {
    // 4 events in (0, 1], 12 in (1, 2]: 4 = rate · 1, 16 = rate · 2^shape, so rate 4 and shape 2.
    const fit = only(groupedPowerLawProcess({ starts: [0, 1], ends: [1, 2], counts: [4, 12] }), 'estimated');
    near(fit.shape, 2, 1e-9);
    near(fit.rate, 4, 1e-9);
    // Binomial with share q = 2^−shape, at q = 1/4 and 16 events: information of ln shape is
    // (shape ln 2)² · 16 · q / (1 − q) = (2 ln 2)² · 16 / 3.
    const standardError = Math.sqrt(3 / 16) / (2 * Math.LN2);
    near(Math.log(fit.shapeLimits.upper / 2), 1.959963984540054 * standardError, 1e-7);
    // Several like systems: the same counts twice leave the shape and the rate of one system as they are.
    const twice = only(
      groupedPowerLawProcess({ starts: [0, 1, 0, 1], ends: [1, 2, 1, 2], counts: [4, 12, 4, 12] }),
      'estimated',
    );
    near(twice.shape, 2, 1e-9);
    near(twice.rate, 4, 1e-9);
  });

  it('gives a log-linear process that meets its equation', () => {
    // Mean place of the events must be that of the density e^(bt) on (0, T]: T/(1 − e^(−bT)) − 1/b.
    const ages = [1, 4, 6, 7, 7.5, 9];
    const fit = only(logLinearProcess(oneSystem(ages, 10)), 'estimated');
    const meanAge = ages.reduce((sum, age) => sum + age, 0) / ages.length;
    near(10 / -Math.expm1(-10 * fit.slope) - 1 / fit.slope, meanAge, 1e-10);
    near((Math.exp(fit.logRate) * Math.expm1(10 * fit.slope)) / fit.slope, ages.length, 1e-10);
    // Symmetric ages have no slope; the variance of a uniform age is T²/12.
    const level = only(logLinearProcess(oneSystem([2, 8], 10)), 'estimated');
    expect(level.slope).toBeCloseTo(0, 12);
    near(level.slopeStandardError, Math.sqrt(12 / 100 / 2), 1e-9);
    near(Math.exp(level.logRate), 0.2, 1e-9);
  });

  it('gives the difference of two groups from their common first age', () => {
    // First: A and B on (0, 10], A's event at 5. Second: C on (2, 8], D on (2, 10]; C's event at 4, A's at 1 is left out.
    // At 4: −1/2, variance 0 + 2 · (1/4)²; at 5: 0, variance 1/8 + 1/8.
    const first = { eventUnits: [0, 0], eventAges: [1, 5], spanUnits: [0, 1], spanEnds: [10, 10] };
    const second = {
      eventUnits: [0],
      eventAges: [4],
      spanUnits: [0, 1],
      spanStarts: [2, 2],
      spanEnds: [8, 10],
    };
    const outcome = only(meanCumulativeDifference(first, second, 0.6826894921370859), 'estimated');
    expect(outcome).toMatchObject({ ages: [4, 5], difference: [-0.5, 0], firstAge: 2, lastAge: 10 });
    near(outcome.standardErrors[0], Math.sqrt(1 / 8), 1e-12);
    near(outcome.standardErrors[1], 0.5, 1e-12);
    near(outcome.lower[1], -0.5, 1e-10);
    const mirrored = only(meanCumulativeDifference(second, first), 'estimated');
    expect(mirrored.difference).toEqual([0.5, 0]);
  });

  it('reads a curve at an age', () => {
    const curve = only(
      meanCumulativeFunction({
        eventUnits: [0, 1],
        eventAges: [3, 5],
        spanUnits: [0, 1],
        spanStarts: [1, 1],
        spanEnds: [8, 8],
      }),
      'estimated',
    );
    expect(meanAtAge(curve, 2)).toEqual({
      kind: 'estimated',
      mean: 0,
      standardError: null,
      lower: null,
      upper: null,
    });
    expect(meanAtAge(curve, 4)).toMatchObject({ kind: 'estimated', mean: 0.5 });
    expect(meanAtAge(curve, 8)).toMatchObject({ kind: 'estimated', mean: 1 });
    expect(meanAtAge(curve, 9)).toEqual({ kind: 'beyondObservation', firstAge: 1, lastAge: 8 });
    expect(meanAtAge(curve, 0.5).kind).toBe('beyondObservation');
    expect(() => meanAtAge(curve, NaN)).toThrow(RangeError);
  });
});

describe('samples without an estimate', () => {
  it('has an answer of its own for each', () => {
    expect(powerLawProcess({ eventAges: [], end: 5, termination: 'time' })).toMatchObject({
      kind: 'insufficientData',
      needed: 1,
    });
    expect(powerLawProcess({ eventAges: [3], termination: 'failure' })).toMatchObject({
      kind: 'insufficientData',
      needed: 2,
    });
    expect(powerLawProcess({ eventAges: [], termination: 'failure' })).toMatchObject({
      kind: 'insufficientData',
      got: 0,
    });
    expect(powerLawProcess({ eventAges: [0, 0, 2], end: 5, termination: 'time' })).toEqual({
      kind: 'zeroAgeEvents',
      count: 2,
    });
    expect(powerLawProcess({ eventAges: [0], end: 5, termination: 'time' })).toEqual({
      kind: 'zeroAgeEvents',
      count: 1,
    });
    expect(powerLawProcess({ eventAges: [5, 5], end: 5, termination: 'time' })).toMatchObject({
      kind: 'noMaximum',
    });
    expect(powerLawProcess({ eventAges: [5, 5], termination: 'failure' })).toMatchObject({
      kind: 'noMaximum',
    });
    const single = fitOf({ eventAges: [2], end: 5, termination: 'time' });
    expect(single).toMatchObject({ unbiasedShape: null, unbiasedMeanTime: null, cramerVonMises: null });
    expect(fitOf({ eventAges: [1, 2], end: 5, termination: 'time' }, 0.99).unbiasedMeanTime).toMatchObject({
      upper: null,
    });
    expect(laplaceTrendTest([]).kind).toBe('insufficientData');
    expect(laplaceTrendTest([{ eventAges: [4], termination: 'failure' }]).kind).toBe('insufficientData');
    expect(powerLawTrendTest([{ eventAges: [0, 1], end: 2, termination: 'time' }])).toEqual({
      kind: 'zeroAgeEvents',
      count: 1,
    });
    expect(powerLawTrendTest([]).kind).toBe('insufficientData');
    expect(reverseArrangements([4]).kind).toBe('insufficientData');
    expect(groupedPowerLawProcess({ starts: [0, 1], ends: [1, 2], counts: [0, 0] })).toMatchObject({
      of: 'events',
    });
    expect(groupedPowerLawProcess({ starts: [0, 0], ends: [2, 2], counts: [3, 1] })).toMatchObject({
      of: 'intervals',
    });
    expect(['noMaximum', 'notConverged']).toContain(
      groupedPowerLawProcess({ starts: [0, 1], ends: [1, 2], counts: [0, 9] }).kind,
    );
    expect(['noMaximum', 'notConverged']).toContain(
      groupedPowerLawProcess({ starts: [0, 1], ends: [1, 2], counts: [9, 0] }).kind,
    );
    expect(pooledPowerLawProcess(oneSystem([], 4)).kind).toBe('insufficientData');
    expect(pooledPowerLawProcess(oneSystem([4], 4)).kind).toBe('noMaximum');
    expect(pooledPowerLawProcess(oneSystem([0, 1], 4)).kind).toBe('zeroAgeEvents');
    expect(logLinearProcess(oneSystem([], 4)).kind).toBe('insufficientData');
    expect(logLinearProcess(oneSystem([4, 4], 4)).kind).toBe('noMaximum');
    expect(logLinearProcess(oneSystem([0], 0)).kind).toBe('noMaximum');
    const none = { eventUnits: [], eventAges: [], spanUnits: [0], spanEnds: [3] };
    expect(meanCumulativeDifference(none, none)).toEqual({ kind: 'notComparable' });
    expect(
      meanCumulativeDifference(oneSystem([1], 3), { ...none, spanStarts: [5], spanEnds: [9] }).kind,
    ).toBe('notComparable');
  });

  it('refuses what contradicts itself', () => {
    expect(() => powerLawProcess({ eventAges: [6], end: 5, termination: 'time' })).toThrow(RangeError);
    expect(() => powerLawProcess({ eventAges: [6], termination: 'time' })).toThrow(RangeError);
    expect(() => powerLawProcess({ eventAges: [1, 6], end: 7, termination: 'failure' })).toThrow(RangeError);
    expect(() => powerLawProcess({ eventAges: [NaN], end: 5, termination: 'time' })).toThrow(RangeError);
    expect(() => powerLawProcess(repairs, 0)).toThrow(RangeError);
    expect(() => groupedPowerLawProcess({ starts: [1], ends: [1], counts: [1] })).toThrow(RangeError);
    expect(() => groupedPowerLawProcess({ starts: [0], ends: [1], counts: [0.5] })).toThrow(RangeError);
    expect(() => groupedPowerLawProcess({ starts: [0], ends: [1], counts: [] })).toThrow(RangeError);
    expect(() => logLinearProcess(oneSystem([5], 4))).toThrow(RangeError);
  });
});

describe('properties', () => {
  const options = { seed: 31, numRuns: 100, endOnFailure: true };
  const ages = fc.array(fc.double({ min: 0.1, max: 99, noNaN: true }), { minLength: 3, maxLength: 30 });

  it('keeps shape and tests when the unit of age changes', () => {
    fc.assert(
      fc.property(ages, fc.double({ min: 0.01, max: 100, noNaN: true }), (eventAges, factor) => {
        const system: SingleSystem = { eventAges, end: 100, termination: 'time' };
        const scaled: SingleSystem = {
          eventAges: eventAges.map((age) => age * factor),
          end: 100 * factor,
          termination: 'time',
        };
        near(fitOf(scaled).shape, fitOf(system).shape, 1e-9);
        near(fitOf(scaled).meanTimeAtEnd, factor * fitOf(system).meanTimeAtEnd, 1e-9);
        const [one, other] = [system, scaled].map(
          (each) => only(laplaceTrendTest([each]), 'tested').statistic,
        );
        expect(other).toBeCloseTo(one!, 8);
        const slopes = [
          oneSystem(eventAges, 100),
          oneSystem(
            eventAges.map((age) => age * factor),
            100 * factor,
          ),
        ].map((sample) => only(logLinearProcess(sample), 'estimated').slope);
        expect(slopes[1]! * factor).toBeCloseTo(slopes[0]!, 8);
      }),
      options,
    );
  });

  it('gives for systems observed alike what one system with all their events gives, and agrees with fine grouping', () => {
    fc.assert(
      fc.property(ages, ages, (first, second) => {
        const single = fitOf({ eventAges: [...first, ...second], end: 100, termination: 'time' });
        const pooled = only(
          pooledPowerLawProcess({
            eventUnits: [...first.map(() => 0), ...second.map(() => 1)],
            eventAges: [...first, ...second],
            spanUnits: [0, 1],
            spanEnds: [100, 100],
          }),
          'estimated',
        );
        near(pooled.shape, single.shape, 1e-7);
        near(pooled.rate, single.rate / 2, 1e-6);
        // Ends of 4 000 narrow intervals stand for the exact ages.
        const width = 0.025;
        const cells = first.map((age) => Math.floor(age / width));
        const counts = Array.from({ length: 4_000 }, () => 0);
        cells.forEach((cell) => (counts[cell]! += 1));
        const starts = counts.map((_, i) => i * width);
        const grouped = only(
          groupedPowerLawProcess({ starts, ends: starts.map((s) => s + width), counts }),
          'estimated',
        );
        near(grouped.shape, fitOf({ eventAges: first, end: 100, termination: 'time' }).shape, 0.02);
      }),
      { ...options, numRuns: 8 },
    );
  });

  it('turns its tests around when the age axis is turned around', () => {
    fc.assert(
      fc.property(ages, (eventAges) => {
        const forward = only(laplaceTrendTest([{ eventAges, end: 100, termination: 'time' }]), 'tested');
        const mirrored = eventAges.map((age) => 100 - age);
        const backward = only(
          laplaceTrendTest([{ eventAges: mirrored, end: 100, termination: 'time' }]),
          'tested',
        );
        expect(backward.statistic).toBeCloseTo(-forward.statistic, 9);
        expect(backward.pValue).toBeCloseTo(forward.pValue, 9);
        const slope = only(logLinearProcess(oneSystem(eventAges, 100)), 'estimated').slope;
        expect(only(logLinearProcess(oneSystem(mirrored, 100)), 'estimated').slope).toBeCloseTo(-slope, 9);
      }),
      options,
    );
  });
});
