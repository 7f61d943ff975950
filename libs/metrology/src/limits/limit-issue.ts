/** What may be wrong with data that should be a limit; stable codes. */
export const limitIssueCodes = [
  'missing',
  'unknownMember',
  'wrongType',
  'empty',
  'tooLong',
  'notAnId',
  'notOneOf',
  'notADate',
  'notAQuantity',
  'wrongKindOfUnit',
  'notADecimal',
  'comparatorAgainstSide',
  'edgesExchanged',
  'kindNeeded',
  'kindNotWanted',
  'thresholdsOutOfRange',
  'editionEndsBeforeStart',
  'advisoryOfAnotherShape',
  'advisoryNotStricter',
  'notDescending',
  'namedTwice',
  'noRestriction',
] as const;

/** A code of `limitIssueCodes`. */
export type LimitIssueCode = (typeof limitIssueCodes)[number];

/** One finding: where (JSON Pointer), which rule, and what would have been right. */
export interface LimitIssue {
  readonly pointer: string;
  readonly code: LimitIssueCode;
  readonly detail: string;
}

/** Takes down a finding. */
export type ReportIssue = (pointer: string, code: LimitIssueCode, detail?: string) => void;
