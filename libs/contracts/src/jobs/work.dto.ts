import { partConditions, type PartCondition } from '@endfloat/catalogue';
import {
  consentAnswers,
  consentWays,
  protectedPurposes,
  workActions,
  workLineStates,
  type ConsentAnswer,
  type ConsentWay,
  type ProtectedPurpose,
  type WorkAction,
  type WorkLineState,
} from '@endfloat/workshop/ports';
import {
  DecimalField,
  EnumField,
  IdField,
  InstantField,
  IntegerField,
  JoinTypes,
  ListField,
  MoneyField,
  NestedField,
  TextField,
  textPatterns,
} from '../fields/index.js';
import { MoneyDto } from '../quantity/index.js';
import { ReasonField, RecordedResponse } from '../recording/index.js';

export class PartUsedDto {
  @EnumField({
    description: 'Condition, as it must be declared on the estimate.',
    values: partConditions,
    enumName: 'PartCondition',
  })
  condition!: PartCondition;

  @TextField({ description: 'Supplier.', nullable: true, max: 120 })
  supplier!: string | null;

  @TextField({ description: 'Number printed on it.', nullable: true, max: 80 })
  partNumber!: string | null;

  @TextField({ description: 'Serial number.', nullable: true, max: 80 })
  serial!: string | null;

  @TextField({ description: 'Batch.', nullable: true, max: 80 })
  batch!: string | null;

  @MoneyField({ description: 'What it cost.', nullable: true })
  price!: MoneyDto | null;

  @IdField({
    description:
      'Number of the shop’s list that is taken from the shelf when the work is done; null: it came from elsewhere.',
    nullable: true,
    optional: true,
  })
  partId?: string | null;
}

export class WorkLineContent {
  @EnumField({ description: 'What is done.', values: workActions, enumName: 'WorkAction' })
  action!: WorkAction;

  @TextField({ description: 'Kind of part it is done to.', max: 64, pattern: textPatterns.catalogueId })
  componentType!: string;

  @TextField({ description: 'Where on the vehicle.', max: 64, pattern: '^[A-Za-z][A-Za-z0-9-]*$' })
  position!: string;

  @EnumField({ description: 'Planned, done or dropped.', values: workLineStates, enumName: 'WorkLineState' })
  state!: WorkLineState;

  @IdField({ description: 'Who does or did it.', nullable: true })
  technicianId!: string | null;

  @InstantField({ description: 'When it was done.', nullable: true })
  doneAt!: string | null;

  @IntegerField({ description: 'Minutes worked.', nullable: true, min: 0, max: 100000 })
  minutes!: number | null;

  @TextField({ description: 'Description for the customer.', nullable: true, max: 500 })
  description!: string | null;

  @TextField({ description: 'An adjustment: from what.', nullable: true, max: 120 })
  from!: string | null;

  @TextField({ description: 'An adjustment: to what.', nullable: true, max: 120 })
  to!: string | null;

  @EnumField({
    description:
      'What a protected item, such as the plate stop, is touched for. It is never used to set the switch or the idle: those two are refused.',
    values: protectedPurposes,
    enumName: 'ProtectedPurpose',
    nullable: true,
  })
  protectedPurpose!: ProtectedPurpose | null;

  @TextField({ description: 'Why a protected item is touched.', nullable: true, max: 500 })
  protectedReason!: string | null;

  @NestedField({ description: 'The part that went in.', nullable: true, type: () => PartUsedDto })
  part!: PartUsedDto | null;
}

export class RecordWorkLineRequest extends WorkLineContent {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;
}

export class CorrectWorkLineRequest extends WorkLineContent {
  @ReasonField()
  reason!: string;
}

export class WorkLineResponse extends JoinTypes(RecordedResponse, WorkLineContent) {
  @IdField({ description: 'The job.' })
  jobId!: string;

  @IdField({ description: 'The part it was done to, or the part that went in.', nullable: true })
  fittedPartId!: string | null;
}

export class WorkLineList {
  @ListField({ description: 'Lines, newest first.', max: 500, type: () => WorkLineResponse })
  items!: WorkLineResponse[];
}

export class WorkLinePath {
  @IdField({ description: 'Id of the work line.' })
  workLineId!: string;
}

export class EstimateLineEntry {
  @IdField({
    description: 'The work line it prices; null for an amount of another kind, such as the diagnosis.',
    nullable: true,
  })
  workLineId!: string | null;

  @TextField({ description: 'Description for the customer.', max: 300 })
  description!: string;

  @DecimalField({
    description: "Parts, in the shop's currency.",
    integerDigits: 9,
    scale: 4,
    example: '310.00',
  })
  partsAmount!: string;

  @DecimalField({ description: 'Labour in hours.', integerDigits: 4, scale: 2, example: '1.8' })
  labourHours!: string;

  @EnumField({
    description: 'Condition of the parts, declared to the customer.',
    values: partConditions,
    enumName: 'PartCondition',
    nullable: true,
  })
  partCondition!: PartCondition | null;
}

export class ProposeEstimateRequest {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;

  @ListField({ description: 'Lines.', max: 100, min: 1, type: () => EstimateLineEntry })
  lines!: EstimateLineEntry[];

  @DecimalField({
    description: 'Amount not to be exceeded without new consent; null: the total.',
    nullable: true,
    integerDigits: 9,
    scale: 4,
  })
  ceilingAmount!: string | null;
}

export class EstimateLineResponse extends EstimateLineEntry {
  @DecimalField({ description: "Labour at the shop's rate.", integerDigits: 12, scale: 4 })
  labourAmount!: string;
}

export class EstimateResponse extends RecordedResponse {
  @IdField({ description: 'The job.' })
  jobId!: string;

  @IntegerField({ description: 'Version of the estimate, from 1. Consent belongs to one version.', min: 1 })
  estimateVersion!: number;

  @TextField({ description: 'ISO 4217 code of all amounts.', max: 3 })
  currency!: string;

  @ListField({ description: 'Lines.', max: 100, type: () => EstimateLineResponse })
  lines!: EstimateLineResponse[];

  @DecimalField({ description: 'Sum of all lines.', integerDigits: 12, scale: 4 })
  totalAmount!: string;

  @DecimalField({
    description: 'Amount not to be exceeded without new consent.',
    integerDigits: 12,
    scale: 4,
  })
  ceilingAmount!: string;
}

export class ConsentContent {
  @IdField({ description: 'The version of the estimate it answers.' })
  estimateId!: string;

  @EnumField({ description: 'The answer.', values: consentAnswers, enumName: 'ConsentAnswer' })
  answer!: ConsentAnswer;

  @InstantField({ description: 'When.' })
  answeredAt!: string;

  @EnumField({ description: 'How.', values: consentWays, enumName: 'ConsentWay' })
  way!: ConsentWay;

  @TextField({
    description: 'Recommended work the customer declined, so that it can be said again.',
    nullable: true,
    max: 1000,
  })
  declinedWork!: string | null;
}

export class RecordConsentRequest extends ConsentContent {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;

  @TextField({ description: 'Who answered. Personal data.', nullable: true, max: 160 })
  name!: string | null;
}

export class ConsentResponse extends JoinTypes(RecordedResponse, ConsentContent) {
  @IdField({ description: 'The job.' })
  jobId!: string;
}

export class EstimatesResponse {
  @ListField({ description: 'Versions, newest first.', max: 200, type: () => EstimateResponse })
  estimates!: EstimateResponse[];

  @ListField({ description: 'Answers, newest first.', max: 200, type: () => ConsentResponse })
  consents!: ConsentResponse[];
}
