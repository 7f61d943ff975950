import type { AssessmentInput } from '../terms/assessment-input.js';
import type { GuardFinding } from '../terms/assessment.js';
import type { OptionTerms } from '../terms/option-terms.js';

/** A guard that takes an option out of the offer, whatever it costs. */
export type RemovingGuard = GuardFinding & { readonly optionId: string };

/**
 * Guards that remove an option: a dangerous finding it does not cure, a validly positive functional criterion (nothing
 * that leaves the wear in), the customer's no.
 *
 * @param option  the option
 * @param input   the assessment
 * @returns findings; none for an admissible option
 */
export function removingGuards(option: OptionTerms, input: AssessmentInput): readonly RemovingGuard[] {
  const { evidence, consent } = input;
  const { optionId, action } = option;
  const findings: RemovingGuard[] = evidence.safetyFindings
    .filter(({ curedBy }) => !curedBy.includes(action))
    .map((finding) => ({
      code: 'safetyFindingNotCured',
      optionId,
      evidence: [finding.findingId, ...finding.evidence],
    }));
  const criterion = evidence.functionalCriterion;
  if (criterion.kind === 'positive' && criterion.isValid && (action === 'leave' || action === 'adjust')) {
    findings.push({ code: 'functionalCriterionPositive', optionId, evidence: criterion.evidence });
  }
  if (consent.declinedActions.includes(action)) {
    findings.push({ code: 'customerDeclined', optionId, evidence: consent.evidence });
  }
  return findings;
}

/**
 * Whether parts and labour go beyond what the customer has agreed to. Without an agreed amount, anything that costs does.
 *
 * @param price  parts and labour, plain number
 * @param input  the assessment
 * @returns true where consent is still to be had
 */
export function isConsentNeeded(price: number, input: AssessmentInput): boolean {
  const { ceiling } = input.consent;
  if (price <= 0) return false;
  return ceiling === null || ceiling.currency !== input.currency || price > Number(ceiling.amount);
}
