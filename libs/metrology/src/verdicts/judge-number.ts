import type { LimitContext } from '../limits/applicability.js';
import type { Limit } from '../limits/limit.js';
import type { ResolvedBound, ResolvedBounds } from '../limits/resolve-bounds.js';
import { resolveBounds } from '../limits/resolve-bounds.js';
import { canonicalNumber, canonicalStep } from '../quantities/canonical-number.js';
import { ExactDecimal } from '../quantities/exact-decimal.js';
import { meanOfQuantities } from '../quantities/mean-of-quantities.js';
import type { Quantity } from '../quantities/quantity.js';
import type { QuantityKind } from '../quantities/quantity-kind.js';
import { quantityKindTable } from '../quantities/quantity-kind.js';
import type { UnitCode } from '../quantities/unit-code.js';
import type { UncertaintyBudget } from '../uncertainty/uncertainty-budget.js';
import type { ConformanceInput, OpenInterval } from './conformance-probability.js';
import { conformanceProbability } from './conformance-probability.js';
import { furtherReadings } from './further-readings.js';
import { outcomeAtFaceValue, outcomeOfProbability } from './outcome-of.js';
import type { AppliedBounds, JudgedVerdict, Verdict, VerdictOutcome } from './verdict.js';
import type { ReadingStanding } from './verdict-standing.js';
import { checkStanding, notJudged } from './verdict-standing.js';

/** The readings of one characteristic in one phase, their doubt, and everything a limit may ask for. */
export interface JudgeNumberInput {
  readonly limit: Limit;
  readonly quantityKind: QuantityKind;
  /** Repeats; the mean is judged. At least one. */
  readonly readings: readonly Quantity[];
  /** Budget of the mean, as `uncertaintyOfMean` makes it. */
  readonly uncertainty: UncertaintyBudget;
  readonly context: LimitContext;
  readonly standing?: ReadingStanding;
  /** What the quantity can be at all; a clearance has the lower end 0. */
  readonly possible?: { readonly lower?: Quantity; readonly upper?: Quantity };
  /** Normal knowledge from before, of the quantity itself. */
  readonly prior?: { readonly mean: Quantity; readonly standardDeviation: Quantity };
}

/**
 * Judges the mean of readings against one limit.
 *
 * With a known budget: the probability that the true value meets the limit (normal or Student's t with the effective
 * degrees of freedom, cut off at physical bounds) against the limit's thresholds; inside, outside or undecided. With an
 * unknown budget: the bare values are compared exactly and the verdict is marked `faceValue`. Readings in any unit of
 * the kind give the same verdict, except where the source prints different figures per unit.
 *
 * @param input  limit, readings, budget, context
 * @returns `judged`, `faceValue`, or `notJudged` with a reason
 * @throws RangeError where nothing bars the verdict: on no readings or readings that are no values of their kind, a
 *   budget in another unit than the canonical one, a prior on a scale that is not linear
 * @source JCGM 106:2012, clauses 7 and 8
 * @oracle libs/metrology/src/published-cases
 */
export function judgeNumber(input: JudgeNumberInput): Verdict {
  const { limit, quantityKind, readings, uncertainty, context } = input;
  const standing = checkStanding(limit, context, input.standing ?? {});
  if (standing.kind !== 'free') return standing;
  if (limit.quantityKind !== quantityKind || isOfManyValues(limit)) {
    return notJudged(limit, 'wrongKindOfQuantity', [quantityKind]);
  }
  const unit = commonUnit(readings);
  const bounds = resolveBounds(limit.criterion, quantityKind, unit, context, limit.correction);
  if (bounds.kind !== 'bounds') return notJudged(limit, bounds.reason, bounds.details);
  const advisory =
    limit.advisory === null
      ? null
      : resolveBounds(limit.advisory, quantityKind, unit, context, limit.correction);
  const mean = meanOfQuantities(readings, quantityKind);
  if (mean.kind !== 'converted') throw new RangeError(`not a ${quantityKind}: ${mean.kind}`);
  const value: Quantity = { value: mean.value, unit: mean.unit };
  const parts = {
    limit,
    value,
    bounds,
    advisory,
    count: readings.length,
    unstated: standing.unstatedConditions,
  };
  return uncertainty.kind === 'known'
    ? byProbability(parts, uncertainty, input)
    : atFaceValue(parts, uncertainty.missing);
}

type Bounds = Extract<ResolvedBounds, { kind: 'bounds' }>;

interface Parts {
  readonly limit: Limit;
  readonly value: Quantity;
  readonly bounds: Bounds;
  readonly advisory: ResolvedBounds | null;
  readonly count: number;
  readonly unstated: readonly string[];
}

function byProbability(
  { limit, value, bounds, advisory, count, unstated }: Parts,
  budget: Extract<UncertaintyBudget, { kind: 'known' }>,
  input: JudgeNumberInput,
): Verdict {
  if (budget.unit !== value.unit)
    throw new RangeError(`the budget is in ${budget.unit}, the value in ${value.unit}`);
  const conformance: ConformanceInput = {
    value: Number(value.value),
    standardUncertainty: budget.standardUncertainty,
    degreesOfFreedom: budget.effectiveDegreesOfFreedom,
    permitted: intervalOf(bounds),
    possible: possibleInterval(input),
    prior: priorOf(input),
  };
  const result = conformanceProbability(conformance);
  if (result.kind !== 'probability') return notJudged(limit, 'contradictsPhysicalBound');
  const judged: JudgedVerdict = {
    kind: 'judged',
    limitId: limit.id,
    severity: limit.severity,
    outcome: outcomeOfProbability(result.inside, limit.thresholds),
    probabilityInside: result.inside,
    value,
    standardUncertainty: { value: plainText(budget.standardUncertainty), unit: budget.unit },
    effectiveDegreesOfFreedom: budget.effectiveDegreesOfFreedom,
    count,
    bounds: appliedBounds(bounds),
    advisory: advisory?.kind === 'bounds' ? advisoryOutcome(conformance, advisory, limit) : null,
    furtherReadings: furtherReadings(conformance, budget, limit.thresholds),
    unstatedConditions: unstated,
    method: `JCGM 106 conformance probability, ${result.method}`,
  };
  return judged;
}

function advisoryOutcome(
  conformance: ConformanceInput,
  advisory: Bounds,
  limit: Limit,
): VerdictOutcome | null {
  const result = conformanceProbability({ ...conformance, permitted: intervalOf(advisory) });
  return result.kind === 'probability' ? outcomeOfProbability(result.inside, limit.thresholds) : null;
}

function atFaceValue(
  { limit, value, bounds, advisory, count, unstated }: Parts,
  missing: readonly string[],
): Verdict {
  const exact = new ExactDecimal(value.value);
  const outcome = outcomeAtFaceValue(exact, bounds.lower, bounds.upper);
  if (outcome === 'onUnclearEdge') return notJudged(limit, 'sourceUnclear');
  const note = advisory?.kind === 'bounds' ? outcomeAtFaceValue(exact, advisory.lower, advisory.upper) : null;
  return {
    kind: 'faceValue',
    limitId: limit.id,
    severity: limit.severity,
    outcome,
    value,
    count,
    bounds: appliedBounds(bounds),
    advisory: note === 'onUnclearEdge' ? null : note,
    missing,
    unstatedConditions: unstated,
    method: 'bare values compared exactly, uncertainty not known',
  };
}

const isOfManyValues = ({ criterion }: Limit): boolean =>
  criterion.kind === 'ratioOfTwo' || criterion.kind === 'ratioToBest' || criterion.kind === 'ratioToMean';

function commonUnit(readings: readonly Quantity[]): UnitCode | null {
  const units = new Set(readings.map(({ unit }) => unit));
  return units.size === 1 ? readings[0]!.unit : null;
}

const intervalOf = ({ lower, upper }: Bounds): OpenInterval => ({
  lower: lower === null ? null : Number(lower.value),
  upper: upper === null ? null : Number(upper.value),
});

/**
 * Edges as the verdict reports them; an unclear edge is reported as not included, the strict reading.
 *
 * @param bounds  resolved edges
 * @returns quantities in the canonical unit
 */
export function appliedBounds({ unit, lower, upper }: Bounds): AppliedBounds {
  const edge = (bound: ResolvedBound | null): AppliedBounds['lower'] =>
    bound === null ? null : { value: bound.value, unit, isInclusive: bound.isInclusive ?? false };
  return { lower: edge(lower), upper: edge(upper) };
}

function possibleInterval({ possible, quantityKind }: JudgeNumberInput): OpenInterval {
  const { lowest, canonical } = quantityKindTable[quantityKind];
  const lower = possible?.lower ?? (lowest === null ? undefined : { value: lowest, unit: canonical });
  return {
    lower: lower === undefined ? null : canonicalNumber(lower, quantityKind),
    upper: possible?.upper === undefined ? null : canonicalNumber(possible.upper, quantityKind),
  };
}

function priorOf({ prior, quantityKind }: JudgeNumberInput): ConformanceInput['prior'] {
  if (prior === undefined) return null;
  const step = canonicalStep(prior.standardDeviation, quantityKind);
  if (step.kind !== 'step') throw new RangeError('a prior needs a linear scale');
  return { mean: canonicalNumber(prior.mean, quantityKind), standardDeviation: step.value };
}

/** A computed number as plain decimal text of at most 12 significant digits. */
export function plainText(value: number): string {
  return new ExactDecimal(value.toPrecision(12)).toFixed();
}
