import {
  DecimalField,
  IdField,
  InstantField,
  ListField,
  LocalDateField,
  NestedField,
  JoinTypes,
  TextField,
  TextMapField,
  textPatterns,
} from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';
import { AsOfQuery, ReasonField, RecordedResponse, WarningResponse } from '../recording/index.js';

export class ObservedSpanDto {
  @InstantField({ description: 'From when on the shop would have seen what happened to the vehicle.' })
  from!: string;

  @InstantField({ description: 'Until when; null: it is still seen.', nullable: true })
  until!: string | null;
}

/** What a person enters about a vehicle. */
export class VehicleContent {
  @TextField({
    description:
      'Vehicle identification or chassis number as read; null when none is legible. Oddities warn and never refuse.',
    nullable: true,
    max: 40,
    pattern: textPatterns.chassisNumber,
    example: 'ZZZTEST7XZA000014',
  })
  chassisNumber!: string | null;

  @TextField({ description: 'Registration plate as read.', nullable: true, max: 20, example: 'QX 14 LTN' })
  plate!: string | null;

  @TextField({ description: 'What the shop calls it.', nullable: true, max: 60, example: 'Van 14' })
  label!: string | null;

  @LocalDateField({
    description: 'Day of first use: it decides which limits apply.',
    nullable: true,
    example: '1991-04-02',
  })
  firstUsedOn!: string | null;

  @TextField({
    description:
      "Which housing, switch window and so on apply: the shop's own word. A limit of another application is a wrong limit.",
    nullable: true,
    max: 60,
    example: 'panel-van-2.1',
  })
  application!: string | null;

  @TextMapField({
    description: 'What limits ask for, e.g. jurisdiction, category, grossMass, steeringType.',
    maxEntries: 40,
    max: 60,
  })
  attributes!: Record<string, string>;

  @DecimalField({
    description: 'Distance a year the owner expects, in km.',
    nullable: true,
    example: '22000',
  })
  expectedKmPerYear!: string | null;

  @ListField({
    description:
      'Stretches of time in which the shop would have seen what happened to the vehicle; empty: since it was recorded.',
    max: 50,
    type: () => ObservedSpanDto,
  })
  observedSpans!: ObservedSpanDto[];

  @LocalDateField({ description: 'Day it left the road for good.', nullable: true })
  retiredOn!: string | null;
}

export class RecordVehicleRequest extends VehicleContent {
  @IdField({
    description: 'Id chosen by the client (UUID version 7), so that the request can be sent again safely.',
    optional: true,
  })
  id?: string;

  @IdField({ description: 'Customer who owns it.' })
  customerId!: string;

  @InstantField({ description: 'Owner since; now where absent.', optional: true })
  ownedFrom?: string;
}

export class CorrectVehicleRequest extends VehicleContent {
  @ReasonField()
  reason!: string;
}

export class OwnerResponse {
  @IdField({ description: 'The customer.' })
  customerId!: string;

  @InstantField({ description: 'Owner since.' })
  fromAt!: string;
}

export class VehicleResponse extends JoinTypes(RecordedResponse, VehicleContent) {
  @NestedField({
    description: 'Its owner; null where none is known. On single vehicles only.',
    nullable: true,
    optional: true,
    type: () => OwnerResponse,
  })
  owner?: OwnerResponse | null;

  @ListField({
    description: 'Oddities noticed when it was written.',
    optional: true,
    max: 20,
    type: () => WarningResponse,
  })
  warnings?: WarningResponse[];
}

export class VehicleRevisions {
  @ListField({ description: 'Revisions, oldest first.', max: 1000, type: () => VehicleResponse })
  items!: VehicleResponse[];
}

export class VehiclePage extends pageOf(() => VehicleResponse) {}

export class ListVehiclesQuery extends PageQuery {
  @IdField({ description: 'Vehicles this customer owns now.', optional: true })
  customerId?: string;

  @TextField({
    description: 'Chassis number, with or without separators; looks for the whole number.',
    optional: true,
    max: 40,
    pattern: textPatterns.chassisNumber,
  })
  chassisNumber?: string;

  @TextField({ description: 'Plate; looks for the whole plate.', optional: true, max: 20 })
  plate?: string;

  @InstantField({ description: 'The list as it was known at this moment.', optional: true })
  asOf?: string;
}

export class VehiclePath {
  @IdField({ description: 'Id of the vehicle.' })
  vehicleId!: string;
}

export class ShowVehicleQuery extends AsOfQuery {}

export class TransferVehicleRequest {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;

  @IdField({ description: 'The new owner.' })
  customerId!: string;

  @InstantField({ description: 'From when on.' })
  fromAt!: string;
}

export class OwnershipResponse extends RecordedResponse {
  @IdField({ description: 'The vehicle.' })
  vehicleId!: string;

  @IdField({ description: 'The customer.' })
  customerId!: string;

  @InstantField({ description: 'Owner from this moment on.' })
  fromAt!: string;
}

export class OwnershipList {
  @ListField({ description: 'Owners, latest first.', max: 200, type: () => OwnershipResponse })
  items!: OwnershipResponse[];
}
