import { genfan } from '../../../../test/oracles/statistics-survival/genfan.js';
import { chiSquareCdf } from '../distributions/chi-square.js';
import { weibayes } from './weibayes.js';

describe('weibayes', () => {
  it('gives the value worked by hand', () => {
    // Shape 2, ages 3 (event), 4 (event), 12 (none): Σ t² = 9 + 16 + 144 = 169, over 2 events 84.5, root 9.192….
    const outcome = weibayes({ ages: [3, 4, 12], events: [1, 1, 0] }, 2);
    expect(outcome.kind).toBe('estimated');
    if (outcome.kind !== 'estimated') return;
    expect(outcome.characteristicLife).toBeCloseTo(Math.sqrt(84.5), 12);
    // Limits by their definition: at the lower one a Poisson count with mean 169/η² has P(≤ 2) = 0.025; P(≥ 2) at the upper.
    const atLower = 169 / outcome.lower ** 2;
    const atUpper = 169 / outcome.upper ** 2;
    expect(Math.exp(-atLower) * (1 + atLower + atLower ** 2 / 2)).toBeCloseTo(0.025, 10);
    expect(1 - Math.exp(-atUpper) * (1 + atUpper)).toBeCloseTo(0.025, 10);
  });

  it('gives the exponential mean of the generator fans for shape 1', () => {
    const outcome = weibayes(genfan, 1);
    expect(outcome).toMatchObject({ kind: 'estimated', events: 12 });
    if (outcome.kind !== 'estimated') return;
    expect(outcome.characteristicLife / (344440 / 12)).toBeCloseTo(1, 12);
    expect(chiSquareCdf((2 * 344440) / outcome.lower, 26)).toBeCloseTo(0.975, 10);
    expect(chiSquareCdf((2 * 344440) / outcome.upper, 24)).toBeCloseTo(0.025, 10);
  });

  it('gives a one-sided limit without events: survival of the whole exposure has the doubt that is left', () => {
    // Shape 3, two units to age 2: Σ t³ = 16; exp(−16/η³) = 0.05 at the limit.
    const outcome = weibayes({ ages: [2, 2], events: [0, 0] }, 3);
    expect(outcome.kind).toBe('lowerLimitOnly');
    if (outcome.kind === 'lowerLimitOnly') expect(Math.exp(-16 / outcome.lower ** 3)).toBeCloseTo(0.05, 12);
  });

  it('takes off what was lived before entry, and says when nothing was observed', () => {
    // (3² − 1²) + 2² = 12 with one event and shape 2.
    const outcome = weibayes({ ages: [3, 2], events: [1, 0], entryAges: [1, 0] }, 2);
    if (outcome.kind !== 'estimated') throw new Error(outcome.kind);
    expect(outcome.characteristicLife).toBeCloseTo(Math.sqrt(12), 12);
    expect(weibayes({ ages: [], events: [] }, 2).kind).toBe('insufficientData');
    expect(weibayes({ ages: [0], events: [0] }, 2).kind).toBe('insufficientData');
    expect(() => weibayes({ ages: [1], events: [1] }, 0)).toThrow(RangeError);
  });
});
