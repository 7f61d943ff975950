import { compareQuantities } from '../quantities/compare-quantities.js';
import type { Quantity } from '../quantities/quantity.js';
import type { QuantityKind } from '../quantities/quantity-kind.js';
import { isUnitOfKind, quantityKinds } from '../quantities/quantity-kind.js';
import { isUnitCode } from '../quantities/unit-code.js';
import type { DataRecord } from './field-checks.js';
import {
  checkDecimal,
  checkList,
  checkOneOf,
  checkQuantity,
  checkRecord,
  checkText,
} from './field-checks.js';
import type { BoundSide, LimitCriterionKind } from './limit-criterion.js';
import { comparators, limitCriterionKinds, ratioOfManyForms, ratioOfTwoForms } from './limit-criterion.js';
import type { ReportIssue } from './limit-issue.js';
import { severities } from './severity.js';

const sides = ['minimum', 'maximum'] as const;

/** Members of each shape besides `kind`, all required. */
const members: Readonly<Record<LimitCriterionKind, readonly string[]>> = {
  minimum: ['bound'],
  maximum: ['bound'],
  band: ['lower', 'upper'],
  ratioOfTwo: ['form', 'side', 'bound'],
  ratioToBest: ['form', 'side', 'bound', 'floor'],
  ratioToMean: ['form', 'side', 'bound', 'floor'],
  pair: ['lower', 'upper'],
  grade: ['accepted', 'rejected'],
  yesNo: ['accepted'],
  tabulated: ['by', 'byKind', 'side', 'comparator', 'rows', 'outside'],
  formula: ['form', 'factor', 'makerValueKey', 'isAbsolute', 'side', 'comparator'],
  classes: ['unit', 'steps'],
};

/** Tells whether readings for such a limit are numbers. */
const isNumeric = (kind: LimitCriterionKind): boolean => kind !== 'grade' && kind !== 'yesNo';

/**
 * Checks the shape of a limit against the kind of quantity it is for.
 *
 * @param data          anything
 * @param quantityKind  kind of the readings, or null
 * @param pointer       JSON Pointer of the data
 * @param report        takes down findings
 * @returns the kind of criterion where it is known
 */
export function checkCriterion(
  data: unknown,
  quantityKind: QuantityKind | null,
  pointer: string,
  report: ReportIssue,
): LimitCriterionKind | null {
  const kind = (data as DataRecord | null | undefined)?.['kind'];
  if (!checkOneOf<LimitCriterionKind>(kind, limitCriterionKinds, `${pointer}/kind`, report)) {
    if (kind === undefined) report(`${pointer}/kind`, 'missing');
    return null;
  }
  const record = checkRecord(data, pointer, ['kind', ...members[kind]], [], report);
  if (record === null) return null;
  if (isNumeric(kind) && quantityKind === null) report('/quantityKind', 'kindNeeded', kind);
  if (!isNumeric(kind) && quantityKind !== null) report('/quantityKind', 'kindNotWanted', kind);
  checkers[kind](record, { kind: quantityKind, pointer, report });
  return kind;
}

interface Place {
  readonly kind: QuantityKind | null;
  readonly pointer: string;
  readonly report: ReportIssue;
}

type Checker = (record: DataRecord, place: Place) => void;

const ratio =
  (forms: readonly string[]): Checker =>
  (record, place) => {
    const { pointer, report } = place;
    checkOneOf(record['form'], forms, `${pointer}/form`, report);
    if (record['floor'] !== null) checkQuantity(record['floor'], place.kind, `${pointer}/floor`, report);
    if (checkOneOf<BoundSide>(record['side'], sides, `${pointer}/side`, report)) {
      checkBound(record['bound'], record['side'], { ...place, kind: 'ratio', pointer: `${pointer}/bound` });
    }
  };

const checkers: Readonly<Record<LimitCriterionKind, Checker>> = {
  minimum: (record, place) => checkBound(record['bound'], 'minimum', below(place, 'bound')),
  maximum: (record, place) => checkBound(record['bound'], 'maximum', below(place, 'bound')),
  band: (record, place) => {
    checkBound(record['lower'], 'minimum', below(place, 'lower'));
    checkBound(record['upper'], 'maximum', below(place, 'upper'));
    const edge = (name: string): unknown => (record[name] as DataRecord | null | undefined)?.['value'];
    checkOrder(edge('lower'), edge('upper'), place);
  },
  ratioOfTwo: ratio(ratioOfTwoForms),
  ratioToBest: ratio(ratioOfManyForms),
  ratioToMean: ratio(ratioOfManyForms),
  pair: (record, place) => {
    checkQuantity(record['lower'], 'length', `${place.pointer}/lower`, place.report);
    checkQuantity(record['upper'], 'length', `${place.pointer}/upper`, place.report);
    checkOrder(record['lower'], record['upper'], { ...place, kind: 'length' });
  },
  grade: (record, { pointer, report }) => {
    const seen = new Set<unknown>();
    const note = (grade: unknown, at: string): void => {
      if (!checkText(grade, at, report)) return;
      if (seen.has(grade)) report(at, 'namedTwice');
      seen.add(grade);
    };
    checkList(record['accepted'], `${pointer}/accepted`, report).forEach((grade, index) => {
      note(grade, `${pointer}/accepted/${index}`);
    });
    checkList(record['rejected'], `${pointer}/rejected`, report).forEach((entry, index) => {
      const at = `${pointer}/rejected/${index}`;
      const rejected = checkRecord(entry, at, ['grade', 'severity'], [], report);
      note(rejected?.['grade'], `${at}/grade`);
      checkOneOf(rejected?.['severity'], severities, `${at}/severity`, report);
    });
  },
  yesNo: (record, { pointer, report }) => {
    checkOneOf(record['accepted'], ['yes', 'no'], `${pointer}/accepted`, report);
  },
  tabulated: (record, place) => checkTable(record, place),
  formula: (record, { pointer, report }) => {
    checkOneOf(record['form'], ['factorTimesMakerValue'], `${pointer}/form`, report);
    checkDecimal(record['factor'], `${pointer}/factor`, report);
    checkText(record['makerValueKey'], `${pointer}/makerValueKey`, report);
    if (record['isAbsolute'] !== undefined && typeof record['isAbsolute'] !== 'boolean') {
      report(`${pointer}/isAbsolute`, 'wrongType', 'true or false');
    }
    if (record['isAbsolute'] === true && record['side'] === 'minimum') {
      report(`${pointer}/side`, 'comparatorAgainstSide', 'a size without sign has an upper limit');
    }
    checkSide(record, pointer, report);
  },
  classes: (record, place) => checkClasses(record, place),
};

const below = (place: Place, member: string): Place => ({ ...place, pointer: `${place.pointer}/${member}` });

function checkBound(data: unknown, side: BoundSide, { kind, pointer, report }: Place): void {
  if (data === undefined) return;
  const record = checkRecord(data, pointer, ['comparator', 'value'], [], report);
  if (record === null) return;
  checkComparator(record['comparator'], side, `${pointer}/comparator`, report);
  checkQuantity(record['value'], kind, `${pointer}/value`, report, 'printed');
}

function checkComparator(data: unknown, side: BoundSide, pointer: string, report: ReportIssue): void {
  if (!checkOneOf(data, comparators, pointer, report) || data === 'unclear') return;
  const isLower = data === 'atLeast' || data === 'greaterThan';
  if (isLower !== (side === 'minimum')) report(pointer, 'comparatorAgainstSide', side);
}

function checkSide(record: DataRecord, pointer: string, report: ReportIssue): void {
  if (!checkOneOf<BoundSide>(record['side'], sides, `${pointer}/side`, report)) return;
  checkComparator(record['comparator'], record['side'], `${pointer}/comparator`, report);
}

function checkOrder(lower: unknown, upper: unknown, { kind, pointer, report }: Place): void {
  const isGood = [lower, upper].every((edge) =>
    checkQuantity(edge, kind, pointer, () => undefined, 'printed'),
  );
  if (kind === null || !isGood) return;
  // A band printed on a reciprocal scale is exchanged in the canonical sense, so both must be in one unit there.
  const comparison = compareQuantities(lower as Quantity, upper as Quantity, kind);
  const isTurned = kind === 'fuelConsumption' && !(lower as Quantity).unit.startsWith('L/');
  const wrong = isTurned ? 'less' : 'greater';
  if (comparison.kind === 'compared' && comparison.order === wrong) report(pointer, 'edgesExchanged');
}

function checkTable(record: DataRecord, { kind, pointer, report }: Place): void {
  checkText(record['by'], `${pointer}/by`, report);
  checkSide(record, pointer, report);
  const isKind = checkOneOf<QuantityKind>(record['byKind'], quantityKinds, `${pointer}/byKind`, report);
  const byKind = isKind ? (record['byKind'] as QuantityKind) : null;
  checkList(record['rows'], `${pointer}/rows`, report).forEach((row, index) => {
    const at = `${pointer}/rows/${index}`;
    const entry = checkRecord(row, at, ['match', 'key', 'value'], [], report);
    checkOneOf(entry?.['match'], ['equals', 'upTo'], `${at}/match`, report);
    checkQuantity(entry?.['key'], byKind, `${at}/key`, report, 'printed');
    checkQuantity(entry?.['value'], kind, `${at}/value`, report, 'printed');
  });
  const outside = record['outside'] as DataRecord | null | undefined;
  if (outside === undefined) return;
  const at = `${pointer}/outside`;
  if (!checkOneOf(outside?.['kind'], ['none', 'clamp', 'angleAtRim'], `${at}/kind`, report)) return;
  const isAngle = outside?.['kind'] === 'angleAtRim';
  checkRecord(outside, at, isAngle ? ['kind', 'angle'] : ['kind'], [], report);
  if (!isAngle) return;
  checkQuantity(outside?.['angle'], 'angle', `${at}/angle`, report);
  if (kind !== 'length' || byKind !== 'length')
    report(at, 'wrongKindOfUnit', 'travel at the rim is a length by a length');
}

function checkClasses(record: DataRecord, { kind, pointer, report }: Place): void {
  const unit = record['unit'];
  if (
    unit !== undefined &&
    (typeof unit !== 'string' || !isUnitCode(unit) || (kind !== null && !isUnitOfKind(kind, unit)))
  ) {
    report(`${pointer}/unit`, 'wrongKindOfUnit', kind ?? 'unit code');
  }
  const steps = checkList(record['steps'], `${pointer}/steps`, report, 2);
  let previous = Infinity;
  steps.forEach((step, index) => {
    const at = `${pointer}/steps/${index}`;
    const entry = checkRecord(step, at, ['name', 'from'], [], report);
    checkText(entry?.['name'], `${at}/name`, report);
    const from = entry?.['from'];
    const isLast = index === steps.length - 1;
    if (from === null && !isLast) report(`${at}/from`, 'missing', 'only the last class has no threshold');
    if (from === null || !checkDecimal(from, `${at}/from`, report)) return;
    if (isLast) report(`${at}/from`, 'notDescending', 'the last class has no threshold');
    if (Number(from) >= previous) report(`${at}/from`, 'notDescending');
    previous = Number(from);
  });
}
