import { moneyUnknownReasons, type MoneyUnknownReason } from '@endfloat/workshop/ports';
import {
  EnumField,
  FlagField,
  IdField,
  KindField,
  ListField,
  MoneyField,
  NumberField,
  TextField,
} from '../fields/index.js';
import { MoneyDto } from '../quantity/index.js';

abstract class FurtherCheckValue {
  @TextField({ description: 'Row of the diagnosis tables to do now.', max: 128 })
  diagnosticCheckId!: string;

  @ListField({
    description: 'What belongs together, in the order to do it; the last is what it is done for.',
    max: 50,
    text: { max: 128 },
  })
  chain!: string[];

  @NumberField({ description: 'Minutes of all of it.', min: 0 })
  minutes!: number;

  @MoneyField({ description: 'What knowing the results saves on average.' })
  expectedSaving!: MoneyDto;

  @MoneyField({ description: 'What the minutes cost.' })
  cost!: MoneyDto;

  @MoneyField({ description: 'Saving less cost.' })
  net!: MoneyDto;

  @FlagField({ description: 'A safe and quick opening move: done first, whatever it saves.' })
  isOpeningMove!: boolean;

  @IdField({ description: 'The inspection it goes on from.' })
  inspectionId!: string;

  @TextField({ description: 'Version of the diagnosis tables.', max: 64 })
  tablesVersion!: string;

  @TextField({ description: 'SHA-256 of the diagnosis tables.', max: 64, pattern: '^[0-9a-f]{64}$' })
  tablesHash!: string;

  @TextField({ description: 'In words.', max: 2000 })
  detail!: string;
}

export class FurtherCheckWorthItDto extends FurtherCheckValue {
  @KindField('worthIt')
  kind!: 'worthIt';
}

export class FurtherCheckNotWorthItDto extends FurtherCheckValue {
  @KindField('notWorthIt')
  kind!: 'notWorthIt';
}

export class FurtherCheckUnknownDto {
  @KindField('cannotBeSaid')
  kind!: 'cannotBeSaid';

  @EnumField({ description: 'Why.', values: moneyUnknownReasons, enumName: 'MoneyUnknownReason', open: true })
  why!: MoneyUnknownReason;

  @TextField({ description: 'In words.', max: 500 })
  detail!: string;
}

export type FurtherCheckDto = FurtherCheckWorthItDto | FurtherCheckNotWorthItDto | FurtherCheckUnknownDto;
