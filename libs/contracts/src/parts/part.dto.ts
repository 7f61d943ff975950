import { partConditions, type PartCondition } from '@endfloat/catalogue';
import {
  EnumField,
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

export class PartContent {
  @TextField({
    description: 'Kind of part.',
    max: 64,
    pattern: textPatterns.catalogueId,
    example: 'throttle-housing',
  })
  componentType!: string;

  @TextField({
    description: 'Number under which it is ordered; once for a kind of part.',
    max: 80,
    example: 'TH-31',
  })
  partNumber!: string;

  @TextField({ description: 'What it is, in words.', max: 160, example: 'throttle housing, two screws' })
  title!: string;

  @ListField({
    description:
      'Applications it fits, in the words that the vehicles of the shop carry; empty: it fits every vehicle with such a part.',
    max: 100,
    unique: true,
    text: { max: 80, pattern: '^[^\\u0000-\\u001F\\u007F-\\u009F\\uD800-\\uDFFF]*$' },
  })
  applications!: string[];

  @IdField({ description: 'The part that took its place; null: none.', nullable: true })
  supersededById!: string | null;

  @ListField({
    description: 'Parts that fit the same; said of one of two it holds for both.',
    max: 50,
    unique: true,
    ids: true,
  })
  interchangesWith!: string[];

  @ListField({
    description: 'What else is ordered with it, such as a gasket.',
    max: 50,
    unique: true,
    ids: true,
  })
  alsoOrder!: string[];

  @TextField({ description: 'Anything else worth knowing.', nullable: true, max: 1000 })
  note!: string | null;
}

export class RecordPartRequest extends PartContent {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;
}

export class CorrectPartRequest extends PartContent {
  @ReasonField()
  reason!: string;
}

export class PartResponse extends JoinTypes(RecordedResponse, PartContent) {}

export class PartStockDto {
  @IdField({ description: 'The part.' })
  partId!: string;

  @EnumField({ description: 'In which condition.', values: partConditions, enumName: 'PartCondition' })
  condition!: PartCondition;

  @IntegerField({ description: 'Pieces on the shelf.' })
  onHand!: number;

  @IntegerField({ description: 'Of them, or of what was there before a count, kept for jobs.' })
  reserved!: number;

  @IntegerField({ description: 'Pieces that are kept for nobody.' })
  available!: number;
}

export class PartDetailsResponse extends PartResponse {
  @IdField({ description: 'The number that is ordered now: the end of the chain of successors.' })
  currentPartId!: string;

  @ListField({ description: 'The part and its successors, in order.', max: 1000, ids: true })
  successionIds!: string[];

  @ListField({ description: 'All parts that may be fitted in its stead.', max: 1000, ids: true })
  substituteIds!: string[];

  @ListField({ description: 'What lies of it and of its substitutes.', max: 5000, type: () => PartStockDto })
  stock!: PartStockDto[];
}

export class PartPage extends pageOf(() => PartResponse) {}

export class PartRevisions {
  @ListField({ description: 'Every revision, oldest first.', max: 1000, type: () => PartResponse })
  items!: PartResponse[];
}

export class ListPartsQuery extends PageQuery {
  @TextField({
    description: 'Parts of this kind.',
    optional: true,
    max: 64,
    pattern: textPatterns.catalogueId,
  })
  componentType?: string;

  @TextField({ description: 'The part with this number.', optional: true, max: 80 })
  partNumber?: string;

  @IdField({ description: 'Parts that fit the application of this vehicle.', optional: true })
  vehicleId?: string;

  @InstantField({ description: 'The list as it was known at this moment.', optional: true })
  asOf?: string;
}

export class PartPath {
  @IdField({ description: 'Id of the part.' })
  partId!: string;
}
