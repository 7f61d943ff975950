import { judgementTables } from '../tables/judgement-tables.js';
import { recalled } from './recalled.js';

describe('what follows from tables', () => {
  it('is worked out once a key and apart for other tables', () => {
    const tables = { ...judgementTables };
    let calls = 0;
    const make = () => [(calls += 1)];
    const first = recalled(tables, 'a', make);
    expect(recalled(tables, 'a', make)).toBe(first);
    expect(recalled(tables, 'b', make)).toEqual([2]);
    expect(recalled({ ...judgementTables }, 'a', make)).toEqual([3]);
  });

  it('drops the oldest beyond its bound, and works it out again', () => {
    const tables = { ...judgementTables };
    let calls = 0;
    for (let k = 0; k < 1300; k += 1) recalled(tables, String(k), () => [k]);
    expect(recalled(tables, '1299', () => [(calls += 1)])).toEqual([1299]);
    expect(recalled(tables, '0', () => [-1])).toEqual([-1]);
    expect(calls).toBe(0);
  });
});
