import type { OdometerSegment, OdometerUnit } from './odometer-segment.js';

/** What looked odd about an odometer entry; the entry is always kept. */
export const odometerWarningCodes = [
  'notReadable',
  'noSegment',
  'belowZero',
  'moreDigitsThanDisplay',
  'unitDiffersFromSegment',
  'rolloverLikely',
  'unitMixedUp',
  'digitTooMany',
  'digitMissing',
  'lowerThanLast',
  'fasterThanPlausible',
  'unchangedOverMonths',
  'backFilled',
  'higherThanNext',
] as const;
export type OdometerWarningCode = (typeof odometerWarningCodes)[number];

/** Warnings that tell a fact and contradict nothing: the entry stays reliable. */
export const informationCodes: readonly OdometerWarningCode[] = [
  'noSegment',
  'unitDiffersFromSegment',
  'backFilled',
];

/** What a person may confirm to settle the matter. */
export type OdometerProposal =
  | { readonly kind: 'segment'; readonly segment: OdometerSegment }
  | { readonly kind: 'unit'; readonly unit: OdometerUnit }
  | { readonly kind: 'unitOfEarlierReadings'; readonly unit: OdometerUnit }
  | { readonly kind: 'shown'; readonly shown: string }
  | { readonly kind: 'shownBetween'; readonly lowest: string; readonly highest: string }
  | { readonly kind: 'notReliableFrom'; readonly from: string };

export interface OdometerWarning {
  readonly code: OdometerWarningCode;
  readonly values: Readonly<Record<string, string>>;
  readonly proposals: readonly OdometerProposal[];
  /** a person has to say why before the entry can be relied on */
  readonly reasonRequired: boolean;
}

/** Writes a warning; contradictions ask for a reason, facts do not. */
export function odometerWarning(
  code: OdometerWarningCode,
  values: Readonly<Record<string, string>>,
  proposals: readonly OdometerProposal[] = [],
): OdometerWarning {
  return { code, values, proposals, reasonRequired: code === 'lowerThanLast' || code === 'higherThanNext' };
}
