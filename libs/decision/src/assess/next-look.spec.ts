import { wornHousing } from '../fixtures/worn-housing.fixture.js';
import { judgementTables } from '../tables/judgement-tables.js';
import type { LearnedTables } from '../tables/learned-tables.js';
import type { AssessmentInput } from '../terms/assessment-input.js';
import { assessRepairOrReplace } from './assess-repair-or-replace.js';

const visit = (value: number, more: Partial<AssessmentInput> = {}): AssessmentInput => ({
  ...wornHousing,
  occasion: 'serviceVisit',
  evidence: {
    ...wornHousing.evidence,
    wearNow: {
      kind: 'measured',
      value,
      standardUncertainty: 0.021,
      count: 3,
      verdict: 'inside',
      earlier: [{ kmBefore: 20_000, value: value * 0.9, standardUncertainty: 0.021 }],
      evidence: [],
    },
  },
  ...more,
});
const look = (input: AssessmentInput) => assessRepairOrReplace(input, 'withoutFlipPoints');
const km = (value: { readonly value: string } | null) => (value === null ? Infinity : Number(value.value));
const still: LearnedTables = {
  ...judgementTables,
  wear: {
    ...judgementTables.wear,
    fittedPart: { ...judgementTables.wear.fittedPart, rate: { median: 1e-9, logSd: 0.1 } },
  },
  complaints: { otherCausesRate: 0, wornRate: 0, onsetWidth: 0.1 },
};

describe('when to look again', () => {
  it('sees no need within the plan where nothing wears, nothing is complained of and readings have a price', () => {
    expect(look(visit(0.04, { tables: still })).nextLook).toEqual({ kind: 'notWithinPlan' });
  });

  it('comes sooner the more a part is worn', () => {
    const at = (value: number) => {
      const { nextLook } = look(visit(value, { furtherReadings: { kind: 'notAvailable' } }));
      return nextLook !== null && 'distance' in nextLook ? km(nextLook.distance) : Infinity;
    };
    expect(at(0.17)).toBeLessThanOrEqual(at(0.12));
    expect(at(0.12)).toBeLessThanOrEqual(at(0.06));
    expect(at(0.17)).toBeLessThan(at(0.06));
  });

  it('names the chance that made it: a tenth or more where readings cannot be had', () => {
    const { nextLook } = look(
      visit(0.1, { furtherReadings: { kind: 'notAvailable' }, serviceIntervalKm: null }),
    );
    expect(nextLook).toMatchObject({ kind: 'recheckAt', why: 'chanceOfCriterion' });
    if (nextLook?.kind !== 'recheckAt') throw new Error('no advice');
    expect(nextLook.probability).toBeGreaterThanOrEqual(0.1);
  });

  it('says nothing where nothing is priced', () => {
    const { nextLook } = look(visit(0.1, { options: [] }));
    expect(nextLook).toBeNull();
  });
});

describe('distance to the criterion', () => {
  it('has its points in order, and shrinks as wear grows', () => {
    const of = (value: number) => look(visit(value)).belief.distanceToCriterion;
    for (const value of [0.05, 0.1, 0.15]) {
      const { lower, median, upper } = of(value);
      expect(km(lower)).toBeLessThanOrEqual(km(median));
      expect(km(median)).toBeLessThanOrEqual(km(upper));
    }
    expect(km(of(0.15).lower)).toBeLessThan(km(of(0.05).lower));
  });

  it('is nothing at the criterion and beyond the plan without wear', () => {
    expect(km(look(visit(0.3)).belief.distanceToCriterion.upper)).toBe(0);
    expect(look(visit(0.04, { tables: still })).belief.distanceToCriterion).toMatchObject({
      median: null,
      upper: null,
      within: { value: '120000', unit: 'km' },
    });
  });
});

describe('a history beside the present reading', () => {
  it('never lets a worse reading make adjusting or leaving cheaper', () => {
    const leave = (value: number) => {
      const found = look(visit(value)).options.find(({ optionId }) => optionId === 'leave');
      if (found?.kind !== 'priced') throw new Error('leaving has no price');
      return Number(found.expectedCost.amount);
    };
    const costs = [0.02, 0.06, 0.1, 0.14, 0.18, 0.22, 0.28].map(leave);
    costs.slice(1).forEach((cost, k) => expect(cost).toBeGreaterThanOrEqual(costs[k]! - 0.01));
  });

  it('gives the same in micrometres', () => {
    const input = visit(0.12);
    const { wearNow } = input.evidence;
    if (wearNow.kind !== 'measured') throw new Error('measured');
    const micrometres: AssessmentInput = {
      ...input,
      characteristic: { ...input.characteristic, unit: 'um', criterionSize: 200 },
      evidence: {
        ...input.evidence,
        wearNow: {
          ...wearNow,
          value: 120,
          standardUncertainty: 21,
          earlier: [{ kmBefore: 20_000, value: 108, standardUncertainty: 21 }],
        },
      },
      options: input.options.filter(({ action }) => action !== 'fitUsed'),
      furtherReadings: {
        ...input.furtherReadings,
        standardUncertainty: 19,
      } as AssessmentInput['furtherReadings'],
    };
    const inMillimetres = { ...input, options: micrometres.options };
    expect(look(micrometres).recommendation).toEqual(look(inMillimetres).recommendation);
    expect(look(micrometres).nextLook).toEqual(look(inMillimetres).nextLook);
  });
});
