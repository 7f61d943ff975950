import type { QuantityKind } from '../quantities/quantity-kind.js';
import { quantityKinds } from '../quantities/quantity-kind.js';
import { checkRule, checkRules } from './check-applicability.js';
import { checkCriterion } from './check-criterion.js';
import type { DataRecord } from './field-checks.js';
import {
  checkDate,
  checkId,
  checkList,
  checkOneOf,
  checkQuantity,
  checkRecord,
  checkText,
} from './field-checks.js';
import type { Limit } from './limit.js';
import { judgingStates, limitOrigins } from './limit.js';
import type { LimitIssue, ReportIssue } from './limit-issue.js';
import { resolveBounds } from './resolve-bounds.js';
import { severities } from './severity.js';

const limitMembers = [
  'id',
  'characteristic',
  'quantityKind',
  'criterion',
  'advisory',
  'severity',
  'jurisdiction',
  'applicability',
  'conditions',
  'exclusions',
  'correction',
  'edition',
  'origin',
  'judging',
  'thresholds',
  'asWritten',
  'note',
] as const satisfies readonly (keyof Limit)[];

/**
 * Checks data from a catalogue file or a request that should be a limit: every member there and none besides, figures in
 * units of their kind, comparators that fit the side they limit, edges in order, an advisory criterion of the same shape
 * and not wider than the limit, thresholds and edition dates in order, a source with every origin.
 *
 * @param data  anything
 * @returns findings with JSON Pointers, at most 100; none means that the data is a `Limit`. An advisory criterion is
 *   compared with the limit only where both resolve without a context
 * @source the shape of `Limit`; pointers RFC 6901
 * @example validateLimit(null) // => [{ pointer: '', code: 'wrongType', detail: 'object' }]
 */
export function validateLimit(data: unknown): readonly LimitIssue[] {
  const issues: LimitIssue[] = [];
  const report: ReportIssue = (pointer, code, detail = '') => {
    if (issues.length < 100) issues.push({ pointer, code, detail });
  };
  const record = checkRecord(data, '', limitMembers, [], report);
  if (record === null) return issues;
  checkId(record['id'], '/id', report);
  checkId(record['characteristic'], '/characteristic', report);
  checkText(record['asWritten'], '/asWritten', report);
  for (const member of ['jurisdiction', 'note']) {
    if (record[member] !== null) checkText(record[member], `/${member}`, report);
  }
  checkOneOf(record['severity'], severities, '/severity', report);
  checkOneOf(record['origin'], limitOrigins, '/origin', report);
  checkOneOf(record['judging'], judgingStates, '/judging', report);
  const kind = checkQuantityKind(record, report);
  checkCriteria(record, kind, report);
  checkRules(record['applicability'], '/applicability', report);
  checkRules(record['conditions'], '/conditions', report);
  checkExclusions(record['exclusions'], report);
  checkCorrection(record['correction'], kind, report);
  checkEdition(record['edition'], report);
  checkThresholds(record['thresholds'], report);
  if (issues.length === 0) checkAdvisoryIsStricter(data as Limit, report);
  return issues;
}

/** Data that is a limit, or what is wrong with it. */
export type LimitResult =
  | { readonly kind: 'limit'; readonly limit: Limit }
  | { readonly kind: 'invalid'; readonly issues: readonly LimitIssue[] };

/**
 * Takes data as a limit where `validateLimit` finds nothing.
 *
 * @param data  anything
 * @returns the limit, or the findings
 * @source as `validateLimit`
 * @example parseLimit({}).kind // => 'invalid'
 */
export function parseLimit(data: unknown): LimitResult {
  const issues = validateLimit(data);
  return issues.length === 0 ? { kind: 'limit', limit: data as Limit } : { kind: 'invalid', issues };
}

function checkQuantityKind(record: DataRecord, report: ReportIssue): QuantityKind | null {
  const kind = record['quantityKind'];
  if (kind === null || !checkOneOf<QuantityKind>(kind, quantityKinds, '/quantityKind', report)) return null;
  return kind;
}

function checkCriteria(record: DataRecord, kind: QuantityKind | null, report: ReportIssue): void {
  if (record['criterion'] === undefined) return;
  const shape = checkCriterion(record['criterion'], kind, '/criterion', report);
  if (record['advisory'] === null || record['advisory'] === undefined) return;
  const advisory = checkCriterion(record['advisory'], kind, '/advisory', report);
  if (advisory !== null && shape !== null && advisory !== shape)
    report('/advisory/kind', 'advisoryOfAnotherShape', shape);
}

function checkExclusions(data: unknown, report: ReportIssue): void {
  checkList(data, '/exclusions', report, 0).forEach((exclusion, index) => {
    const at = `/exclusions/${index}`;
    const entry = checkRecord(exclusion, at, ['id', 'key', 'rule'], [], report);
    checkId(entry?.['id'], `${at}/id`, report);
    checkText(entry?.['key'], `${at}/key`, report);
    if (entry?.['rule'] !== undefined) checkRule(entry['rule'], `${at}/rule`, report);
  });
}

function checkCorrection(data: unknown, kind: QuantityKind | null, report: ReportIssue): void {
  if (data === null || data === undefined) return;
  const record = checkRecord(data, '/correction', ['by', 'byKind', 'per', 'change'], [], report);
  if (record === null) return;
  checkText(record['by'], '/correction/by', report);
  if (checkOneOf<QuantityKind>(record['byKind'], quantityKinds, '/correction/byKind', report)) {
    checkQuantity(record['per'], record['byKind'], '/correction/per', report);
  }
  checkQuantity(record['change'], kind, '/correction/change', report, 'difference');
}

function checkEdition(data: unknown, report: ReportIssue): void {
  if (data === undefined) return;
  const record = checkRecord(data, '/edition', ['validFrom', 'validTo', 'source', 'citation'], [], report);
  if (record === null) return;
  checkText(record['source'], '/edition/source', report);
  checkText(record['citation'], '/edition/citation', report);
  const { validFrom: from, validTo: to } = record;
  const isFrom = from !== null && checkDate(from, '/edition/validFrom', report);
  const isTo = to !== null && checkDate(to, '/edition/validTo', report);
  if (isFrom && isTo && from >= to) report('/edition', 'editionEndsBeforeStart');
}

function checkThresholds(data: unknown, report: ReportIssue): void {
  if (data === undefined) return;
  const record = checkRecord(data, '/thresholds', ['inside', 'outside'], [], report);
  if (record === null) return;
  const { inside, outside } = record;
  const isGood =
    typeof inside === 'number' &&
    typeof outside === 'number' &&
    outside > 0 &&
    outside < inside &&
    inside < 1;
  if (!isGood) report('/thresholds', 'thresholdsOutOfRange', '0 < outside < inside < 1');
}

/** Only where both resolve without a context; figures that come from a table or the maker are not compared. */
function checkAdvisoryIsStricter({ criterion, advisory, quantityKind }: Limit, report: ReportIssue): void {
  if (advisory === null || quantityKind === null) return;
  const kind = criterion.kind.startsWith('ratio') ? 'ratio' : quantityKind;
  const [outer, inner] = [criterion, advisory].map((shape) => resolveBounds(shape, kind, null, {}, null));
  if (outer?.kind !== 'bounds' || inner?.kind !== 'bounds') return;
  const isWider =
    (outer.lower !== null &&
      (inner.lower === null || Number(inner.lower.value) < Number(outer.lower.value))) ||
    (outer.upper !== null && (inner.upper === null || Number(inner.upper.value) > Number(outer.upper.value)));
  if (isWider) report('/advisory', 'advisoryNotStricter');
}
