import fc from 'fast-check';
import { judgementTables } from '../tables/judgement-tables.js';
import { comebackCoefficients } from '../tables/comeback-coefficients.js';
import type { OfferedCondition, OptionAction } from '../terms/option-actions.js';
import { chancesAtNodes } from '../assess/decision-beliefs.js';
import { adjustingLogOdds, comebacksLikelihood, wornShare } from './adjusting-causes.js';
import { cholesky, coefficientDesign, drawCoefficients } from './coefficient-draws.js';
import type { FunctionalEvidence } from './comeback-predictor.js';
import { addComebackChances, comebackChance, comebackFeatures, wearSteps } from './comeback-predictor.js';
import { seededDraws } from '../random/seeded-draws.js';

const design = coefficientDesign(judgementTables.comeback);
const chance = (
  action: OptionAction,
  wear: number,
  functional: FunctionalEvidence = 'none',
  earlierComebacks = 0,
  condition: OfferedCondition | null = null,
) => {
  if (action === 'leave' || action === 'adjust') {
    const atNodes = chancesAtNodes(design, judgementTables, action, functional, earlierComebacks);
    return atNodes[Math.min(48, Math.round(wear * 24))]!;
  }
  const features = comebackFeatures(
    { action, condition, arrivalStep: 0, functional, earlierComebacks },
    wearSteps(wear),
  );
  return (
    design.reduce((sum, coefficients) => sum + comebackChance(coefficients, features), 0) / design.length
  );
};

describe('comeback model with judgement numbers only', () => {
  it.each([
    ['adjust', 0.5, 0.1],
    ['adjust', 1.25, 0.6],
    ['leave', 0.5, 0.9],
    ['reBush', 1.25, 0.1],
    ['fitUsed', 1.25, 0.22],
    ['fitRemanufactured', 1.25, 0.08],
    ['fitNew', 1.25, 0.04],
  ] as const)(
    'averages the worked example’s chance for %s at %p of the criterion: %p',
    (action, wear, expected) => {
      // Three hundredths: doubt about the corrections of adjusting pulls its average towards a half.
      expect(Math.abs(chance(action, wear) - expected)).toBeLessThan(0.03);
    },
  );

  it('never makes adjusting better with more wear or more comebacks', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 2, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.nat(9),
        (wear, more, count) => {
          expect(chance('adjust', wear + more, 'none', count)).toBeGreaterThanOrEqual(
            chance('adjust', wear, 'none', count),
          );
          expect(chance('adjust', wear, 'none', count + 1)).toBeGreaterThanOrEqual(
            chance('adjust', wear, 'none', count),
          );
        },
      ),
      { seed: 41, numRuns: 60 },
    );
  });

  it('does not let the old part’s wear bear on a part that replaces it', () => {
    expect(chance('fitNew', 0.1)).toBe(chance('fitNew', 1.9));
  });

  it('adds the same chances over many wears as one by one', () => {
    const steps = [0, 0.7, 1, 1.6].map(wearSteps);
    const context = {
      action: 'adjust',
      condition: null,
      arrivalStep: 0,
      functional: 'negative',
      earlierComebacks: 2,
    } as const;
    const sums = new Float64Array(4);
    const logOdds = Float64Array.from([-2, -1, 0, 1]);
    addComebackChances(design[3]!, comebackFeatures(context, [0, 0, 0]), steps, logOdds, sums);
    steps.forEach((step, k) =>
      expect(sums[k]).toBeCloseTo(
        comebackChance(design[3]!, comebackFeatures(context, step), logOdds[k]),
        14,
      ),
    );
  });

  it('refuses a count of comebacks that is no count', () => {
    expect(() => chance('adjust', 1, 'none', -1)).toThrow(RangeError);
    expect(() => chance('adjust', 1, 'none', 1.5)).toThrow(RangeError);
  });
});

describe('adjusting, by the cause of the complaint', () => {
  const tables = {
    adjusting: { otherCauses: 0.1, wornPart: 0.65 },
    complaints: { otherCausesRate: 1, wornRate: 10, onsetWidth: 0.1 },
  };

  it('is Bayes’ rule by hand at the criterion, where the worn part has half its rate', () => {
    // 5 of 6 complaints come from the worn part: 5/6 x 0.65 + 1/6 x 0.1 = 0.558333. After one comeback the worn part
    // weighs 5/6 x 0.65 = 0.541667 against 0.016667, 32.5 to 1: (32.5 x 0.65 + 0.1) / 33.5 = 0.633582.
    expect(wornShare(1, tables.complaints)).toBeCloseTo(5 / 6, 12);
    const chanceAt = (count: number) => 1 / (1 + Math.exp(-adjustingLogOdds(tables, count)[24]!));
    expect(chanceAt(0)).toBeCloseTo(0.558333, 6);
    expect(chanceAt(1)).toBeCloseTo(0.633582, 6);
    expect(comebacksLikelihood(tables, 1)[24]).toBeCloseTo(0.558333, 6);
  });

  it('multiplies up: so many comebacks are as likely as each after the ones before', () => {
    const chanceAt = (count: number, i: number) => 1 / (1 + Math.exp(-adjustingLogOdds(tables, count)[i]!));
    for (const i of [0, 12, 20, 24, 40])
      expect(comebacksLikelihood(tables, 3)[i]).toBeCloseTo(
        chanceAt(0, i) * chanceAt(1, i) * chanceAt(2, i),
        12,
      );
  });

  it('says nothing where nothing is ever complained of or the tables know no causes', () => {
    const silent = { otherCausesRate: 0, wornRate: 0, onsetWidth: 0.1 };
    expect(wornShare(1.5, silent)).toBe(0);
    expect([...comebacksLikelihood({ complaints: silent }, 2)].every((value) => value === 1)).toBe(true);
    expect([...adjustingLogOdds({ complaints: silent }, 2)].every((value) => value === 0)).toBe(true);
  });
});

describe('draws of the coefficients', () => {
  it('decomposes [[4, 2], [2, 5]] into [[2, 0], [1, 2]]', () => {
    expect(
      cholesky([
        [4, 2],
        [2, 5],
      ]).map((row) => [...row]),
    ).toEqual([
      [2, 0],
      [1, 2],
    ]);
    expect(() =>
      cholesky([
        [1, 2],
        [2, 1],
      ]),
    ).toThrow(RangeError);
  });

  it('is the mean itself when nothing is in doubt', () => {
    const size = comebackCoefficients.length;
    const sure = {
      ...judgementTables.comeback,
      covariance: Array.from({ length: size }, () => Array.from({ length: size }, () => 0)),
    };
    for (const vector of drawCoefficients(sure, 3, seededDraws(1)))
      expect([...vector]).toEqual([...sure.mean]);
  });

  it('refuses a table of another size or with numbers that are none', () => {
    const { comeback } = judgementTables;
    expect(() => drawCoefficients({ ...comeback, mean: [1] }, 1, seededDraws(1))).toThrow(RangeError);
    expect(() =>
      drawCoefficients({ ...comeback, mean: comeback.mean.map(() => NaN) }, 1, seededDraws(1)),
    ).toThrow(RangeError);
  });
});
