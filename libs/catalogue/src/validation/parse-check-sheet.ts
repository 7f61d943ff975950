import type { Limit } from '@endfloat/metrology';
import type { Check, CheckSheet } from '../check-sheets/check-sheet.js';
import type { ComponentType, ResultKind } from '../component-types/component-type.js';
import { shippedComponentTypes } from '../component-types/shipped-component-types.js';
import { proofPoints } from '../proof/proof-points.js';
import type { DataIssue, Report } from './data-issue.js';
import { collectIssues } from './data-issue.js';
import { readCheck } from './read-check.js';
import { readCount, readId, readList, readRecord, readText, reportRepeats } from './read-data.js';
import { reportCircles } from './report-circles.js';

export type CheckSheetResult =
  | { readonly kind: 'checkSheet'; readonly checkSheet: CheckSheet }
  | { readonly kind: 'invalid'; readonly issues: readonly DataIssue[] };

const MEMBERS = ['id', 'edition', 'title', 'componentTypeIds', 'checks'];

/**
 * Takes data as a check sheet: ids unique, prerequisites that exist and run in no circle, a caution for each hazard (also
 * those that follow from the required state or the instrument), limits that are valid and belong to what is measured,
 * units of the right kind. Members with a natural default may be left out; the sheet comes back complete.
 *
 * @param data  anything
 * @param componentTypes  kinds of part the sheet may name; the shipped ones where left out
 * @returns the complete sheet, or findings with JSON Pointers, at most 100
 * @example parseCheckSheet([]) // => { kind: 'invalid', issues: [{ pointer: '', code: 'wrongType', detail: 'object' }] }
 */
export function parseCheckSheet(
  data: unknown,
  componentTypes: readonly ComponentType[] = shippedComponentTypes,
): CheckSheetResult {
  const { issues, report } = collectIssues();
  const record = readRecord(data, '', MEMBERS, ['proofPointIds', 'precedence'], report);
  if (record === null) return { kind: 'invalid', issues };
  const checks = readList(record['checks'], '/checks', report, (entry, at) => readCheck(entry, at, report));
  if (Array.isArray(record['checks']) && checks.length === 0) report('/checks', 'empty');
  const idList = (name: string): readonly string[] =>
    readList(record[name], `/${name}`, report, (entry, at) => readId(entry, at, report));
  const checkSheet: CheckSheet = {
    id: readId(record['id'], '/id', report),
    edition: readCount(record['edition'], '/edition', report, 1, 1_000_000),
    title: readText(record['title'], '/title', report),
    componentTypeIds: idList('componentTypeIds'),
    checks,
    proofPointIds: idList('proofPointIds'),
    precedence:
      record['precedence'] === undefined
        ? "The maker's instructions, local rules and licensed practice come first."
        : readText(record['precedence'], '/precedence', report),
  };
  checkReferences(checkSheet, componentTypes, report);
  return issues.length === 0 ? { kind: 'checkSheet', checkSheet } : { kind: 'invalid', issues };
}

/** Findings of `parseCheckSheet`; none means that the data is a check sheet. */
export function validateCheckSheet(
  data: unknown,
  componentTypes: readonly ComponentType[] = shippedComponentTypes,
): readonly DataIssue[] {
  const result = parseCheckSheet(data, componentTypes);
  return result.kind === 'invalid' ? result.issues : [];
}

function checkReferences(sheet: CheckSheet, componentTypes: readonly ComponentType[], report: Report): void {
  const ids = sheet.checks.map(({ id }) => id);
  reportRepeats(ids, (index) => `/checks/${index}/id`, report);
  reportRepeats(sheet.componentTypeIds, (index) => `/componentTypeIds/${index}`, report);
  sheet.componentTypeIds.forEach((id, index) => {
    if (!componentTypes.some((type) => type.id === id))
      report(`/componentTypeIds/${index}`, 'componentTypeUnknown', id);
  });
  sheet.proofPointIds.forEach((id, index) => {
    if (!proofPoints.some((point) => point.id === id))
      report(`/proofPointIds/${index}`, 'proofPointUnknown', id);
  });
  sheet.checks.forEach((check, index) => {
    const at = `/checks/${index}`;
    check.prerequisites.forEach((id, place) => {
      if (!ids.includes(id)) report(`${at}/prerequisites/${place}`, 'prerequisiteUnknown', id);
    });
    for (const member of ['advisedAfter', 'alsoRemeasure'] as const) {
      check[member].forEach((id, place) => {
        if (!ids.includes(id)) report(`${at}/${member}/${place}`, 'orderUnknown', id);
      });
    }
    if (check.functional !== null && !ids.includes(check.functional.companionCheckId)) {
      report(`${at}/functional/companionCheckId`, 'companionUnknown', check.functional.companionCheckId);
    }
    checkMeasured(check, sheet, componentTypes, at, report);
  });
  reportCircles(sheet.checks, report);
}

const criteriaOf: Readonly<Record<ResultKind, readonly Limit['criterion']['kind'][]>> = {
  number: [
    'minimum',
    'maximum',
    'band',
    'ratioOfTwo',
    'ratioToBest',
    'ratioToMean',
    'tabulated',
    'formula',
    'classes',
  ],
  bladePair: ['pair'],
  yesNo: ['yesNo'],
  grade: ['grade'],
};

function checkMeasured(
  check: Check,
  sheet: CheckSheet,
  componentTypes: readonly ComponentType[],
  at: string,
  report: Report,
): void {
  const type = componentTypes.find(({ id }) => id === check.componentTypeId);
  if (type === undefined || !sheet.componentTypeIds.includes(check.componentTypeId)) {
    report(`${at}/componentTypeId`, 'componentTypeUnknown', check.componentTypeId);
    return;
  }
  const characteristic = type.characteristics.find(({ id }) => id === check.characteristicId);
  if (characteristic === undefined) {
    report(`${at}/characteristicId`, 'characteristicUnknown', check.characteristicId);
    return;
  }
  if (characteristic.resultKind !== check.resultKind)
    report(`${at}/resultKind`, 'resultKindDiffers', characteristic.resultKind);
  check.limits.forEach((limit, index) => {
    const place = `${at}/limits/${index}`;
    if (limit.characteristic !== check.characteristicId)
      report(`${place}/characteristic`, 'limitOfOtherCharacteristic', check.characteristicId);
    if (limit.quantityKind !== characteristic.quantityKind) {
      report(`${place}/quantityKind`, 'limitOfOtherKind', characteristic.quantityKind ?? 'null');
    }
    if (!criteriaOf[check.resultKind].includes(limit.criterion.kind)) {
      report(`${place}/criterion/kind`, 'limitOfOtherKind', criteriaOf[check.resultKind].join(', '));
    }
  });
}
