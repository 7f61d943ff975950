import { claimStates, claimStepKinds, type ClaimState, type ClaimStepKind } from '@endfloat/stock';
import { warrantyGivers, type WarrantyGiver } from '@endfloat/workshop/ports';
import {
  DecimalField,
  EnumField,
  IdField,
  InstantField,
  IntegerField,
  JoinTypes,
  ListField,
  LocalDateField,
  MoneyField,
  QueryFlagField,
  TextField,
} from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';
import { MoneyDto } from '../quantity/index.js';
import { ReasonField, RecordedResponse, WarningResponse } from '../recording/index.js';

export class WarrantyClaimContent {
  @TextField({ description: 'On whom it is claimed.', max: 120 })
  supplier!: string;

  @EnumField({
    description: 'Which promise: part and labour are different ones, with different givers and limits.',
    values: warrantyGivers,
    enumName: 'WarrantyGiver',
  })
  giver!: WarrantyGiver;

  @LocalDateField({ description: 'Day it is claimed.' })
  claimedOn!: string;

  @LocalDateField({ description: 'Day the fault showed.' })
  foundOn!: string;

  @IntegerField({ description: 'Months of the promise; null: not bound by time.', nullable: true, max: 1200 })
  months!: number | null;

  @DecimalField({
    description: 'Kilometres of the promise; null: not bound by distance.',
    nullable: true,
    scale: 3,
  })
  km!: string | null;

  @MoneyField({ description: 'What is claimed.', nullable: true })
  amount!: MoneyDto | null;

  @TextField({ description: 'What is wrong with it.', max: 2000 })
  description!: string;
}

export class RecordWarrantyClaimRequest extends WarrantyClaimContent {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;

  @IdField({ description: 'Number of the shop’s list.', nullable: true })
  partId!: string | null;

  @IdField({
    description:
      'The part on the vehicle; its day of fitting and distance tell whether the promise still held.',
    nullable: true,
  })
  fittedPartId!: string | null;

  @IdField({ description: 'The job on which the fault showed.', nullable: true })
  jobId!: string | null;
}

export class CorrectWarrantyClaimRequest extends WarrantyClaimContent {
  @ReasonField()
  reason!: string;
}

export class WarrantyClaimStepDto {
  @EnumField({ description: 'What was done.', values: claimStepKinds, enumName: 'ClaimStepKind' })
  kind!: ClaimStepKind;

  @LocalDateField({ description: 'On which day.' })
  on!: string;

  @TextField({ description: 'Why it was refused or withdrawn.', nullable: true, max: 500 })
  reason!: string | null;

  @MoneyField({ description: 'What was accepted or paid.', nullable: true })
  amount!: MoneyDto | null;
}

export class RecordWarrantyClaimStepRequest extends WarrantyClaimStepDto {}

export const warrantyCovers = ['covered', 'endedByMonths', 'endedByDistance', 'unknown'] as const;
export type WarrantyCoverWord = (typeof warrantyCovers)[number];

export class WarrantyClaimResponse extends JoinTypes(RecordedResponse, WarrantyClaimContent) {
  @IdField({ description: 'Number of the shop’s list.', nullable: true })
  partId!: string | null;

  @IdField({ description: 'The part on the vehicle.', nullable: true })
  fittedPartId!: string | null;

  @IdField({ description: 'The job on which the fault showed.', nullable: true })
  jobId!: string | null;

  @EnumField({ description: 'Where it stands.', values: claimStates, enumName: 'ClaimState' })
  state!: ClaimState;

  @ListField({
    description: 'What may come next.',
    max: 10,
    choice: { values: claimStepKinds, enumName: 'ClaimStepKind' },
  })
  next!: ClaimStepKind[];

  @EnumField({
    description: 'Whether the promise held when the fault showed, by the records of that day.',
    values: warrantyCovers,
    enumName: 'WarrantyCover',
  })
  cover!: WarrantyCoverWord;

  @ListField({ description: 'What was done, in order.', max: 100, type: () => WarrantyClaimStepDto })
  steps!: WarrantyClaimStepDto[];

  @ListField({
    description: 'What looked odd; it was recorded all the same.',
    max: 20,
    type: () => WarningResponse,
  })
  warnings!: WarningResponse[];
}

export class WarrantyClaimPage extends pageOf(() => WarrantyClaimResponse) {}

export class WarrantyClaimRevisions {
  @ListField({ description: 'Every revision, oldest first.', max: 1000, type: () => WarrantyClaimResponse })
  items!: WarrantyClaimResponse[];
}

export class ListWarrantyClaimsQuery extends PageQuery {
  @QueryFlagField({ description: 'Those neither settled nor withdrawn, or the others.', optional: true })
  isOpen?: string;

  @TextField({ description: 'Claims on this supplier.', optional: true, max: 120 })
  supplier?: string;

  @InstantField({ description: 'The list as it was known at this moment.', optional: true })
  asOf?: string;
}

export class WarrantyClaimPath {
  @IdField({ description: 'Id of the claim.' })
  warrantyClaimId!: string;
}
