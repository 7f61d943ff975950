import type { Assessment, AssessmentInput, NextLook } from '@endfloat/decision';
import { probabilityOfReaching, type WearTrendOutcome } from '@endfloat/wear';
import type { PreventiveAdvice } from '../ports/records/decide.records.js';

/** Chance of having reached the criterion at which one looks again, and at which one replaces ahead; JUDGEMENT. */
export const adviceThresholds = { recheck: 0.1, replace: 0.5 } as const;

/** Re-checks are named in steps of 500 km: no odometer entry in a diary is finer. */
const stepKm = 500;

/** What there is to advise from. */
export interface AdviceSources {
  readonly trend: WearTrendOutcome;
  readonly points: number;
  readonly planningDistanceKm: number;
  /** distance to the next planned visit; null: none is planned */
  readonly serviceIntervalKm: number | null;
}

/**
 * Farthest distance at which the chance of having reached the limit is still no more than the threshold, in whole steps.
 *
 * @param chanceWithin chance of having reached it within a distance; never falls with distance
 * @param farthestKm   where to stop looking
 * @returns km, 0 where even the first step is too far
 */
export function recheckDistance(chanceWithin: (km: number) => number, farthestKm: number): number {
  let low = 0;
  let high = Math.floor(farthestKm / stepKm);
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (chanceWithin(middle * stepKm) <= adviceThresholds.recheck) low = middle;
    else high = middle - 1;
  }
  return low * stepKm;
}

/**
 * What to do ahead of the next complaint with a part that works for now, from its wear alone.
 *
 * @param sources trend of the part and the distances planned
 * @returns when to look again, or to replace ahead; or how many inspections are still needed to say
 */
export function adviceByWear(sources: AdviceSources): PreventiveAdvice {
  const { trend, points, planningDistanceKm, serviceIntervalKm } = sources;
  if (trend.kind !== 'estimated') {
    const needed = trend.kind === 'insufficientData' ? trend.needed : points + 1;
    const none = { withinKm: null, chance: null, optionId: null };
    return { kind: 'notEnoughKnown', basis: null, ...none, needed, got: points };
  }
  const chanceWithin = (km: number): number => probabilityOfReaching(trend, { kind: 'distance', km });
  const known = { basis: 'ownTrend', optionId: null, needed: null, got: points } as const;
  const atVisit = serviceIntervalKm === null ? null : chanceWithin(serviceIntervalKm);
  if (atVisit !== null && atVisit >= adviceThresholds.replace)
    return { kind: 'replaceAtNextVisit', withinKm: serviceIntervalKm, chance: rounded(atVisit), ...known };
  const km = recheckDistance(chanceWithin, planningDistanceKm);
  if (serviceIntervalKm !== null && (km <= serviceIntervalKm || km === 0))
    return { kind: 'recheckAtNextVisit', withinKm: serviceIntervalKm, chance: rounded(atVisit!), ...known };
  if (km === 0)
    return { kind: 'recheckSoon', withinKm: stepKm, chance: rounded(chanceWithin(stepKm)), ...known };
  return { kind: 'leaveUntilRecheck', withinKm: km, chance: rounded(chanceWithin(km)), ...known };
}

/**
 * What to do ahead where the part's own readings do not show yet how fast it wears: by the look-ahead, which knows such
 * parts and what looking costs.
 *
 * @param look    when the look-ahead would look again
 * @param planKm  how far it looks
 * @param points  inspections there are
 * @returns when to look again or to renew; the end of the plan where nothing is gained before
 */
export function adviceByLookAhead(look: NextLook, planKm: number, points: number): PreventiveAdvice {
  const known = { basis: 'suchParts', optionId: null, needed: null, got: points } as const;
  switch (look.kind) {
    case 'renewAtVisit':
      return { kind: 'replaceAtNextVisit', withinKm: Number(look.distance.value), chance: null, ...known };
    case 'recheckAt': {
      const withinKm = Number(look.distance.value);
      return { kind: 'leaveUntilRecheck', withinKm, chance: look.probability, ...known };
    }
    case 'notWithinPlan':
      return { kind: 'leaveUntilRecheck', withinKm: planKm, chance: null, ...known };
  }
}

const rounded = (chance: number): number => Math.round(chance * 1e4) / 1e4;

/**
 * Advice that goes with an assessment: what the assessment recommends comes first, and where it leaves the worn part in,
 * when to look at it again.
 */
export function adviceOf(
  result: Assessment,
  input: AssessmentInput,
  wear: { readonly trend: WearTrendOutcome; readonly points: number },
): PreventiveAdvice | null {
  const { recommendation } = result;
  if (recommendation.kind === 'none') return null;
  const plain = { basis: null, withinKm: null, chance: null, optionId: null, needed: null, got: wear.points };
  // Safety is never weighed against wear or money, and what has to be measured first is not advised on.
  if (input.evidence.safetyFindings.length > 0) return { kind: 'dangerFirst', ...plain };
  if (recommendation.kind === 'measureFirst') return { kind: 'measureFirst', ...plain };
  const optionId =
    recommendation.kind === 'closeCall' ? (recommendation.optionIds[0] ?? null) : recommendation.optionId;
  const option = result.options.find((each) => each.optionId === optionId);
  if (option === undefined) return null;
  const { planningDistanceKm, serviceIntervalKm } = input;
  if (option.action === 'leave' || option.action === 'adjust') {
    const own = adviceByWear({ ...wear, planningDistanceKm, serviceIntervalKm });
    const isAsked = own.kind === 'notEnoughKnown' && result.nextLook !== null;
    return isAsked ? adviceByLookAhead(result.nextLook, planningDistanceKm, wear.points) : own;
  }
  const chance = rounded(result.belief.probabilityBeyondCriterion);
  // Without a complaint a renewal waits for the next planned visit, unless the criterion says that it no longer works.
  const { functionalCriterion } = input.evidence;
  const fails = functionalCriterion.kind === 'positive' && functionalCriterion.isValid;
  const canWait = input.occasion === 'serviceVisit' && !fails;
  const kind = canWait ? 'replaceAtNextVisit' : 'renewNow';
  const withinKm = canWait ? serviceIntervalKm : null;
  return { kind, basis: null, withinKm, chance, optionId, needed: null, got: wear.points };
}
