import {
  judgingStates,
  limitOrigins,
  quantityKinds,
  severities,
  type JudgingState,
  type LimitOrigin,
  type QuantityKind,
  type Severity,
} from '@endfloat/metrology';
import {
  EnumField,
  IdField,
  InstantField,
  IntegerField,
  JsonField,
  ListField,
  LocalDateField,
  NestedField,
  NumberField,
  TextField,
  textPatterns,
} from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';
import { ReasonField, RecordedResponse } from '../recording/index.js';

export class LimitEditionDto {
  @LocalDateField({ description: 'First day it holds; null: open.', nullable: true })
  validFrom!: string | null;

  @LocalDateField({ description: 'First day it no longer holds; null: open.', nullable: true })
  validTo!: string | null;

  @TextField({ description: 'The text it was taken from.', max: 2000 })
  source!: string;

  @TextField({ description: 'Where in that text.', max: 2000 })
  citation!: string;
}

export class VerdictThresholdsDto {
  @NumberField({ description: 'Inside from this probability on.', min: 0, max: 1 })
  inside!: number;

  @NumberField({ description: 'Outside up to this probability.', min: 0, max: 1 })
  outside!: number;
}

export class LimitExclusionDto {
  @TextField({ description: 'Id of the exclusion.', max: 200 })
  id!: string;

  @TextField({ description: 'What is looked at.', max: 200 })
  key!: string;

  @JsonField({ description: 'Rule it must meet for the limit not to judge.' })
  rule!: Record<string, unknown>;
}

/** A permitted value with everything needed to know when it holds and how far to trust it. */
export class LimitDto {
  @TextField({ description: 'Id of the limit.', max: 128, pattern: textPatterns.catalogueId })
  id!: string;

  @TextField({ description: 'What is limited.', max: 64, pattern: textPatterns.catalogueId })
  characteristic!: string;

  @EnumField({
    description: 'Kind of the readings; null where the reading is no number.',
    nullable: true,
    values: quantityKinds,
    enumName: 'QuantityKind',
    open: true,
  })
  quantityKind!: QuantityKind | null;

  @JsonField({
    description:
      'Shape and figures, told apart by kind: minimum, maximum, band, ratioOfTwo, ratioToBest, ratioToMean, pair, grade, yesNo, tabulated, formula, classes. Bounds carry comparator, value and unit.',
  })
  criterion!: Record<string, unknown>;

  @JsonField({ description: 'A stricter criterion worth a note; null for none.', nullable: true })
  advisory!: Record<string, unknown> | null;

  @EnumField({ description: 'How bad it is to be outside.', values: severities, enumName: 'Severity' })
  severity!: Severity;

  @TextField({ description: 'Place whose rule it is; null for none.', nullable: true, max: 2000 })
  jurisdiction!: string | null;

  @JsonField({ description: 'What the vehicle must be for the limit to hold, by key.' })
  applicability!: Record<string, unknown>;

  @JsonField({ description: 'Conditions of the test, by key.' })
  conditions!: Record<string, unknown>;

  @ListField({
    description: 'Circumstances in which it does not judge.',
    max: 50,
    type: () => LimitExclusionDto,
  })
  exclusions!: LimitExclusionDto[];

  @JsonField({ description: 'Change of the limit with a circumstance, e.g. altitude.', nullable: true })
  correction!: Record<string, unknown> | null;

  @NestedField({ description: 'Edition of the text.', type: () => LimitEditionDto })
  edition!: LimitEditionDto;

  @EnumField({
    description: 'Where it comes from.',
    values: limitOrigins,
    enumName: 'LimitOrigin',
    open: true,
  })
  origin!: LimitOrigin;

  @EnumField({
    description: 'Whether the shop may judge by it yet.',
    values: judgingStates,
    enumName: 'JudgingState',
  })
  judging!: JudgingState;

  @NestedField({ description: 'Probabilities at which it decides.', type: () => VerdictThresholdsDto })
  thresholds!: VerdictThresholdsDto;

  @TextField({ description: 'In the words of its source.', max: 2000 })
  asWritten!: string;

  @TextField({ description: 'Remark.', nullable: true, max: 2000 })
  note!: string | null;
}

export class RecordLimitRequest {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;

  @JsonField({
    description:
      'The whole limit, with the members of Limit. The id of a shipped limit with `judging: allowed` confirms that one for judging. Checked as a whole; findings point into it.',
    maxMembers: 30,
  })
  limit!: Record<string, unknown>;
}

export class CorrectLimitRequest {
  @JsonField({ description: 'The whole limit as it should be.', maxMembers: 30 })
  limit!: Record<string, unknown>;

  @ReasonField()
  reason!: string;
}

/** A limit the shop set or confirmed. */
export class ShopLimitResponse extends RecordedResponse {
  @NestedField({ description: 'The limit.', type: () => LimitDto })
  limit!: LimitDto;
}

export class ShopLimitRevisions {
  @ListField({ description: 'Revisions, oldest first.', max: 1000, type: () => ShopLimitResponse })
  items!: ShopLimitResponse[];
}

/** A limit as it holds in this shop. */
export class LimitListItem {
  @IdField({ description: 'Record of the shop; null for a shipped limit it did not touch.', nullable: true })
  recordId!: string | null;

  @IntegerField({ description: 'Version of that record.', nullable: true, min: 1 })
  recordVersion!: number | null;

  @NestedField({ description: 'The limit.', type: () => LimitDto })
  limit!: LimitDto;
}

export class LimitPage extends pageOf(() => LimitListItem) {}

export class ListLimitsQuery extends PageQuery {
  @TextField({
    description: 'Limits of this characteristic.',
    optional: true,
    max: 64,
    pattern: textPatterns.catalogueId,
  })
  characteristic?: string;

  @InstantField({ description: 'The list as it was known at this moment.', optional: true })
  asOf?: string;
}

export class LimitPath {
  @IdField({ description: 'Id of the record of the limit.' })
  limitRecordId!: string;
}
