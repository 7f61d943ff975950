import { exactCanonicalStep } from '../quantities/canonical-number.js';
import { toCanonical } from '../quantities/convert-quantity.js';
import { ExactDecimal, toDecimalText } from '../quantities/exact-decimal.js';
import type { Quantity } from '../quantities/quantity.js';
import type { QuantityKind } from '../quantities/quantity-kind.js';
import { quantityKindTable } from '../quantities/quantity-kind.js';
import type { UnitCode } from '../quantities/unit-code.js';
import { unitTable } from '../quantities/unit-table.js';
import type { LimitContext } from './applicability.js';
import { boundFromFormula } from './bound-from-formula.js';
import { boundFromTable } from './bound-from-table.js';
import type { BoundsRefusal, EdgeResult } from './edge-result.js';
import type { CorrectionTerm } from './limit.js';
import type { BoundSide, Comparator, LimitBound, LimitCriterion, PrintedValue } from './limit-criterion.js';
import { isQuantity } from './matches-rule.js';

/** One edge in the canonical unit; `isInclusive` is null where the source is unclear. */
export interface ResolvedBound {
  readonly value: string;
  readonly isInclusive: boolean | null;
}

/** What is permitted, in the canonical unit of the kind, or why there is nothing to compare with. */
export type ResolvedBounds =
  | {
      readonly kind: 'bounds';
      readonly unit: UnitCode;
      readonly lower: ResolvedBound | null;
      readonly upper: ResolvedBound | null;
    }
  | BoundsRefusal;

/**
 * What a limit permits for a number, in the canonical unit: figures picked, table or formula worked out, correction
 * added. Where a figure is printed in the unit of the readings, that figure is used and none is rounded into another.
 *
 * @param criterion    minimum, maximum, band, tabulated or formula; ratios are resolved as bounds of the ratio
 * @param kind         what the readings are values of
 * @param readingUnit  the unit all readings are in; null where they differ
 * @param context      inputs of table, formula and correction
 * @param correction   correction term or null
 * @returns the edges, or the reason why there are none
 * @throws RangeError on a figure that is no value of the kind, or a correction without a step or on a scale that is not
 *   linear (a limit that was never validated)
 * @source judgement: the figure printed in the unit of the readings counts
 * @example resolveBounds({ kind: 'maximum', bound: { comparator: 'atMost', value: { value: '51', unit: 'mm',
 *   alsoPrinted: [{ value: '2', unit: '[in_i]' }] } } }, 'length', '[in_i]', {}, null)
 *   // => { kind: 'bounds', unit: 'mm', lower: null, upper: { value: '50.8', isInclusive: true } }
 */
export function resolveBounds(
  criterion: LimitCriterion,
  kind: QuantityKind,
  readingUnit: UnitCode | null,
  context: LimitContext,
  correction: CorrectionTerm | null,
): ResolvedBounds {
  const shift = correctionShift(correction, kind, context);
  if (typeof shift === 'string') return { kind: 'notResolved', reason: 'contextMissing', details: [shift] };
  const edges = edgesOf(criterion, kind, readingUnit, context);
  return edges.kind === 'edges' ? place(edges.edges, kind, readingUnit, shift) : edges;
}

type EdgesResult = { readonly kind: 'edges'; readonly edges: readonly Edge[] } | BoundsRefusal;

function edgesOf(
  criterion: LimitCriterion,
  kind: QuantityKind,
  readingUnit: UnitCode | null,
  context: LimitContext,
): EdgesResult {
  switch (criterion.kind) {
    case 'minimum':
    case 'maximum':
      return { kind: 'edges', edges: [{ side: criterion.kind, bound: criterion.bound }] };
    case 'band':
      return {
        kind: 'edges',
        edges: [
          { side: 'minimum', bound: criterion.lower },
          { side: 'maximum', bound: criterion.upper },
        ],
      };
    case 'ratioOfTwo':
    case 'ratioToBest':
    case 'ratioToMean':
      return { kind: 'edges', edges: [{ side: criterion.side, bound: criterion.bound }] };
    case 'tabulated':
      return derivedEdges(criterion, boundFromTable(criterion, context, readingUnit));
    case 'formula':
      return derivedEdges(criterion, boundFromFormula(criterion, kind, context));
    case 'classes':
      return { kind: 'notResolved', reason: 'classOnly', details: [] };
    case 'pair':
    case 'grade':
    case 'yesNo':
      return { kind: 'notResolved', reason: 'wrongKindOfQuantity', details: [criterion.kind] };
  }
}

function derivedEdges(
  criterion: Extract<LimitCriterion, { kind: 'tabulated' | 'formula' }>,
  edge: EdgeResult,
): EdgesResult {
  if (edge.kind !== 'edge') return edge;
  const { comparator, side } = criterion;
  const bound: LimitBound = { comparator, value: edge.value };
  if (criterion.kind === 'tabulated' || !criterion.isAbsolute)
    return { kind: 'edges', edges: [{ side, bound }] };
  const opposite = { value: new ExactDecimal(edge.value.value).negated().toFixed(), unit: edge.value.unit };
  return {
    kind: 'edges',
    edges: [
      { side: 'minimum', bound: { comparator, value: opposite } },
      { side: 'maximum', bound },
    ],
  };
}

interface Edge {
  readonly side: BoundSide;
  readonly bound: LimitBound;
}

function place(
  edges: readonly Edge[],
  kind: QuantityKind,
  readingUnit: UnitCode | null,
  shift: ExactDecimal,
): ResolvedBounds {
  const unit = quantityKindTable[kind].canonical;
  let lower: ResolvedBound | null = null;
  let upper: ResolvedBound | null = null;
  for (const { side, bound } of edges) {
    const figure = printedFigure(bound.value, readingUnit);
    const canonical = toCanonical(figure, kind);
    if (canonical.kind !== 'converted') {
      throw new RangeError(`limit figure ${figure.value} ${figure.unit} is refused: ${canonical.kind}`);
    }
    const resolved = {
      value: toDecimalText(new ExactDecimal(canonical.value).plus(shift)),
      isInclusive: isInclusive(bound.comparator),
    };
    // "At least 20 miles per gallon" is an upper limit for the consumption.
    const isTurned = unitTable[figure.unit].isReciprocal !== unitTable[unit].isReciprocal;
    if ((side === 'minimum') !== isTurned) lower = resolved;
    else upper = resolved;
  }
  return { kind: 'bounds', unit, lower, upper };
}

/**
 * The figure of a printed value to compare a reading with: the one in the reading's own unit, else the first.
 *
 * @param value        printed figure with its alternatives
 * @param readingUnit  unit of the reading, or null
 * @returns one figure
 * @source judgement
 */
export function printedFigure(value: PrintedValue, readingUnit: UnitCode | null): Quantity {
  const own = value.alsoPrinted?.find((figure) => figure.unit === readingUnit);
  return value.unit === readingUnit || own === undefined ? { value: value.value, unit: value.unit } : own;
}

const isInclusive = (comparator: Comparator): boolean | null =>
  comparator === 'unclear' ? null : comparator === 'atMost' || comparator === 'atLeast';

/** The shift in the canonical unit, or the name of the context key that is missing. */
function correctionShift(
  correction: CorrectionTerm | null,
  kind: QuantityKind,
  context: LimitContext,
): ExactDecimal | string {
  if (correction === null) return new ExactDecimal(0);
  const input = context[correction.by];
  if (!isQuantity(input)) return correction.by;
  const at = toCanonical(input, correction.byKind);
  const per = toCanonical(correction.per, correction.byKind);
  if (at.kind !== 'converted') return correction.by;
  if (per.kind !== 'converted' || new ExactDecimal(per.value).isZero())
    throw new RangeError('correction term without a step');
  const isNegative = correction.change.value.startsWith('-');
  const change = exactCanonicalStep(
    { ...correction.change, value: correction.change.value.replace('-', '') },
    kind,
  );
  if (change === null) throw new RangeError('a correction needs a linear scale');
  const size = change.times(at.value).div(per.value);
  return isNegative ? size.negated() : size;
}
