import { fittedConditions, type FittedCondition } from '@endfloat/workshop/ports';
import {
  DecimalField,
  EnumField,
  IdField,
  InstantField,
  JoinTypes,
  TextField,
  textPatterns,
} from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';
import { ReasonField, RecordedResponse } from '../recording/index.js';

export class FittedPartContent {
  @TextField({
    description: 'Kind of part.',
    max: 64,
    pattern: textPatterns.catalogueId,
    example: 'throttle-housing',
  })
  componentType!: string;

  @TextField({
    description: 'Where on the vehicle, as the kind of part names its places.',
    max: 64,
    pattern: '^[A-Za-z][A-Za-z0-9-]*$',
    example: 'intake',
  })
  position!: string;

  @EnumField({
    description: 'Condition when fitted; `original`: on the vehicle when the shop first saw it.',
    values: fittedConditions,
    enumName: 'FittedCondition',
  })
  condition!: FittedCondition;

  @InstantField({
    description: 'When it was fitted; null: before the shop knew the vehicle.',
    nullable: true,
  })
  fittedAt!: string | null;

  @DecimalField({ description: 'Distance of the vehicle then, in km.', nullable: true })
  fittedKm!: string | null;

  @InstantField({ description: 'When it was removed; null: it is fitted.', nullable: true })
  removedAt!: string | null;

  @DecimalField({ description: 'Distance of the vehicle then, in km.', nullable: true })
  removedKm!: string | null;

  @TextField({ description: 'Serial number.', nullable: true, max: 80 })
  serial!: string | null;

  @TextField({ description: 'Batch it came from.', nullable: true, max: 80 })
  batch!: string | null;

  @TextField({ description: 'Who supplied it.', nullable: true, max: 120 })
  supplier!: string | null;

  @TextField({ description: 'Number printed on it.', nullable: true, max: 80 })
  partNumber!: string | null;

  @TextField({ description: 'Why it was removed.', nullable: true, max: 300 })
  removalReason!: string | null;
}

export class RecordFittedPartRequest extends FittedPartContent {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;

  @IdField({ description: 'The vehicle it is on.' })
  vehicleId!: string;
}

export class CorrectFittedPartRequest extends FittedPartContent {
  @ReasonField()
  reason!: string;
}

export class FittedPartResponse extends JoinTypes(RecordedResponse, FittedPartContent) {
  @IdField({ description: 'The vehicle it is or was on.' })
  vehicleId!: string;

  @IdField({ description: 'The part it took the place of.', nullable: true })
  replacesPartId!: string | null;

  @IdField({ description: 'The work that fitted it.', nullable: true })
  workLineId!: string | null;
}

export class FittedPartPage extends pageOf(() => FittedPartResponse) {}

export class ListFittedPartsQuery extends PageQuery {
  @IdField({ description: 'Parts of this vehicle.', optional: true })
  vehicleId?: string;

  @TextField({
    description: 'Parts of this kind.',
    optional: true,
    max: 64,
    pattern: textPatterns.catalogueId,
  })
  componentType?: string;

  @TextField({ description: 'Parts of this batch: which vehicles got it.', optional: true, max: 80 })
  batch?: string;

  @InstantField({ description: 'The list as it was known at this moment.', optional: true })
  asOf?: string;
}

export class FittedPartPath {
  @IdField({ description: 'Id of the fitted part.' })
  fittedPartId!: string;
}
