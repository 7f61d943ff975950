import { limitIssueCodes } from '@endfloat/metrology';

/** What may be wrong with a check sheet or a component type; codes of limits come from metrology. */
export const dataIssueCodes = [
  ...limitIssueCodes,
  'tooMany',
  'outOfRange',
  'notCanonicalUnit',
  'idRepeats',
  'prerequisiteUnknown',
  'prerequisiteCircular',
  'orderUnknown',
  'cautionMissing',
  'componentTypeUnknown',
  'characteristicUnknown',
  'resultKindDiffers',
  'limitOfOtherCharacteristic',
  'limitOfOtherKind',
  'questionMissing',
  'companionUnknown',
  'proofPointUnknown',
] as const;
export type DataIssueCode = (typeof dataIssueCodes)[number];

/** One finding: where (JSON Pointer, RFC 6901), which rule, and what would have been right. */
export interface DataIssue {
  readonly pointer: string;
  readonly code: DataIssueCode;
  readonly detail: string;
}

export type Report = (pointer: string, code: DataIssueCode, detail?: string) => void;

const MOST_ISSUES = 100;

/** Collects findings, at most a hundred. */
export function collectIssues(): { readonly issues: readonly DataIssue[]; readonly report: Report } {
  const issues: DataIssue[] = [];
  return {
    issues,
    report: (pointer, code, detail = '') => {
      if (issues.length < MOST_ISSUES) issues.push({ pointer, code, detail });
    },
  };
}
