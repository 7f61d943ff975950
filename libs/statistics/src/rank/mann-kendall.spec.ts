import fc from 'fast-check';
import type { Point } from '../regression/point.js';
import { concordance } from './concordance.js';
import { mannKendall, type MannKendallTest } from './mann-kendall.js';

function tested(points: readonly Point[]): MannKendallTest {
  const outcome = mannKendall(points);
  if (outcome.kind !== 'estimated') throw new Error(`expected a test, got ${outcome.kind}`);
  return outcome;
}
const inTime = (values: readonly number[]): Point[] => values.map((y, i) => [i, y]);

function permutations(values: readonly number[]): number[][] {
  if (values.length === 0) return [[]];
  return values.flatMap((value, i) => permutations(values.toSpliced(i, 1)).map((rest) => [value, ...rest]));
}

const naiveScore = (points: readonly Point[]): number =>
  points.reduce(
    (sum, [xi, yi], i) =>
      sum + points.slice(i + 1).reduce((s, [xj, yj]) => s + Math.sign((xj - xi) * (yj - yi)), 0),
    0,
  );

describe('mannKendall', () => {
  it('gives the published exact p-value of four values', () => {
    // Gilbert (1987), 16.4.1 and table A18: 10 15 14 20, S = 4, one-sided p 0.167. Four of the 24 orders of four
    // different values have S >= 4: the sorted one (6) and the three with one neighbour pair swapped (4).
    const test = tested(inTime([10, 15, 14, 20]));
    expect(test).toMatchObject({ score: 4, method: 'exact', tauA: 4 / 6 });
    expect(test.pUpward).toBeCloseTo(4 / 24, 15);
    expect(test.pTwoSided).toBeCloseTo(8 / 24, 15);
    expect(test.pDownward).toBeCloseTo(23 / 24, 15);
  });

  it('gives the exact tail for nine values (generate.R)', () => {
    // A series of 9 with S = 16: sorted has S = 36, every swap of neighbours costs 2, so ten inversions:
    // 4 3 2 1 0 has ten of them, followed by 5 6 7 8.
    const test = tested(inTime([4, 3, 2, 1, 0, 5, 6, 7, 8]));
    expect(test.score).toBe(16);
    expect(Math.abs(test.pUpward / 0.0597194664903 - 1)).toBeLessThan(1e-11);
  });

  it('uses the normal approximation with continuity correction beyond ten values', () => {
    // Eleven rising values: S = 55, Var = 11*10*27/18 = 165, z = 54/sqrt(165) = 4.2039.
    const test = tested(inTime(Array.from({ length: 11 }, (_, i) => i)));
    expect(test).toMatchObject({
      score: 55,
      variance: 165,
      tauA: 1,
      method: 'normalWithContinuityCorrection',
    });
    expect(test.z).toBeCloseTo(54 / Math.sqrt(165), 14);
    // 2 · (1 − Φ(4.20392…)), SciPy 1.17.1 2 * norm.sf(54 / sqrt(165)).
    expect(Math.abs(test.pTwoSided / 2.6236149394587054e-5 - 1)).toBeLessThan(1e-10);
  });

  it('corrects the variance for ties, worked by hand', () => {
    // y 1 2 2 3 3 3: n(n-1)(2n+5) = 510; groups of 2 and 3: 2*1*9 = 18 and 3*2*11 = 66. (510 - 84)/18 = 71/3.
    expect(tested(inTime([1, 2, 2, 3, 3, 3])).variance).toBeCloseTo(71 / 3, 13);
  });

  it('counts every order of tied values for the exact p-value', () => {
    for (const values of [
      [1, 1, 2, 3],
      [1, 2, 2, 2, 3],
      [1, 1, 2, 2, 3],
      [2, 2, 2, 5, 5, 5],
      [0, 1, 1, 2, 3, 3],
    ]) {
      const orders = permutations(values).map((order) => naiveScore(inTime(order)));
      for (const order of [values, values.toReversed()]) {
        const test = tested(inTime(order));
        const share = orders.filter((score) => score >= test.score).length / orders.length;
        expect(test.method).toBe('exact');
        expect(test.pUpward).toBeCloseTo(share, 14);
      }
      // The variance given the ties is the mean square over all orders.
      const meanSquare = orders.reduce((sum, score) => sum + score * score, 0) / orders.length;
      expect(tested(inTime(values)).variance).toBeCloseTo(meanSquare, 11);
    }
  });

  it('corrects for ties in x and y at once', () => {
    const x = [0, 0, 1, 2, 2, 2];
    const y = [1, 2, 2, 2, 3, 4];
    const orders = permutations(y).map((order) => naiveScore(order.map((value, i): Point => [x[i]!, value])));
    const meanSquare = orders.reduce((sum, score) => sum + score * score, 0) / orders.length;
    const test = tested(y.map((value, i): Point => [x[i]!, value]));
    expect(test.variance).toBeCloseTo(meanSquare, 10);
    expect(test.method).toBe('normalWithContinuityCorrection');
  });

  it('names series that cannot be judged', () => {
    expect(mannKendall(inTime([5, 5, 5]))).toEqual({ kind: 'allTied', observations: 3 });
    expect(mannKendall(inTime([5]))).toMatchObject({ kind: 'insufficientData', of: 'points', got: 1 });
    expect(
      mannKendall([
        [1, 2],
        [1, 3],
      ]),
    ).toMatchObject({ of: 'distinctX' });
    expect(() => mannKendall([[0, Infinity]])).toThrow(RangeError);
  });

  describe('for any points', () => {
    const small = fc.integer({ min: 0, max: 9 });
    const series = fc.array(fc.tuple(small, small), { minLength: 2, maxLength: 40 });

    it('counts as a count over all pairs does', () => {
      fc.assert(
        fc.property(series, (points) => {
          expect(concordance(points).score).toBe(naiveScore(points));
        }),
        { seed: 13, numRuns: 300 },
      );
    });

    it('swaps rise and fall when y changes its sign', () => {
      fc.assert(
        fc.property(series, (points) => {
          const plain = mannKendall(points);
          const turned = mannKendall(points.map(([x, y]) => [x, -y]));
          if (plain.kind !== 'estimated' || turned.kind !== 'estimated') {
            expect(turned.kind).toBe(plain.kind);
            return;
          }
          expect(turned.score).toBe(-plain.score + 0);
          expect(turned.pUpward).toBeCloseTo(plain.pDownward, 12);
          expect(turned.pTwoSided).toBeCloseTo(plain.pTwoSided, 12);
        }),
        { seed: 14, numRuns: 200 },
      );
    });

    it('depends on ranks only', () => {
      fc.assert(
        fc.property(series, (points) => {
          expect(mannKendall(points.map(([x, y]) => [x ** 3, Math.exp(y)]))).toEqual(mannKendall(points));
        }),
        { seed: 15, numRuns: 200 },
      );
    });
  });
});
