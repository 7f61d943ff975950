import fc from 'fast-check';
import { judgementTables } from '../fixtures/judgement-tables.js';
import type { DiagnosisTables } from '../tables/diagnosis-tables.js';
import { entropyBits } from './entropy-bits.js';
import { singleCausePosterior } from './single-cause-posterior.js';

/** One disease, one test. */
const oneTest = (prevalence: number, sensitivity: number, falsePositive: number): DiagnosisTables => ({
  version: 'one-test',
  causes: [
    { id: 'ill', prior: prevalence },
    { id: 'well', prior: 1 - prevalence },
  ],
  symptoms: [],
  checks: [
    {
      id: 'test',
      minutes: 1,
      openingMove: false,
      prerequisites: [],
      positiveGivenCause: { ill: sensitivity, well: falsePositive },
    },
  ],
});

const weightOf = (
  tables: DiagnosisTables,
  evidence: Parameters<typeof singleCausePosterior>[1],
  causeId: string,
): number => {
  const posterior = singleCausePosterior(tables, evidence);
  if (posterior.kind !== 'estimated') throw new Error('expected a posterior');
  return posterior.causes.find((cause) => cause.causeId === causeId)!.probability;
};

const states = fc.record(
  Object.fromEntries(
    judgementTables.symptoms.map((row) => [
      row.id,
      fc.constantFrom('present', 'absent', 'notAsked' as const),
    ]),
  ),
) as fc.Arbitrary<Record<string, 'present' | 'absent' | 'notAsked'>>;

describe('singleCausePosterior', () => {
  it('gives 7.8 % for Eddy’s mammography question (prevalence .01, sensitivity .80, false positives .096)', () => {
    const p = weightOf(
      oneTest(0.01, 0.8, 0.096),
      { symptoms: {}, results: [{ checkId: 'test', outcome: 'positive' }] },
      'ill',
    );
    expect(Math.abs(p - 0.0776397515528)).toBeLessThan(1e-12);
  });

  it('gives 9 % for the figures of Gigerenzer’s Calculated Risks (.008, .90, .07)', () => {
    const p = weightOf(
      oneTest(0.008, 0.9, 0.07),
      { symptoms: {}, results: [{ checkId: 'test', outcome: 'positive' }] },
      'ill',
    );
    expect(Math.abs(p - 0.0939457202505)).toBeLessThan(1e-12);
  });

  it('by hand: two causes 1:1, a symptom at 0.6 and 0.2 present, a check at 0.5 and 0.25 negative, give 0.6*0.5 : 0.2*0.75 = 2 : 1', () => {
    const tables: DiagnosisTables = {
      version: 'hand',
      causes: [
        { id: 'a', prior: 0.5 },
        { id: 'b', prior: 0.5 },
      ],
      symptoms: [{ id: 's', presentGivenCause: { a: 0.6, b: 0.2 } }],
      checks: [
        {
          id: 'c',
          minutes: 1,
          openingMove: false,
          prerequisites: [],
          positiveGivenCause: { a: 0.5, b: 0.25 },
        },
      ],
    };
    const p = weightOf(
      tables,
      { symptoms: { s: 'present' }, results: [{ checkId: 'c', outcome: 'negative' }] },
      'a',
    );
    expect(p).toBeCloseTo(2 / 3, 14);
  });

  it('gives the priors back when nothing is known', () => {
    for (const { id, prior } of judgementTables.causes) {
      expect(weightOf(judgementTables, { symptoms: {}, results: [] }, id)).toBeCloseTo(prior, 12);
    }
  });

  it('treats "not asked" and "undecided" as saying nothing', () => {
    const plain = singleCausePosterior(judgementTables, {
      symptoms: { 'stalls-cold': 'present' },
      results: [],
    });
    const withNothing = singleCausePosterior(judgementTables, {
      symptoms: { 'stalls-cold': 'present', 'idle-hunts-warm': 'notAsked' },
      results: [{ checkId: 'leak-test', outcome: 'undecided' }],
    });
    expect(withNothing).toEqual(plain);
  });

  it('tells a symptom not asked from one that is absent', () => {
    const notAsked = weightOf(
      judgementTables,
      { symptoms: { 'stalls-cold': 'notAsked' }, results: [] },
      'coolant-sensor-wrong',
    );
    const absent = weightOf(
      judgementTables,
      { symptoms: { 'stalls-cold': 'absent' }, results: [] },
      'coolant-sensor-wrong',
    );
    expect(absent).toBeLessThan(notAsked);
  });

  it('does not count a repeated check twice', () => {
    const once = { symptoms: {}, results: [{ checkId: 'shaft-play', outcome: 'positive' }] } as const;
    const twice = { symptoms: {}, results: [...once.results, ...once.results] };
    expect(weightOf(judgementTables, twice, 'shaft-worn')).toBe(
      weightOf(judgementTables, once, 'shaft-worn'),
    );
  });

  it('leaves a check out whose results contradict each other, and names it', () => {
    const posterior = singleCausePosterior(judgementTables, {
      symptoms: {},
      results: [
        { checkId: 'shaft-play', outcome: 'positive' },
        { checkId: 'shaft-play', outcome: 'negative' },
      ],
    });
    if (posterior.kind !== 'estimated') throw new Error('expected a posterior');
    expect(posterior.contradictoryChecks).toEqual(['shaft-play']);
    expect(posterior.checksUsed).toBe(0);
  });

  it('counts a corrected finding as found, and as repeated once the complaint is known to persist', () => {
    const asFound = weightOf(
      judgementTables,
      { symptoms: {}, results: [{ checkId: 'linkage-return', outcome: 'corrected' }] },
      'linkage-binding',
    );
    const persists = weightOf(
      judgementTables,
      {
        symptoms: {},
        results: [{ checkId: 'linkage-return', outcome: 'corrected', complaintPersists: true }],
      },
      'linkage-binding',
    );
    expect(asFound).toBeGreaterThan(0.4);
    expect(persists).toBeLessThan(0.01);
  });

  it('says so when a probability of exactly zero is contradicted', () => {
    const tables = oneTest(1, 0, 0);
    expect(
      singleCausePosterior(tables, { symptoms: {}, results: [{ checkId: 'test', outcome: 'positive' }] })
        .kind,
    ).toBe('impossibleEvidence');
  });

  it('refuses symptoms and checks that the tables do not hold', () => {
    expect(() =>
      singleCausePosterior(judgementTables, { symptoms: { rattles: 'present' }, results: [] }),
    ).toThrow(RangeError);
    expect(() =>
      singleCausePosterior(judgementTables, {
        symptoms: {},
        results: [{ checkId: 'x', outcome: 'positive' }],
      }),
    ).toThrow(RangeError);
  });

  it('always adds up to one, with entropy between 0 and log2(12)', () => {
    fc.assert(
      fc.property(states, (symptoms) => {
        const posterior = singleCausePosterior(judgementTables, { symptoms, results: [] });
        if (posterior.kind !== 'estimated') return false;
        const sum = posterior.causes.reduce((total, cause) => total + cause.probability, 0);
        return (
          Math.abs(sum - 1) < 1e-12 &&
          posterior.entropyBits >= 0 &&
          posterior.entropyBits <= Math.log2(12) + 1e-12
        );
      }),
      { seed: 20, numRuns: 200 },
    );
  });

  it('does not depend on the order in which different checks were done', () => {
    const results = judgementTables.checks.map(
      (check, i) => ({ checkId: check.id, outcome: i % 3 === 0 ? 'positive' : 'negative' }) as const,
    );
    const forward = singleCausePosterior(judgementTables, { symptoms: {}, results });
    fc.assert(
      fc.property(fc.shuffledSubarray([...results], { minLength: results.length }), (shuffled) => {
        expect(singleCausePosterior(judgementTables, { symptoms: {}, results: shuffled })).toEqual(forward);
      }),
      { seed: 21, numRuns: 50 },
    );
  });

  it('rises with each finding that the cause produces more often than the others do', () => {
    const before = weightOf(judgementTables, { symptoms: {}, results: [] }, 'shaft-worn');
    const after = weightOf(
      judgementTables,
      { symptoms: {}, results: [{ checkId: 'shaft-play', outcome: 'positive' }] },
      'shaft-worn',
    );
    expect(after).toBeGreaterThan(before);
  });
});

describe('entropyBits', () => {
  it('is one bit for a coin, none for certainty, log2(n) for n equal weights', () => {
    expect(entropyBits([0.5, 0.5])).toBe(1);
    expect(entropyBits([1, 0, 0])).toBe(0);
    expect(entropyBits(Array.from({ length: 8 }, () => 0.125))).toBeCloseTo(3, 14);
  });

  it('refuses negative and non-finite weights', () => {
    expect(() => entropyBits([-0.1, 1.1])).toThrow(RangeError);
    expect(() => entropyBits([Number.NaN])).toThrow(RangeError);
  });
});
