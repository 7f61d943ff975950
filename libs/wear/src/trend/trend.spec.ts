import { gammaQuantile, normalQuantile } from '@endfloat/statistics';
import fc from 'fast-check';
import { accelerationTest } from './acceleration-test.js';
import type { PartReading } from './as-found-points.js';
import { asFoundPoints } from './as-found-points.js';
import { degradingLasers } from './degrading-lasers.published-case.js';
import { fitFleetWear } from './fit-fleet-wear.js';
import { fleetObjective, toParameters } from './fleet-objective.js';
import { orientedPart } from './level-given-rate.js';
import { averagedOverNormal, probabilityOfReaching } from './probability-of-reaching.js';
import type { WearModel } from './wear-model.js';
import type { WearPoint } from './wear-point.js';
import type { WearQuestion, WearTrend } from './wear-trend.js';
import { wearOutlook, wearTrend } from './wear-trend.js';
import { wearWatchList } from './wear-watch-list.js';

const point = (km: number, value: number, more: Partial<WearPoint> = {}): WearPoint => ({
  km,
  value,
  u: 0.02,
  instrumentId: 'dial-1',
  biasU: 0,
  ...more,
});

function estimated(question: WearQuestion): WearTrend {
  const trend = wearTrend(question);
  if (trend.kind !== 'estimated') throw new Error(trend.kind);
  return trend;
}

/** Rate as good as known: 1e-6 mm per km, start 0.02 +/- 0.01 mm, variance of wear 0.002 mm x its mean. */
const known: WearModel = {
  start: { mean: 0.02, sd: 0.01 },
  logRate: { mean: Math.log(1e-6), sd: 1e-6 },
  scale: 0.002,
  learned: null,
};
const usual: WearModel = { ...known, logRate: { mean: Math.log(1e-6), sd: 0.4 }, scale: 0.004 };

describe('wearTrend under a known rate', () => {
  const trend = estimated({ points: [point(50_000, 0.1)], direction: 'rising', limit: 0.2, model: known });

  it('weighs one reading against what the model expects, as worked by hand', () => {
    // Expected at 50,000 km: 0.02 + 0.05 = 0.07, variance 0.01^2 + 0.002 x 0.05 = 2e-4. The reading has 0.02^2 = 4e-4, so
    // it moves the level a third of the way from 0.07 to 0.10: 0.08, variance 2e-4 x 4e-4 / 6e-4.
    expect(trend.level.value).toBeCloseTo(0.08, 8);
    expect(trend.level.u).toBeCloseTo(Math.sqrt((2e-4 * 4e-4) / 6e-4), 9);
    expect(trend).toMatchObject({ borrowed: 'statedModel', observations: 1, nowKm: 50_000 });
  });

  it('reaches the limit when 0.12 mm at 1e-6 mm per km are worn, a little later in the median for the skewness', () => {
    expect(trend.distanceToLimit.median).toBeGreaterThan(120_000);
    expect(trend.distanceToLimit.median).toBeLessThan(122_000);
    // The middle 90 % of a normal level at 120,000 km more: sd of level + wear = sqrt(1.333e-4 + 2.4e-4) = 0.0193 mm.
    const reach = 1.645 * Math.sqrt((2e-4 * 4e-4) / 6e-4 + 0.002 * 0.12);
    expect(trend.distanceToLimit.lower).toBeGreaterThan((0.12 - 1.1 * reach) / 1e-6);
    expect(trend.distanceToLimit.lower).toBeLessThan((0.12 - 0.8 * reach) / 1e-6);
    expect(trend.distanceToLimit.upper).toBeGreaterThan((0.12 + 0.9 * reach) / 1e-6);
    expect(trend.distanceToLimit.upper).toBeLessThan((0.12 + 1.3 * reach) / 1e-6);
  });

  it('agrees with the gamma distribution of wear where the level is as good as known', () => {
    // Level 0.1 to within 1e-5: 0.1 mm to go. P(wear over d reaches 0.1) with shape d x 1e-6 / 0.02, scale 0.02.
    const uneven = { ...known, start: { mean: 0.1, sd: 1e-5 }, scale: 0.02 };
    const sure = estimated({ points: [point(0, 0.1)], direction: 'rising', limit: 0.2, model: uneven });
    for (const probability of [0.05, 0.25, 0.5, 0.75, 0.95]) {
      // Distance at which the gamma's quantile of 1 - p is 0.1, by halving.
      let [low, high] = [1, 1e6];
      for (let i = 0; i < 60; i += 1) {
        const middle = (low + high) / 2;
        if (gammaQuantile(1 - probability, (middle * 1e-6) / 0.02, 1 / 0.02) < 0.1) low = middle;
        else high = middle;
      }
      expect(probabilityOfReaching(sure, { kind: 'distance', km: low })).toBeCloseTo(probability, 2);
    }
  });

  it('starts from the present distance where the van has gone on since the last reading', () => {
    const later = estimated({
      points: [point(50_000, 0.1)],
      direction: 'rising',
      limit: 0.2,
      model: known,
      nowKm: 70_000,
    });
    expect(later.level.value).toBeCloseTo(0.1, 6);
    expect(later.distanceToLimit.median!).toBeCloseTo(trend.distanceToLimit.median! - 20_000, -3);
  });

  it('says that the limit is reached already where it is', () => {
    const past = estimated({
      points: [point(50_000, 0.4), point(60_000, 0.41)],
      direction: 'rising',
      limit: 0.2,
      model: usual,
    });
    expect(past.reachedNow).toBeGreaterThan(0.99);
    expect(past.distanceToLimit).toMatchObject({ lower: 0, median: 0, upper: 0 });
  });

  it('does not tell distances beyond ten million km', () => {
    const far = estimated({ points: [point(50_000, 0.1)], direction: 'rising', limit: 1000, model: known });
    expect(far.distanceToLimit).toEqual({ lower: 1e7, median: null, upper: null });
    expect(far.extrapolation.beyondData).toBe(true);
  });
});

describe('wearTrend of a part with its own readings', () => {
  const points = [20, 40, 60, 80, 100].map((x) => point(x * 1000, 0.03 + 0.0012 * x, { u: 0.005 }));

  it('finds the line that exact readings lie on, with and without a fleet', () => {
    for (const model of [usual, null]) {
      const trend = estimated({ points, direction: 'rising', limit: 0.2, model });
      expect(trend.rate.mean / 1.2e-6).toBeGreaterThan(0.9);
      expect(trend.rate.mean / 1.2e-6).toBeLessThan(1.1);
      expect(trend.level.value).toBeCloseTo(0.15, 2);
      const { lower, median, upper } = trend.distanceToLimit;
      expect(lower).toBeLessThan(41_667);
      expect(median! / 41_667).toBeGreaterThan(0.9);
      expect(median! / 41_667).toBeLessThan(1.12);
      expect(upper!).toBeGreaterThan(41_667);
      expect(trend.handChecks.leastSquares).toMatchObject({ slope: expect.closeTo(1.2e-6, 12) });
      expect(trend.handChecks.leastSquaresToLimit).toMatchObject({ x: expect.closeTo(41_666.67, 1) });
      expect(trend.handChecks.theilSen).toMatchObject({ slope: expect.closeTo(1.2e-6, 12) });
      // Five rising readings: all ten pairs rise, one order of 120.
      expect(trend.handChecks.mannKendall).toMatchObject({ score: 10, pUpward: expect.closeTo(1 / 120, 9) });
    }
  });

  it('gives a wider answer than the straight line alone, whose interval knows nothing of uneven wear', () => {
    const trend = estimated({ points, direction: 'rising', limit: 0.2, model: usual });
    const line = trend.handChecks.leastSquaresToLimit;
    if (line.kind !== 'estimated') throw new Error(line.kind);
    const { lower, upper } = trend.distanceToLimit;
    expect(upper! - lower).toBeGreaterThan(line.interval.upper - line.interval.lower);
  });

  it('needs three distances without a fleet, and one reading with it', () => {
    const few = points.slice(0, 2);
    expect(wearTrend({ points: few, direction: 'rising', limit: 0.2, model: null })).toEqual({
      kind: 'insufficientData',
      of: 'distances',
      needed: 3,
      got: 2,
    });
    expect(wearTrend({ points: few.slice(0, 1), direction: 'rising', limit: 0.2, model: usual }).kind).toBe(
      'estimated',
    );
    expect(wearTrend({ points: [], direction: 'rising', limit: 0.2, model: usual })).toMatchObject({
      needed: 1,
      got: 0,
    });
  });

  it('draws nothing through points closer together than their doubt', () => {
    const flat = [10, 20, 30].map((x) => point(x * 1000, 0.1 + 0.0005 * x));
    expect(wearTrend({ points: flat, direction: 'rising', limit: 0.2, model: null })).toMatchObject({
      kind: 'riseWithinUncertainty',
      rise: expect.closeTo(0.01, 12),
      // 2 x sqrt(0.02^2 + 0.02^2)
      expandedUncertainty: expect.closeTo(0.0565685, 6),
    });
    expect(wearTrend({ points: flat, direction: 'rising', limit: 0.2, model: usual }).kind).toBe('estimated');
  });

  it('borrows most where the part has told least', () => {
    const steep = (count: number) =>
      estimated({
        points: Array.from({ length: count }, (_, i) => point((i + 1) * 20_000, 0.03 + 0.06 * (i + 1))),
        direction: 'rising',
        limit: 1,
        model: usual,
      }).rate.mean;
    // The fleet has 1e-6, the part 3e-6 mm per km.
    const rates = [1, 2, 4, 6].map(steep);
    expect(rates).toEqual([...rates].sort((a, b) => a - b));
    expect(rates[0]!).toBeLessThan(2e-6);
    expect(rates[3]!).toBeGreaterThan(2.4e-6);
  });

  it('throws on what no reading can be', () => {
    const ask = (more: Partial<WearQuestion>) => () =>
      wearTrend({ points, direction: 'rising', limit: 0.2, model: usual, ...more });
    expect(ask({ points: [point(-1, 0.1)] })).toThrow(RangeError);
    expect(ask({ points: [point(1, Number.NaN)] })).toThrow(RangeError);
    expect(ask({ points: [point(1, 0.1, { u: 0 })] })).toThrow(RangeError);
    expect(ask({ points: [point(1, 0.1, { biasU: -1 })] })).toThrow(RangeError);
    expect(ask({ limit: Infinity })).toThrow(RangeError);
    expect(ask({ nowKm: 99_999 })).toThrow(RangeError);
    expect(ask({ confidence: 1 })).toThrow(RangeError);
    expect(ask({ model: { ...usual, scale: 0 } })).toThrow(RangeError);
    expect(ask({ model: { ...usual, logRate: { mean: -14, sd: 6 } } })).toThrow(RangeError);
  });
});

describe('a change of instrument', () => {
  const before = [10, 20, 30].map((x) => point(x * 1000, 0.05, { u: 0.005, biasU: 0.03 }));
  const after = [40, 50, 60].map((x) =>
    point(x * 1000, 0.11, { u: 0.005, biasU: 0.03, instrumentId: 'dial-2' }),
  );
  const ask = (points: WearPoint[]) => estimated({ points, direction: 'rising', limit: 0.3, model: usual });

  it('does not look like wear: the jump goes to the instruments', () => {
    const changed = ask([...before, ...after]);
    const same = ask([...before, ...after.map((one) => ({ ...one, instrumentId: 'dial-1' }))]);
    expect(changed.rate.mean).toBeLessThan(0.8 * same.rate.mean);
    expect(changed.instruments).toHaveLength(2);
    const [first, second] = [changed.instruments[0]!, changed.instruments[1]!];
    expect(second.bias - first.bias).toBeGreaterThan(0.01);
    expect(first.u).toBeLessThan(0.03);
    expect(same.instruments).toEqual([]);
  });

  it('leaves the bias of a single instrument in the doubt of the level', () => {
    const doubt = (biasU: number) => ask(before.map((one) => ({ ...one, biasU }))).level.u;
    expect(doubt(0.03)).toBeGreaterThan(doubt(0));
  });
});

describe('accelerationTest', () => {
  const curved = (values: number[]) =>
    orientedPart(
      values.map((value, x) => point(x, value, { u: 1 })),
      1,
    );

  it('finds the curvature of 0 1 4 9 16 by hand', () => {
    // What x^2 has beyond 1 and x at 0..4 is 2 -1 -2 -1 2: product with the levels 14, square sum 14, z = sqrt(14).
    const test = accelerationTest(curved([0, 1, 4, 9, 16]), 1e-12, 1e-12);
    expect(test).toMatchObject({ kind: 'tested', z: expect.closeTo(Math.sqrt(14), 6), accelerating: true });
  });

  it('sees no acceleration in a straight line or in one that slows down', () => {
    expect(accelerationTest(curved([0, 1, 2, 3, 4]), 1e-12, 1e-12)).toMatchObject({
      z: expect.closeTo(0, 6),
      accelerating: false,
    });
    expect(accelerationTest(curved([0, 7, 12, 15, 16]), 1e-12, 1e-12)).toMatchObject({ accelerating: false });
  });

  it('is less sure where wear is uneven anyway', () => {
    const z = (scale: number) => {
      const test = accelerationTest(curved([0, 1, 4, 9, 16]), 1, scale);
      return test.kind === 'tested' ? test.z : Number.NaN;
    };
    expect(z(2)).toBeLessThan(z(0.001));
  });

  it('needs four distances', () => {
    expect(accelerationTest(curved([0, 1, 4]), 1, 1)).toMatchObject({
      kind: 'insufficientData',
      needed: 4,
      got: 3,
    });
  });
});

describe('asFoundPoints', () => {
  const reading = (more: Partial<PartReading>): PartReading => ({
    readingId: 'r',
    inspectionId: 'i',
    phase: 'asFound',
    kmSinceFitted: 1000,
    value: 0.1,
    repeatU: 0.02,
    setupU: 0.015,
    instrumentId: 'dial-1',
    biasU: 0.009,
    ...more,
  });

  it('takes the mean of the as-found readings of an inspection; repeats average out, the set-up does not', () => {
    const { points, leftOut } = asFoundPoints([
      reading({ readingId: 'a', value: 0.12 }),
      reading({ readingId: 'b', value: 0.14 }),
      reading({ readingId: 'c', value: 0.16 }),
      reading({ readingId: 'd', value: 0.16 }),
      reading({ readingId: 'later', inspectionId: 'j', kmSinceFitted: 500, value: 0.2 }),
    ]);
    expect(leftOut).toEqual([]);
    expect(points.map(({ km }) => km)).toEqual([500, 1000]);
    expect(points[1]).toMatchObject({ value: expect.closeTo(0.145, 12), biasU: 0.009 });
    // 0.02^2 / 4 + 0.015^2
    expect(points[1]!.u).toBeCloseTo(Math.sqrt(0.0001 + 0.000225), 12);
  });

  it('leaves out, with the reason, what must not enter a trend', () => {
    const { points, leftOut } = asFoundPoints([
      reading({ readingId: 'a', phase: 'asLeft' }),
      reading({ readingId: 'b', kmSinceFitted: null }),
      reading({ readingId: 'c', instrumentId: null }),
      reading({ readingId: 'd', biasU: null }),
      reading({ readingId: 'e', awaitingConfirmation: true }),
      reading({ readingId: 'f', withdrawn: true }),
    ]);
    expect(points).toEqual([]);
    expect(leftOut.map(({ readingId, reason }) => [readingId, reason])).toEqual([
      ['a', 'asLeft'],
      ['b', 'distanceUnknown'],
      ['c', 'instrumentUnknown'],
      ['d', 'uncertaintyUnknown'],
      ['e', 'awaitingConfirmation'],
      ['f', 'withdrawn'],
    ]);
  });

  it('says of a point that one of its readings was taken with an instrument that was overdue', () => {
    const { points } = asFoundPoints([
      reading({ readingId: 'a' }),
      reading({ readingId: 'b', instrumentOverdue: true }),
      reading({ readingId: 'c', inspectionId: 'j', kmSinceFitted: 2000 }),
    ]);
    expect(points.map(({ instrumentOverdue }) => instrumentOverdue)).toEqual([true, false]);
  });

  it('keeps two instruments of one inspection apart', () => {
    expect(asFoundPoints([reading({}), reading({ instrumentId: 'dial-2' })]).points).toHaveLength(2);
  });
});

describe('the lasers of Meeker and Escobar', () => {
  const histories = degradingLasers.map(({ increases }) => ({
    points: increases.map((value, index) => point(index * 250, value, { u: 0.05 })),
  }));

  it('have the published pseudo failure times by the straight line, the hand check', () => {
    for (const [index, { pseudoFailureHours }] of degradingLasers.entries()) {
      const { points } = histories[index]!;
      const { handChecks, nowKm } = estimated({ points, direction: 'rising', limit: 10, model: null });
      if (handChecks.leastSquaresToLimit.kind !== 'estimated') throw new Error('no line');
      expect(Math.abs(handChecks.leastSquaresToLimit.x + nowKm - pseudoFailureHours)).toBeLessThan(0.5);
    }
  });

  it('are given nearly the same medians by the model, and its 90 % intervals hold eleven of twelve published times', () => {
    // Every second reading: nine a laser.
    const everySecond = histories.map(({ points }) => ({
      points: points.filter((_, index) => index % 2 === 0),
    }));
    const fit = fitFleetWear(everySecond, 'rising');
    if (fit.kind !== 'estimated') throw new Error(fit.kind);
    expect(fit).toMatchObject({ points: 135, model: { learned: expect.objectContaining({ parts: 15 }) } });
    let [held, asked] = [0, 0];
    for (const [index, { pseudoFailureHours }] of degradingLasers.entries()) {
      const { points } = histories[index]!;
      const trend = estimated({ points, direction: 'rising', limit: 10, model: fit.model });
      if (pseudoFailureHours <= trend.nowKm) continue;
      expect(Math.abs((trend.nowKm + trend.distanceToLimit.median!) / pseudoFailureHours - 1)).toBeLessThan(
        0.1,
      );
      asked += 1;
      if (holds(trend, pseudoFailureHours - trend.nowKm)) held += 1;
    }
    expect(asked).toBe(12);
    expect(held).toBeGreaterThanOrEqual(11);
  });
});

/** Seeded numbers between 0 and 1 (mulberry32). */
function seededNumbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return (((mixed ^ (mixed >>> 14)) >>> 0) + 0.5) / 2 ** 32;
  };
}

/** A truth the model does not contain exactly: gamma wear, lognormal rates, normal starts. */
function simulatedPart(next: () => number, readings: number, truth = { scale: 0.004, u: 0.02 }) {
  const normal = () => normalQuantile(next());
  // Marsaglia & Tsang (2000), ACM TOMS 26:363-372.
  const gamma = (shape: number): number => {
    if (shape < 1) return gamma(shape + 1) * next() ** (1 / shape);
    const d = shape - 1 / 3;
    for (;;) {
      const x = normal();
      const v = (1 + x / Math.sqrt(9 * d)) ** 3;
      if (v > 0 && Math.log(next()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
    }
  };
  const rate = Math.exp(Math.log(1e-6) + 0.4 * normal());
  const worn = (km: number) => gamma((rate * km) / truth.scale) * truth.scale;
  let [level, km] = [0.03 + 0.01 * normal(), 0];
  const points = Array.from({ length: readings }, () => {
    const driven = 8000 + 14_000 * next();
    level += worn(driven);
    km += driven;
    return point(km, level + truth.u * normal(), { u: truth.u });
  });
  let toLimit = 0;
  while (level < 0.2) {
    const step = worn(500);
    toLimit += 500 * Math.min(1, (0.2 - level) / step);
    level += step;
  }
  return { points, toLimit };
}

const holds = ({ distanceToLimit: { lower, upper } }: WearTrend, truth: number): boolean =>
  truth >= lower && (upper === null || truth <= upper);

describe('fitFleetWear', () => {
  it('climbs by a gradient that is the slope of its value', () => {
    const next = seededNumbers(11);
    const parts = Array.from({ length: 6 }, () => orientedPart(simulatedPart(next, 4).points, 1));
    const objective = fleetObjective(parts, 0.01, 0.1);
    const at = toParameters(usual, 0.01);
    const { gradient } = objective(at);
    for (const [i, slope] of gradient.entries()) {
      const moved = (by: number) => objective(at.map((value, j) => (i === j ? value + by : value))).value;
      expect((moved(1e-5) - moved(-1e-5)) / 2e-5).toBeCloseTo(slope, 3);
    }
  });

  it('finds the fleet the readings were made from', () => {
    const next = seededNumbers(12);
    const fit = fitFleetWear(
      Array.from({ length: 80 }, () => simulatedPart(next, 8)),
      'rising',
    );
    if (fit.kind !== 'estimated') throw new Error(fit.kind);
    const { start, logRate } = fit.model;
    // Four standard errors of 80 parts.
    expect(Math.abs(start.mean - 0.03)).toBeLessThan(4 * (0.02 / Math.sqrt(80)));
    expect(Math.abs(logRate.mean - Math.log(1e-6))).toBeLessThan(4 * (0.4 / Math.sqrt(80)));
    expect(Math.abs(Math.log(logRate.sd / 0.4))).toBeLessThan(4 / Math.sqrt(160));
    expect(Math.abs(Math.log(fit.model.scale / 0.004))).toBeLessThan(4 * fit.model.learned!.logScaleDoubt);
  });

  it('lends nothing below five parts with two distances', () => {
    const next = seededNumbers(13);
    const four = Array.from({ length: 4 }, () => simulatedPart(next, 3));
    const single = Array.from({ length: 9 }, () => simulatedPart(next, 1));
    expect(fitFleetWear([...four, ...single], 'rising')).toEqual({
      kind: 'insufficientData',
      of: 'partsWithTwoDistances',
      needed: 5,
      got: 4,
    });
  });

  it('lends nothing where the readings do not tell wear from none', () => {
    // Every part read twice, one half a little up, the other half a little down, all within the doubt of 0.02 mm.
    const level = (index: number) => (index % 2 === 0 ? 0.01 : -0.01);
    const still = Array.from({ length: 8 }, (_, index) => ({
      points: [point(10_000, 0.05), point(30_000, 0.05 + level(index))],
    }));
    expect(fitFleetWear(still, 'rising')).toEqual({ kind: 'wearWithinUncertainty', parts: 8, points: 16 });
  });

  it('answers any readings with a kind, and any estimate with finite trends', () => {
    const reading = fc.tuple(
      fc.integer({ min: 0, max: 200_000 }),
      fc.double({ min: -0.5, max: 1.5, noNaN: true }),
    );
    const history = fc
      .array(reading, { minLength: 1, maxLength: 4 })
      .map((pairs) => ({ points: pairs.map(([km, value]) => point(km, value)) }));
    fc.assert(
      fc.property(fc.array(history, { minLength: 5, maxLength: 8 }), (histories) => {
        const fit = fitFleetWear(histories, 'rising');
        if (fit.kind !== 'estimated') return;
        for (const { points } of histories) {
          const trend = estimated({ points, direction: 'rising', limit: 2, model: fit.model });
          const { lower, median, upper } = trend.distanceToLimit;
          const numbers = [trend.level.value, trend.level.u, trend.rate.mean, trend.reachedNow, lower];
          expect(numbers.every(Number.isFinite)).toBe(true);
          expect(lower).toBeLessThanOrEqual(median ?? Infinity);
          expect(median ?? -Infinity).toBeLessThanOrEqual(upper ?? Infinity);
        }
      }),
      { seed: 20260812, numRuns: 40 },
    );
  }, 60_000);

  it('is the same fleet when every level is turned round, or counted in micrometres', () => {
    const next = seededNumbers(14);
    const histories = Array.from({ length: 8 }, () => simulatedPart(next, 4));
    const scaled = (factor: number, direction: 'rising' | 'falling') => {
      const fit = fitFleetWear(
        histories.map(({ points }) => ({
          points: points.map((one) => ({ ...one, value: factor * one.value, u: Math.abs(factor) * one.u })),
        })),
        direction,
      );
      if (fit.kind !== 'estimated') throw new Error(fit.kind);
      return fit.model;
    };
    const plain = scaled(1, 'rising');
    expect(scaled(-1, 'falling')).toEqual(plain);
    const micrometres = scaled(1000, 'rising');
    expect(micrometres.start.mean / 1000).toBeCloseTo(plain.start.mean, 6);
    expect(micrometres.scale / 1000 / plain.scale).toBeCloseTo(1, 4);
    expect(micrometres.logRate.sd).toBeCloseTo(plain.logRate.sd, 5);
  });
});

describe('coverage by simulation', () => {
  it('holds the true distance to the limit in 88 to 92 of 100 intervals of 90 % in fleets of 25', () => {
    const next = seededNumbers(20260808);
    let [held, asked] = [0, 0];
    for (let fleet = 0; fleet < 30; fleet += 1) {
      const parts = Array.from({ length: 25 }, () => simulatedPart(next, 4 + Math.floor(5 * next())));
      const fit = fitFleetWear(parts, 'rising');
      if (fit.kind !== 'estimated') throw new Error(fit.kind);
      for (const { points, toLimit } of parts) {
        const trend = estimated({ points, direction: 'rising', limit: 0.2, model: fit.model });
        asked += 1;
        if (holds(trend, toLimit)) held += 1;
      }
    }
    expect(held / asked).toBeGreaterThan(0.88);
    expect(held / asked).toBeLessThan(0.92);
  }, 120_000);

  it('holds it a little less often in fleets of eight with two to five readings: 82 to 94 of 100', () => {
    const next = seededNumbers(20260811);
    let [held, asked] = [0, 0];
    for (let fleet = 0; fleet < 50; fleet += 1) {
      const parts = Array.from({ length: 8 }, () => simulatedPart(next, 2 + Math.floor(4 * next())));
      const fit = fitFleetWear(parts, 'rising');
      if (fit.kind !== 'estimated') throw new Error(fit.kind);
      for (const { points, toLimit } of parts) {
        asked += 1;
        if (holds(estimated({ points, direction: 'rising', limit: 0.2, model: fit.model }), toLimit))
          held += 1;
      }
    }
    expect(held / asked).toBeGreaterThan(0.82);
    expect(held / asked).toBeLessThan(0.94);
  }, 60_000);

  it('holds it less certainly for a part alone: eight readings stay within 86 to 96 of 100', () => {
    const next = seededNumbers(20260809);
    let [held, asked] = [0, 0];
    for (let part = 0; part < 500; part += 1) {
      const { points, toLimit } = simulatedPart(next, 8);
      const trend = wearTrend({ points, direction: 'rising', limit: 0.2, model: null });
      if (trend.kind !== 'estimated') continue;
      asked += 1;
      if (holds(trend, toLimit)) held += 1;
    }
    expect(asked).toBeGreaterThan(400);
    expect(held / asked).toBeGreaterThan(0.86);
    expect(held / asked).toBeLessThan(0.96);
  }, 60_000);
});

describe('probabilityOfReaching and wearWatchList', () => {
  const next = seededNumbers(15);
  const parts = Array.from({ length: 12 }, (_, index) => ({
    partId: `part-${String(index).padStart(2, '0')}`,
    points: simulatedPart(next, 1 + (index % 5)).points,
    direction: 'rising' as const,
    limit: 0.15,
    untilNextVisit: { kind: 'distance' as const, km: 20_000 },
  }));

  it('rises with the distance and falls with the limit', () => {
    fc.assert(
      fc.property(
        fc.nat(11),
        fc.integer({ min: 0, max: 300_000 }),
        fc.integer({ min: 0, max: 300_000 }),
        (index, a, b) => {
          const at = (limit: number) => estimated({ ...parts[index]!, limit, model: usual });
          const reach = (trend: WearTrend, km: number) =>
            probabilityOfReaching(trend, { kind: 'distance', km });
          const trend = at(0.15);
          const [near, far] = [Math.min(a, b), Math.max(a, b)];
          expect(reach(trend, near)).toBeLessThanOrEqual(reach(trend, far) + 1e-12);
          expect(reach(at(0.2), far)).toBeLessThanOrEqual(reach(trend, far) + 1e-12);
        },
      ),
      { seed: 20260810, numRuns: 60 },
    );
  });

  it('gives the quantiles of the interval back', () => {
    const trend = estimated({ ...parts[4]!, model: usual });
    const { lower, median, upper } = trend.distanceToLimit;
    const reach = (km: number) => probabilityOfReaching(trend, { kind: 'distance', km });
    expect(reach(median!)).toBeCloseTo(0.5, 4);
    expect(reach(upper!)).toBeCloseTo(0.95, 4);
    if (lower > 0) expect(reach(lower)).toBeCloseTo(0.05, 4);
  });

  it('turns a date into distances, doubtful ones into an average', () => {
    const trend = estimated({ ...parts[3]!, model: usual });
    const byDate = (kmPerYearU: number, kmPerYear = 40_000) =>
      probabilityOfReaching(trend, { kind: 'days', days: 365.25, kmPerYear, kmPerYearU });
    expect(byDate(0)).toBeCloseTo(probabilityOfReaching(trend, { kind: 'distance', km: 40_000 }), 12);
    expect(byDate(1)).toBeCloseTo(byDate(0), 4);
    expect(byDate(0, 0)).toBeCloseTo(trend.reachedNow, 12);
    expect(() => byDate(-1)).toThrow(RangeError);
    expect(() => probabilityOfReaching(trend, { kind: 'distance', km: Number.NaN })).toThrow(RangeError);
  });

  it('averages over ten nodes with the moments of a normal quantity: 1, 0, 1, 0, 3, ... 17!! = 34459425', () => {
    const moments = Array.from({ length: 19 }, (_, power) => averagedOverNormal(0, 1, (x) => x ** power));
    let even = 1;
    for (const [power, moment] of moments.entries()) {
      if (power % 2 === 1) expect(Math.abs(moment)).toBeLessThan(1e-6 * even);
      else {
        even *= Math.max(1, power - 1);
        expect(moment / even).toBeCloseTo(1, 9);
      }
    }
    expect(averagedOverNormal(12_000, 2400, (x) => x)).toBeCloseTo(12_000, 6);
  });

  it('is told by the outlook with the same median and the same chance, and with the same refusal', () => {
    for (const [index, part] of parts.entries()) {
      const model = index % 2 === 0 ? usual : null;
      const outlook = wearOutlook({ ...part, model });
      const trend = wearTrend({ ...part, model });
      if (outlook.kind !== 'estimated' || trend.kind !== 'estimated') {
        expect(outlook).toEqual(trend);
        continue;
      }
      expect(outlook.median).toBe(trend.distanceToLimit.median);
      expect(probabilityOfReaching(outlook, part.untilNextVisit)).toBe(
        probabilityOfReaching(trend, part.untilNextVisit),
      );
    }
  });

  it('lists the likeliest first and those without an answer last, whatever the order given', () => {
    const list = wearWatchList([...parts, { ...parts[0]!, partId: 'unread', points: [] }], usual);
    expect(list.at(-1)).toEqual({
      kind: 'notEstimated',
      partId: 'unread',
      because: { kind: 'insufficientData', of: 'points', needed: 1, got: 0 },
    });
    const probabilities = list.flatMap((one) => (one.kind === 'estimated' ? [one.probability] : []));
    expect(probabilities).toHaveLength(12);
    expect(probabilities).toEqual([...probabilities].sort((a, b) => b - a));
    expect(wearWatchList([...parts].reverse(), usual).map(({ partId }) => partId)).toEqual(
      wearWatchList(parts, usual).map(({ partId }) => partId),
    );
  });

  it('does not depend on the order of the points, and a falling characteristic mirrors a rising one', () => {
    const { points } = parts[4]!;
    const rising = estimated({ ...parts[4]!, model: usual });
    expect(estimated({ ...parts[4]!, points: [...points].reverse(), model: usual }).distanceToLimit).toEqual(
      rising.distanceToLimit,
    );
    const falling = estimated({
      ...parts[4]!,
      points: points.map((one) => ({ ...one, value: -one.value })),
      direction: 'falling',
      limit: -0.15,
      model: usual,
    });
    expect(falling.distanceToLimit).toEqual(rising.distanceToLimit);
    expect(falling.level.value).toBeCloseTo(-rising.level.value, 12);
  });
});
