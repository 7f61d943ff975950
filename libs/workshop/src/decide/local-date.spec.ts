import { daysBetween, localDateOf } from './local-date.js';

describe('days of the shop', () => {
  it('the same moment is another day east and west of the date', () => {
    expect(localDateOf('2026-03-01T23:30:00.000Z', 'Europe/Lisbon')).toBe('2026-03-01');
    expect(localDateOf('2026-03-01T23:30:00.000Z', 'Asia/Tokyo')).toBe('2026-03-02');
    expect(localDateOf('2026-03-01T03:30:00.000Z', 'America/New_York')).toBe('2026-02-28');
  });

  it('counts whole days over a change of the clocks and a leap day', () => {
    expect(daysBetween('2026-03-28', '2026-03-30')).toBe(2);
    expect(daysBetween('2028-02-28', '2028-03-01')).toBe(2);
    expect(daysBetween('2026-03-05', '2026-03-05')).toBe(0);
  });
});
