import fc from 'fast-check';
import { judgementTables } from '../fixtures/judgement-tables.js';
import type { DiagnosisTables } from '../tables/diagnosis-tables.js';
import { singleCausePosterior } from '../single-cause/single-cause-posterior.js';
import { multipleCausePosterior } from './multiple-cause-posterior.js';
import { noisyOrPosterior } from './noisy-or-posterior.js';
import { noisyOrProbability } from './noisy-or-probability.js';

/** Inhibitions of the textbook: cold .6, flu .2, malaria .1; strength = 1 - inhibition. */
const strength = { cold: 0.4, flu: 0.8, malaria: 0.9 };
const fever = { id: 'fever', present: true, leak: 0, strength };
const illnesses = [
  { id: 'cold', prior: 0.1 },
  { id: 'flu', prior: 0.05 },
  { id: 'malaria', prior: 0.01 },
];

describe('noisyOrProbability', () => {
  it.each([
    [[], 0],
    [['malaria'], 0.9],
    [['flu'], 0.8],
    [['flu', 'malaria'], 0.98],
    [['cold'], 0.4],
    [['cold', 'malaria'], 0.94],
    [['cold', 'flu'], 0.88],
    [['cold', 'flu', 'malaria'], 0.988],
  ] as const)('gives the fever table of Russell & Norvig for %j', (present, expected) => {
    expect(
      noisyOrProbability(
        0,
        present.map((id) => strength[id]),
      ),
    ).toBeCloseTo(expected, 15);
  });

  it('shows the leak when no cause is present', () => {
    expect(noisyOrProbability(0.07, [])).toBeCloseTo(0.07, 15);
  });

  it('refuses values outside 0 to 1', () => {
    expect(() => noisyOrProbability(1.1, [])).toThrow(RangeError);
    expect(() => noisyOrProbability(0, [Number.NaN])).toThrow(RangeError);
  });
});

describe('noisyOrPosterior', () => {
  it('gives the computed posteriors of the fever example to 1e-9', () => {
    const posterior = noisyOrPosterior(illnesses, [fever]);
    if (posterior.kind !== 'estimated') throw new Error('expected a posterior');
    expect(Math.abs(posterior.evidenceProbability - 0.0866944)).toBeLessThan(1e-9);
    const expected = [0.49505389, 0.467001329, 0.10471726];
    posterior.causes.forEach((cause, i) =>
      expect(Math.abs(cause.probability - expected[i]!)).toBeLessThan(1e-9),
    );
  });

  it('by hand: one cause with prior 1/2, strength 1/2 and leak 0 gives 1/3 when the finding is absent', () => {
    const posterior = noisyOrPosterior(
      [{ id: 'a', prior: 0.5 }],
      [{ id: 'f', present: false, leak: 0, strength: { a: 0.5 } }],
    );
    expect(posterior).toMatchObject({ causes: [{ causeId: 'a', probability: expect.closeTo(1 / 3, 14) }] });
  });

  it('leaves room for none of the listed causes as long as the leak is open', () => {
    const closed = noisyOrPosterior(illnesses, [fever]);
    const open = noisyOrPosterior(illnesses, [{ ...fever, leak: 0.05 }]);
    expect(closed).toMatchObject({ noneOfThese: 0 });
    if (open.kind !== 'estimated') throw new Error('expected a posterior');
    expect(open.noneOfThese).toBeGreaterThan(0.3);
    expect(open.combinations[0]!.causeIds).toEqual([]);
  });

  it('lets one cause explain another away', () => {
    const feverOnly = noisyOrPosterior(illnesses, [fever]);
    const andMalariaTest = noisyOrPosterior(illnesses, [
      fever,
      { id: 'smear', present: true, leak: 0.001, strength: { malaria: 0.99 } },
    ]);
    if (feverOnly.kind !== 'estimated' || andMalariaTest.kind !== 'estimated')
      throw new Error('expected posteriors');
    expect(andMalariaTest.causes[1]!.probability).toBeLessThan(feverOnly.causes[1]!.probability);
  });

  it('agrees with adding up the joint table one state at a time', () => {
    const p = fc.double({ min: 0.01, max: 0.99, noNaN: true });
    fc.assert(
      fc.property(p, p, p, p, p, p, fc.boolean(), (pa, pb, wa, wb, leak, leak2, present) => {
        const findings = [
          { id: 'f', present: true, leak, strength: { a: wa, b: wb } },
          { id: 'g', present, leak: leak2, strength: { a: wb } },
        ];
        const answer = noisyOrPosterior(
          [
            { id: 'a', prior: pa },
            { id: 'b', prior: pb },
          ],
          findings,
        );
        let [total, withA, both] = [0, 0, 0];
        for (const a of [0, 1])
          for (const b of [0, 1]) {
            const f = 1 - (1 - leak) * (1 - wa) ** a * (1 - wb) ** b;
            const g = 1 - (1 - leak2) * (1 - wb) ** a;
            const joint = (a ? pa : 1 - pa) * (b ? pb : 1 - pb) * f * (present ? g : 1 - g);
            total += joint;
            if (a) withA += joint;
            if (a && b) both += joint;
          }
        if (answer.kind !== 'estimated') return false;
        return (
          Math.abs(answer.causes[0]!.probability - withA / total) < 1e-9 &&
          Math.abs(answer.moreThanOne - both / total) < 1e-9
        );
      }),
      { seed: 22, numRuns: 200 },
    );
  });

  it('refuses more causes than can be enumerated, and says when the findings are impossible', () => {
    const many = Array.from({ length: 17 }, (_, i) => ({ id: `c${i}`, prior: 0.1 }));
    expect(() => noisyOrPosterior(many, [])).toThrow(RangeError);
    expect(noisyOrPosterior([], [{ id: 'f', present: true, leak: 0, strength: {} }])).toEqual({
      kind: 'impossibleEvidence',
    });
  });
});

describe('multipleCausePosterior', () => {
  const evidence = {
    symptoms: {
      'idle-rises-with-ac': 'present',
      'bucks-at-light-throttle': 'present',
      'stalls-cold': 'absent',
    },
    results: [{ checkId: 'shaft-play', outcome: 'positive' }],
  } as const;

  it('comes back to the single-cause answer when exactly one of two causes is present', () => {
    const probability = fc.double({ min: 0.02, max: 0.98, noNaN: true });
    fc.assert(
      fc.property(
        probability,
        fc.array(fc.tuple(probability, probability, fc.boolean()), { minLength: 1, maxLength: 6 }),
        (prior, rows) => {
          const tables: DiagnosisTables = {
            version: 'two-causes',
            causes: [
              { id: 'a', prior },
              { id: 'b', prior: 1 - prior },
            ],
            symptoms: rows.map(([a, b], i) => ({ id: `s${i}`, presentGivenCause: { a, b } })),
            checks: [],
          };
          const symptoms = Object.fromEntries(
            rows.map(([, , present], i) => [`s${i}`, present ? ('present' as const) : ('absent' as const)]),
          );
          const one = singleCausePosterior(tables, { symptoms, results: [] });
          const several = multipleCausePosterior(tables, { symptoms, results: [] });
          if (one.kind !== 'estimated' || several.kind !== 'estimated') return false;
          const onlyA = several.causes[0]!.probability - several.moreThanOne;
          const onlyB = several.causes[1]!.probability - several.moreThanOne;
          expect(onlyA / (onlyA + onlyB)).toBeCloseTo(one.causes[0]!.probability, 6);
          return true;
        },
      ),
      { seed: 23, numRuns: 100 },
    );
  });

  it('keeps "none of these" and "more than one" open', () => {
    const answer = multipleCausePosterior(judgementTables, evidence);
    if (answer.kind !== 'estimated') throw new Error('expected a posterior');
    expect(answer.noneOfThese).toBeGreaterThan(0);
    expect(answer.moreThanOne).toBeGreaterThan(0);
    expect(answer.causes[0]!.causeId).toBe('shaft-worn');
    expect(answer.causes[0]!.probability).toBeGreaterThan(0.5);
  });

  it('with no evidence gives each cause its own odds back', () => {
    const answer = multipleCausePosterior(judgementTables, { symptoms: {}, results: [] });
    if (answer.kind !== 'estimated') throw new Error('expected a posterior');
    answer.causes.forEach((cause, i) => {
      const prior = judgementTables.causes[i]!.prior;
      expect(cause.probability).toBeCloseTo(prior / (1 + prior), 12);
    });
  });
});
