import { compareQuantities } from '../quantities/compare-quantities.js';
import type { Quantity } from '../quantities/quantity.js';
import type { QuantityKind } from '../quantities/quantity-kind.js';
import { quantityKinds } from '../quantities/quantity-kind.js';
import type { DataRecord } from './field-checks.js';
import {
  checkDate,
  checkList,
  checkOneOf,
  checkQuantity,
  checkRecord,
  checkText,
  escapeKey,
} from './field-checks.js';
import type { ReportIssue } from './limit-issue.js';

const ruleKinds = ['oneOf', 'noneOf', 'range', 'dates'] as const;

/**
 * Checks a record of rules (applicability, test conditions).
 *
 * @param data     anything
 * @param pointer  JSON Pointer of the data
 * @param report   takes down findings
 */
export function checkRules(data: unknown, pointer: string, report: ReportIssue): void {
  if (data === undefined) return;
  if (typeof data !== 'object' || data === null || Array.isArray(data)) {
    report(pointer, 'wrongType', 'object');
    return;
  }
  for (const [key, rule] of Object.entries(data)) checkRule(rule, `${pointer}/${escapeKey(key)}`, report);
}

/**
 * Checks one rule.
 *
 * @param data     anything
 * @param pointer  JSON Pointer of the data
 * @param report   takes down findings
 */
export function checkRule(data: unknown, pointer: string, report: ReportIssue): void {
  const kind = (data as DataRecord | null | undefined)?.['kind'];
  if (!checkOneOf(kind, ruleKinds, `${pointer}/kind`, report)) {
    if (kind === undefined) report(`${pointer}/kind`, 'missing');
    return;
  }
  switch (kind) {
    case 'oneOf':
    case 'noneOf': {
      const record = checkRecord(data, pointer, ['kind', 'values'], [], report);
      checkList(record?.['values'], `${pointer}/values`, report).forEach((value, index) => {
        checkText(value, `${pointer}/values/${index}`, report);
      });
      return;
    }
    case 'dates': {
      const record = checkRecord(data, pointer, ['kind'], ['from', 'before'], report);
      const from = record?.['from'];
      const before = record?.['before'];
      const areDates = [
        checkDate(from, `${pointer}/from`, report),
        checkDate(before, `${pointer}/before`, report),
      ];
      if (from === undefined && before === undefined) report(pointer, 'noRestriction', 'from or before');
      if (areDates.every(Boolean) && (from as string) >= (before as string))
        report(pointer, 'edgesExchanged');
      return;
    }
    case 'range':
      checkRange(data, pointer, report);
  }
}

function checkRange(data: unknown, pointer: string, report: ReportIssue): void {
  const edges = ['over', 'from', 'under', 'upTo'] as const;
  const record = checkRecord(data, pointer, ['kind', 'quantityKind'], edges, report);
  if (record === null) return;
  const kind = record['quantityKind'];
  if (!checkOneOf<QuantityKind>(kind, quantityKinds, `${pointer}/quantityKind`, report)) return;
  const good = edges.filter((edge) => checkQuantity(record[edge], kind, `${pointer}/${edge}`, report));
  if (edges.every((edge) => record[edge] === undefined))
    report(pointer, 'noRestriction', 'over, from, under or upTo');
  const lower = good.find((edge) => edge === 'over' || edge === 'from');
  const upper = good.find((edge) => edge === 'under' || edge === 'upTo');
  if (lower === undefined || upper === undefined) return;
  const comparison = compareQuantities(record[lower] as Quantity, record[upper] as Quantity, kind);
  if (comparison.kind === 'compared' && comparison.order === 'greater') report(pointer, 'edgesExchanged');
}
