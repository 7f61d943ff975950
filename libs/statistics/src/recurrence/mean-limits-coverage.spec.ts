import { seededUniform } from '../../../../test/oracles/statistics-survival/seeded-uniform.js';
import { binomialQuantile } from '../distributions/binomial.js';
import { meanAtAge } from './curve-at-age.js';
import { meanCumulativeFunction } from './mean-cumulative-function.js';

// 400 samples of 120 units. Each unit has events at a constant rate of its own, 0.01 or 0.05 with equal chance (so the
// counts vary far more than Poisson counts), from a start of up to 20 to an end between 60 and 140. The mean by 50,
// counted from 0, is 50 · 0.03 = 1.5. Were the coverage exactly 95 %, the number of samples that cover would leave the
// bounds below with a chance of at most 1 in 1000 (exact binomial, half on each side): 364 to 393 of 400. Seed 7.
const REPLICATES = 400;
const LEVEL = 0.95;
const least = binomialQuantile(0.0005, REPLICATES, LEVEL);
const most = binomialQuantile(0.9995, REPLICATES, LEVEL);

it('covers the true mean as often as the level says when units differ and start late', () => {
  const uniform = seededUniform(7);
  let covered = 0;
  let coveredByPoisson = 0;
  for (let replicate = 0; replicate < REPLICATES; replicate += 1) {
    const eventUnits: number[] = [];
    const eventAges: number[] = [];
    const spanUnits: number[] = [];
    const spanStarts: number[] = [];
    const spanEnds: number[] = [];
    for (let unit = 0; unit < 120; unit += 1) {
      const rate = uniform() < 0.5 ? 0.01 : 0.05;
      const start = unit < 40 ? 0 : 20 * uniform();
      const end = 60 + 80 * uniform();
      spanUnits.push(unit);
      spanStarts.push(start);
      spanEnds.push(end);
      for (let age = start - Math.log(uniform()) / rate; age <= end; age -= Math.log(uniform()) / rate) {
        eventUnits.push(unit);
        eventAges.push(age);
      }
    }
    const curve = meanCumulativeFunction(
      { eventUnits, eventAges, spanUnits, spanStarts, spanEnds },
      { level: LEVEL },
    );
    if (curve.kind !== 'estimated') throw new Error(curve.kind);
    const at = meanAtAge(curve, 50);
    if (at.kind !== 'estimated') throw new Error(at.kind);
    if (at.lower! <= 1.5 && 1.5 <= at.upper!) covered += 1;
    // For contrast: the standard error that takes every event as independent.
    const naive = Math.sqrt(
      curve.ages.reduce((sum, age, i) => sum + (age <= 50 ? curve.events[i]! / curve.atRisk[i]! ** 2 : 0), 0),
    );
    if (Math.abs(at.mean - 1.5) <= 1.959963984540054 * naive) coveredByPoisson += 1;
  }
  expect(covered).toBeGreaterThanOrEqual(least);
  expect(covered).toBeLessThanOrEqual(most);
  expect([least, most]).toEqual([364, 393]);
  expect(coveredByPoisson).toBeLessThan(least);
});
