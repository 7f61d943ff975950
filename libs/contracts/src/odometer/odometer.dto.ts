import {
  odometerSegmentCauses,
  odometerUnits,
  type OdometerSegmentCause,
  type OdometerUnit,
} from '@endfloat/wear';
import {
  DecimalField,
  EnumField,
  FlagField,
  IdField,
  InstantField,
  IntegerField,
  JoinTypes,
  JsonField,
  ListField,
  TextField,
} from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';
import { ReasonField, RecordedResponse, WarningResponse } from '../recording/index.js';

const ShownField = () =>
  TextField({
    description: 'Digits as displayed, with a point before tenths.',
    max: 20,
    pattern: '^[0-9]{1,12}(?:\\.[0-9]{1,3})?$',
    example: '184200',
  });
const UnitField = () =>
  EnumField({
    description: 'Unit of the display (UCUM).',
    values: odometerUnits,
    enumName: 'OdometerUnit',
    example: 'km',
  });

export class OdometerShownDto {
  @ShownField()
  shown!: string;

  @UnitField()
  unit!: OdometerUnit;

  @InstantField({ description: 'When it was read.' })
  readAt!: string;

  @IdField({ description: 'Who read it, where that is known.', nullable: true, optional: true })
  readBy?: string | null;

  @TextField({ description: 'Remark.', nullable: true, optional: true, max: 300 })
  note?: string | null;
}

export class RecordOdometerEntryRequest extends OdometerShownDto {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;
}

export class CorrectOdometerEntryRequest extends OdometerShownDto {
  @FlagField({
    description:
      'How a person settles a contradiction: whether this entry may be relied on. Absent: by the rules.',
    optional: true,
    nullable: true,
  })
  reliable?: boolean | null;

  @ReasonField()
  reason!: string;
}

/** What could set an odd entry right; nothing is changed until a person does it. */
export class OdometerProposalResponse {
  @TextField({
    description: 'What is proposed: a segment, another unit, other digits, or to distrust the display.',
    max: 40,
  })
  proposal!: string;

  @JsonField({
    description:
      'The proposal itself: for a segment the body of POST /v1/vehicles/{vehicleId}/odometer-segments, else the members to correct.',
    maxMembers: 20,
  })
  values!: Record<string, unknown>;
}

export class OdometerWarningResponse extends WarningResponse {
  @ListField({ description: 'What could set it right.', max: 5, type: () => OdometerProposalResponse })
  proposals!: OdometerProposalResponse[];
}

export class OdometerEntryResponse extends JoinTypes(RecordedResponse, OdometerShownDto) {
  @IdField({ description: 'The vehicle.' })
  vehicleId!: string;

  @DecimalField({
    description: 'Distance by the segments, in km; null where it cannot be told.',
    nullable: true,
  })
  distanceKm!: string | null;

  @DecimalField({ description: 'Operating hours, where the display counts them.', nullable: true })
  operatingHours!: string | null;

  @FlagField({ description: 'Whether distances may rest on it.' })
  reliable!: boolean;

  @ListField({
    description: 'What looks odd. A warning never refuses.',
    max: 20,
    type: () => OdometerWarningResponse,
  })
  warnings!: OdometerWarningResponse[];
}

export class OdometerEntryPage extends pageOf(() => OdometerEntryResponse) {}

export class ListOdometerEntriesQuery extends PageQuery {
  @InstantField({ description: 'The list as it was known at this moment.', optional: true })
  asOf?: string;
}

export class OdometerEntryPath {
  @IdField({ description: 'Id of the odometer entry.' })
  odometerEntryId!: string;
}

export class BeginOdometerSegmentRequest {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;

  @EnumField({
    description: 'Why a new stretch begins.',
    values: odometerSegmentCauses,
    enumName: 'OdometerSegmentCause',
  })
  cause!: OdometerSegmentCause;

  @InstantField({ description: 'When.' })
  startedAt!: string;

  @ShownField()
  shown!: string;

  @UnitField()
  unit!: OdometerUnit;

  @IntegerField({ description: 'Digits of the display.', nullable: true, min: 1, max: 12 })
  digits!: number | null;

  @DecimalField({
    description: 'Distance of the vehicle at the change where known better than from the last entry, in km.',
    nullable: true,
  })
  distanceKm!: string | null;

  @TextField({ description: 'Remark.', nullable: true, max: 300 })
  note!: string | null;
}

export class OdometerSegmentResponse extends RecordedResponse {
  @IdField({ description: 'The vehicle.' })
  vehicleId!: string;

  @EnumField({
    description: 'Why it began.',
    values: odometerSegmentCauses,
    enumName: 'OdometerSegmentCause',
  })
  cause!: OdometerSegmentCause;

  @InstantField({ description: 'When it began.' })
  startedAt!: string;

  @DecimalField({ description: 'Distance at its beginning, in km.', signed: true })
  offsetKm!: string;

  @DecimalField({ description: 'km per unit shown.' })
  factor!: string;

  @DecimalField({ description: 'What the display showed then.' })
  rawAtStart!: string;

  @UnitField()
  unit!: OdometerUnit;

  @IntegerField({ description: 'Digits of the display.', nullable: true })
  digits!: number | null;

  @TextField({ description: 'Remark.', nullable: true, max: 300 })
  note!: string | null;
}

export class OdometerSegmentList {
  @ListField({
    description: 'Stretches in order; distance = offset + factor x (shown - shown at its beginning).',
    max: 200,
    type: () => OdometerSegmentResponse,
  })
  items!: OdometerSegmentResponse[];
}
