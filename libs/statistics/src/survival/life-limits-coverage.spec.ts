import { seededUniform } from '../../../../test/oracles/statistics-survival/seeded-uniform.js';
import { binomialQuantile } from '../distributions/binomial.js';
import { weibullQuantile } from '../distributions/weibull.js';
import { fitLifeDistribution } from './fit-life-distribution.js';
import { lifeQuantile } from './life-estimates.js';
import { rightCensoredLives } from './life-sample.js';
import { profileQuantileLimits } from './profile-limits.js';

// 150 samples of 60 units, Weibull lives of scale 100 and shape 2, entered late at up to 30 and censored at up to 160.
// Were the coverage exactly the level, the number of samples that cover would leave the bounds below with a chance
// of at most 1 in 1000 (exact binomial, half on each side): 122 to 146 of 150 for 90 %. Seed 20.
const REPLICATES = 150;
const LEVEL = 0.9;
const least = binomialQuantile(0.0005, REPLICATES, LEVEL);
const most = binomialQuantile(0.9995, REPLICATES, LEVEL);

it('covers the true B10 life as often as the level says, by Wald and by profile limits', () => {
  const uniform = seededUniform(20);
  const truth = weibullQuantile(0.1, 100, 2);
  const covered = { wald: 0, profile: 0 };
  for (let replicate = 0; replicate < REPLICATES; replicate += 1) {
    const rows: { age: number; event: boolean; entry: number }[] = [];
    while (rows.length < 60) {
      const life = weibullQuantile(uniform(), 100, 2);
      const entry = 30 * uniform();
      const end = 40 + 120 * uniform();
      // A life that ends before its entry is never seen.
      if (life > entry) rows.push({ age: Math.min(life, end), event: life <= end, entry });
    }
    const sample = rightCensoredLives({
      ages: rows.map(({ age }) => age),
      events: rows.map(({ event }) => event),
      entryAges: rows.map(({ entry }) => entry),
    });
    const fit = fitLifeDistribution('weibull', sample);
    if (fit.kind !== 'estimated') throw new Error(fit.kind);
    const wald = lifeQuantile(fit, 0.1, LEVEL);
    if (wald.lower <= truth && truth <= wald.upper) covered.wald += 1;
    const { lower, upper } = profileQuantileLimits(sample, fit, 0.1, LEVEL);
    if (lower !== null && upper !== null && lower <= truth && truth <= upper) covered.profile += 1;
  }
  for (const count of [covered.wald, covered.profile]) {
    expect(count).toBeGreaterThanOrEqual(least);
    expect(count).toBeLessThanOrEqual(most);
  }
  expect([least, most]).toEqual([122, 146]);
});
