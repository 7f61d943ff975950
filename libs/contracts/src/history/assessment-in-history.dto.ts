import { ListField, PickType } from '../fields/index.js';
import { AssessmentReasonDto, AssessmentResponse } from '../assessments/index.js';

/** What an assessment said in short; the whole of it is at GET /v1/assessments/{assessmentId}. */
export class AssessmentInHistory extends PickType(AssessmentResponse, [
  'id',
  'version',
  'recordedAt',
  'recordedBy',
  'reason',
  'replacedAt',
  'vehicleId',
  'fittedPartId',
  'componentType',
  'position',
  'modelVersion',
  'inputHash',
  'recommendation',
]) {
  @ListField({
    description:
      "Reasons, the deciding ones first. Null for a customer's user: they speak of the shop's money.",
    nullable: true,
    max: 200,
    type: () => AssessmentReasonDto,
  })
  reasons!: AssessmentReasonDto[] | null;
}
