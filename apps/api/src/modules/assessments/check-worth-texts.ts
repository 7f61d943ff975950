import type { CheckWorth, MoneyUnknownReason } from '@endfloat/workshop';

/** Why checks cannot be weighed against money, in words. */
export const moneyUnknownTexts: Readonly<Record<MoneyUnknownReason, string>> = {
  noJob: 'No job was named, so it is not known what the customer complains of.',
  noInspection: 'No inspection has been begun for this job.',
  sheetFeedsNoTables: 'Nothing on this check sheet tells causes of the complaint apart.',
  contradictoryEvidence: 'What was found fits no cause of the tables. Check it again before going on.',
  allChecksDone: 'All checks that could tell have been done.',
};

/** What a check saves and costs, in words; what is never traded against money comes first. */
export function checkWorthText(
  worth: Pick<CheckWorth, 'isOpeningMove' | 'minutes' | 'expectedSaving' | 'cost' | 'isWorthIt'>,
): string {
  const { isOpeningMove, minutes, expectedSaving, cost, isWorthIt } = worth;
  const first = isOpeningMove ? 'Quick and safe, so it comes first whatever it saves. ' : '';
  const spent = `${String(minutes)} minutes cost ${cost.amount} ${cost.currency}`;
  const saved = `save ${expectedSaving.amount} ${expectedSaving.currency} on average by avoiding a wrong repair`;
  const judged = isWorthIt
    ? 'worth doing before anything is repaired.'
    : 'not worth it for the money alone. A safety check is done all the same.';
  return `${first}${spent} and ${saved}: ${judged}`;
}
