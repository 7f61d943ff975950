import fc from 'fast-check';
import { sleepStudy } from '../../../../test/oracles/statistics-regression/sleep-study.js';
import { ordinaryLeastSquares } from '../regression/ordinary-least-squares.js';
import type { Point } from '../regression/point.js';
import { randomEffectsLine, type RandomEffectsLine } from './random-effects-line.js';
import { recentreLine } from './recentre-line.js';
import type { LineCovariance, UncertainLine } from './uncertain-line.js';

function fitted(units: readonly (readonly Point[])[]): RandomEffectsLine {
  const outcome = randomEffectsLine(units);
  if (outcome.kind !== 'estimated') throw new Error(`expected a fit, got ${outcome.kind}`);
  return outcome;
}
const relative = (actual: number, expected: number): number => Math.abs(actual / expected - 1);
const atZero = (line: UncertainLine): UncertainLine => recentreLine(line, 0);
const betweenAtZero = (fit: RandomEffectsLine): LineCovariance =>
  atZero({ ...fit.mean, covariance: fit.between }).covariance;

function expectCovariance(actual: LineCovariance, level: number, cross: number, slope: number): void {
  expect(relative(actual.level, level)).toBeLessThan(1e-6);
  expect(relative(actual.cross, cross)).toBeLessThan(1e-6);
  expect(relative(actual.slope, slope)).toBeLessThan(1e-6);
}

const subjects = sleepStudy.map(([, times]) => times.map((time, day): Point => [day, time]));

describe('randomEffectsLine', () => {
  describe('on the sleep study of Belenky et al. (2003)', () => {
    const fit = fitted(subjects);

    it('gives what lme4 prints', () => {
      // lmer(Reaction ~ Days + (Days | Subject), sleepstudy): REML criterion 1743.6; variances 612.1, 35.07, residual
      // 654.94, correlation 0.07; 251.405 (6.825), 10.467 (1.546), their correlation −0.138 (lme4 documentation).
      expect(fit.remlCriterion.toFixed(1)).toBe('1743.6');
      expect(fit.residualVariance.toFixed(2)).toBe('654.94');
      const between = betweenAtZero(fit);
      expect(between.level.toFixed(1)).toBe('612.1');
      expect(between.slope.toFixed(2)).toBe('35.07');
      expect((between.cross / Math.sqrt(between.level * between.slope)).toFixed(2)).toBe('0.07');
      const mean = atZero(fit.mean);
      expect(mean.level.toFixed(3)).toBe('251.405');
      expect(Math.sqrt(mean.covariance.level).toFixed(3)).toBe('6.825');
      expect(mean.slope.toFixed(3)).toBe('10.467');
      expect(Math.sqrt(mean.covariance.slope).toFixed(3)).toBe('1.546');
      const { level, cross, slope } = mean.covariance;
      expect((cross / Math.sqrt(level * slope)).toFixed(3)).toBe('-0.138');
    });

    it('agrees with dense matrices and a general optimiser (random-effects-line.py)', () => {
      expect(Math.abs(fit.remlCriterion - 1743.6282719584904)).toBeLessThan(1e-6);
      expect(relative(fit.residualVariance, 654.9410212426928)).toBeLessThan(1e-6);
      expectCovariance(betweenAtZero(fit), 612.0899804146391, 9.604339453536555, 35.071661309499454);
      const mean = atZero(fit.mean);
      expect(relative(mean.level, 251.40510484848488)).toBeLessThan(1e-9);
      expect(relative(mean.slope, 10.46728595959597)).toBeLessThan(1e-9);
      expectCovariance(mean.covariance, 46.57457406708719, -1.4510953472561285, 2.389463353048079);
    });

    it('draws each subject towards the mean as Henderson’s equations do', () => {
      const first = recentreLine(fit.unitLines[0]!, 0);
      expect(relative(first.level, 253.66367060085963)).toBeLessThan(1e-6);
      expect(relative(first.slope, 19.666257825773673)).toBeLessThan(1e-6);
      expectCovariance(first.covariance, 150.1799508786094, -22.237739287018776, 5.458185051286619);
      const conditional = atZero({
        ...fit.unitLines[0]!,
        covariance: fit.unitLines[0]!.conditionalCovariance,
      });
      expectCovariance(conditional.covariance, 145.70510370717875, -21.444426556599478, 5.312273639870186);
      const second = recentreLine(fit.unitLines[1]!, 0);
      expect(relative(second.level, 211.00652397745193)).toBeLessThan(1e-6);
      expect(relative(second.slope, 1.847583356972768)).toBeLessThan(1e-6);
    });
  });

  it('takes units with few observations, down to a single one (random-effects-line.py, thinned)', () => {
    const fit = fitted(subjects.map((points, i) => points.slice(0, (i % 5) + 1)));
    expect(Math.abs(fit.remlCriterion - 468.12911129141196)).toBeLessThan(1e-6);
    expect(relative(fit.residualVariance, 293.196620195876)).toBeLessThan(1e-6);
    expectCovariance(betweenAtZero(fit), 712.6614840278623, -81.46229169002645, 119.39615402408302);
    expectCovariance(atZero(fit.mean).covariance, 52.47327036777009, -10.961961190154788, 16.556080532987814);
    const single = recentreLine(fit.unitLines[0]!, 0);
    expect(relative(single.level, 251.35244767674303)).toBeLessThan(1e-6);
    expect(relative(single.slope, 10.646437492329982)).toBeLessThan(1e-6);
    expectCovariance(single.covariance, 212.19145357801978, -25.701917061700506, 127.92338060537503);
    const five = recentreLine(fit.unitLines[14]!, 0);
    expect(relative(five.slope, 9.739671262577527)).toBeLessThan(1e-6);
    expectCovariance(five.covariance, 136.7230604650648, -43.501636205047056, 22.91435012308343);
  });

  it('finds no spread of slopes where all slopes are the same, worked by hand', () => {
    // Levels 0 6 −3 12 9 −6 at the centre, slope 2 for all, residuals 1 −1 −1 1 at x 0 1 2 3: they have neither mean nor
    // slope. Within the units 6 · 4 = 24 with 24 − 6 − 1 = 17 degrees of freedom; the levels have variance 50.4, which is
    // the spread plus a quarter of the residual variance (balanced data: REML is the analysis of variance).
    const levels = [0, 6, -3, 12, 9, -6];
    const residuals = [1, -1, -1, 1];
    const fit = fitted(levels.map((level) => residuals.map((e, x): Point => [x, level + 2 * (x - 1.5) + e])));
    expect(fit.betweenVariation).toBe('oneDirection');
    expect(fit.mean.centre).toBe(1.5);
    expect(relative(fit.residualVariance, 24 / 17)).toBeLessThan(1e-6);
    expect(relative(fit.between.level, 50.4 - 24 / 17 / 4)).toBeLessThan(1e-6);
    expect(fit.between.slope).toBeLessThan(1e-9);
    expect(relative(fit.mean.slope, 2)).toBeLessThan(1e-9);
    // The mean slope rests on all 24 points: Sxx = 6 · 5.
    expect(relative(fit.mean.covariance.slope, 24 / 17 / 30)).toBeLessThan(1e-6);
  });

  it('is the ordinary line where units do not differ at all', () => {
    const same: Point[] = [
      [0, 1],
      [1, 4],
      [2, 3],
      [3, 8],
    ];
    const fit = fitted([same, same, same]);
    const plain = ordinaryLeastSquares([same, same, same].flat());
    if (plain.kind !== 'estimated') throw new Error(plain.kind);
    expect(fit.betweenVariation).toBe('none');
    expect(fit.between).toEqual({ level: 0, cross: 0, slope: 0 });
    expect(relative(fit.mean.slope, plain.slope)).toBeLessThan(1e-12);
    expect(relative(fit.residualVariance, plain.residualVariance)).toBeLessThan(1e-12);
    expect(relative(fit.mean.covariance.slope, plain.slopeVariance)).toBeLessThan(1e-12);
    for (const line of fit.unitLines) expect(relative(line.slope, plain.slope)).toBeLessThan(1e-12);
  });

  it('names what is missing', () => {
    const two: Point[] = [
      [0, 1],
      [1, 3],
    ];
    expect(randomEffectsLine([two, two, [[0, 4]], []])).toEqual({
      kind: 'insufficientData',
      of: 'unitsWithTwoDistinctX',
      needed: 3,
      got: 2,
    });
    expect(randomEffectsLine([two, two, two])).toMatchObject({ of: 'residualDegreesOfFreedom', got: 0 });
    const exact: Point[] = [
      [0, 1],
      [1, 3],
      [2, 5],
    ];
    expect(randomEffectsLine([exact, exact, two])).toEqual({ kind: 'noResidualScatter' });
    expect(randomEffectsLine([exact, exact, exact].map((unit) => unit.map(([x]): Point => [x, 7])))).toEqual({
      kind: 'noResidualScatter',
    });
    expect(() => randomEffectsLine([[[0, NaN]]])).toThrow(RangeError);
  });

  describe('for any units', () => {
    const residual = fc.integer({ min: -9, max: 9 });
    const someUnits = fc.array(
      fc.tuple(
        fc.integer({ min: -30, max: 30 }),
        fc.integer({ min: -5, max: 5 }),
        fc.array(residual, { minLength: 3, maxLength: 6 }),
      ),
      { minLength: 4, maxLength: 8 },
    );
    const build = (rows: [number, number, number[]][]): Point[][] =>
      rows.map(([level, slope, errors]) => errors.map((e, x): Point => [x, level + slope * x + e]));
    const settings = { seed: 41, numRuns: 40 };

    it('follows shift and scale of x and y, and the order of the units', () => {
      const kinds = new Map<string, number>();
      fc.assert(
        fc.property(someUnits, (rows) => {
          const units = build(rows);
          const plain = randomEffectsLine(units);
          const changed = randomEffectsLine(
            units.toReversed().map((points) => points.map(([x, y]): Point => [200 * x + 7000, -3 * y + 40])),
          );
          kinds.set(plain.kind, (kinds.get(plain.kind) ?? 0) + 1);
          expect(changed.kind).toBe(plain.kind);
          if (plain.kind !== 'estimated' || changed.kind !== 'estimated') return;
          expect(changed.betweenVariation).toBe(plain.betweenVariation);
          expect(changed.residualVariance).toBeCloseTo(9 * plain.residualVariance, 4);
          expect(changed.mean.slope * 200).toBeCloseTo(-3 * plain.mean.slope, 5);
          expect(changed.mean.level).toBeCloseTo(-3 * plain.mean.level + 40, 4);
          changed.unitLines
            .toReversed()
            .forEach((line, i) => expect(line.slope * 200).toBeCloseTo(-3 * plain.unitLines[i]!.slope, 3));
        }),
        settings,
      );
      expect(kinds.get('estimated')).toBeGreaterThan(30);
      expect(kinds.get('notConverged') ?? 0).toBe(0);
    });

    it('leaves a unit less in doubt than the population does', () => {
      fc.assert(
        fc.property(someUnits, (rows) => {
          const fit = randomEffectsLine(build(rows));
          if (fit.kind !== 'estimated') return;
          for (const line of fit.unitLines) {
            expect(line.conditionalCovariance.level).toBeLessThanOrEqual(fit.between.level + 1e-9);
            expect(line.conditionalCovariance.slope).toBeLessThanOrEqual(fit.between.slope + 1e-9);
            expect(line.covariance.level).toBeGreaterThanOrEqual(line.conditionalCovariance.level - 1e-9);
            expect(line.covariance.slope).toBeGreaterThanOrEqual(line.conditionalCovariance.slope - 1e-9);
          }
        }),
        settings,
      );
    });
  });

  it('finds again what a simulation put in', () => {
    // 300 units of four points; level sd 5, slope sd 0.8, correlation 0.5, residual sd 1. Standard errors of the estimates
    // are about 1/√600 = 4 % of each standard deviation; four of them are allowed.
    let state = 3;
    const next = (): number => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return (state + 0.5) / 4294967296;
    };
    const normal = (): number => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());
    const units = Array.from({ length: 300 }, () => {
      const first = normal();
      const level = 20 + 5 * first;
      const slope = 3 + 0.8 * (0.5 * first + Math.sqrt(0.75) * normal());
      return [0, 1, 3, 4].map((x): Point => [x, level + slope * (x - 2) + normal()]);
    });
    const fit = fitted(units);
    expect(Math.abs(Math.sqrt(fit.between.level) / 5 - 1)).toBeLessThan(0.17);
    expect(Math.abs(Math.sqrt(fit.between.slope) / 0.8 - 1)).toBeLessThan(0.17);
    expect(Math.abs(Math.sqrt(fit.residualVariance) - 1)).toBeLessThan(0.12);
    expect(Math.abs(fit.mean.slope - 3)).toBeLessThan(4 * Math.sqrt(fit.mean.covariance.slope));
    expect(Math.abs(fit.between.cross / Math.sqrt(fit.between.level * fit.between.slope) - 0.5)).toBeLessThan(
      0.2,
    );
  });
});
