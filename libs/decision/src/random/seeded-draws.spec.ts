import { drawsFromState, seededDraws } from './seeded-draws.js';

describe('seeded draws', () => {
  it('gives the outputs of the reference implementation from the state published with them', () => {
    // Test data made with the authors' C code, as published in the test ROM of edorfaus/xoshiro-6502.
    const draws = drawsFromState([0x964d4a0c, 0xd40ab895, 0xad7fdecb, 0x3006f0f0]);
    expect(Array.from({ length: 4 }, () => draws.bits())).toEqual([
      0xf1391922, 0x6fe53806, 0xa5be2840, 0xf510ee70,
    ]);
  });

  it('repeats its stream from the same seed and gives another from another', () => {
    const stream = (seed: number) => {
      const draws = seededDraws(seed);
      return Array.from({ length: 5 }, () => draws.normal());
    };
    expect(stream(7)).toEqual(stream(7));
    expect(stream(7)).not.toEqual(stream(8));
    expect(stream(0)).toHaveLength(5);
  });

  it('has normal draws with mean 0, variance 1 and uniforms with mean 1/2 (five standard errors)', () => {
    const draws = seededDraws(1);
    const count = 40_000;
    const normals = Array.from({ length: count }, () => draws.normal());
    const mean = normals.reduce((sum, x) => sum + x, 0) / count;
    const variance = normals.reduce((sum, x) => sum + x * x, 0) / count - mean * mean;
    expect(Math.abs(mean)).toBeLessThan(5 / Math.sqrt(count));
    expect(Math.abs(variance - 1)).toBeLessThan(5 * Math.sqrt(2 / count));
    const uniforms = Array.from({ length: count }, () => draws.uniform());
    expect(Math.abs(uniforms.reduce((sum, x) => sum + x, 0) / count - 0.5)).toBeLessThan(
      5 * Math.sqrt(1 / 12 / count),
    );
  });

  it.each([-1, 0.5, 4294967296, NaN])('refuses %p as a seed', (seed) => {
    expect(() => seededDraws(seed)).toThrow(RangeError);
  });
});
