import fc from 'fast-check';
import type { JobOutcome } from './comeback-rate.js';
import { comebackRate, jobOutcome } from './comeback-rate.js';
import { seenSinceRelease, watchWindowStates } from './watch-window.js';

const outcome = (window: JobOutcome['window'], comeback: boolean, seen: JobOutcome['seen']): JobOutcome => ({
  window,
  comeback,
  seen,
});
const held = outcome('elapsed', false, 'afterClosing');
const cameBack = outcome('elapsed', true, 'onlyInsideWindow');

describe('comebackRate', () => {
  it('reproduces the intervals of the fair-comparison example: 3 of 40 and 9 of 210', () => {
    const rate = (events: number, jobs: number) =>
      comebackRate([
        ...Array<JobOutcome>(events).fill(cameBack),
        ...Array<JobOutcome>(jobs - events).fill(held),
      ]);
    // Printed: 7.5 %, 2.6-19.9 %; 4.3 %, 2.3-7.9 %.
    expect(rate(3, 40)).toMatchObject({
      kind: 'estimated',
      value: 0.075,
      interval: { lower: expect.closeTo(0.026, 3), upper: expect.closeTo(0.199, 3) },
      intervalMethod: 'wilson',
    });
    expect(rate(9, 210)).toMatchObject({
      value: expect.closeTo(0.043, 3),
      interval: { lower: expect.closeTo(0.023, 3), upper: expect.closeTo(0.079, 3) },
    });
  });

  it('reproduces Newcombe (1998), table I: 15 of 148 and 0 of 20', () => {
    const rate = (events: number, jobs: number) =>
      comebackRate([
        ...Array<JobOutcome>(events).fill(cameBack),
        ...Array<JobOutcome>(jobs - events).fill(held),
      ]);
    expect(rate(15, 148)).toMatchObject({
      interval: { lower: expect.closeTo(0.0624, 4), upper: expect.closeTo(0.1605, 4) },
    });
    expect(rate(0, 20)).toMatchObject({ value: 0, interval: { lower: 0, upper: expect.closeTo(0.1611, 4) } });
  });

  it('JOB rule 10: counts by hand: pending jobs, their comebacks and vans not seen since are in no denominator', () => {
    const rate = comebackRate([
      cameBack,
      held,
      held,
      outcome('elapsed', false, 'onlyInsideWindow'),
      outcome('elapsed', false, 'neverSince'),
      outcome('running', false, 'neverSince'),
      outcome('running', true, 'onlyInsideWindow'),
    ]);
    expect(rate).toMatchObject({
      kind: 'estimated',
      value: 0.25,
      events: 1,
      atRisk: 4,
      pending: 2,
      pendingComebacks: 1,
      notSeenSince: 1,
      seenOnlyInsideWindow: 1,
    });
  });

  it('has no value without a job at risk, and says how many are pending', () => {
    expect(comebackRate([])).toMatchObject({
      kind: 'insufficientData',
      value: null,
      interval: null,
      needed: 1,
      got: 0,
    });
    expect(
      comebackRate([outcome('running', true, 'onlyInsideWindow'), outcome('elapsed', false, 'neverSince')]),
    ).toEqual({
      kind: 'insufficientData',
      of: 'jobsWithElapsedWindow',
      needed: 1,
      got: 0,
      value: null,
      interval: null,
      events: 0,
      atRisk: 0,
      pending: 1,
      pendingComebacks: 1,
      notSeenSince: 1,
      seenOnlyInsideWindow: 0,
    });
  });

  it('puts every job into exactly one of at risk, pending and not seen since', () => {
    const any = fc.record({
      window: fc.constantFrom(...watchWindowStates),
      comeback: fc.boolean(),
      seen: fc.constantFrom(...seenSinceRelease),
    });
    fc.assert(
      fc.property(fc.array(any, { maxLength: 30 }), (jobs) => {
        const rate = comebackRate(jobs);
        expect(rate.atRisk + rate.pending + rate.notSeenSince).toBe(jobs.length);
        expect(JSON.stringify(rate)).not.toMatch(/NaN/);
        if (rate.kind === 'estimated') {
          expect(rate.interval.lower).toBeLessThanOrEqual(rate.value);
          expect(rate.interval.upper).toBeGreaterThanOrEqual(rate.value);
        }
      }),
      { seed: 20260806, numRuns: 200 },
    );
  });
});

describe('jobOutcome', () => {
  const terms = {
    releasedAt: '2024-01-01T10:00:00Z',
    windowDays: 90,
    windowKm: '5000',
    releasedKm: '120000',
  };
  const now = '2024-06-01T10:00:00Z';
  const at = (receivedAt: string, km: string | null) => jobOutcome(terms, now, [], [{ receivedAt, km }]);

  it('counts a comeback inside the window to the minute and the kilometre', () => {
    expect(at('2024-03-31T09:59:00Z', null)).toEqual({
      window: 'elapsed',
      comeback: true,
      seen: 'onlyInsideWindow',
    });
    expect(at('2024-03-31T10:00:00Z', null)).toEqual({
      window: 'elapsed',
      comeback: false,
      seen: 'afterClosing',
    });
    expect(at('2024-02-01T10:00:00Z', '124999')).toMatchObject({ comeback: true });
    expect(at('2024-02-01T10:00:00Z', '125000')).toMatchObject({ comeback: false });
  });

  it('does not know a comeback that came after the moment asked about', () => {
    const complaints = [{ receivedAt: '2024-02-12T09:30:00Z', km: '123000' }];
    expect(jobOutcome(terms, '2024-02-05T10:00:00Z', [], complaints)).toEqual({
      window: 'running',
      comeback: false,
      seen: 'neverSince',
    });
    expect(jobOutcome(terms, '2024-02-20T10:00:00Z', [], complaints)).toMatchObject({
      window: 'running',
      comeback: true,
    });
  });
});
