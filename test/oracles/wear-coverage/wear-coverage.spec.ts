import { binomialQuantile } from '@endfloat/statistics';
import { seededUniform } from '../statistics-survival/seeded-uniform.js';
import {
  aloneCoverage,
  fleetCoverage,
  level,
  lifeCoverage,
  shareCoverage,
  type Coverage,
} from './coverage-cases.js';
import { needsCoverage } from './needs-coverage.js';

/**
 * Bounds on a count that are left with a chance of 1 in 1000 on each side, were the coverage exactly 88 % (below) or
 * exactly 92 % (above): what `run.ts` finds with many more runs lies between. Parts of one fleet share its fit; that
 * widens the spread of the count by a factor of about `spread` (from the clustered standard errors of `run.ts`).
 */
function expectNominal({ held, asked, what }: Coverage, spread = 1, [low, high] = [0.88, 0.92]): void {
  const effective = Math.floor(asked / spread ** 2);
  const least = binomialQuantile(0.001, effective, low) / effective;
  const most = binomialQuantile(0.999, effective, high) / effective;
  const share = held / asked;
  if (share < least || share > most)
    throw new Error(`${what}: ${String(held)} of ${String(asked)} is outside ${String([least, most])}`);
}

// Seeds are fixed, so each test gives the same count in every run. `run.ts` prints the table with standard errors.
describe('intervals of 90 % by simulation', () => {
  it('hold rate and distance to the limit of parts in a fleet of 25 with 4 to 8 readings', () => {
    const [rate, distance] = fleetCoverage(seededUniform(11), 10, { parts: 25, readings: [4, 8] });
    expect([rate!.asked, distance!.asked]).toEqual([250, 250]);
    expectNominal(rate!, 1.5);
    expectNominal(distance!, 1.5);
  });

  it('hold them where the instrument was changed half-way: its bias is a term of its own', () => {
    const [rate, distance] = fleetCoverage(seededUniform(12), 8, {
      parts: 25,
      readings: [4, 8],
      biasU: 0.02,
    });
    expectNominal(rate!, 1.7);
    expectNominal(distance!, 1.5);
  });

  it('hold them for a part alone with eight readings', () => {
    const [rate, distance] = aloneCoverage(seededUniform(13), 500, 8);
    expect(distance!.asked + distance!.unanswered).toBe(500);
    expectNominal(rate!);
    expectNominal(distance!);
  });

  it('hold the pieces that a fleet of 25 needs within 20,000 km in at least nine runs of ten', () => {
    const needs = needsCoverage(seededUniform(16), 40, 25);
    expect([needs.asked, needs.unanswered]).toEqual([40, 0]);
    expectNominal(needs, 1, [0.9, 1]);
  });

  it('hold B10 of Weibull lives of 60 units', () => {
    const [b10] = lifeCoverage(seededUniform(14), 300, 60);
    expect(b10!.asked).toBe(300);
    expectNominal(b10!);
  });

  it('hold a share of 100 jobs', () => {
    const [share] = shareCoverage(seededUniform(15), 2000, 100, [0.05, 0.5]);
    expectNominal(share!);
  });

  it('would not be taken for nominal if they were a fifth too narrow: 1.645 x 0.8 holds 81 %', () => {
    const held = Math.round(0.812 * 2000);
    const narrow = { what: 'narrow', held, above: 0, asked: 2000, unanswered: 0, standardError: 0.01 };
    expect(() => expectNominal(narrow, 1.7)).toThrow('narrow');
    expect(level).toBe(0.9);
  });
});
