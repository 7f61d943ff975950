import fc from 'fast-check';
import { attentionReasons, rankVehicles } from './rank-vehicles.js';
import { serviceDue, type ServiceState } from './service-due.js';
import { downtimeOf } from './downtime.js';

const soon = { days: 30, km: 1000 };
const van: ServiceState = {
  today: 1000,
  nowKm: 52_000,
  kmPerDay: 50,
  last: { day: 900, km: 45_000 },
  firstUse: 0,
};

describe('when a service is due', () => {
  it('is the earlier of date and distance: 8,000 km left at 50 km a day are 160 days, the year is up in 265', () => {
    // Done on day 900 at 45,000 km, every 365 days or 15,000 km: due on day 1265 or at 60,000 km.
    expect(serviceDue({ days: 365, km: 15_000 }, van, soon)).toEqual({
      standing: 'later',
      basis: 'lastDone',
      dueDay: 1265,
      dueKm: 60_000,
      daysLeft: 265,
      kmLeft: 8000,
      expectedDay: 1160,
      reachedFirst: 'distance',
      isDistanceUnknown: false,
    });
  });

  it('is overdue on the day and on the kilometre, and due soon just before', () => {
    const byKm = (km: number) => serviceDue({ days: null, km }, van, soon).standing;
    // 7,000 km were driven since; 50 km a day make 30 days of 1,500 km, more than the 1,000 km that are soon.
    expect([byKm(7000), byKm(7001), byKm(8500), byKm(8501)]).toEqual([
      'overdue',
      'dueSoon',
      'dueSoon',
      'later',
    ]);
    const byDay = (days: number) => serviceDue({ days, km: null }, van, soon).standing;
    expect([byDay(100), byDay(101), byDay(130), byDay(131)]).toEqual([
      'overdue',
      'dueSoon',
      'dueSoon',
      'later',
    ]);
  });

  it('falls back to days where the distance is not known, and says so', () => {
    const lost = serviceDue({ days: 365, km: 15_000 }, { ...van, nowKm: null }, soon);
    expect([lost.reachedFirst, lost.expectedDay, lost.isDistanceUnknown]).toEqual(['date', 1265, true]);
    const unread = serviceDue({ days: null, km: 15_000 }, { ...van, last: { day: 900, km: null } }, soon);
    expect([unread.standing, unread.reachedFirst, unread.isDistanceUnknown]).toEqual(['unknown', null, true]);
  });

  it('counts what was never done from first use, and without that knows nothing', () => {
    expect(serviceDue({ days: 400, km: 40_000 }, { ...van, last: null }, soon)).toMatchObject({
      standing: 'overdue',
      basis: 'firstUse',
      dueDay: 400,
      dueKm: 40_000,
      kmLeft: -12_000,
      expectedDay: 400,
    });
    expect(serviceDue({ days: 400, km: null }, { ...van, last: null, firstUse: null }, soon)).toMatchObject({
      standing: 'unknown',
      basis: 'none',
      dueDay: null,
    });
  });

  it('refuses an interval of nothing, and numbers that are none', () => {
    expect(() => serviceDue({ days: null, km: null }, van, soon)).toThrow(RangeError);
    expect(() => serviceDue({ days: 0, km: null }, van, soon)).toThrow(RangeError);
    expect(() => serviceDue({ days: 1, km: null }, { ...van, nowKm: Number.NaN }, soon)).toThrow(RangeError);
    const last = { day: Number.NaN, km: null };
    expect(() => serviceDue({ days: 1, km: null }, { ...van, last }, soon)).toThrow(RangeError);
    expect(() => serviceDue({ days: 1, km: null }, van, { days: Number.NaN, km: 1 })).toThrow(RangeError);
  });

  it('never moves away as time passes and kilometres are driven', () => {
    const order = { later: 0, dueSoon: 1, overdue: 2, unknown: -1 };
    fc.assert(
      fc.property(fc.nat(400), fc.nat(400), fc.integer({ min: 1, max: 500 }), (a, b, days) => {
        const [early, late] = [Math.min(a, b), Math.max(a, b)];
        const at = (passed: number) =>
          order[
            serviceDue(
              { days, km: 10_000 },
              { ...van, today: 1000 + passed, nowKm: 52_000 + 50 * passed },
              soon,
            ).standing
          ];
        expect(at(late)).toBeGreaterThanOrEqual(at(early));
      }),
      { seed: 20, numRuns: 200 },
    );
  });
});

describe('vehicles in the order of what is coming', () => {
  it('a dangerous finding stands before any number of overdue services, and more of one reason before fewer', () => {
    const ranked = rankVehicles([
      { vehicleId: 'a', reasons: [{ reason: 'overdueService', count: 9 }], daysToService: -90 },
      { vehicleId: 'b', reasons: [], daysToService: 5 },
      {
        vehicleId: 'c',
        reasons: [
          { reason: 'serviceDueSoon', count: 1 },
          { reason: 'dangerousFinding', count: 1 },
        ],
        daysToService: 3,
      },
      { vehicleId: 'd', reasons: [{ reason: 'overdueService', count: 2 }], daysToService: -200 },
      { vehicleId: 'e', reasons: [], daysToService: null },
    ]);
    expect(ranked.map(({ vehicleId }) => vehicleId)).toEqual(['c', 'a', 'd', 'b', 'e']);
    expect(ranked[0]?.reasons.map(({ reason }) => reason)).toEqual(['dangerousFinding', 'serviceDueSoon']);
  });

  it('is the same whatever the order in which they come, and loses none', () => {
    const vehicle = fc.record({
      reasons: fc.array(
        fc.record({ reason: fc.constantFrom(...attentionReasons), count: fc.integer({ min: 1, max: 4 }) }),
        { maxLength: 4 },
      ),
      daysToService: fc.option(fc.integer({ min: -50, max: 50 })),
    });
    fc.assert(
      fc.property(fc.array(vehicle, { maxLength: 12 }), (made) => {
        const vehicles = made.map((each, place) => ({
          ...each,
          vehicleId: `v${String(place).padStart(2, '0')}`,
        }));
        const ids = (given: typeof vehicles) => rankVehicles(given).map(({ vehicleId }) => vehicleId);
        expect(ids([...vehicles].reverse())).toEqual(ids(vehicles));
        expect([...ids(vehicles)].sort()).toEqual(vehicles.map(({ vehicleId }) => vehicleId));
      }),
      { seed: 21, numRuns: 200 },
    );
  });

  it('refuses a reason behind which there is nothing', () => {
    const empty = {
      vehicleId: 'a',
      reasons: [{ reason: 'comeback', count: 0 }],
      daysToService: null,
    } as const;
    expect(() => rankVehicles([empty])).toThrow(RangeError);
  });
});

describe('days a vehicle stands in the workshop', () => {
  const on = (day: number): string =>
    new Date(Date.parse('2030-01-01T00:00:00Z') + day * 86_400_000).toISOString();
  const visit = {
    openedAt: on(10),
    leftAt: on(20),
    changes: [
      { at: on(16), reason: 'inWork' as const },
      { at: on(11), reason: 'waitingForPart' as const },
      { at: on(19), reason: 'waitingForRelease' as const },
    ],
  };

  it('are told by reason: a day of work, five of waiting for a part, three of work, one until it was released', () => {
    expect(downtimeOf([visit], on(0), on(100))).toEqual({
      days: 10,
      visits: 1,
      byReason: {
        inWork: 4,
        waitingForConsent: 0,
        waitingForPart: 5,
        waitingForBay: 0,
        waitingForRelease: 1,
      },
    });
  });

  it('count only within the time, to its end for a van still here, and once where visits overlap', () => {
    expect(downtimeOf([visit], on(15), on(18))).toMatchObject({
      days: 3,
      byReason: { waitingForPart: 1, inWork: 2 },
    });
    expect(downtimeOf([{ ...visit, leftAt: null, changes: [] }], on(0), on(13)).days).toBe(3);
    const second = { openedAt: on(12), leftAt: on(25), changes: [] };
    expect(downtimeOf([second, visit], on(0), on(100))).toMatchObject({
      days: 15,
      visits: 2,
      byReason: { inWork: 9, waitingForPart: 5 },
    });
    expect(downtimeOf([visit], on(30), on(40))).toMatchObject({ days: 0, visits: 0 });
    // Waiting since before it came counts from when it came: ten days to the thirteenth.
    const early = { ...visit, leftAt: on(13), changes: [{ at: on(2), reason: 'waitingForPart' as const }] };
    expect(downtimeOf([early], on(0), on(100))).toMatchObject({ days: 3, byReason: { waitingForPart: 3 } });
    expect(() => downtimeOf([visit], on(9), on(3))).toThrow(RangeError);
  });
});
