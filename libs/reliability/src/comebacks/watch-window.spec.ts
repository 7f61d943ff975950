import fc from 'fast-check';
import { differenceOfKm, reachesKm, sumOfKm } from './exact-km.js';
import type { WatchTerms } from './watch-window.js';
import { watchWindow } from './watch-window.js';

const terms: WatchTerms = {
  releasedAt: '2024-01-01T10:00:00Z',
  windowDays: 90,
  windowKm: '5000',
  releasedKm: '120000.4',
};
const seen = (seenAt: string, km: string | null) => ({ seenAt, km });

describe('exact kilometres', () => {
  it('add and subtract without the noise of doubles', () => {
    expect(sumOfKm('0.1', '0.2')).toBe('0.3');
    expect(differenceOfKm('120000.4', '120000.1')).toBe('0.3');
    expect(differenceOfKm('1', '2.50')).toBe('-1.5');
    expect(reachesKm('125000.4', sumOfKm('120000.4', '5000'))).toBe(true);
    expect(() => sumOfKm('1e3', '1')).toThrow(RangeError);
    fc.assert(
      fc.property(fc.nat(10 ** 9), fc.nat(99), fc.nat(10 ** 9), fc.nat(999), (a, b, c, d) => {
        const [first, second] = [`${a}.${b}`, `${c}.${d}`];
        expect(differenceOfKm(sumOfKm(first, second), second)).toBe(sumOfKm(first, '0'));
      }),
      { seed: 20260803, numRuns: 200 },
    );
  });
});

describe('watchWindow', () => {
  it('runs until the minute before its last day ends and is closed at that minute', () => {
    // 1 January 10:00 plus 90 days of 24 hours is 31 March 10:00 (2024 has a 29 February).
    expect(watchWindow(terms, '2024-03-31T09:59:00Z', [])).toMatchObject({
      state: 'running',
      closesAt: '2024-03-31T10:00:00.000Z',
      daysSinceRelease: 89,
    });
    expect(watchWindow(terms, '2024-03-31T10:00:00Z', [])).toMatchObject({
      state: 'elapsed',
      closedBy: 'days',
      closedAt: '2024-03-31T10:00:00.000Z',
      daysSinceRelease: 90,
    });
  });

  it('counts hours of 24, whatever the clocks on the wall do', () => {
    // The same instant, written in the summer time that began in between.
    expect(watchWindow(terms, '2024-03-31T12:00:00+02:00', [])).toMatchObject({ state: 'elapsed' });
    expect(watchWindow(terms, '2024-03-31T11:59:59+02:00', [])).toMatchObject({ state: 'running' });
  });

  it('runs to the kilometre before its distance and is closed on that kilometre', () => {
    const at = (km: string) => watchWindow(terms, '2024-02-01T10:00:00Z', [seen('2024-02-01T10:00:00Z', km)]);
    expect(at('124999.4')).toMatchObject({
      state: 'running',
      kmSinceRelease: '4999',
      closesAtKm: '125000.4',
    });
    expect(at('125000.3')).toMatchObject({ state: 'running', kmSinceRelease: '4999.9' });
    expect(at('125000.4')).toMatchObject({ state: 'elapsed', closedBy: 'distance', kmSinceRelease: '5000' });
  });

  it('is closed by whichever is reached first', () => {
    const far = [seen('2024-03-01T10:00:00Z', '125100'), seen('2024-05-01T10:00:00Z', '130000')];
    expect(watchWindow(terms, '2024-05-02T10:00:00Z', far)).toMatchObject({
      closedBy: 'distance',
      closedAt: '2024-03-01T10:00:00.000Z',
      seen: 'afterClosing',
    });
    const slow = [seen('2024-03-01T10:00:00Z', '122000'), seen('2024-05-01T10:00:00Z', '130000')];
    expect(watchWindow(terms, '2024-05-02T10:00:00Z', slow)).toMatchObject({
      closedBy: 'days',
      closedAt: '2024-03-31T10:00:00.000Z',
    });
  });

  it('goes by days alone where distance cannot be relied on, and says why', () => {
    const reason = (releasedKm: string | null, ...kms: (string | null)[]) =>
      watchWindow(
        { ...terms, releasedKm },
        '2024-03-01T10:00:00Z',
        kms.map((km, index) => seen(`2024-02-0${index + 1}T10:00:00Z`, km)),
      );
    expect(reason(null, '999999')).toMatchObject({ state: 'running', daysOnlyBecause: 'releasedKmUnknown' });
    expect(reason('120000')).toMatchObject({ state: 'running', daysOnlyBecause: 'noDistanceSince' });
    expect(reason('120000', null)).toMatchObject({
      daysOnlyBecause: 'noDistanceSince',
      kmSinceRelease: null,
    });
    expect(reason('120000', '119999')).toMatchObject({
      state: 'running',
      daysOnlyBecause: 'distanceContradicts',
      kmSinceRelease: null,
      closesAtKm: null,
    });
    expect(reason('120000', '130000', '121000')).toMatchObject({
      state: 'running',
      daysOnlyBecause: 'distanceContradicts',
    });
    expect(reason('120000', '130000')).toMatchObject({ state: 'elapsed', daysOnlyBecause: null });
  });

  it('knows a van that was never seen again from one last seen inside and one seen after the window', () => {
    const later = '2024-06-01T10:00:00Z';
    expect(watchWindow(terms, later, [seen('2023-12-01T10:00:00Z', '119000')])).toMatchObject({
      seen: 'neverSince',
      lastSeenAt: null,
    });
    expect(watchWindow(terms, later, [seen('2024-01-20T10:00:00Z', '121000')])).toMatchObject({
      seen: 'onlyInsideWindow',
      lastSeenAt: '2024-01-20T10:00:00Z',
    });
    expect(watchWindow(terms, later, [seen('2024-05-20T10:00:00Z', null)])).toMatchObject({
      seen: 'afterClosing',
    });
  });

  it('does not look ahead of the moment asked about', () => {
    const ahead = [seen('2024-02-20T10:00:00Z', '140000')];
    expect(watchWindow(terms, '2024-02-19T10:00:00Z', ahead)).toMatchObject({
      state: 'running',
      seen: 'neverSince',
    });
  });

  it('refuses a window of nothing, a moment before the release and text that is no instant', () => {
    const now = '2024-02-01T10:00:00Z';
    expect(() => watchWindow({ ...terms, windowDays: 0 }, now, [])).toThrow(RangeError);
    expect(() => watchWindow({ ...terms, windowDays: Number.NaN }, now, [])).toThrow(RangeError);
    expect(() => watchWindow({ ...terms, windowKm: '0.0' }, now, [])).toThrow(RangeError);
    expect(() => watchWindow({ ...terms, windowKm: '-5' }, now, [])).toThrow(RangeError);
    expect(() => watchWindow(terms, '2023-12-31T10:00:00Z', [])).toThrow(RangeError);
    expect(() => watchWindow(terms, '2024-02-01', [])).toThrow(RangeError);
  });

  it('once elapsed stays elapsed, and a longer window never closes before a shorter one', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 200 }),
        fc.integer({ min: 1, max: 9000 }),
        fc.array(fc.tuple(fc.integer({ min: 1, max: 240 }), fc.nat(12000)), { maxLength: 6 }),
        fc.integer({ min: 0, max: 240 }),
        (windowDays, windowKm, visits, today) => {
          const instant = (day: number) =>
            new Date(Date.UTC(2024, 0, 1, 10) + day * 86_400_000).toISOString();
          const days = [...new Set(visits.map(([day]) => day))].sort((a, b) => a - b);
          const kms = visits.map(([, km]) => km).sort((a, b) => a - b);
          const sightings = days.map((day, index) => seen(instant(day), String(120001 + kms[index]!)));
          const at = (day: number, more = 0) =>
            watchWindow(
              { ...terms, windowDays: windowDays + more, windowKm: String(windowKm + more) },
              instant(day),
              sightings,
            );
          if (at(today).state === 'elapsed') expect(at(today + 1).state).toBe('elapsed');
          if (at(today, 50).state === 'elapsed') expect(at(today).state).toBe('elapsed');
        },
      ),
      { seed: 20260804, numRuns: 300 },
    );
  });
});
