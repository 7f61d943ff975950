import fc from 'fast-check';
import { watchWindow } from '../comebacks/watch-window.js';
import { settleJobs, type VehicleJobs } from './settle-jobs.js';

const start = Date.parse('2026-01-01T10:00:00.000Z');
const onDay = (days: number): string => new Date(start + days * 86_400_000).toISOString();
const release = (jobId: string, day: number, releasedKm: string | null = null) => ({
  jobId,
  releasedAt: onDay(day),
  windowDays: 90,
  windowKm: '5000',
  releasedKm,
});
const complaint = (
  complaintId: string,
  day: number,
  jobId: string | null = null,
  km: string | null = null,
) => ({
  complaintId,
  jobId,
  receivedAt: onDay(day),
  km,
});
const link = (complaintId: string, jobId: string) => ({
  comebackId: `${complaintId}>${jobId}`,
  complaintId,
  jobId,
});
const nothing: VehicleJobs = { releases: [], complaints: [], sightings: [], confirmed: [] };

describe('settled jobs of a vehicle', () => {
  it('close at 90 days to the minute; what comes at the closing minute is outside', () => {
    const minute = 1 / 1440;
    const settled = (day: number) =>
      settleJobs({
        ...nothing,
        releases: [release('a', 0)],
        complaints: [complaint('c', day)],
        confirmed: [link('c', 'a')],
      })[0];
    expect(settled(90 - minute)).toMatchObject({ comebackAt: onDay(90 - minute), closesAt: onDay(90) });
    expect(settled(90)).toMatchObject({ comebackAt: null, anyComebackAt: onDay(90), comebacks: [] });
  });

  it('close on the kilometre at the sighting that shows it, and by days where a later reading contradicts', () => {
    const at = (km: string, more: VehicleJobs['sightings'] = []) =>
      settleJobs({
        ...nothing,
        releases: [release('a', 0, '97000')],
        sightings: [{ seenAt: onDay(30), km }, ...more],
      })[0];
    expect(at('101999.9')).toMatchObject({ closedBy: 'days', closesAt: onDay(90) });
    expect(at('102000')).toMatchObject({ closedBy: 'distance', closesAt: onDay(30) });
    // A cluster replaced and not entered as such: 12 km after 102,000. Distance says nothing any more.
    expect(at('102000', [{ seenAt: onDay(40), km: '12' }])).toMatchObject({
      closedBy: 'days',
      closesAt: onDay(90),
      daysOnlyBecause: 'distanceContradicts',
    });
  });

  it('give a comeback of a comeback to the first job, and count the repeats with it', () => {
    const settled = settleJobs({
      ...nothing,
      releases: [release('a', 0), release('b', 21), release('d', 101)],
      complaints: [complaint('c1', 20, 'b'), complaint('c2', 100, 'd')],
      confirmed: [link('c1', 'a'), link('c2', 'b')],
    });
    expect(settled.map(({ jobId, repeatOf }) => [jobId, repeatOf])).toEqual([
      ['a', []],
      ['b', ['a']],
      ['d', ['a']],
    ]);
    expect(settled.map(({ comebacks }) => comebacks.map(({ complaintId }) => complaintId))).toEqual([
      ['c1', 'c2'],
      [],
      [],
    ]);
  });

  it('do not take a job for a repeat that answered a complaint outside the window', () => {
    const settled = settleJobs({
      ...nothing,
      releases: [release('a', 0), release('b', 121)],
      complaints: [complaint('c', 120, 'b')],
      confirmed: [link('c', 'a')],
    });
    expect(settled.map(({ repeatOf }) => repeatOf)).toEqual([[], []]);
  });

  it('share a complaint of two jobs, and leave no job in a circle where dates contradict', () => {
    const shared = settleJobs({
      ...nothing,
      releases: [release('a', 0), release('b', 5)],
      complaints: [complaint('c', 20)],
      confirmed: [link('c', 'a'), link('c', 'b')],
    });
    expect(shared.map(({ comebacks }) => comebacks)).toMatchObject([
      [{ originals: 2, bearsRest: true }],
      [{ originals: 2, bearsRest: false }],
    ]);
    const circle = settleJobs({
      ...nothing,
      releases: [release('a', 0), release('b', 1)],
      complaints: [complaint('c', 10, 'b'), complaint('d', 11, 'a')],
      confirmed: [link('c', 'a'), link('d', 'b')],
    });
    expect(circle.map(({ jobId, repeatOf }) => [jobId, repeatOf])).toEqual([
      ['a', []],
      ['b', ['a']],
    ]);
  });

  it('agree with the watch window asked at each complaint, and give every comeback to exactly its first jobs', () => {
    const day = fc.integer({ min: 1, max: 250 });
    const vehicle = fc
      .record({
        releases: fc.uniqueArray(fc.integer({ min: 0, max: 200 }), { minLength: 1, maxLength: 5 }),
        complaints: fc.array(fc.record({ day, job: fc.nat(4), of: fc.nat(4) }), { maxLength: 6 }),
        seen: fc.array(day, { maxLength: 4 }),
      })
      .map(({ releases, complaints, seen }) => {
        const jobs = releases.map((at, n) => release(`j${n}`, at, String(1000 * at)));
        const pick = (n: number) => jobs[n % jobs.length]!.jobId;
        return {
          releases: jobs,
          complaints: complaints.map(({ day: at, job }, n) => complaint(`c${n}`, at + 0.5, pick(job))),
          // Distance grows by 50 km a day beyond the last release, so it never contradicts: days and distance both matter.
          sightings: seen.map((at) => ({ seenAt: onDay(at), km: String(1000 * at) })),
          confirmed: complaints.map(({ of }, n) => link(`c${n}`, pick(of))),
        };
      });
    fc.assert(
      fc.property(vehicle, (given) => {
        const settled = settleJobs(given);
        const all = [
          ...given.sightings,
          ...given.complaints.map(({ receivedAt, km }) => ({ seenAt: receivedAt, km })),
        ];
        for (const job of settled) {
          const terms = given.releases.find(({ jobId }) => jobId === job.jobId)!;
          const inside = given.confirmed
            .filter(({ jobId }) => jobId === job.jobId)
            .map(({ complaintId }) => given.complaints.find((each) => each.complaintId === complaintId)!)
            .filter(({ jobId, receivedAt }) => jobId !== job.jobId && receivedAt > terms.releasedAt)
            .filter(({ receivedAt }) => watchWindow(terms, receivedAt, all).state === 'running')
            .map(({ receivedAt }) => receivedAt)
            .sort();
          expect(job.comebackAt).toBe(inside[0] ?? null);
          if (job.repeatOf.length > 0) expect(job.comebacks).toEqual([]);
        }
        const shares = new Map<string, number>();
        for (const { comebacks } of settled)
          for (const { complaintId, originals } of comebacks)
            shares.set(complaintId, (shares.get(complaintId) ?? 0) + 1 / originals);
        for (const share of shares.values()) expect(share).toBeCloseTo(1, 12);
      }),
      { seed: 20260105, numRuns: 300 },
    );
  });
});
