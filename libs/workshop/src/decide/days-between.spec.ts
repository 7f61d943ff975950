import { daysBetween } from './days-between.js';

describe('days between two days', () => {
  it('counts whole days over a change of the clocks and a leap day', () => {
    expect(daysBetween('2026-03-28', '2026-03-30')).toBe(2);
    expect(daysBetween('2028-02-28', '2028-03-01')).toBe(2);
    expect(daysBetween('2026-03-05', '2026-03-05')).toBe(0);
  });
});
