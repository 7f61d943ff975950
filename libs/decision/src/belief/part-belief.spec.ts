import { judgementTables } from '../tables/judgement-tables.js';
import { populationRateWeights, rateNodes } from './rate-belief.js';
import { afterDistance, beforeReading, believedPart, gammaGrowth } from './part-belief.js';
import { anyPartDensity } from './wear-belief.js';
import { wearNodes } from './wear-grid.js';

const { wear } = judgementTables;
const rates = rateNodes([wear.fittedPart.rate], null);
const rateWeights = populationRateWeights(rates, wear.fittedPart.rate);
const growth = (km: number) => gammaGrowth(rates, wear.incrementScale, km);
const nothing = new Float64Array(wearNodes.length).fill(1);
const meanWear = (weights: Float64Array) => weights.reduce((sum, value, i) => sum + value * wearNodes[i]!, 0);
const meanRate = (weights: Float64Array) => weights.reduce((sum, value, r) => sum + value * rates[r]!, 0);
const reading = (share: number, standardUncertainty = 0.1) => ({ share, standardUncertainty });
const belief = (
  earlier: readonly { kmBefore: number; share: number; standardUncertainty: number }[],
  now = 0.6,
) => believedPart(beforeReading(wear, rateWeights, earlier, true, growth), reading(now), nothing);

describe('belief about a part from its whole history', () => {
  it('keeps the mean of growing wear: a rate of 0.4 grows 0.04 over 10,000 km', () => {
    const alone = Float64Array.from([0.4]);
    const start = new Float64Array(wearNodes.length);
    start[12] = 1;
    const after = afterDistance(start, gammaGrowth(alone, 0.04, 10_000));
    // The faint steps that are left out weigh less than a ten-thousandth.
    expect(meanWear(after)).toBeCloseTo(0.5 + 0.04, 3);
    expect(after.reduce((sum, value) => sum + value, 0)).toBeCloseTo(1, 12);
  });

  it('takes two readings on one occasion for one of half the variance', () => {
    const both = belief([{ kmBefore: 0, ...reading(0.7) }], 0.5);
    const one = believedPart(
      beforeReading(wear, rateWeights, [], true, growth),
      reading(0.6, 0.1 / Math.SQRT2),
      nothing,
    );
    // A reading is spread over two nodes, which adds a little doubt to each.
    expect(meanWear(both.wear)).toBeCloseTo(meanWear(one.wear), 2);
  });

  it('believes a faster rate of a part that grew than of one that stood still', () => {
    const grew = belief([
      { kmBefore: 60_000, ...reading(0.2) },
      { kmBefore: 30_000, ...reading(0.4) },
    ]);
    const stood = belief([
      { kmBefore: 60_000, ...reading(0.6) },
      { kmBefore: 30_000, ...reading(0.6) },
    ]);
    expect(meanRate(grew.rates)).toBeGreaterThan(1.5 * meanRate(stood.rates));
    expect(meanRate(belief([]).rates)).toBeCloseTo(meanRate(rateWeights), 7);
  });

  it('does not depend on the order in which the history is told', () => {
    const history = [
      { kmBefore: 50_000, ...reading(0.3) },
      { kmBefore: 20_000, ...reading(0.5) },
      { kmBefore: 20_000, ...reading(0.4) },
    ];
    expect([...belief(history.toReversed()).places]).toEqual([...belief(history).places]);
  });

  it('survives a history that no expectation allows: wear that fell, readings far away', () => {
    const fell = belief([{ kmBefore: 10_000, ...reading(1.8, 0.01) }], 0.1);
    expect(meanWear(fell.wear)).toBeGreaterThan(0);
    expect(fell.places.every((value) => Number.isFinite(value))).toBe(true);
    const far = believedPart(
      beforeReading(wear, rateWeights, [{ kmBefore: 0, ...reading(0.1, 0.001) }], true, growth),
      reading(50, 0.001),
      nothing,
    );
    expect(meanWear(far.wear)).toBeCloseTo(2, 6);
  });

  it('tells a part that was fitted anew from one that was found by its first reading', () => {
    const density = anyPartDensity(wear);
    const found = wear.fittedPart.start;
    const relative = (x: number) => Math.exp(-((Math.log(x / found.median) / found.logSd) ** 2) / 2) / x;
    const at = (x: number) => density[Math.round(x * 24)]!;
    // Small wear is likelier than the population of found parts alone would have it.
    expect(at(1 / 12) / at(0.5)).toBeGreaterThan(3 * (relative(1 / 12) / relative(0.5)));
  });

  it('refuses an inspection that lies ahead', () => {
    expect(() => belief([{ kmBefore: -1, ...reading(0.3) }])).toThrow(RangeError);
  });
});
