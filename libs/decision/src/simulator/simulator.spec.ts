import fc from 'fast-check';
import { clairvoyant, exactTables } from './clairvoyant.js';
import { adjustingCost, valueAt } from './exact-values.js';
import { exactWorld, expectedAfterStep, weightsAfterStep } from './exact-world.js';
import { fixedRule, fixedRules } from './fixed-rules.js';
import { simulatedFleets, simulatedWorld } from './fleet-parameters.js';
import { InformedPolicy } from './informed-policy.js';
import { gammaDraw, keyedDraws } from './keyed-draws.js';
import { playVan } from './play-van.js';
import { simulatedVan } from './simulated-van.js';
import { drawIncrement } from './wear-law.js';

const meanOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const standardError = (values: readonly number[]) => {
  const mean = meanOf(values);
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return Math.sqrt(squares / (values.length - 1) / values.length);
};
const fleet = simulatedFleets[1]!;
const vans = Array.from({ length: 120 }, (_, number) => simulatedVan(fleet, 5, number));

describe('draws of the simulator', () => {
  it('depend on their keys alone, in whatever order they are asked for', () => {
    const first = keyedDraws(1, 2, 3).uniform();
    keyedDraws(1, 9, 9).uniform();
    expect(keyedDraws(1, 2, 3).uniform()).toBe(first);
    expect(keyedDraws(1, 3, 2).uniform()).not.toBe(first);
    expect(keyedDraws(2, 2, 3).uniform()).not.toBe(first);
  });

  it.each([
    [0.3, 0.05],
    [4, 0.02],
  ])('gamma draws of shape %p and scale %p have mean a b and variance a b²', (shape, scale) => {
    const draws = keyedDraws(11, Math.round(shape * 10));
    const values = Array.from({ length: 20_000 }, () => gammaDraw(draws, shape, scale));
    // Four standard errors of the mean; the variance within a tenth.
    expect(Math.abs(meanOf(values) - shape * scale)).toBeLessThan(4 * standardError(values));
    const variance = standardError(values) ** 2 * values.length;
    expect(Math.abs(variance / (shape * scale * scale) - 1)).toBeLessThan(0.1);
  });

  it.each(simulatedFleets)('wear of $id never heals, and stands still without a rate', ({ law }) => {
    fc.assert(
      fc.property(fc.nat(1e6), fc.double({ min: 0, max: 2, noNaN: true }), (seed, wear) => {
        expect(drawIncrement(law, 0.5, wear, 2500, keyedDraws(seed))).toBeGreaterThanOrEqual(0);
        expect(drawIncrement(law, 0, wear, 2500, keyedDraws(seed))).toBe(0);
      }),
      { seed: 3, numRuns: 50 },
    );
  });
});

describe('the exact world', () => {
  const world = exactWorld(fleet);
  const tables = exactTables(world);

  it('steps weights forward as it steps values back', () => {
    const values = world.start.map((_, index) => Math.sin(index));
    const after = weightsAfterStep(world, world.start);
    const dot = (a: Float64Array, b: Float64Array) => a.reduce((sum, value, i) => sum + value * b[i]!, 0);
    expect(dot(after, values)).toBeCloseTo(dot(world.start, expectedAfterStep(world, values)), 5);
  });

  it('adjusts at its bare cost where it always holds, and never dearer than by its worst', () => {
    const sure = {
      ...world,
      fleet: { ...fleet, adjustComeback: { other: 0, worn: 0.5, fitting: 0.5 } },
    };
    expect(adjustingCost(sure, 'other', 100, 900)).toBeCloseTo(1.2 * fleet.labourPerHour + 100, 9);
    // 96 + half of going on at 100 + half of handling 250 and the cheaper of renewing at 900 and adjusting again for
    // ever: (96 + 50 + 125) / 0.5 = 542.
    expect(adjustingCost(sure, 'worn', 100, 900)).toBeCloseTo(96 + 50 + 125 + 0.5 * 542, 9);
  });

  it('foretells what the vans of the policy that acts by it will cost on average', () => {
    const differences = vans.map((van) => {
      const [first] = tables(van.serviceIntervalKm);
      const goOn = valueAt(world, first!.goOn, van.start, van.rate);
      const foretold = Math.min(goOn, ...first!.planned.values());
      return playVan(fleet, van, clairvoyant(world, tables)).cost - foretold;
    });
    expect(Math.abs(meanOf(differences))).toBeLessThan(4 * standardError(differences));
  });

  it('is beaten by nobody: not by rules, not by the policy that knows the parameters', () => {
    const best = vans.map((van) => playVan(fleet, van, clairvoyant(world, tables)).cost);
    const others = [
      ...fixedRules.map((rule) => vans.map((van) => playVan(fleet, van, fixedRule(rule, 'reBush')).cost)),
      vans.slice(0, 60).map((van) => playVan(fleet, van, new InformedPolicy(world, tables)).cost),
    ];
    for (const costs of others) {
      const less = costs.map((cost, k) => best[k]! - cost);
      // Never cheaper by chance alone: two standard errors.
      expect(meanOf(less)).toBeLessThan(2 * standardError(less));
    }
  });
});

describe('a van that is played', () => {
  it('is the same van under every policy until the policies part, and again when played again', () => {
    const van = simulatedVan(fleet, 5, 3);
    const one = playVan(fleet, van, fixedRule('alwaysAdjust', 'reBush'));
    expect(playVan(fleet, van, fixedRule('alwaysAdjust', 'reBush'))).toEqual(one);
    const other = playVan(fleet, van, fixedRule('functionalCriterion', 'fitNew'));
    expect(other.visits[0]!.situation.inspections[0]).toEqual(one.visits[0]!.situation.inspections[0]);
  });

  it('accounts for every part over the whole plan', () => {
    for (const van of vans.slice(0, 20)) {
      const { parts } = playVan(fleet, van, fixedRule('alwaysReplace', 'fitUsed'));
      expect(parts.reduce((sum, { km }) => sum + km, 0)).toBe(simulatedWorld.planningDistanceKm);
      for (const { km, complaintsKm } of parts)
        for (const at of complaintsKm) expect(at).toBeLessThanOrEqual(km);
    }
  });
});
