import {
  countChart,
  inversePrediction,
  mannKendall,
  ordinaryLeastSquares,
  proportionChart,
  theilSenSlope,
  type ChartSignal,
  type ControlChart,
  type ControlChartOutcome,
  type Point,
} from '@endfloat/statistics';
import { itWithPublished } from '../../support/published-case-folder.js';

// Expected values by generate.R beside this file (R 4.2.2), 12 digits, unless a printed value is named.

const near = (actual: number, expected: number, relative = 1e-9): void => {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));
};

type Row = Readonly<Record<string, string>>;
const pointsOf = (rows: readonly Row[], x: string, y: string): Point[] =>
  rows.map((row) => [Number(row[x]), Number(row[y])]);

function chartOf(outcome: ControlChartOutcome): ControlChart {
  if (outcome.kind !== 'estimated') throw new Error(outcome.kind);
  return outcome;
}
const signalled = (chart: ControlChart, ...wanted: ChartSignal[]): number[] =>
  chart.places.flatMap(({ signals }, i) =>
    signals.some((signal) => wanted.includes(signal)) ? [i + 1] : [],
  );

describe('sulfate against sampling date, USEPA (2009) Unified Guidance EPA 530/R-09-007, example 17-6', () => {
  const file = 'A_04_epa17_6_sulfate.csv';

  itWithPublished(file, 'has the printed Mann–Kendall score and p-value', (rows) => {
    const test = mannKendall(pointsOf(rows, 'Sampling.Date', 'Sulfate.ppm'));
    if (test.kind !== 'estimated') throw new Error(test.kind);
    expect(test).toMatchObject({ observations: 23, score: 194, method: 'normalWithContinuityCorrection' });
    near(test.variance, 1428);
    near(test.z, 5.10732159684);
    near(test.pTwoSided, 3.26757357072e-7, 1e-6);
    near(test.tauA, 0.7667984, 1e-7);
    near(test.tauB, 0.774489668814);
  });

  itWithPublished(file, 'has the printed Theil–Sen slope and limits', (rows) => {
    const points = pointsOf(rows, 'Sampling.Date', 'Sulfate.ppm');
    const slope = theilSenSlope(points);
    if (slope.kind !== 'estimated') throw new Error(slope.kind);
    expect(slope.pairs).toBe(253);
    near(slope.slope, 26.6666666667, 1e-6);
    near(slope.intercept, -1909.33333333, 1e-6);
    near(slope.interval!.lower, 20, 1e-6);
    near(slope.interval!.upper, 35.7118240305, 1e-6);
    const narrower = theilSenSlope(points, 0.9);
    if (narrower.kind !== 'estimated') throw new Error(narrower.kind);
    near(narrower.interval!.lower, 20, 1e-6);
    near(narrower.interval!.upper, 34.3373744759, 1e-6);
  });
});

describe('degradation of lasers, Meeker & Escobar (1998), example 13.10 and table C.17', () => {
  itWithPublished('A_04_gaaslaser.csv', 'has the printed times to 10 % by straight lines', (rows) => {
    const printed = [
      3702, 4194, 5847, 6172, 5301, 3592, 6051, 6538, 5110, 3306, 5326, 4995, 4721, 5689, 6102,
    ];
    const units = [...new Set(rows.map(({ unit }) => unit))];
    const times = units.map((unit) => {
      const own = rows.filter((row) => row['unit'] === unit);
      const fit = ordinaryLeastSquares(pointsOf(own, 'hours', 'increase'));
      if (fit.kind !== 'estimated') throw new Error(fit.kind);
      const reached = inversePrediction(fit, 10);
      if (reached.kind !== 'estimated') throw new Error(reached.kind);
      expect(reached.interval.lower).toBeLessThan(reached.x);
      expect(reached.interval.upper).toBeGreaterThan(reached.x);
      return reached.x;
    });
    expect(times).toHaveLength(15);
    times.forEach((time, i) => expect(Math.abs(time - printed[i]!)).toBeLessThanOrEqual(0.5));
  });
});

describe('NIST/SEMATECH e-Handbook', () => {
  itWithPublished('A_07_nist_counts.csv', 'has the count chart of 6.3.3.1, wafer 3 on the limit', (rows) => {
    const chart = chartOf(countChart(rows.map(({ defects }) => Number(defects))));
    expect(chart.centre).toBe(16);
    expect(chart.places[0]).toMatchObject({ lower: 4, upper: 28 });
    expect(chart.places[2]).toMatchObject({ value: 28, signals: [] });
    expect(signalled(chart, 'aboveUpperLimit', 'belowLowerLimit')).toEqual([24]);
  });

  itWithPublished('A_07_nist_proportions.csv', 'has the proportion chart of 6.3.3.2', (rows) => {
    const samples = rows.map(({ fraction }) => ({
      successes: Math.round(Number(fraction) * 50),
      trials: 50,
    }));
    const chart = chartOf(proportionChart(samples));
    near(chart.centre, 0.231333333333);
    near(chart.places[0]!.upper, 0.410239118595);
    near(chart.places[0]!.lower, 0.0524275480719);
    expect(signalled(chart, 'aboveUpperLimit', 'belowLowerLimit')).toEqual([15, 23]);
  });
});
