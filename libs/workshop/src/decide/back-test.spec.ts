import type { PricedOption } from '@endfloat/decision';
import type { AssessedRepair, ReleasedJobHistory } from '../ports/learning-history.port.js';
import { backTest } from './back-test.js';

const eur = (amount: string) => ({ amount, currency: 'EUR' });

/** An option of an invented assessment; only what a back-test looks at. */
const option = (action: 'adjust' | 'fitNew', chance: number, cost: string, isAdmissible = true) =>
  ({
    kind: 'priced',
    optionId: action,
    action,
    isAdmissible,
    expectedCost: eur(cost),
    outcomes: { standardDeviation: eur('0.00'), withoutComeback: eur('100.00'), withComeback: eur('900.00') },
    comeback: { probability: chance, interval: { lower: 0, upper: 1 } },
  }) as unknown as PricedOption;

interface Invented {
  readonly chance: number;
  readonly cameBack?: boolean;
  readonly seenOn?: string;
  readonly play?: number;
  readonly adjustCost?: string;
  readonly renewCost?: string;
  readonly change?: Partial<AssessedRepair>;
}

let count = 0;
const decision = (given: Invented): { job: ReleasedJobHistory; assessed: AssessedRepair } => {
  const jobId = `job-${String((count += 1))}`;
  const { chance, cameBack = false, seenOn = '2026-08-01', play = 0.1 } = given;
  return {
    job: {
      jobId,
      vehicleId: 'van',
      causeId: null,
      releasedAt: '2026-03-01T12:00:00.000Z',
      windowDays: 90,
      windowKm: '5000',
      releasedKm: null,
      sightings: [{ seenAt: `${seenOn}T08:00:00.000Z`, km: null }],
      symptoms: [],
      comebacks: cameBack ? [{ state: 'confirmed', attribution: null, repeatJobId: null }] : [],
      comebackOf: [],
      repairs: [
        { action: 'adjustSwitch', componentType: 'throttle-housing', position: 'intake', condition: null },
      ],
    },
    assessed: {
      assessmentId: `assessment of ${jobId}`,
      jobId,
      question: { componentType: 'throttle-housing', position: 'intake' },
      characteristic: { unwornSize: 0, criterionSize: 0.2 },
      evidence: {
        wearNow: { kind: 'measured', value: play },
        functionalCriterion: { kind: 'notDone' },
      },
      recommendation: { kind: 'recommended', optionId: 'adjust', consentNeeded: false },
      options: [
        option('adjust', chance, given.adjustCost ?? '300.00'),
        option('fitNew', 0.05, given.renewCost ?? '500.00'),
      ],
      chosen: 'adjust',
      ...given.change,
    } as unknown as AssessedRepair,
  };
};

const at = { until: '2026-11-25T12:00:00.000Z', currency: 'EUR' };
const lookBack = (decisions: readonly ReturnType<typeof decision>[]) =>
  backTest(
    decisions.map(({ job }) => job),
    decisions.map(({ assessed }) => assessed),
    at,
  );

describe('looking back at decisions', () => {
  it('scores four decisions as by hand', () => {
    // Predicted 0.1, 0.1, 0.3 and 0.5; only the third came back:
    // (0.01 + 0.01 + 0.49 + 0.25) / 4 = 0.19; base rate 1/4, reference 3/16.
    const found = lookBack([
      decision({ chance: 0.1 }),
      decision({ chance: 0.1 }),
      decision({ chance: 0.3, cameBack: true }),
      decision({ chance: 0.5 }),
    ]);
    expect(found).toMatchObject({ settled: 4, comebacks: 1, omitted: {} });
    if (found.brier.kind !== 'estimated' || found.reliability.kind !== 'estimated')
      throw new Error('no score');
    expect(found.brier.score).toBeCloseTo(0.19, 12);
    expect(found.brier.referenceScore).toBeCloseTo(3 / 16, 12);
    const classes = found.reliability.rows.map(({ forecasts, occurred }) => [forecasts, occurred]);
    // Classes begin at 0, 0.05, 0.1, 0.2, 0.4 and 0.7.
    expect(classes).toEqual([
      [0, 0],
      [0, 0],
      [2, 0],
      [1, 1],
      [1, 0],
      [0, 0],
    ]);
    // Three held at 100 and one came back at 900: 1200 / 4.
    expect(found.chosen.meanRealisedCost).toEqual(eur('300.00'));
  });

  it('prices each rule by the model of then, in pairs with what was chosen', () => {
    // Play 0.10, 0.16 and 0.21 at a criterion of 0.20. Renewing is dearer by 200, by 100, and cheaper by 150.
    const found = lookBack([
      decision({ chance: 0.1, play: 0.1 }),
      decision({ chance: 0.2, play: 0.16, adjustCost: '400.00' }),
      decision({ chance: 0.6, play: 0.21, adjustCost: '650.00' }),
    ]);
    const of = (rule: string) => found.rules.find((each) => each.rule === rule)!;
    expect(of('alwaysAdjust')).toMatchObject({ sameAsChosen: 3, meanExpectedCost: eur('450.00') });
    expect(of('alwaysReplace')).toMatchObject({ sameAsChosen: 0, meanExpectedCost: eur('500.00') });
    // Mean difference (200 + 100 - 150) / 3 = 50; squares 22500 + 2500 + 40000 = 65000, s/sqrt(3) = sqrt(65000 / 2 / 3).
    const { dearerThanChosen } = of('alwaysReplace');
    expect(dearerThanChosen).toMatchObject({
      mean: eur('50.00'),
      standardError: eur(Math.sqrt(65_000 / 6).toFixed(2)),
      decisions: 3,
    });
    // Only the third van had reached the criterion, the second and third three quarters of it.
    expect(of('replaceAtCriterion').meanExpectedCost).toEqual(eur('400.00'));
    expect(of('replaceAtThreeQuarters').meanExpectedCost).toEqual(eur('433.33'));
    expect(of('functionalCriterionAlone').sameAsChosen).toBe(3);
  });

  it('counts pending decisions and those nobody can know apart, never as successes', () => {
    const running = decision({ chance: 0.1, seenOn: '2026-11-20' });
    const found = lookBack([
      { ...running, job: { ...running.job, releasedAt: '2026-11-01T12:00:00.000Z' } },
      decision({ chance: 0.1, seenOn: '2026-04-01' }),
      decision({ chance: 0.1, change: { chosen: null } }),
      decision({ chance: 0.1, change: { chosen: 'fitNew' } }),
      decision({ chance: 0.1, change: { chosen: 'handOverUnrepaired' } }),
    ]);
    expect(found.settled).toBe(0);
    expect(found.omitted).toEqual({
      pending: 1,
      notSeenSince: 1,
      notDecided: 1,
      otherWorkDone: 1,
      handedOverUnrepaired: 1,
    });
    expect(found.brier).toMatchObject({ kind: 'insufficientData', needed: 1, got: 0 });
    expect(found.rules.every(({ dearerThanChosen }) => dearerThanChosen.kind === 'insufficientData')).toBe(
      true,
    );
  });

  it('turns a rule aside to the cheapest option left where a guard bars what it asks for', () => {
    const guarded = decision({
      chance: 0.1,
      change: {
        options: [option('adjust', 0.1, '300.00', false), option('fitNew', 0.05, '500.00')],
      },
    });
    const adjust = lookBack([guarded]).rules.find(({ rule }) => rule === 'alwaysAdjust')!;
    expect(adjust).toMatchObject({ turnedAside: 1, sameAsChosen: 0, meanExpectedCost: eur('500.00') });
  });
});
