import { assessRepairOrReplace } from '../assess/assess-repair-or-replace.js';
import { recalled } from '../memo/recalled.js';
import type { Assessment } from '../terms/assessment.js';
import type { AssessmentInput } from '../terms/assessment-input.js';

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function sortMembers(_key: string, value: unknown): unknown {
  if (typeof value === 'number' && !Number.isFinite(value))
    throw new RangeError('an input holds finite numbers only');
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => byText(a, b)));
}

/**
 * One text for one input, to be stored and hashed: members sorted by name, options and offers by id, actions and evidence
 * ids in order; numbers by the shortest text that reads back to the same value. Deliveries and findings keep their order,
 * which has no bearing on the answer but is part of the record.
 *
 * @param input  the assessment
 * @returns JSON text; inputs that must give the same answer and differ only in such orders give the same text
 * @throws RangeError on a number that is not finite
 * @source the principle of RFC 8785 (JSON canonicalization scheme)
 */
export function canonicaliseAssessmentInput(input: AssessmentInput): string {
  const ordered: AssessmentInput = {
    ...input,
    options: input.options
      .map((option) => ({
        ...option,
        offers: option.offers.toSorted((a, b) => byText(a.offerId, b.offerId)),
      }))
      .sort((a, b) => byText(a.optionId, b.optionId)),
    consent: { ...input.consent, declinedActions: input.consent.declinedActions.toSorted() },
  };
  const members = Object.entries(ordered).sort(([a], [b]) => byText(a, b));
  const texts = members.map(([name, value]) => {
    const text =
      name === 'tables'
        ? recalled(input.tables, 'canonical', () => JSON.stringify(input.tables, sortMembers))
        : JSON.stringify(value, sortMembers);
    return `${JSON.stringify(name)}:${text}`;
  });
  return `{${texts.join(',')}}`;
}

/**
 * Runs a stored assessment again.
 *
 * @param canonicalInput  text of `canonicaliseAssessmentInput`, made by this or an earlier run of the same model version
 * @returns the assessment, equal to the stored one to the last digit
 * @throws SyntaxError on text that is no JSON; RangeError as `assessRepairOrReplace`
 */
export function replayAssessment(canonicalInput: string): Assessment {
  return assessRepairOrReplace(JSON.parse(canonicalInput) as AssessmentInput);
}
