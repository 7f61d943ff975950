import type { AssessmentReasonDto, AssessmentSummary, SummaryOptionDto } from '@endfloat/contracts';
import type { AssessmentRecord } from '@endfloat/workshop';
import { presentAssessment } from './assessment.presenter.js';

/** Whether a reason names an amount: its unit is then a currency. */
const namesAmount = ({ values }: AssessmentReasonDto): boolean =>
  values.some(({ unit }) => /^[A-Z]{3}$/.test(unit));

/** The same answer without what an option costs the shop and from whom it buys. */
export function presentSummary(record: AssessmentRecord): AssessmentSummary {
  const { id, vehicleId, jobId, componentType, position, ...answer } = presentAssessment(record);
  return {
    id,
    recordedAt: record.firstRecordedAt,
    vehicleId,
    jobId,
    componentType,
    position,
    recommendation: answer.recommendation,
    options: answer.options.map((option): SummaryOptionDto => {
      const { optionId, action, title, removedBy } = option;
      const isPriced = option.kind === 'priced';
      return {
        optionId,
        action,
        title,
        isPriced,
        removedBy,
        comeback: isPriced ? option.comeback : null,
        leadTime: isPriced ? option.leadTime : null,
      };
    }),
    guards: answer.guards,
    reasons: answer.reasons.filter((reason) => !namesAmount(reason)),
    advice: answer.advice,
    belief: answer.belief,
    caution: answer.caution,
  };
}
