import fc from 'fast-check';
import { closesCircle, substitutesOf, type PartRelations } from './part-substitutes.js';

const part = (
  id: string,
  supersededBy: string | null = null,
  interchangesWith: string[] = [],
): PartRelations => ({
  id,
  supersededBy,
  interchangesWith,
});

describe('parts that may stand in for a part', () => {
  it('by hand: a became b became c, and d interchanges with b', () => {
    const parts = [part('a', 'b'), part('b', 'c'), part('c'), part('d', null, ['b'])];
    expect(substitutesOf('a', parts)).toEqual({
      current: 'c',
      chain: ['a', 'b', 'c'],
      substitutes: ['b', 'c', 'd'],
    });
    // A predecessor is not taken to fit where its successor is asked for.
    expect(substitutesOf('c', parts)).toEqual({ current: 'c', chain: ['c'], substitutes: [] });
    expect(substitutesOf('d', parts).substitutes).toEqual(['b', 'c']);
  });

  it('interchange holds both ways, whoever said it', () => {
    const parts = [part('a', null, ['b']), part('b')];
    expect(substitutesOf('b', parts).substitutes).toEqual(['a']);
  });

  it('a circle is found before it is made, and ends where it was made all the same', () => {
    const parts = [part('a', 'b'), part('b', 'c'), part('c')];
    expect(closesCircle('c', 'a', parts)).toBe(true);
    expect(closesCircle('a', 'c', parts)).toBe(false);
    expect(substitutesOf('a', [part('a', 'b'), part('b', 'a')]).chain).toEqual(['a', 'b']);
  });

  it('never names the part itself, and ends for any relations', () => {
    const id = fc.constantFrom('a', 'b', 'c', 'd', 'e');
    const relations = fc.record({
      id,
      supersededBy: fc.option(id),
      interchangesWith: fc.array(id, { maxLength: 3 }),
    });
    fc.assert(
      fc.property(id, fc.array(relations, { maxLength: 8 }), (asked, parts) => {
        const found = substitutesOf(asked, parts);
        expect(found.substitutes).not.toContain(asked);
        expect(found.chain[0]).toBe(asked);
        for (const other of found.chain.slice(1)) expect(found.substitutes).toContain(other);
      }),
      { seed: 67, numRuns: 200 },
    );
  });
});
