import { compareQuantities } from '../quantities/compare-quantities.js';
import { convertQuantity, toCanonical } from '../quantities/convert-quantity.js';
import { ExactDecimal, toDecimalText } from '../quantities/exact-decimal.js';
import type { Quantity } from '../quantities/quantity.js';
import type { UnitCode } from '../quantities/unit-code.js';
import type { LimitContext } from './applicability.js';
import type { EdgeResult } from './edge-result.js';
import type { LimitCriterion, TabulatedRow } from './limit-criterion.js';
import { isQuantity } from './matches-rule.js';

type Tabulated = Extract<LimitCriterion, { kind: 'tabulated' }>;

/**
 * Permitted value from a table by another reading.
 *
 * The first row that matches counts. An `upTo` row matches every input up to its key. An `equals` row matches an input
 * that is its key when rounded to the digits the key is printed with, in the unit it is printed in (a wheel of 457.2 mm
 * is the one printed as 457 mm or 18 in): printed keys are rounded sizes, so this is a judgement, not a guess of units.
 * Between and beyond the rows the table's own rule for unlisted inputs holds.
 *
 * @param criterion    the table
 * @param context      holds the input under `criterion.by`
 * @param readingUnit  unit of the readings, so that the figure printed in it is found
 * @returns the permitted value, or `notResolved` with `contextMissing` or `notInTable`
 */
export function boundFromTable(
  criterion: Tabulated,
  context: LimitContext,
  readingUnit: UnitCode | null,
): EdgeResult {
  const input = context[criterion.by];
  if (!isQuantity(input)) return { kind: 'notResolved', reason: 'contextMissing', details: [criterion.by] };
  const canonical = toCanonical(input, criterion.byKind);
  if (canonical.kind !== 'converted') {
    return { kind: 'notResolved', reason: 'contextMissing', details: [criterion.by] };
  }
  const row = criterion.rows.find((candidate) => matchesRow(candidate, input, criterion));
  if (row !== undefined) return { kind: 'edge', value: row.value };
  const { outside } = criterion;
  switch (outside.kind) {
    case 'none':
      return { kind: 'notResolved', reason: 'notInTable', details: [criterion.by] };
    case 'clamp':
      return { kind: 'edge', value: nearestRow(criterion, input).value };
    case 'angleAtRim':
      return { kind: 'edge', value: travelAtRim(input, outside.angle, readingUnit) };
  }
}

function matchesRow({ match, key }: TabulatedRow, input: Quantity, { byKind }: Tabulated): boolean {
  const figures: readonly Quantity[] = [key, ...(key.alsoPrinted ?? [])];
  const own = figures.find((figure) => figure.unit === input.unit);
  return (own === undefined ? figures : [own]).some((figure) => {
    if (match === 'upTo') {
      const comparison = compareQuantities(input, figure, byKind);
      return comparison.kind === 'compared' && comparison.order !== 'greater';
    }
    const inUnit = convertQuantity(input, byKind, figure.unit);
    if (inUnit.kind !== 'converted') return false;
    const decimals = figure.value.split('.')[1]?.length ?? 0;
    const rounded = new ExactDecimal(inUnit.value).toDecimalPlaces(decimals, ExactDecimal.ROUND_HALF_UP);
    return rounded.eq(figure.value);
  });
}

function nearestRow({ rows, byKind }: Tabulated, input: Quantity): TabulatedRow {
  const distanceTo = (row: TabulatedRow): ExactDecimal => {
    const [at, key] = [toCanonical(input, byKind), toCanonical(row.key, byKind)];
    if (at.kind !== 'converted' || key.kind !== 'converted')
      throw new RangeError('a table key is a value of its kind');
    return new ExactDecimal(at.value).minus(key.value).abs();
  };
  const [first, ...others] = rows;
  if (first === undefined) throw new RangeError('a table has at least one row');
  return others.reduce((best, row) => (distanceTo(row).lt(distanceTo(best)) ? row : best), first);
}

/** Angle x diameter / 2, the angle in radians; 15 significant digits, since pi is not exact anyway. */
function travelAtRim(diameter: Quantity, angle: Quantity, readingUnit: UnitCode | null): Quantity {
  const degrees = toCanonical(angle, 'angle');
  const unit = readingUnit ?? diameter.unit;
  const across = convertQuantity(diameter, 'length', unit);
  if (degrees.kind !== 'converted' || across.kind !== 'converted') {
    throw new RangeError('travel at the rim needs an angle and a diameter');
  }
  const travel = (Math.PI / 180) * Number(degrees.value) * (Number(across.value) / 2);
  return { value: toDecimalText(new ExactDecimal(travel.toPrecision(15))), unit };
}
