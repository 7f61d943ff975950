import { claimStandingAfter } from './claim-standing.js';
import { lastDayOfMonths, warrantyCoverOn } from './warranty-cover.js';

describe('claims on suppliers', () => {
  it('are sent, accepted and settled, or refused and sent again', () => {
    expect(claimStandingAfter([])).toEqual({ state: 'open', next: ['sent', 'withdrawn'], isOpen: true });
    expect(claimStandingAfter(['sent', 'accepted'])).toMatchObject({ next: ['settled'], isOpen: true });
    expect(claimStandingAfter(['sent', 'refused']).next).toContain('sent');
    expect(claimStandingAfter(['sent', 'accepted', 'settled'])).toMatchObject({ next: [], isOpen: false });
  });
});

describe('warranty of a part', () => {
  const terms = { months: 12, km: 20000 };

  it('holds to the last day of its months and to the last kilometre, and ends with whichever comes first', () => {
    expect(warrantyCoverOn(terms, '2026-01-15', '2027-01-15', 20000)).toEqual({ kind: 'covered' });
    expect(warrantyCoverOn(terms, '2026-01-15', '2027-01-16', 100)).toEqual({ kind: 'ended', by: 'months' });
    expect(warrantyCoverOn(terms, '2026-01-15', '2026-05-01', 20000.1)).toEqual({
      kind: 'ended',
      by: 'distance',
    });
  });

  it('is unknown where a bound cannot be looked at, unless the other one has passed', () => {
    expect(warrantyCoverOn(terms, '2026-01-15', '2026-05-01', null)).toEqual({ kind: 'unknown' });
    expect(warrantyCoverOn(terms, null, '2026-05-01', 21000)).toEqual({ kind: 'ended', by: 'distance' });
    expect(warrantyCoverOn({ months: null, km: null }, '2026-01-15', '2026-05-01', 1)).toEqual({
      kind: 'unknown',
    });
  });

  it('months end on the same day of the month, or on its last one', () => {
    expect(lastDayOfMonths('2026-01-31', 1)).toBe('2026-02-28');
    expect(lastDayOfMonths('2028-01-31', 1)).toBe('2028-02-29');
    expect(lastDayOfMonths('2026-11-30', 3)).toBe('2027-02-28');
    expect(lastDayOfMonths('2026-06-12', 0)).toBe('2026-06-12');
    expect(() => lastDayOfMonths('2026-13-40', 1)).toThrow(RangeError);
    expect(() => lastDayOfMonths('2026-02-30', 1)).toThrow(RangeError);
    expect(() => warrantyCoverOn(terms, null, 'yesterday', 5)).toThrow(RangeError);
    expect(() => warrantyCoverOn(terms, '2026-01-15', '2026-05-01', -1)).toThrow(RangeError);
  });
});
