import fc from 'fast-check';
import type { ChartSignal, ControlChart, ControlChartOutcome } from './control-chart.js';
import { countChart } from './count-chart.js';
import { eventsBetweenChart } from './events-between-chart.js';
import { proportionChart } from './proportion-chart.js';
import { rateChart } from './rate-chart.js';
import { timeBetweenChart } from './time-between-chart.js';

function drawn(outcome: ControlChartOutcome): ControlChart {
  if (outcome.kind !== 'estimated') throw new Error(outcome.kind);
  return outcome;
}
const placesWith = (chart: ControlChart, signal: ChartSignal): number[] =>
  chart.places.flatMap(({ signals }, i) => (signals.includes(signal) ? [i] : []));

describe('countChart', () => {
  it('does not call a count exactly on the limit out', () => {
    // Centre 16: limits 16 ± 3 · 4 = 4 and 28 (the limits of NIST e-Handbook 6.3.3.1).
    const chart = drawn(countChart([28, 29, 4, 3, 16], { centre: 16 }));
    expect(chart.places[0]).toMatchObject({ lower: 4, upper: 28, signals: [] });
    expect(placesWith(chart, 'aboveUpperLimit')).toEqual([1]);
    expect(placesWith(chart, 'belowLowerLimit')).toEqual([3]);
  });

  it('takes its centre from the baseline', () => {
    const chart = drawn(countChart([3, 5, 4, 40], { baseline: 3 }));
    expect(chart.centre).toBe(4);
    expect(chart.places[3]).toMatchObject({ lower: 0, upper: 10, signals: ['aboveUpperLimit'] });
    expect(drawn(countChart([3, 5, 4, 40])).centre).toBe(13);
  });

  it('signals a run from the place that completes it', () => {
    const chart = drawn(
      countChart([10, 10, 10, 10, 10, 10, 10, 10, 10, 9, 10, 8, 8, 8], { centre: 9, runLength: 3 }),
    );
    expect(placesWith(chart, 'runAboveCentre')).toEqual([2, 3, 4, 5, 6, 7, 8]);
    expect(placesWith(chart, 'runBelowCentre')).toEqual([13]);
    const eight = drawn(
      countChart(
        Array.from({ length: 8 }, () => 10),
        { centre: 9 },
      ),
    );
    expect(placesWith(eight, 'runAboveCentre')).toEqual([7]);
  });

  it('says when no limits can be drawn', () => {
    expect(countChart([])).toEqual({ kind: 'insufficientData', of: 'baselinePlaces', needed: 1, got: 0 });
    expect(countChart([0, 0, 5], { baseline: 2 })).toEqual({ kind: 'noVariation', centre: 0 });
    expect(() => countChart([1.5])).toThrow(RangeError);
    expect(() => countChart([1], { centre: 0 })).toThrow(RangeError);
    expect(() => countChart([1], { baseline: 2 })).toThrow(RangeError);
    expect(() => countChart([1], { runLength: 1 })).toThrow(RangeError);
  });
});

describe('proportionChart', () => {
  it('agrees with limits worked by hand, whatever the rounding', () => {
    // p 0.2, n 100: 0.2 ± 3 · 0.04 = 0.08 and 0.32; 32 of 100 lies on the limit. n 25: 0.2 ± 0.24, cut off at 0.
    const chart = drawn(
      proportionChart(
        [
          { successes: 32, trials: 100 },
          { successes: 33, trials: 100 },
          { successes: 8, trials: 100 },
          { successes: 7, trials: 100 },
          { successes: 0, trials: 25 },
        ],
        { centre: 0.2 },
      ),
    );
    expect(chart.places[0]!.upper).toBeCloseTo(0.32, 14);
    expect(chart.places[4]).toMatchObject({ lower: 0, signals: [] });
    expect(placesWith(chart, 'aboveUpperLimit')).toEqual([1]);
    expect(placesWith(chart, 'belowLowerLimit')).toEqual([3]);
  });

  it('weighs samples by their size', () => {
    const samples = [
      { successes: 1, trials: 10 },
      { successes: 9, trials: 30 },
    ];
    expect(drawn(proportionChart(samples)).centre).toBe(0.25);
  });

  it('says when no limits can be drawn', () => {
    expect(proportionChart([{ successes: 4, trials: 4 }])).toEqual({ kind: 'noVariation', centre: 1 });
    expect(proportionChart([])).toMatchObject({ kind: 'insufficientData' });
    expect(() => proportionChart([{ successes: 0, trials: 0 }])).toThrow(RangeError);
    expect(() => proportionChart([{ successes: 1, trials: 4 }], { centre: 1 })).toThrow(RangeError);
  });
});

describe('rateChart', () => {
  it('agrees with limits worked by hand', () => {
    // 12 events in 4 + 2 = 6 units: rate 2. Exposure 4: 2 ± 3√0.5; exposure 2: 2 ± 3, cut off at 0.
    const chart = drawn(
      rateChart([
        { events: 2, exposure: 4 },
        { events: 10, exposure: 2 },
      ]),
    );
    expect(chart.centre).toBe(2);
    expect(chart.places[0]!.upper).toBeCloseTo(2 + 3 * Math.SQRT1_2, 14);
    // 10 events in 2 units: a rate of 5, exactly on the limit.
    expect(chart.places[1]).toMatchObject({ value: 5, lower: 0, upper: 5, signals: [] });
  });

  it('is the count chart where all exposures are 1', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(30), { minLength: 1, maxLength: 30 }), (counts) => {
        const byRate = rateChart(counts.map((events) => ({ events, exposure: 1 })));
        const byCount = countChart(counts);
        if (byRate.kind === 'estimated' && byCount.kind === 'estimated') {
          expect(byRate.places).toEqual(byCount.places);
        } else expect(byRate).toEqual(byCount);
      }),
      { seed: 22, numRuns: 100 },
    );
  });

  it('does not depend on the unit of exposure', () => {
    const count = fc.record({ events: fc.nat(20), exposure: fc.integer({ min: 1, max: 9 }) });
    fc.assert(
      fc.property(fc.array(count, { minLength: 1, maxLength: 20 }), (counts) => {
        const plain = rateChart(counts);
        const scaled = rateChart(
          counts.map(({ events, exposure }) => ({ events, exposure: 1000 * exposure })),
        );
        if (plain.kind !== 'estimated' || scaled.kind !== 'estimated') {
          expect(scaled).toEqual(plain);
          return;
        }
        expect(scaled.places.map(({ signals }) => signals)).toEqual(
          plain.places.map(({ signals }) => signals),
        );
        expect(scaled.centre * 1000).toBeCloseTo(plain.centre, 10);
      }),
      { seed: 23, numRuns: 100 },
    );
    expect(() => rateChart([{ events: 1, exposure: 0 }])).toThrow(RangeError);
    expect(rateChart([{ events: 0, exposure: 3 }])).toEqual({ kind: 'noVariation', centre: 0 });
  });
});

describe('eventsBetweenChart', () => {
  it('agrees with limits worked by hand', () => {
    // Mean gap 8: 8 + 3√72 = 33.456. Chance 1/9 per case: median ln 2 / ln(9/8) − 1 = 4.885.
    const chart = drawn(eventsBetweenChart([33, 34, 0, 1, 2, 3], { centre: 8, runLength: 4 }));
    expect(chart.places[0]!.upper).toBeCloseTo(8 + 3 * Math.sqrt(72), 13);
    expect(chart.runLine).toBeCloseTo(Math.LN2 / Math.log(9 / 8) - 1, 12);
    expect(placesWith(chart, 'aboveUpperLimit')).toEqual([1]);
    expect(placesWith(chart, 'belowLowerLimit')).toEqual([]);
    expect(placesWith(chart, 'runBelowCentre')).toEqual([5]);
  });

  it('says when no limits can be drawn', () => {
    expect(eventsBetweenChart([0, 0])).toEqual({ kind: 'noVariation', centre: 0 });
    expect(eventsBetweenChart([])).toMatchObject({ kind: 'insufficientData' });
    expect(() => eventsBetweenChart([-1])).toThrow(RangeError);
  });
});

describe('timeBetweenChart', () => {
  it('agrees with limits worked by hand', () => {
    // Chance 0.0013498980316 on each side: limits 100 · 0.00135081 = 0.135081 and 100 · 6.6077 = 660.77.
    const chart = drawn(timeBetweenChart([0.13, 0.14, 660, 661, 69, 70, 0], { centre: 100 }));
    expect(chart.places[0]!.lower).toBeCloseTo(-100 * Math.log(1 - 0.0013498980316300933), 10);
    expect(chart.places[0]!.upper).toBeCloseTo(-100 * Math.log(0.0013498980316300933), 8);
    expect(placesWith(chart, 'belowLowerLimit')).toEqual([0, 6]);
    expect(placesWith(chart, 'aboveUpperLimit')).toEqual([3]);
    expect(chart.runLine).toBeCloseTo(69.31471805599453, 12);
  });

  it('says when no limits can be drawn', () => {
    expect(timeBetweenChart([0])).toEqual({ kind: 'noVariation', centre: 0 });
    expect(() => timeBetweenChart([-1])).toThrow(RangeError);
    expect(() => timeBetweenChart([NaN])).toThrow(RangeError);
  });

  it('scales with the unit of time', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 5000 }), { minLength: 1, maxLength: 30 }), (times) => {
        const plain = drawn(timeBetweenChart(times));
        const hours = drawn(timeBetweenChart(times.map((time) => 24 * time)));
        expect(hours.places.map(({ signals }) => signals)).toEqual(
          plain.places.map(({ signals }) => signals),
        );
        expect(hours.places[0]!.upper / 24).toBeCloseTo(plain.places[0]!.upper, 6);
      }),
      { seed: 24, numRuns: 100 },
    );
  });
});
