import fc from 'fast-check';
import { judgementTables } from '../fixtures/judgement-tables.js';
import { singleCausePosterior } from '../single-cause/single-cause-posterior.js';
import type { ClosedCase } from './closed-case.js';
import { learnFromCases } from './learn-from-cases.js';
import { learnedInterval } from './learned-interval.js';
import { learnedNumber } from './learned-number.js';
import { tablesFromLearned } from './tables-from-learned.js';

const closed = (change: Partial<ClosedCase> = {}): ClosedCase => ({
  caseId: 'job-1',
  symptoms: { 'idle-rises-with-ac': 'present', 'stalls-cold': 'absent', 'idle-high-warm': 'notAsked' },
  checks: [{ checkId: 'shaft-play', outcome: 'positive', provisional: false, choice: 'routine' }],
  confirmedCauseId: 'shaft-worn',
  window: 'elapsed',
  comeback: { kind: 'none' },
  comebackOf: null,
  ...change,
});
const learn = (...cases: readonly ClosedCase[]) => learnFromCases(judgementTables, cases);

describe('learnFromCases', () => {
  it('by hand: one job with a worn shaft moves its prior 0.12 to (20*0.12 + 1)/21 and 0.18 of another cause to 3.6/21', () => {
    const { causes } = learn(closed()).tables;
    expect(causes['shaft-worn']!.current).toBeCloseTo(3.4 / 21, 14);
    expect(causes['unmetered-air-leak']!.current).toBeCloseTo(3.6 / 21, 14);
    expect(causes['shaft-worn']).toMatchObject({ startingValue: 0.12, startingWorthJobs: 20, yes: 1, no: 0 });
  });

  it('by hand: moves the cells of what was asked or done, 0.45 to 10/21, 0.30 to 6/21, 0.88 to 18.6/21, and no other', () => {
    const { symptoms, checks } = learn(closed()).tables;
    expect(symptoms['idle-rises-with-ac']!['shaft-worn']!.current).toBeCloseTo(10 / 21, 14);
    expect(symptoms['stalls-cold']!['shaft-worn']!.current).toBeCloseTo(6 / 21, 14);
    expect(checks['shaft-play']!['shaft-worn']!.current).toBeCloseTo(18.6 / 21, 14);
    expect(symptoms['idle-high-warm']!['shaft-worn']).toMatchObject({ current: 0.45, yes: 0, no: 0 });
    expect(symptoms['idle-rises-with-ac']!['base-timing-wrong']!.yes).toBe(0);
    expect(checks['leak-test']!['shaft-worn']).toMatchObject({ yes: 0, no: 0 });
  });

  it.each([
    ['the cause was not established', { confirmedCauseId: null }, 'causeNotEstablished'],
    ['the window is still running', { window: 'running' }, 'windowRunning'],
    ['the van was never seen again', { window: 'notSeenSince' }, 'notSeenSince'],
    ['a comeback is proposed and not decided', { comeback: { kind: 'proposed' } }, 'comebackNotDecided'],
    [
      'a comeback established nothing',
      { comeback: { kind: 'confirmed', establishedCauseId: null, window: 'elapsed' } },
      'comebackWithoutAnotherCause',
    ],
    [
      'a comeback established the same cause',
      { comeback: { kind: 'confirmed', establishedCauseId: 'shaft-worn', window: 'elapsed' } },
      'comebackWithoutAnotherCause',
    ],
    [
      'the comeback’s own window is running',
      { comeback: { kind: 'confirmed', establishedCauseId: 'linkage-binding', window: 'running' } },
      'windowRunning',
    ],
    ['it is itself a comeback', { comebackOf: 'job-0' }, 'countedWithOriginal'],
    ['the cause is not in the tables', { confirmedCauseId: 'moon-phase' }, 'unknownCause'],
  ] as const)('teaches nothing when %s', (_title, change, reason) => {
    const learning = learn(closed(change));
    expect(learning.notTaught).toEqual([{ caseId: 'job-1', reason }]);
    expect(learning.tables.jobsCounted).toBe(0);
    expect(learning.tables.causes['shaft-worn']!.current).toBeCloseTo(0.12, 14);
  });

  it('teaches the other cause with the original symptoms when a comeback establishes it', () => {
    const learning = learn(
      closed({
        comeback: {
          kind: 'confirmed',
          establishedCauseId: 'idle-switch-misset-or-faulty',
          window: 'elapsed',
        },
      }),
    );
    expect(learning.taught).toEqual([
      { caseId: 'job-1', causeId: 'idle-switch-misset-or-faulty', becauseOfComeback: true },
    ]);
    expect(learning.tables.symptoms['idle-rises-with-ac']!['idle-switch-misset-or-faulty']!.yes).toBe(1);
    expect(learning.tables.causes['shaft-worn']!.yes).toBe(0);
  });

  it('teaches by a comeback even where the first job had established nothing', () => {
    const learning = learn(
      closed({
        confirmedCauseId: null,
        comeback: { kind: 'confirmed', establishedCauseId: 'linkage-binding', window: 'elapsed' },
      }),
    );
    expect(learning.taught[0]).toMatchObject({ causeId: 'linkage-binding' });
  });

  it('counts a job once', () => {
    const learning = learn(closed(), closed());
    expect(learning.tables.jobsCounted).toBe(1);
    expect(learning.notTaught).toEqual([{ caseId: 'job-1', reason: 'repeatedCase' }]);
  });

  it('learns from checks as found: not from provisional or undecided ones, and from the first decided result', () => {
    const check = { checkId: 'shaft-play', provisional: false, choice: 'routine' } as const;
    const cell = (checks: ClosedCase['checks']) =>
      learn(closed({ checks })).tables.checks['shaft-play']!['shaft-worn']!;
    expect(cell([{ ...check, outcome: 'positive', provisional: true }])).toMatchObject({ yes: 0, no: 0 });
    expect(cell([{ ...check, outcome: 'undecided' }])).toMatchObject({ yes: 0, no: 0 });
    expect(
      cell([
        { ...check, outcome: 'positive' },
        { ...check, outcome: 'negative' },
      ]),
    ).toMatchObject({ yes: 1, no: 0 });
    expect(cell([{ ...check, outcome: 'corrected' }])).toMatchObject({ yes: 1, no: 0 });
  });

  it('says where a cell was fed only by checks chosen because of earlier results', () => {
    const selected = closed({
      checks: [
        { checkId: 'shaft-play', outcome: 'positive', provisional: false, choice: 'becauseOfEarlierResults' },
      ],
    });
    expect(learn(selected).tables.checks['shaft-play']!['shaft-worn']).toMatchObject({
      fedOnlyBySelectedChecks: true,
      fromSelectedChecks: 1,
    });
    const mixed = learn(selected, closed({ caseId: 'job-2' })).tables.checks['shaft-play']!['shaft-worn'];
    expect(mixed).toMatchObject({ fedOnlyBySelectedChecks: false, fromSelectedChecks: 1, yes: 2 });
    expect(learn().tables.checks['shaft-play']!['shaft-worn']!.fedOnlyBySelectedChecks).toBe(false);
  });

  it('does not depend on the order of the cases, and gives tables that can be computed with', () => {
    const many = Array.from({ length: 30 }, (_, i) =>
      closed({
        caseId: `job-${i}`,
        confirmedCauseId: judgementTables.causes[i % 12]!.id,
        symptoms: { 'stalls-cold': i % 2 === 0 ? 'present' : 'absent' },
      }),
    );
    const forward = learn(...many).tables;
    fc.assert(
      fc.property(fc.shuffledSubarray(many, { minLength: many.length }), (shuffled) => {
        expect(learn(...shuffled).tables).toEqual(forward);
      }),
      { seed: 26, numRuns: 20 },
    );
    const tables = tablesFromLearned(forward);
    expect(tables.causes.reduce((sum, cause) => sum + cause.prior, 0)).toBeCloseTo(1, 12);
    expect(singleCausePosterior(tables, { symptoms: { 'stalls-cold': 'present' }, results: [] }).kind).toBe(
      'estimated',
    );
  });

  it('gives the starting numbers back when nothing was counted', () => {
    const tables = tablesFromLearned(learn().tables);
    judgementTables.checks.forEach((row, i) => {
      for (const [cause, p] of Object.entries(row.positiveGivenCause))
        expect(tables.checks[i]!.positiveGivenCause[cause]).toBeCloseTo(p, 12);
    });
  });

  it('forgets the starting numbers as jobs are counted', () => {
    const many = Array.from({ length: 2000 }, (_, i) =>
      closed({ caseId: `job-${i}`, symptoms: { 'stalls-cold': 'absent' } }),
    );
    const cell = learn(...many).tables.symptoms['stalls-cold']!['shaft-worn']!;
    expect(cell.current).toBeLessThan(0.005);
    // Beta(6, 2014) is close to Gamma(6)/2020, whose 95 % point is half the chi-square(12) value 21.026.
    expect(learnedInterval(cell)).toMatchObject({
      kind: 'estimated',
      upper: expect.closeTo(21.026 / 2 / 2020, 4),
      jobs: 2000,
    });
  });

  it('refuses a starting worth of zero', () => {
    expect(() => learnFromCases(judgementTables, [], { startingWorthJobs: 0 })).toThrow(RangeError);
  });
});

describe('learnedInterval', () => {
  it('by hand: Beta(1, 1) has the central 90 % interval 0.05 to 0.95', () => {
    expect(learnedInterval(learnedNumber(0.5, 2))).toEqual({
      kind: 'estimated',
      lower: expect.closeTo(0.05, 10),
      upper: expect.closeTo(0.95, 10),
      level: 0.9,
      jobs: 0,
    });
  });

  it('is degenerate while a starting value of zero is not contradicted', () => {
    expect(learnedInterval(learnedNumber(0, 20))).toEqual({ kind: 'degenerate', value: 0 });
    expect(learnedInterval(learnedNumber(0, 20, { yes: 1, no: 0, selected: 0 })).kind).toBe('estimated');
  });

  it('refuses a level that is none', () => {
    expect(() => learnedInterval(learnedNumber(0.5, 2), 1)).toThrow(RangeError);
  });
});

describe('learnedNumber', () => {
  it('refuses values and counts that cannot be', () => {
    expect(() => learnedNumber(1.2, 20)).toThrow(RangeError);
    expect(() => learnedNumber(0.5, 0)).toThrow(RangeError);
    expect(() => learnedNumber(0.5, 20, { yes: -1, no: 0, selected: 0 })).toThrow(RangeError);
  });
});
