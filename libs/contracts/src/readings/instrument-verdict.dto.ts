import { decisionChoices, type DecisionChoice } from '@endfloat/workshop/ports';
import { EnumField, IdField, InstantField, IntegerField, ListField, TextField } from '../fields/index.js';
import { VerdictResponse } from './verdict.dto.js';

export class InstrumentVerdict extends VerdictResponse {
  @IdField({ description: 'The vehicle.' })
  vehicleId!: string;
}

class SinceCalibrationDto {
  @TextField({
    description: 'Day of the last passed calibration; null: never, so all are listed.',
    nullable: true,
    max: 10,
  })
  lastGoodCalibrationOn!: string | null;
}

export class InstrumentVerdictList extends SinceCalibrationDto {
  @ListField({
    description: 'Verdicts that rested on the instrument since, latest first.',
    max: 200,
    type: () => InstrumentVerdict,
  })
  items!: InstrumentVerdict[];
}

class RestingDto {
  @IdField({ description: 'The vehicle.' })
  vehicleId!: string;

  @IdField({ description: 'The job; null: outside one.', nullable: true })
  jobId!: string | null;

  @IdField({ description: 'The assessment.' })
  assessmentId!: string;

  @ListField({ description: 'Readings by the instrument that it read.', max: 1000, ids: true })
  readingIds!: string[];
}

/** A repair-or-replace assessment that read what the instrument had shown. */
export class RestingAssessmentDto extends RestingDto {
  @InstantField({ description: 'When it was made.' })
  recordedAt!: string;
}

/** What a person chose by such an assessment. */
export class RestingDecisionDto extends RestingDto {
  @IdField({ description: 'The decision.' })
  decisionId!: string;

  @EnumField({ description: 'What was chosen.', values: decisionChoices, enumName: 'DecisionChoice' })
  chosen!: DecisionChoice;

  @InstantField({ description: 'When.' })
  decidedAt!: string;

  @IdField({ description: 'Who decided.' })
  decidedBy!: string;
}

/** Everything that rested on an instrument since its last passed calibration. */
export class InstrumentConsequences extends SinceCalibrationDto {
  @IntegerField({ description: 'Readings with it since, withdrawn ones among them.' })
  readings!: number;

  @ListField({ description: 'Verdicts, latest first.', max: 200, type: () => InstrumentVerdict })
  verdicts!: InstrumentVerdict[];

  @ListField({ description: 'Assessments, latest first.', max: 200, type: () => RestingAssessmentDto })
  assessments!: RestingAssessmentDto[];

  @ListField({ description: 'Decisions, latest first.', max: 200, type: () => RestingDecisionDto })
  decisions!: RestingDecisionDto[];
}
