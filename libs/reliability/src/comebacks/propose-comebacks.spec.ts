import fc from 'fast-check';
import { originalJobsOf, repeatsOf } from './comeback-chain.js';
import { complaintLikeness } from './complaint-likeness.js';
import type { NewComplaint, ReleasedJob } from './propose-comebacks.js';
import { proposeComebacks } from './propose-comebacks.js';

const complaint: NewComplaint = {
  receivedAt: '2024-02-12T09:30:00Z',
  km: '123100',
  symptoms: {
    'idle-rises-with-ac': 'present',
    'bucks-at-light-throttle': 'present',
    'stalls-cold': 'absent',
  },
  components: [],
  beganAfterRepair: false,
};
const job: ReleasedJob = {
  jobId: 'adjusted-in-january',
  releasedAt: '2024-01-01T10:00:00Z',
  windowDays: 90,
  windowKm: '5000',
  releasedKm: '120000',
  symptomsPresent: ['bucks-at-light-throttle', 'idle-rises-with-ac'],
  components: ['throttle-housing'],
};
const codesOf = (proposals: ReturnType<typeof proposeComebacks>) =>
  proposals.map(({ reasons }) => reasons.map(({ code }) => code));

describe('proposeComebacks', () => {
  it('proposes the job of six weeks ago with the reasons and the numbers behind them', () => {
    // 1 January 10:00 to 12 February 09:30 is 41 whole days; 123,100 - 120,000 = 3,100 km.
    expect(proposeComebacks(complaint, [job])).toEqual([
      {
        jobId: 'adjusted-in-january',
        originalJobIds: ['adjusted-in-january'],
        likeness: 0.6,
        reasons: [
          {
            code: 'sameSymptoms',
            values: { symptoms: 'bucks-at-light-throttle,idle-rises-with-ac', shared: '2', compared: '2' },
          },
          {
            code: 'insideWindow',
            values: { days: '41', windowDays: '90', km: '3100', windowKm: '5000' },
          },
        ],
        daysSinceRelease: 41,
        kmSinceRelease: '3100',
        insideWindow: true,
      },
    ]);
  });

  it('proposes nothing where nothing is alike, nor for the visit that is still going on', () => {
    const other = { ...complaint, symptoms: { 'stalls-cold': 'present' as const } };
    expect(proposeComebacks(other, [job])).toEqual([]);
    expect(proposeComebacks(complaint, [{ ...job, releasedAt: complaint.receivedAt }])).toEqual([]);
    expect(proposeComebacks(complaint, [{ ...job, releasedAt: '2024-03-01T10:00:00Z' }])).toEqual([]);
    expect(proposeComebacks(complaint, [])).toEqual([]);
  });

  it('takes the same component and the same family of symptoms as reasons of their own', () => {
    const pointed = { ...complaint, symptoms: {}, components: ['throttle-housing'] };
    expect(codesOf(proposeComebacks(pointed, [job]))).toEqual([['sameComponent', 'insideWindow']]);
    const familyOf = { 'idle-hunts-warm': 'idle-speed', 'idle-rises-with-ac': 'idle-speed' };
    const hunting = { ...complaint, symptoms: { 'idle-hunts-warm': 'present' as const } };
    expect(codesOf(proposeComebacks(hunting, [job], { familyOf }))).toEqual([
      ['sameSymptomFamily', 'insideWindow'],
    ]);
    expect(proposeComebacks(hunting, [job])).toEqual([]);
  });

  it('takes "since the repair" as a reason only while the window of that repair runs', () => {
    const since = {
      ...complaint,
      symptoms: { 'no-overrun-fuel-cut-off': 'present' as const },
      beganAfterRepair: true,
    };
    expect(codesOf(proposeComebacks(since, [job]))).toEqual([['beganAfterRepair', 'insideWindow']]);
    expect(proposeComebacks({ ...since, receivedAt: '2024-06-01T10:00:00Z' }, [job])).toEqual([]);
  });

  it('proposes outside the window too, with half the likeness, up to a year', () => {
    const at = (receivedAt: string, km: string | null) =>
      proposeComebacks({ ...complaint, receivedAt, km }, [job]);
    expect(at('2024-03-31T09:59:00Z', '124000')[0]).toMatchObject({ insideWindow: true, likeness: 0.6 });
    const outside = at('2024-03-31T10:00:00Z', '124000');
    expect(outside[0]).toMatchObject({ insideWindow: false, likeness: 0.3, daysSinceRelease: 90 });
    expect(outside[0]!.reasons.at(-1)).toEqual({
      code: 'outsideWindow',
      values: { days: '90', windowDays: '90', km: '4000', windowKm: '5000', closedBy: 'days' },
    });
    expect(at('2024-02-12T09:30:00Z', '125000')[0]!.reasons.at(-1)!.values).toMatchObject({
      closedBy: 'distance',
    });
    expect(at('2024-02-12T09:30:00Z', '124999')[0]).toMatchObject({ insideWindow: true });
    expect(at('2024-12-31T09:59:00Z', null)).toHaveLength(1);
    expect(at('2024-12-31T10:00:00Z', null)).toEqual([]);
  });

  it('goes by days where the odometer went back, and never gives a negative distance', () => {
    const [proposal] = proposeComebacks({ ...complaint, km: '110' }, [job]);
    expect(proposal).toMatchObject({ kmSinceRelease: null, insideWindow: true });
    expect(proposal!.reasons.at(-1)).toEqual({
      code: 'distanceUnreliable',
      values: { because: 'distanceContradicts' },
    });
    expect(codesOf(proposeComebacks({ ...complaint, km: null }, [job]))[0]).toContain('distanceUnreliable');
  });

  it('puts the most alike first and lets two jobs be proposed for one complaint', () => {
    const brakes = {
      ...job,
      jobId: 'brakes',
      releasedAt: '2024-02-01T10:00:00Z',
      symptomsPresent: [],
      components: ['brake-disc'],
    };
    const twoSymptoms = { ...complaint, components: ['brake-disc'] };
    expect(
      proposeComebacks(twoSymptoms, [brakes, job]).map(({ jobId, likeness }) => [jobId, likeness]),
    ).toEqual([
      ['adjusted-in-january', 0.6],
      ['brakes', expect.closeTo(0.3, 12)],
    ]);
  });

  it('shows of a comeback of a comeback where the chain began', () => {
    const repeat = {
      ...job,
      jobId: 'again-in-february',
      releasedAt: '2024-02-05T10:00:00Z',
      releasedKm: '122500',
    };
    const confirmed = [{ repeatJobId: 'again-in-february', jobId: 'adjusted-in-january' }];
    const proposals = proposeComebacks(complaint, [job, repeat], { confirmed });
    expect(proposals.map(({ jobId, originalJobIds }) => [jobId, originalJobIds])).toEqual([
      ['again-in-february', ['adjusted-in-january']],
      ['adjusted-in-january', ['adjusted-in-january']],
    ]);
    expect(proposals[0]!.reasons.at(-1)).toEqual({
      code: 'repeatOfEarlierJob',
      values: { jobs: 'adjusted-in-january' },
    });
  });

  it('does not depend on the order in which the jobs are given, and its likeness stays between 0 and 1', () => {
    const symptoms = ['a', 'b', 'c', 'd'];
    const anyJob = fc.record({
      jobId: fc.uuid(),
      releasedAt: fc
        .integer({ min: 0, max: 500 })
        .map((day) => new Date(Date.UTC(2023, 0, 1) + day * 86_400_000).toISOString()),
      windowDays: fc.integer({ min: 1, max: 365 }),
      windowKm: fc.integer({ min: 1, max: 20000 }).map(String),
      releasedKm: fc.option(fc.integer({ min: 100000, max: 130000 }).map(String)),
      symptomsPresent: fc.subarray(symptoms),
      components: fc.subarray(['x', 'y']),
    });
    fc.assert(
      fc.property(
        fc.uniqueArray(anyJob, { selector: ({ jobId }) => jobId, maxLength: 6 }),
        fc.dictionary(fc.constantFrom(...symptoms), fc.constantFrom('present' as const, 'absent' as const)),
        fc.boolean(),
        (jobs, answers, beganAfterRepair) => {
          const asked = { ...complaint, symptoms: answers, components: ['x'], beganAfterRepair };
          const proposals = proposeComebacks(asked, jobs);
          expect(proposeComebacks(asked, [...jobs].reverse())).toEqual(proposals);
          for (const { likeness, kmSinceRelease } of proposals) {
            expect(likeness).toBeGreaterThan(0);
            expect(likeness).toBeLessThanOrEqual(1);
            expect(kmSinceRelease ?? '0').not.toMatch(/^-/);
          }
        },
      ),
      { seed: 20260805, numRuns: 200 },
    );
  });
});

describe('complaintLikeness', () => {
  it('does not hold a symptom against a complaint that was not asked about it', () => {
    const then = { symptomsPresent: ['a', 'b'], components: [] };
    const now = (symptoms: Record<string, 'present' | 'absent'>) =>
      complaintLikeness({ symptoms, components: [] }, then, {});
    expect(now({ a: 'present' }).score).toBeCloseTo(0.6, 12);
    // b was asked and is absent: one of two compared.
    expect(now({ a: 'present', b: 'absent' }).score).toBeCloseTo(0.3, 12);
    // c is new: one of two compared.
    expect(now({ a: 'present', c: 'present' }).score).toBeCloseTo(0.3, 12);
    expect(now({}).score).toBe(0);
  });

  it('combines its parts as written: 1 - 0.7 x 0.7 x 0.7 for half the symptoms, a family and a component', () => {
    const likeness = complaintLikeness(
      { symptoms: { a: 'present', c: 'present' }, components: ['x'] },
      { symptomsPresent: ['a', 'd'], components: ['x', 'y'] },
      { c: 'stalling', d: 'stalling' },
    );
    expect(likeness).toEqual({
      sharedSymptoms: ['a'],
      comparedSymptoms: ['a', 'c'],
      sharedFamilies: ['stalling'],
      sharedComponents: ['x'],
      score: expect.closeTo(1 - 0.7 * 0.7 * 0.7, 12),
    });
  });
});

describe('chains of comebacks', () => {
  const comebacks = [
    { repeatJobId: 'b', jobId: 'a' },
    { repeatJobId: 'c', jobId: 'b' },
    { repeatJobId: 'c', jobId: 'x' },
    { repeatJobId: 'd', jobId: 'c' },
  ];

  it('lead back to the first jobs, both where two complaints came back at once', () => {
    expect(originalJobsOf('d', comebacks)).toEqual(['a', 'x']);
    expect(originalJobsOf('b', comebacks)).toEqual(['a']);
    expect(originalJobsOf('a', comebacks)).toEqual(['a']);
  });

  it('list every repeat once', () => {
    expect(repeatsOf('a', comebacks)).toEqual(['b', 'c', 'd']);
    expect(repeatsOf('x', comebacks)).toEqual(['c', 'd']);
    expect(repeatsOf('d', comebacks)).toEqual([]);
  });

  it('refuse to go round in a circle', () => {
    const circle = [
      { repeatJobId: 'a', jobId: 'b' },
      { repeatJobId: 'b', jobId: 'a' },
    ];
    expect(() => originalJobsOf('a', circle)).toThrow(RangeError);
    expect(repeatsOf('a', circle)).toEqual(['b']);
  });
});
