import { CharacteristicDto } from '../characteristics/index.js';
import {
  EnumField,
  IdField,
  InstantField,
  IntegerField,
  JsonField,
  ListField,
  TextField,
  textPatterns,
} from '../fields/index.js';

export const componentTypeOrigins = ['shipped', 'shop'] as const;
export type ComponentTypeOrigin = (typeof componentTypeOrigins)[number];

export class RecordComponentTypeRequest {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;

  @JsonField({
    description:
      'The kind of part: id, name, edition, positions, and characteristics with id, name, resultKind, quantityKind, canonicalUnit, wearDirection, trend, and optionally plausible, lowestPossible, doubt, readingsAdvised. Checked as a whole; findings point into it.',
    maxMembers: 20,
    example: {
      id: 'lift-gate',
      name: 'lift gate',
      edition: 1,
      positions: ['rear'],
      characteristics: [
        {
          id: 'chain-stretch',
          name: 'length of forty links',
          resultKind: 'number',
          quantityKind: 'length',
          canonicalUnit: 'mm',
          wearDirection: 'up',
          trend: 'wear',
        },
      ],
    },
  })
  componentType!: Record<string, unknown>;
}

export class ComponentTypeResponse {
  @TextField({ description: 'Id of the kind of part.', max: 64, pattern: textPatterns.catalogueId })
  code!: string;

  @EnumField({
    description: 'Shipped, or added by the shop.',
    values: componentTypeOrigins,
    enumName: 'ComponentTypeOrigin',
  })
  origin!: ComponentTypeOrigin;

  @IdField({ description: 'Id of the record; null for a shipped one.', nullable: true })
  recordId!: string | null;

  @InstantField({ description: 'When the shop added it; null for a shipped one.', nullable: true })
  recordedAt!: string | null;

  @TextField({ description: 'In words.', max: 2000 })
  name!: string;

  @IntegerField({ description: 'Edition of the definition.', min: 1 })
  edition!: number;

  @ListField({ description: 'Places on a vehicle.', max: 200, text: { max: 2000 } })
  positions!: string[];

  @ListField({ description: 'What can be measured on it.', max: 200, type: () => CharacteristicDto })
  characteristics!: CharacteristicDto[];
}

export class ComponentTypeList {
  @ListField({ description: 'Shipped ones first.', max: 1000, type: () => ComponentTypeResponse })
  items!: ComponentTypeResponse[];
}

export class ComponentTypePath {
  @TextField({ description: 'Id of the kind of part.', max: 64, pattern: textPatterns.catalogueId })
  componentTypeCode!: string;
}
