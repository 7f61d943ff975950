import fc from 'fast-check';
import { orderByAge } from './age-order.js';

const rowsOf = (ages: readonly number[]): Uint32Array<ArrayBuffer> => Uint32Array.from(ages, (_, row) => row);

describe('orderByAge', () => {
  it('orders long columns as comparison does, ties in the order of their rows', () => {
    // Ages of very different size, whole and broken, many of them tied; seed 2.
    const age = fc.oneof(
      fc.double({ min: 0, max: 1e300, noNaN: true }),
      fc.integer({ min: 0, max: 5 }),
      fc.constantFrom(0, -0, Number.MIN_VALUE, 1, 1 + Number.EPSILON),
    );
    fc.assert(
      fc.property(fc.array(age, { minLength: 1001, maxLength: 1500 }), (ages) => {
        const expected = [...rowsOf(ages)].sort((a, b) => ages[a]! - ages[b]! || a - b);
        const ordered = orderByAge(rowsOf(ages), (row) => ages[row]!);
        expect(Array.from(ordered.rows)).toEqual(expected);
        expect(Array.from(ordered.ages)).toEqual(expected.map((row) => ages[row]! + 0));
      }),
      { seed: 2, numRuns: 20 },
    );
  });

  it('orders short columns, and none', () => {
    const ordered = orderByAge(Uint32Array.of(4, 2, 7), (place) => [5, 5, 1][place]!);
    expect(Array.from(ordered.rows)).toEqual([7, 4, 2]);
    expect(Array.from(ordered.ages)).toEqual([1, 5, 5]);
    expect(orderByAge(new Uint32Array(0), () => 0).rows).toHaveLength(0);
  });

  it('orders only the rows it is given', () => {
    const rows = Uint32Array.from({ length: 1200 }, (_, i) => 2 * i);
    const ordered = orderByAge(rows, (place) => 5000 - place);
    expect(Array.from(ordered.rows)).toEqual(Array.from(rows).reverse());
  });
});
