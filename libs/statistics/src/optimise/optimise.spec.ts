import fc from 'fast-check';
import { findRoot } from './find-root.js';
import { maximiseByNewton } from './maximise-by-newton.js';
import { minimiseOnInterval } from './minimise-on-interval.js';

const options = { seed: 3, numRuns: 200 };

describe('findRoot', () => {
  it('finds roots known in closed form to the precision of the machine', () => {
    const cases: [(x: number) => number, number, number, number][] = [
      [(x) => x * x - 2, 0, 2, Math.SQRT2],
      [(x) => Math.exp(x) - 5, -10, 10, Math.log(5)],
      [(x) => Math.cos(x) - x, 0, 1, 0.7390851332151607],
      [(x) => (x - 1) ** 9, -1, 4, 1],
      [(x) => (x < 3 ? -Infinity : x - 3.5), 0, 10, 3.5],
    ];
    for (const [f, lower, upper, root] of cases) {
      const outcome = findRoot(f, lower, upper);
      expect(outcome.kind).toBe('found');
      if (outcome.kind === 'found')
        expect(Math.abs(outcome.root - root)).toBeLessThan(root === 1 ? 1e-5 : 1e-15 * 4);
    }
  });

  it('takes an end that is a root, and reports ends of one sign', () => {
    expect(findRoot((x) => x - 2, 2, 5)).toMatchObject({ kind: 'found', root: 2 });
    expect(findRoot((x) => x - 5, 2, 5)).toMatchObject({ kind: 'found', root: 5 });
    expect(findRoot((x) => x, 2, 5)).toEqual({ kind: 'noSignChange', atLower: 2, atUpper: 5 });
    expect(() => findRoot(() => NaN, 0, 1)).toThrow(RangeError);
    expect(() => findRoot((x) => x, 0, Infinity)).toThrow(RangeError);
    expect(findRoot((x) => x ** 3 - 2, 0, 10, { maxIterations: 2 }).kind).toBe('notConverged');
  });

  it('finds the root of any increasing cubic', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -100, max: 100, noNaN: true }),
        fc.double({ min: 0.01, max: 10, noNaN: true }),
        (root, slope) => {
          const outcome = findRoot((x) => (x - root) ** 3 + slope * (x - root), -200, 300);
          expect(outcome.kind).toBe('found');
          if (outcome.kind === 'found') expect(Math.abs(outcome.root - root)).toBeLessThan(1e-12);
        },
      ),
      options,
    );
  });
});

describe('minimiseOnInterval', () => {
  it('finds a minimum known in closed form', () => {
    // x ln x has its minimum −1/e at 1/e.
    const outcome = minimiseOnInterval((x) => x * Math.log(x), 0.01, 4);
    expect(outcome).toMatchObject({ kind: 'found', atEnd: false });
    if (outcome.kind !== 'found') return;
    expect(outcome.at).toBeCloseTo(Math.exp(-1), 7);
    expect(outcome.value).toBeCloseTo(-Math.exp(-1), 13);
  });

  it('marks a minimum at an end', () => {
    const outcome = minimiseOnInterval((x) => x, 1, 3);
    expect(outcome).toMatchObject({ kind: 'found', atEnd: true });
    if (outcome.kind === 'found') expect(outcome.at).toBeCloseTo(1, 6);
  });

  it('copes with infinite values and refuses NaN', () => {
    const outcome = minimiseOnInterval((x) => (x < 2 ? Infinity : (x - 3) ** 2), 0, 10);
    expect(outcome.kind).toBe('found');
    if (outcome.kind === 'found') expect(outcome.at).toBeCloseTo(3, 6);
    expect(() => minimiseOnInterval(() => NaN, 0, 1)).toThrow(RangeError);
    expect(() => minimiseOnInterval((x) => x, 1, 1)).toThrow(RangeError);
    expect(minimiseOnInterval((x) => x * x, -1, 2, { maxIterations: 2 }).kind).toBe('notConverged');
  });

  it('finds the vertex of any parabola inside the interval', () => {
    fc.assert(
      fc.property(fc.double({ min: -9, max: 9, noNaN: true }), (vertex) => {
        const outcome = minimiseOnInterval((x) => (x - vertex) ** 2, -10, 10);
        expect(outcome.kind).toBe('found');
        if (outcome.kind === 'found') expect(Math.abs(outcome.at - vertex)).toBeLessThan(1e-7);
      }),
      options,
    );
  });
});

describe('maximiseByNewton', () => {
  it('finds the maximum of a normal log-likelihood, whose covariance is known', () => {
    // n values with mean m and mean square deviation v, parameters mean and log standard deviation: maximum at
    // (m, ½ ln v), covariance diag(v / n, 1 / (2n)). Here n = 4, m = 3, v = 5.
    const outcome = maximiseByNewton(
      ([mu = 0, s = 0]) => {
        const precision = Math.exp(-2 * s);
        const square = 5 + (3 - mu) ** 2;
        return {
          value: -4 * s - 2 * square * precision,
          gradient: [4 * (3 - mu) * precision, -4 + 4 * square * precision],
          hessian: [
            [-4 * precision, -8 * (3 - mu) * precision],
            [-8 * (3 - mu) * precision, -8 * square * precision],
          ],
        };
      },
      [-2, 3],
    );
    expect(outcome.kind).toBe('found');
    if (outcome.kind !== 'found') return;
    expect(outcome.at[0]).toBeCloseTo(3, 11);
    expect(outcome.at[1]).toBeCloseTo(0.5 * Math.log(5), 11);
    expect(outcome.inverseCurvature[0]![0]).toBeCloseTo(5 / 4, 10);
    expect(outcome.inverseCurvature[1]![1]).toBeCloseTo(1 / 8, 10);
    expect(outcome.inverseCurvature[0]![1]).toBeCloseTo(0, 10);
  });

  it('climbs out of a region whose curvature has the wrong sign', () => {
    // −x⁴/4 + x²/2 is convex at the start 0.1; its maximum on the right is at 1.
    const outcome = maximiseByNewton(
      ([x = 0]) => ({ value: x ** 2 / 2 - x ** 4 / 4, gradient: [x - x ** 3], hessian: [[1 - 3 * x ** 2]] }),
      [0.1],
    );
    expect(outcome.kind).toBe('found');
    if (outcome.kind === 'found') expect(outcome.at[0]).toBeCloseTo(1, 10);
  });

  it('reports a function that climbs without end', () => {
    const outcome = maximiseByNewton(([x = 0]) => ({ value: x, gradient: [1], hessian: [[0]] }), [0]);
    expect(outcome.kind).toBe('notConverged');
    expect(() => maximiseByNewton(() => ({ value: -Infinity, gradient: [0], hessian: [[-1]] }), [0])).toThrow(
      RangeError,
    );
  });
});
