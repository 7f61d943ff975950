import {
  EnumField,
  FlagField,
  IdField,
  InstantField,
  IntegerField,
  ListField,
  NestedField,
  TextField,
} from '../fields/index.js';
import { AsOfQuery } from '../recording/index.js';
import { VehicleResponse } from '../vehicles/index.js';
import { historyEntries, type HistoryEntryDto } from './history-entry.dto.js';
import { OtherRevisionsField, RecordField } from './history-moment.dto.js';

export const historyCorrections = ['all', 'none'] as const;

export class VehicleHistoryQuery extends AsOfQuery {
  @EnumField({
    description:
      'all: beside every record its other revisions, those recorded after `asOf` as well. What was first recorded after `asOf` is not in the history.',
    values: historyCorrections,
    enumName: 'HistoryCorrections',
    optional: true,
    default: 'none',
  })
  corrections?: (typeof historyCorrections)[number];
}

export class VehicleInHistory {
  @RecordField('The vehicle as known then.', () => VehicleResponse)
  record!: VehicleResponse;

  @OtherRevisionsField(() => VehicleResponse)
  otherRevisions!: VehicleResponse[];
}

export class PersonInHistory {
  @IdField({ description: 'Id of the user.' })
  userId!: string;

  @TextField({ description: 'Name as shown on records then.', max: 120 })
  displayName!: string;
}

export class HistoryCut {
  @TextField({ description: 'Kind of record, as in `kind` of the entries.', max: 64, example: 'reading' })
  kind!: string;

  @IntegerField({ description: 'How many are told, the latest; older ones are left out.' })
  kept!: number;
}

export class VehicleHistoryResponse {
  @IdField({ description: 'The vehicle.' })
  vehicleId!: string;

  @InstantField({ description: 'Everything is told as it was known at this moment.' })
  asOf!: string;

  @NestedField({ description: 'The vehicle itself.', type: () => VehicleInHistory })
  vehicle!: VehicleInHistory;

  @ListField({
    description: 'What happened, in the order in which it happened.',
    max: 20000,
    union: { types: () => historyEntries },
  })
  entries!: HistoryEntryDto[];

  @ListField({
    description: "Names of the people of the shop who stand in it. Empty for a customer's user.",
    max: 20000,
    type: () => PersonInHistory,
  })
  people!: PersonInHistory[];

  @ListField({
    description: 'Kinds of record that are too many to be told in full. Empty: nothing is left out.',
    max: 40,
    type: () => HistoryCut,
  })
  cut!: HistoryCut[];

  @FlagField({ description: 'True: not every corrected record has its other revisions beside it.' })
  areRevisionsCut!: boolean;
}
