import { gammaDraw, keyedDraws } from '../simulator/keyed-draws.js';
import { judgementTables } from '../tables/judgement-tables.js';
import { fitLeadTimes } from './fit-lead-times.js';
import { fitComplaints } from './fit-complaints.js';
import { greatestAt } from './greatest-at.js';
import { learnTables } from './learn-tables.js';
import type { SettledPart } from './settled-history.js';
import { stretchesOf } from './part-smoother.js';
import { wearNodes } from '../belief/wear-grid.js';

const nothing = { parts: [], repairs: [], deliveries: [] };

/** Parts of an invented fleet that wears twice as fast as judgement has it and complains of other things more often. */
function inventedParts(count: number): readonly SettledPart[] {
  return Array.from({ length: count }, (_, k): SettledPart => {
    const draws = keyedDraws(4711, k);
    const rate = 0.8 * Math.exp(0.4 * draws.normal());
    let wear = 0.3 * Math.exp(0.4 * draws.normal());
    const inspections: SettledPart['inspections'][number][] = [];
    const criterion: SettledPart['criterion'][number][] = [];
    const complaintsKm: number[] = [];
    for (let km = 0; km <= 60_000; km += 5_000) {
      if (km > 0) wear += gammaDraw(draws, (rate * 0.05) / 0.04, 0.04);
      const hazard = 2.5 + 10 / (1 + Math.exp(-(wear - 1) / 0.1));
      if (km > 0 && draws.uniform() < 1 - Math.exp(-hazard * 0.05)) complaintsKm.push(km);
      if (km % 20_000 !== 0) continue;
      inspections.push({ kmSinceFitted: km, share: wear + 0.08 * draws.normal(), standardUncertainty: 0.08 });
      criterion.push({
        kmSinceFitted: km,
        isPositive: draws.uniform() < 1 / (1 + Math.exp(-(wear - 1) / 0.08)),
      });
    }
    return { action: null, watchedKm: 60_000, inspections, criterion, complaintsKm };
  });
}

describe('learning tables from what has settled', () => {
  it('keeps the judgement where nothing has settled', () => {
    const { tables, counts } = learnTables(nothing, judgementTables);
    expect(tables).toEqual({
      ...judgementTables,
      comeback: { ...tables.comeback, taught: judgementTables.comeback.taught },
      adjusting: tables.adjusting,
    });
    tables.comeback.mean.forEach((mean, k) => expect(mean).toBeCloseTo(judgementTables.comeback.mean[k]!, 9));
    expect(tables.adjusting!.otherCauses).toBeCloseTo(0.1, 2);
    expect(tables.adjusting!.wornPart).toBeCloseTo(0.65, 2);
    expect(counts).toEqual({
      parts: 0,
      inspections: 0,
      complaints: 0,
      repairs: 0,
      deliveries: 0,
      watchedKm: 0,
    });
  });

  it('finds the numbers of an invented fleet again', () => {
    const { tables } = learnTables({ ...nothing, parts: inventedParts(120) }, judgementTables);
    const { start, rate } = tables.wear.fittedPart;
    // 120 parts: the mean log rate is known to 0.4 / sqrt(120) = 0.04 at best, with readings of 0.08 to about 0.07.
    expect(Math.abs(Math.log(rate.median / 0.8))).toBeLessThan(0.25);
    expect(Math.abs(Math.log(start.median / 0.3))).toBeLessThan(0.2);
    // Some 180 complaints of other causes: 0.075 on the logarithm, four times that.
    expect(Math.abs(Math.log(tables.complaints.otherCausesRate / 2.5))).toBeLessThan(0.35);
    // A fleet that wears fast makes the parts fast too that nobody has fitted yet.
    expect(tables.wear.byAction.fitNew.rate.median).toBeGreaterThan(1.3 * 0.4);
  });

  it('does not depend on the order of what it is told', () => {
    const parts = inventedParts(12);
    const one = learnTables({ ...nothing, parts }, judgementTables).tables;
    const other = learnTables({ ...nothing, parts: parts.toReversed() }, judgementTables).tables;
    expect(other.wear.fittedPart.rate.median).toBeCloseTo(one.wear.fittedPart.rate.median, 6);
    expect(other.complaints.otherCausesRate).toBeCloseTo(one.complaints.otherCausesRate, 6);
  });

  it('cuts a life where something was seen, and refuses what lies beyond what was watched', () => {
    const part: SettledPart = {
      action: null,
      watchedKm: 24_000,
      inspections: [{ kmSinceFitted: 0, share: 0.4, standardUncertainty: 0.1 }],
      criterion: [],
      complaintsKm: [15_000],
    };
    expect(stretchesOf(part).map(({ km, complaints }) => [km, complaints])).toEqual([
      [0, 0],
      [10_000, 0],
      [5_000, 1],
      [5_000, 0],
      [4_000, 0],
    ]);
    expect(() => stretchesOf({ ...part, complaintsKm: [30_000] })).toThrow(RangeError);
  });

  it('counts complaints per distance: fifty over ten times 100,000 km of unworn parts make five', () => {
    const exposure = new Float64Array(wearNodes.length);
    const complaints = new Float64Array(wearNodes.length);
    exposure[2] = 10;
    complaints[2] = 50;
    // The prior of 1 with 0.7 on the logarithm is worth 1 / 0.49 = two complaints, at five against one:
    // 50 - 10 x - ln(x) / 0.49 = 0 gives x = 4.69.
    const { otherCausesRate } = fitComplaints({ exposure, complaints }, judgementTables.complaints);
    expect(otherCausesRate).toBeCloseTo(4.69, 1);
  });

  it('draws slips of suppliers towards what is expected: by hand', () => {
    // One supplier, promised 9, took 9: slips 0. Mean: (3 x 0.2 + 0) / 4 = 0.15.
    const deliveries = Array.from({ length: 4 }, () => ({
      supplierId: 'birchmoor-castings',
      promisedDays: 9,
      actualDays: 9,
    }));
    const learned = fitLeadTimes(deliveries, judgementTables.leadTime);
    expect(learned.meanLogSlip).toBeCloseTo(0.15, 12);
    // Within: 20 x 0.35² over 20 + 3 degrees of freedom.
    expect(learned.withinSupplierSd).toBeCloseTo(Math.sqrt((20 * 0.35 * 0.35) / 23), 12);
    expect(() => fitLeadTimes([{ ...deliveries[0]!, actualDays: -1 }], judgementTables.leadTime)).toThrow(
      RangeError,
    );
  });

  it('finds the top of a parabola', () => {
    expect(greatestAt((x) => -(x - 1) * (x - 1), 0, 3)).toBeCloseTo(1, 3);
  });
});
