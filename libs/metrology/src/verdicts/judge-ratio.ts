import type { LimitContext } from '../limits/applicability.js';
import type { Limit } from '../limits/limit.js';
import type { LimitCriterion } from '../limits/limit-criterion.js';
import type { ResolvedBounds } from '../limits/resolve-bounds.js';
import { resolveBounds } from '../limits/resolve-bounds.js';
import { canonicalNumber } from '../quantities/canonical-number.js';
import { toCanonical } from '../quantities/convert-quantity.js';
import { ExactDecimal, toDecimalText } from '../quantities/exact-decimal.js';
import type { Quantity } from '../quantities/quantity.js';
import type { QuantityKind } from '../quantities/quantity-kind.js';
import type { CombinedUncertainty } from '../uncertainty/combine-uncertainty.js';
import { combineUncertainty } from '../uncertainty/combine-uncertainty.js';
import type { UncertaintyBudget } from '../uncertainty/uncertainty-budget.js';
import { conformanceProbability } from './conformance-probability.js';
import { appliedBounds, plainText } from './judge-number.js';
import { outcomeAtFaceValue, outcomeOfProbability } from './outcome-of.js';
import type { RatioOfReadings } from './ratio-of-readings.js';
import { ratioOfReadings } from './ratio-of-readings.js';
import type { Verdict, VerdictOutcome } from './verdict.js';
import type { ReadingStanding } from './verdict-standing.js';
import { checkStanding, notJudged } from './verdict-standing.js';

/** One place (a wheel, a cylinder) with its mean and budget. */
export interface PlaceReading {
  readonly value: Quantity;
  readonly uncertainty: UncertaintyBudget;
}

/** Readings of several places and the limit for their ratio. */
export interface JudgeRatioInput {
  readonly limit: Limit;
  readonly quantityKind: QuantityKind;
  /** Two for `ratioOfTwo` (first and second in that order), two or more for the others. */
  readonly places: readonly PlaceReading[];
  readonly context: LimitContext;
  readonly standing?: ReadingStanding;
}

type RatioCriterion = Extract<LimitCriterion, { kind: 'ratioOfTwo' | 'ratioToBest' | 'ratioToMean' }>;
type Bounds = Extract<ResolvedBounds, { kind: 'bounds' }>;

/**
 * Judges the ratio of readings of several places (left and right brake, compression of the cylinders).
 *
 * The uncertainty of the ratio is propagated to first order from the places, taken as independent; which place is the
 * lowest is taken as seen. A ratio of the lower to the higher lies between 0 and 1 and is cut off there. Where the limit
 * also sets a floor for the lowest place, both must be met: the outcome is the worse of the two, and the probability the
 * smaller of the two. Exclusions may name `greaterReading` and `lesserReading`. One place with unknown uncertainty makes
 * the verdict a face-value one.
 *
 * @param input  limit, places, context
 * @returns `judged`, `faceValue`, or `notJudged` (among others `ratioUndefined` where the reference is not above zero)
 * @throws RangeError on other than two places for `ratioOfTwo`, fewer than two for the others, readings that are no
 *   values of their kind
 * @source JCGM 100:2008, 5.1.2; JCGM 106:2012, clause 7
 */
export function judgeRatio(input: JudgeRatioInput): Verdict {
  const { limit, quantityKind, places } = input;
  const { criterion } = limit;
  if (limit.quantityKind !== quantityKind || !isRatio(criterion)) {
    return notJudged(limit, 'wrongKindOfQuantity', [quantityKind]);
  }
  const values = places.map(({ value }) => value);
  const numbers = values.map((value) => canonicalNumber(value, quantityKind));
  const ratio = ratioOfReadings(criterion, values, numbers, quantityKind);
  if (ratio.kind !== 'ratio') return notJudged(limit, 'ratioUndefined');
  const context: LimitContext = {
    ...input.context,
    lesserReading: values[ratio.lowest]!,
    greaterReading: values[ratio.highest]!,
  };
  const standing = checkStanding(limit, context, input.standing ?? {});
  if (standing.kind !== 'free') return standing;
  const bounds = resolveBounds(criterion, 'ratio', null, context, null);
  if (bounds.kind !== 'bounds') return notJudged(limit, bounds.reason, bounds.details);
  const advisory =
    limit.advisory === null ? null : resolveBounds(limit.advisory, 'ratio', null, context, null);
  const parts: Parts = {
    limit,
    criterion,
    ratio,
    places,
    quantityKind,
    bounds,
    advisory: advisory?.kind === 'bounds' ? advisory : null,
    unstated: standing.unstatedConditions,
  };
  return judgeParts(parts);
}

const isRatio = (criterion: LimitCriterion): criterion is RatioCriterion =>
  criterion.kind === 'ratioOfTwo' || criterion.kind === 'ratioToBest' || criterion.kind === 'ratioToMean';

interface Parts {
  readonly limit: Limit;
  readonly criterion: RatioCriterion;
  readonly ratio: RatioOfReadings;
  readonly places: readonly PlaceReading[];
  readonly quantityKind: QuantityKind;
  readonly bounds: Bounds;
  readonly advisory: Bounds | null;
  readonly unstated: readonly string[];
}

function judgeParts(parts: Parts): Verdict {
  const { limit, criterion, ratio, places, bounds } = parts;
  const combined = combinedUncertainty(parts);
  if (combined === null) return atFaceValue(parts);
  const isOpenAbove = criterion.form === 'firstOverSecond';
  const probabilityFor = ({ lower, upper }: Bounds): number | null => {
    const result = conformanceProbability({
      value: ratio.value.toNumber(),
      standardUncertainty: combined.standardUncertainty,
      degreesOfFreedom: combined.effectiveDegreesOfFreedom,
      permitted: {
        lower: lower === null ? null : Number(lower.value),
        upper: upper === null ? null : Number(upper.value),
      },
      possible: { lower: 0, upper: isOpenAbove ? null : 1 },
      prior: null,
    });
    return result.kind === 'probability' ? result.inside : null;
  };
  const ofRatio = probabilityFor(bounds);
  const ofFloor = floorProbability(parts);
  if (ofRatio === null || ofFloor === null) return notJudged(limit, 'contradictsPhysicalBound');
  const inside = Math.min(ofRatio, ofFloor);
  const ofAdvisory = parts.advisory === null ? null : probabilityFor(parts.advisory);
  return {
    kind: 'judged',
    limitId: limit.id,
    severity: limit.severity,
    outcome: outcomeOfProbability(inside, limit.thresholds),
    probabilityInside: inside,
    value: { value: toDecimalText(ratio.value), unit: '1' },
    standardUncertainty: { value: plainText(combined.standardUncertainty), unit: '1' },
    effectiveDegreesOfFreedom: combined.effectiveDegreesOfFreedom,
    count: places.length,
    bounds: appliedBounds(bounds),
    advisory: ofAdvisory === null ? null : outcomeOfProbability(ofAdvisory, limit.thresholds),
    furtherReadings:
      outcomeOfProbability(inside, limit.thresholds) === 'undecided'
        ? { kind: 'noNumberSettles', why: 'nothingAverages' }
        : { kind: 'none' },
    unstatedConditions: parts.unstated,
    method: 'JCGM 106 conformance probability of a ratio, first-order propagation',
  };
}

function combinedUncertainty({ ratio, places }: Parts): CombinedUncertainty | null {
  const components = places.map(({ uncertainty }, index) =>
    uncertainty.kind === 'known'
      ? {
          source: 'other' as const,
          standardUncertainty: uncertainty.standardUncertainty,
          degreesOfFreedom: uncertainty.effectiveDegreesOfFreedom,
          sensitivity: ratio.sensitivities[index]!,
        }
      : null,
  );
  const known = components.filter((component) => component !== null);
  return known.length === components.length ? combineUncertainty(known) : null;
}

function floorProbability({ criterion, ratio, places, quantityKind }: Parts): number | null {
  if (criterion.kind === 'ratioOfTwo' || criterion.floor === null) return 1;
  const { value, uncertainty } = places[ratio.lowest]!;
  if (uncertainty.kind !== 'known') return null;
  const result = conformanceProbability({
    value: canonicalNumber(value, quantityKind),
    standardUncertainty: uncertainty.standardUncertainty,
    degreesOfFreedom: uncertainty.effectiveDegreesOfFreedom,
    permitted: { lower: canonicalNumber(criterion.floor, quantityKind), upper: null },
    possible: { lower: null, upper: null },
    prior: null,
  });
  return result.kind === 'probability' ? result.inside : null;
}

function atFaceValue(parts: Parts): Verdict {
  const { limit, ratio, places, bounds, advisory } = parts;
  const ofRatio = outcomeAtFaceValue(ratio.value, bounds.lower, bounds.upper);
  const ofFloor = floorAtFaceValue(parts);
  if (ofRatio === 'onUnclearEdge') return notJudged(limit, 'sourceUnclear');
  const note = advisory === null ? null : outcomeAtFaceValue(ratio.value, advisory.lower, advisory.upper);
  const missing = places.flatMap(({ uncertainty }) =>
    uncertainty.kind === 'unknown' ? uncertainty.missing : [],
  );
  const outcome: Exclude<VerdictOutcome, 'undecided'> =
    ofRatio === 'inside' && ofFloor ? 'inside' : 'outside';
  return {
    kind: 'faceValue',
    limitId: limit.id,
    severity: limit.severity,
    outcome,
    value: { value: toDecimalText(ratio.value), unit: '1' },
    count: places.length,
    bounds: appliedBounds(bounds),
    advisory: note === 'onUnclearEdge' ? null : note,
    missing: [...new Set(missing)],
    unstatedConditions: parts.unstated,
    method: 'bare ratio compared exactly, uncertainty not known',
  };
}

function floorAtFaceValue({ criterion, ratio, places, quantityKind }: Parts): boolean {
  if (criterion.kind === 'ratioOfTwo' || criterion.floor === null) return true;
  const lowest = toCanonical(places[ratio.lowest]!.value, quantityKind);
  const floor = toCanonical(criterion.floor, quantityKind);
  if (lowest.kind !== 'converted' || floor.kind !== 'converted')
    throw new RangeError('floor and readings are of one kind');
  return new ExactDecimal(lowest.value).gte(floor.value);
}
