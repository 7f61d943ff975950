import fc from 'fast-check';
import type { Assessment, AssessmentInput } from '@endfloat/decision';
import { wearTrend } from '@endfloat/wear';
import { adviceByWear, adviceOf, adviceThresholds, recheckDistance } from './preventive-advice.js';

const point = (km: number, value: number) => ({ km, value, u: 0.01, instrumentId: 'dial', biasU: 0.005 });
const trendOf = (points: readonly ReturnType<typeof point>[]) =>
  wearTrend({ points, direction: 'rising', limit: 0.2, model: null });

describe('advice ahead of the next complaint', () => {
  it('looks again at the last step of 500 km at which the chance is still no more than a tenth', () => {
    // A chance of km / 100,000 is 0.1 at 10,000 km, which is a step; of km / 43,210 at 4,321 km, so 4,000 is the last.
    expect(recheckDistance((km) => km / 100_000, 120_000)).toBe(10_000);
    expect(recheckDistance((km) => km / 43_210, 120_000)).toBe(4000);
    expect(recheckDistance(() => 0.2, 120_000)).toBe(0);
    expect(recheckDistance(() => 0, 8300)).toBe(8000);
  });

  it('property: the next step would be beyond the threshold, or beyond the plan', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1000, max: 400_000 }),
        fc.integer({ min: 0, max: 200_000 }),
        (scale, plan) => {
          const chance = (km: number): number => 1 - Math.exp(-km / scale);
          const km = recheckDistance(chance, plan);
          const isLast = km + 500 > plan || chance(km + 500) > adviceThresholds.recheck;
          return km <= plan && isLast && (km === 0 || chance(km) <= adviceThresholds.recheck);
        },
      ),
      { seed: 20261125 },
    );
  });

  it('leaves a slow part until a distance, sends a fast one to the next visit, and says when too little is known', () => {
    const slow = trendOf([point(50_000, 0.04), point(100_000, 0.08), point(150_000, 0.11)]);
    const far = adviceByWear({
      trend: slow,
      points: 3,
      planningDistanceKm: 120_000,
      serviceIntervalKm: null,
    });
    expect(far.kind).toBe('leaveUntilRecheck');
    expect(far.withinKm! % 500).toBe(0);
    expect(far.chance).toBeLessThanOrEqual(adviceThresholds.recheck);
    const fast = trendOf([point(10_000, 0.05), point(20_000, 0.1), point(30_000, 0.16)]);
    const near = adviceByWear({
      trend: fast,
      points: 3,
      planningDistanceKm: 120_000,
      serviceIntervalKm: 15_000,
    });
    expect(near).toMatchObject({ kind: 'replaceAtNextVisit', withinKm: 15_000 });
    const none = adviceByWear({
      trend: trendOf([]),
      points: 0,
      planningDistanceKm: 120_000,
      serviceIntervalKm: 15_000,
    });
    expect(none).toMatchObject({ kind: 'notEnoughKnown', got: 0, withinKm: null });
  });

  it('never advises on wear while a dangerous finding is open, nor before readings that are to be taken first', () => {
    const wear = { trend: trendOf([]), points: 0 };
    const result = (kind: string) =>
      ({
        recommendation: { kind, optionId: 'leave', readings: 3 },
        options: [{ optionId: 'leave', action: 'leave' }],
        belief: { probabilityBeyondCriterion: 0.1 },
      }) as unknown as Assessment;
    const input = (findings: readonly object[]) =>
      ({
        occasion: 'serviceVisit',
        planningDistanceKm: 120_000,
        serviceIntervalKm: null,
        evidence: { safetyFindings: findings, functionalCriterion: { kind: 'notDone' } },
      }) as unknown as AssessmentInput;
    expect(adviceOf(result('recommended'), input([{}]), wear)?.kind).toBe('dangerFirst');
    expect(adviceOf(result('measureFirst'), input([]), wear)?.kind).toBe('measureFirst');
    expect(adviceOf(result('none'), input([]), wear)).toBeNull();
  });

  it('asks the look-ahead where its own readings show no wear, and says so', () => {
    const wear = { trend: trendOf([point(1000, 0.04), point(2000, 0.04), point(3000, 0.04)]), points: 3 };
    expect(wear.trend.kind).toBe('riseWithinUncertainty');
    const distance = { value: '25000', unit: 'km' };
    const by = (nextLook: Assessment['nextLook']) =>
      adviceOf(
        {
          recommendation: { kind: 'recommended', optionId: 'leave' },
          options: [{ optionId: 'leave', action: 'leave' }],
          belief: { probabilityBeyondCriterion: 0.01 },
          nextLook,
        } as unknown as Assessment,
        {
          occasion: 'complaint',
          planningDistanceKm: 120_000,
          serviceIntervalKm: null,
          evidence: { safetyFindings: [], functionalCriterion: { kind: 'notDone' } },
        } as unknown as AssessmentInput,
        wear,
      );
    expect(by({ kind: 'recheckAt', distance, why: 'chanceOfCriterion', probability: 0.1 })).toMatchObject({
      kind: 'leaveUntilRecheck',
      basis: 'suchParts',
      withinKm: 25_000,
      chance: 0.1,
      got: 3,
    });
    expect(by({ kind: 'renewAtVisit', distance })).toMatchObject({
      kind: 'replaceAtNextVisit',
      chance: null,
    });
    expect(by({ kind: 'notWithinPlan' })).toMatchObject({ kind: 'leaveUntilRecheck', withinKm: 120_000 });
    expect(by(null)).toMatchObject({ kind: 'notEnoughKnown', basis: null });
  });
});
