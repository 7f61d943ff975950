import fc from 'fast-check';
import { decodeCursor, encodeCursor } from './cursor.js';

const key = 'a key that only this test knows';

describe('cursors', () => {
  it('give back the position they were made of, whatever text it sorts by', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), fc.uuid(), fc.string(), (sortValue, id, list) => {
        const cursor = encodeCursor({ sortValue, id }, list, key);
        expect(cursor).toMatch(/^[A-Za-z0-9_-]+\.[A-Za-z0-9_-]+$/);
        expect(decodeCursor(cursor, list, key)).toEqual({ sortValue, id });
      }),
      { seed: 3, numRuns: 200 },
    );
  });

  it('are refused when one character is changed, for another list, and under another key', () => {
    const cursor = encodeCursor({ sortValue: 'm', id: 'x' }, 'list', key);
    for (let at = 0; at < cursor.length - 1; at++) {
      const changed = `${cursor.slice(0, at)}${cursor[at] === 'A' ? 'B' : 'A'}${cursor.slice(at + 1)}`;
      expect(() => decodeCursor(changed, 'list', key)).toThrow('invalid-cursor');
    }
    expect(() => decodeCursor(cursor, 'other list', key)).toThrow('invalid-cursor');
    expect(() => decodeCursor(cursor, 'list', 'another key')).toThrow('invalid-cursor');
  });
});
