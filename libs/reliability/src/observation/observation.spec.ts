import fc from 'fast-check';
import { distanceAt } from './distance-at.js';
import { observedSpans, type WatchFacts } from './observed-spans.js';

const start = Date.parse('2030-01-01T00:00:00Z');
const onDay = (days: number): string => new Date(start + days * 86_400_000).toISOString();
const daysOf = ({ spans }: { spans: readonly { from: number; until: number }[] }) =>
  spans.map(({ from, until }) => [(from - start) / 86_400_000, (until - start) / 86_400_000]);

const unknownVan: WatchFacts = {
  stated: [],
  knownSince: onDay(0),
  contacts: [],
  firstUsedAt: null,
  retiredAt: null,
  owners: [],
};
const until = (days: number, customerId?: string) => ({
  until: onDay(days),
  watchedAfterContactDays: 100,
  customerId,
});

describe('when a vehicle was watched', () => {
  it('without a stated stretch: from contact to contact, and unseen after a silence longer than 100 days', () => {
    // Known on day 0, back on days 80 and 500. From 80 on it was watched for 100 days; then nobody would have known.
    const van = { ...unknownVan, contacts: [onDay(500), onDay(80)] };
    expect(daysOf(observedSpans(van, until(550)))).toEqual([
      [0, 180],
      [500, 550],
    ]);
    expect(daysOf(observedSpans(van, until(150)))).toEqual([[0, 150]]);
  });

  it('joins late, leaves, and is seen by each customer only while they owned it', () => {
    const van: WatchFacts = {
      ...unknownVan,
      stated: [{ from: onDay(0), until: null }],
      firstUsedAt: onDay(10),
      retiredAt: onDay(400),
      owners: [
        { customerId: 'heron', fromAt: onDay(0) },
        { customerId: 'moss', fromAt: onDay(100) },
        { customerId: 'heron', fromAt: onDay(300) },
      ],
    };
    expect(daysOf(observedSpans(van, until(500)))).toEqual([[10, 400]]);
    expect(daysOf(observedSpans(van, until(500, 'heron')))).toEqual([
      [10, 100],
      [300, 400],
    ]);
    expect(daysOf(observedSpans(van, until(500, 'moss')))).toEqual([[100, 300]]);
    expect(daysOf(observedSpans(van, until(500, 'nobody')))).toEqual([]);
  });

  it('takes overlapping stretches as one and says that they overlap, or that they lie where there was no van', () => {
    const van = {
      ...unknownVan,
      stated: [
        { from: onDay(50), until: onDay(90) },
        { from: onDay(0), until: onDay(60) },
      ],
    };
    const overlapping = observedSpans(van, until(500));
    expect([daysOf(overlapping), overlapping.warnings]).toEqual([[[0, 90]], ['spansOverlap']]);
    const odd = observedSpans({ ...van, firstUsedAt: onDay(20), retiredAt: onDay(80) }, until(500));
    expect([daysOf(odd), odd.warnings]).toEqual([
      [[20, 80]],
      ['spansOverlap', 'spanBeforeFirstUse', 'spanAfterRetirement'],
    ]);
  });

  it('refuses a stretch that ends before it begins, a text that is no instant, and no days after a contact', () => {
    const back = { ...unknownVan, stated: [{ from: onDay(9), until: onDay(3) }] };
    expect(() => observedSpans(back, until(10))).toThrow(RangeError);
    expect(() => observedSpans({ ...unknownVan, knownSince: 'yesterday' }, until(10))).toThrow(RangeError);
    const noDay = { ...unknownVan, knownSince: '2030-02-30T00:00:00Z' };
    expect(() => observedSpans(noDay, until(10))).toThrow(RangeError);
    expect(() => observedSpans(unknownVan, { ...until(10), watchedAfterContactDays: 0 })).toThrow(RangeError);
  });

  it('is divided among the owners: their times add up to that of the vehicle since the first of them', () => {
    const instant = fc.integer({ min: 0, max: 900 });
    fc.assert(
      fc.property(
        fc.array(instant, { maxLength: 6 }),
        fc.uniqueArray(instant, { minLength: 1, maxLength: 4 }),
        (contacts, changes) => {
          const owners = [...changes]
            .sort((a, b) => a - b)
            .map((at, place) => ({
              customerId: `c${String(place % 2)}`,
              fromAt: onDay(place === 0 ? 0 : at),
            }));
          const van = { ...unknownVan, contacts: contacts.map(onDay), owners };
          const total = (customerId?: string) =>
            daysOf(observedSpans(van, until(1000, customerId))).reduce((sum, [a, b]) => sum + b! - a!, 0);
          expect(total('c0') + total('c1')).toBeCloseTo(total(), 6);
        },
      ),
      { seed: 22, numRuns: 200 },
    );
  });
});

describe('the distance of a vehicle at a moment', () => {
  const points = [
    { at: 0, km: 100 },
    { at: 10, km: 200 },
    { at: 10, km: 210 },
    { at: 30, km: 250 },
  ];

  it('lies on a straight line between the readings, and is unknown beyond them', () => {
    expect(distanceAt(points, 5)).toEqual({ kind: 'known', km: 150 });
    expect(distanceAt(points, 20)).toEqual({ kind: 'known', km: 230 });
    expect(distanceAt(points, 30)).toEqual({ kind: 'known', km: 250 });
    expect([distanceAt(points, -1), distanceAt(points, 31), distanceAt([], 0)]).toEqual(
      Array.from({ length: 3 }, () => ({ kind: 'unknown' })),
    );
    expect(() => distanceAt(points, Number.NaN)).toThrow(RangeError);
  });
});
