import { workActions, type WorkAction } from '@endfloat/workshop/ports';
import {
  DecimalField,
  FlagField,
  IdField,
  InstantField,
  IntegerField,
  JoinTypes,
  ListField,
  TextField,
  textPatterns,
} from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';
import { ReasonField, RecordedResponse } from '../recording/index.js';

export class ServicePlanItemContent {
  @TextField({ description: 'What is to be done.', min: 1, max: 120, example: 'renew the fuel filter' })
  name!: string;

  @TextField({
    description:
      'Kind of part it is done to; null: the vehicle as a whole. A part newly fitted counts as done.',
    nullable: true,
    max: 64,
    pattern: textPatterns.catalogueId,
  })
  componentType!: string | null;

  @ListField({
    description: 'Work on such a part that counts as done.',
    max: workActions.length,
    unique: true,
    choice: { values: workActions, enumName: 'WorkAction' },
  })
  actions!: WorkAction[];

  @IntegerField({
    description: 'Days after which it is due again; null: by distance only.',
    nullable: true,
    min: 1,
    max: 36500,
  })
  everyDays!: number | null;

  @DecimalField({
    description: 'Distance in km after which it is due again; null: by days only.',
    nullable: true,
  })
  everyKm!: string | null;

  @IdField({ description: 'The one vehicle it is for; null: several.', nullable: true })
  vehicleId!: string | null;

  @TextField({
    description: "Vehicles with this application, the shop's own word; null: all, or the one named.",
    nullable: true,
    max: 120,
  })
  application!: string | null;

  @FlagField({ description: 'Whether it is still done; false: it is kept and never due.' })
  inUse!: boolean;
}

export class RecordServicePlanItemRequest extends ServicePlanItemContent {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;
}

export class CorrectServicePlanItemRequest extends ServicePlanItemContent {
  @ReasonField()
  reason!: string;
}

export class ServicePlanItemResponse extends JoinTypes(RecordedResponse, ServicePlanItemContent) {}

export class ServicePlanItemPage extends pageOf(() => ServicePlanItemResponse) {}

export class ServicePlanItemRevisions {
  @ListField({ description: 'Every revision, oldest first.', max: 1000, type: () => ServicePlanItemResponse })
  items!: ServicePlanItemResponse[];
}

export class ServicePlanItemPath {
  @IdField({ description: 'Id of the item of the plan.' })
  planItemId!: string;
}

export class ListServicePlanItemsQuery extends PageQuery {
  @TextField({
    description: 'Items for this kind of part.',
    optional: true,
    max: 64,
    pattern: textPatterns.catalogueId,
  })
  componentType?: string;

  @InstantField({ description: 'The list as it was known at this moment.', optional: true })
  asOf?: string;
}
