import fc from 'fast-check';
import { bayesBinary } from './bayes-binary.js';
import { entropy } from './entropy.js';
import { informationGain } from './information-gain.js';
import { noisyOrPosterior, type NoisyOrPosterior } from './noisy-or-posterior.js';
import { noisyOr } from './noisy-or.js';

const chance = fc.double({ min: 0, max: 1, noNaN: true });
const inside = fc.double({ min: 0.001, max: 0.999, noNaN: true });

describe('bayesBinary', () => {
  it.each([
    // Eddy (1982), Gigerenzer & Hoffrage (1995): printed 7.8 %.
    [0.01, 0.8, 0.096, 0.0776397515528, 0.078],
    // Gigerenzer (2002), Calculated Risks: printed 9 %.
    [0.008, 0.9, 0.07, 0.0939457202505, 0.09],
  ])(
    'gives the published answer for a prior of %d',
    (prior, sensitivity, falsePositiveRate, value, printed) => {
      const found = bayesBinary(prior, { sensitivity, falsePositiveRate }, true);
      if (found.kind !== 'estimated') throw new Error(found.kind);
      expect(Math.abs(found.probability / value - 1)).toBeLessThan(1e-12);
      expect(Math.abs(found.probability - printed)).toBeLessThan(0.005);
    },
  );

  it('averages back to the prior over both results', () => {
    fc.assert(
      fc.property(inside, inside, inside, (prior, sensitivity, falsePositiveRate) => {
        const test = { sensitivity, falsePositiveRate };
        const yes = bayesBinary(prior, test, true);
        const no = bayesBinary(prior, test, false);
        if (yes.kind !== 'estimated' || no.kind !== 'estimated') throw new Error('expected posteriors');
        expect(yes.evidence + no.evidence).toBeCloseTo(1, 12);
        expect(yes.evidence * yes.probability + no.evidence * no.probability).toBeCloseTo(prior, 12);
      }),
      { seed: 36, numRuns: 200 },
    );
  });

  it('says when a result cannot happen', () => {
    expect(bayesBinary(0, { sensitivity: 0.9, falsePositiveRate: 0 }, true)).toEqual({
      kind: 'impossibleResult',
    });
    expect(bayesBinary(1, { sensitivity: 0.9, falsePositiveRate: 0 }, true)).toMatchObject({
      probability: 1,
    });
    expect(() => bayesBinary(1.1, { sensitivity: 0.9, falsePositiveRate: 0 }, true)).toThrow(RangeError);
  });
});

describe('noisyOr', () => {
  // Russell & Norvig, AIMA, fever table: inhibitions cold 0.6, flu 0.2, malaria 0.1.
  it.each([
    [[], 0],
    [[0.9], 0.9],
    [[0.8], 0.8],
    [[0.8, 0.9], 0.98],
    [[0.4], 0.4],
    [[0.4, 0.9], 0.94],
    [[0.4, 0.8], 0.88],
    [[0.4, 0.8, 0.9], 0.988],
  ])('of strengths %p is %d', (strengths, fever) => {
    expect(noisyOr(strengths)).toBeCloseTo(fever, 14);
  });

  it('is the leak without a cause, certain with a certain cause, and grows with every cause', () => {
    expect(noisyOr([], 0.25)).toBeCloseTo(0.25, 15);
    expect(noisyOr([1, 0.2], 0.3)).toBe(1);
    expect(noisyOr([0.5], 1)).toBe(1);
    fc.assert(
      fc.property(fc.array(chance, { maxLength: 8 }), chance, chance, (strengths, more, leak) => {
        expect(noisyOr([...strengths, more], leak)).toBeGreaterThanOrEqual(noisyOr(strengths, leak) - 1e-15);
      }),
      { seed: 37, numRuns: 200 },
    );
    expect(() => noisyOr([1.5])).toThrow(RangeError);
    expect(() => noisyOr([], -0.1)).toThrow(RangeError);
  });
});

describe('noisyOrPosterior', () => {
  function judged(...args: Parameters<typeof noisyOrPosterior>): NoisyOrPosterior {
    const outcome = noisyOrPosterior(...args);
    if (outcome.kind !== 'estimated') throw new Error(outcome.kind);
    return outcome;
  }

  it('gives the fever example with priors (generate.R)', () => {
    const found = judged([0.1, 0.05, 0.01], [{ present: true, strengths: [0.4, 0.8, 0.9], leak: 0 }]);
    expect(Math.abs(Math.exp(found.logEvidence) / 0.0866944 - 1)).toBeLessThan(1e-9);
    [0.495053890447, 0.467001328806, 0.104717259708].forEach((value, i) => {
      expect(Math.abs(found.marginals[i]! / value - 1)).toBeLessThan(1e-9);
    });
    expect(found.noneProbability).toBe(0);
    // Cold alone 0.1 · 0.95 · 0.99 · 0.4 = 0.03762 beats flu alone 0.9 · 0.05 · 0.99 · 0.8 = 0.03564.
    expect(found.mostProbable.holds).toEqual([true, false, false]);
    expect(found.mostProbable.probability).toBeCloseTo(0.03762 / 0.0866944, 12);
  });

  it('agrees with two hypotheses worked by hand', () => {
    // Priors ½ and ½; one finding absent with strengths ½ and 1, no leak: the second cannot hold; the first halves.
    // Weights: neither ¼, first ¼ · ½. First holds: ⅛ / (¼ + ⅛) = ⅓.
    const found = judged([0.5, 0.5], [{ present: false, strengths: [0.5, 1], leak: 0 }]);
    expect(found.marginals[0]!).toBeCloseTo(1 / 3, 14);
    expect(found.marginals[1]).toBe(0);
    expect(found.noneProbability).toBeCloseTo(2 / 3, 14);
    expect(found.mostProbable.holds).toEqual([false, false]);
  });

  it('is Bayes where there is one hypothesis', () => {
    fc.assert(
      fc.property(inside, inside, inside, fc.boolean(), (prior, strength, leak, present) => {
        const test = { sensitivity: noisyOr([strength], leak), falsePositiveRate: leak };
        const expected = bayesBinary(prior, test, present);
        const found = judged([prior], [{ present, strengths: [strength], leak }]);
        if (expected.kind !== 'estimated') throw new Error(expected.kind);
        expect(found.marginals[0]!).toBeCloseTo(expected.probability, 11);
        expect(Math.exp(found.logEvidence)).toBeCloseTo(expected.evidence, 11);
      }),
      { seed: 38, numRuns: 200 },
    );
  });

  it('leaves the priors alone without findings, and ignores their order', () => {
    const priors = fc.array(inside, { minLength: 1, maxLength: 5 });
    const settings = fc.array(fc.tuple(fc.boolean(), inside, inside), { maxLength: 4 });
    fc.assert(
      fc.property(priors, settings, (list, rows) => {
        judged(list, []).marginals.forEach((p, i) => expect(p).toBeCloseTo(list[i]!, 12));
        const findings = rows.map(([present, strength, leak]) => ({
          present,
          strengths: list.map((_, i) => strength / (i + 1)),
          leak,
        }));
        const forward = judged(list, findings).marginals;
        judged(list, findings.toReversed()).marginals.forEach((p, i) =>
          expect(p).toBeCloseTo(forward[i]!, 10),
        );
      }),
      { seed: 39, numRuns: 100 },
    );
  });

  it('does not underflow under hundreds of findings', () => {
    const findings = Array.from({ length: 500 }, () => ({
      present: true,
      strengths: [0.02, 0.01],
      leak: 0.001,
    }));
    const found = judged([0.1, 0.1], findings);
    expect(found.logEvidence).toBeLessThan(-745);
    expect(found.marginals[0]!).toBeGreaterThan(0.999999);
  });

  it('says when the findings cannot happen, and refuses bad arguments', () => {
    expect(noisyOrPosterior([0.5], [{ present: true, strengths: [0], leak: 0 }])).toEqual({
      kind: 'impossibleFindings',
    });
    expect(() => noisyOrPosterior([0.5], [{ present: true, strengths: [], leak: 0 }])).toThrow(RangeError);
    expect(() =>
      noisyOrPosterior(
        Array.from({ length: 19 }, () => 0.1),
        [],
      ),
    ).toThrow(RangeError);
    expect(() => noisyOrPosterior([-0.1], [])).toThrow(RangeError);
    expect(judged([], [])).toMatchObject({ marginals: [], logEvidence: 0, noneProbability: 1 });
    expect(judged([0, 1], [])).toMatchObject({ marginals: [0, 1] });
  });
});

describe('entropy and informationGain', () => {
  it('count the yes-or-no answers still missing', () => {
    expect(entropy([0.25, 0.25, 0.25, 0.25])).toBe(2);
    expect(entropy([0.5, 0.25, 0.25])).toBe(1.5);
    expect(entropy([1, 0])).toBe(0);
    expect(() => entropy([0.5, 0.4])).toThrow(RangeError);
    expect(() => entropy([])).toThrow(RangeError);
  });

  it('agree with a test worked by hand', () => {
    // Four equal cases, a sure test that is positive for the first only: 2 bits before; positive (¼) leaves none,
    // negative (¾) leaves log2 3. Gain 2 − ¾ · 1.5849625 = 0.8112781.
    const found = informationGain([1, 0, 0, 0].map((positiveRate) => ({ probability: 0.25, positiveRate })));
    expect(found.before).toBe(2);
    expect(found.gain).toBeCloseTo(2 - 0.75 * Math.log2(3), 14);
    expect(found.ifPositive).toEqual([1, 0, 0, 0]);
    expect(found.ifNegative).toEqual([0, 1 / 3, 1 / 3, 1 / 3]);
  });

  it('give nothing for a test that treats all cases alike, and null for a result that cannot happen', () => {
    const blind = informationGain([0.2, 0.8].map((probability) => ({ probability, positiveRate: 0.3 })));
    expect(blind.gain).toBeCloseTo(0, 14);
    const never = informationGain([0.2, 0.8].map((probability) => ({ probability, positiveRate: 0 })));
    expect(never).toMatchObject({ gain: 0, ifPositive: null, positiveProbability: 0 });
    expect(() => informationGain([{ probability: 1, positiveRate: 2 }])).toThrow(RangeError);
  });

  it('stay between nothing and both one bit and what was missing', () => {
    const weighted = fc.array(fc.tuple(fc.integer({ min: 1, max: 100 }), chance), {
      minLength: 1,
      maxLength: 8,
    });
    fc.assert(
      fc.property(weighted, (rows) => {
        const total = rows.reduce((sum, [weight]) => sum + weight, 0);
        const cases = rows.map(([weight, positiveRate]) => ({ probability: weight / total, positiveRate }));
        const { gain, before } = informationGain(cases);
        expect(gain).toBeGreaterThanOrEqual(0);
        expect(gain).toBeLessThanOrEqual(Math.min(1, before) + 1e-12);
        const swapped = informationGain(cases.map((c) => ({ ...c, positiveRate: 1 - c.positiveRate })));
        expect(swapped.gain).toBeCloseTo(gain, 11);
      }),
      { seed: 40, numRuns: 200 },
    );
  });
});
