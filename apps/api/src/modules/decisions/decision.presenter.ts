import type { DecisionContent, DecisionResponse } from '@endfloat/contracts';
import type { Decision, DecisionRecord } from '@endfloat/workshop';
import { presentRecorded } from '../../http/answers/recorded.presenter.js';

export function toDecision({ chosen, decidedAt, decidedBy, choiceReason }: DecisionContent): Decision {
  return { chosen, decidedAt, decidedBy, reason: choiceReason };
}

export function presentDecision(record: DecisionRecord): DecisionResponse {
  const { chosen, decidedAt, decidedBy, reason } = record.content;
  return {
    ...presentRecorded(record),
    assessmentId: record.identity.assessmentId,
    chosen,
    decidedAt,
    decidedBy,
    choiceReason: reason,
  };
}
