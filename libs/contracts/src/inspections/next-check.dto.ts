import { CheckDto } from '../check-sheets/index.js';
import {
  FlagField,
  KindField,
  ListField,
  MoneyField,
  NestedField,
  NumberField,
  TextField,
  UnionField,
} from '../fields/index.js';
import { MoneyDto } from '../quantity/index.js';

/** Why a check is named; the code is stable, the sentence is for people. */
export class NextCheckReasonDto {
  @TextField({ description: 'Stable code.', max: 64, example: 'firstInOrder' })
  code!: string;

  @TextField({ description: 'In words.', max: 2000 })
  detail!: string;
}

export class NextCheckDto {
  @KindField('next')
  kind!: 'next';

  @NestedField({ description: 'The check with its steps, instrument and cautions.', type: () => CheckDto })
  check!: CheckDto;

  @NestedField({ description: 'Why this one.', type: () => NextCheckReasonDto })
  why!: NextCheckReasonDto;

  @ListField({
    description: 'Checks before it that no further reading would settle; the result stays provisional.',
    max: 100,
    text: { max: 128 },
  })
  unsettled!: string[];
}

export class CorrectFirstDto {
  @KindField('correctFirst')
  kind!: 'correctFirst';

  @ListField({ description: 'Findings to put right and check again.', max: 100, type: () => CheckDto })
  findings!: CheckDto[];

  @ListField({ description: 'Checks that wait for that.', max: 500, text: { max: 128 } })
  waiting!: string[];

  @TextField({ description: 'In words.', max: 2000 })
  detail!: string;
}

export class AllChecksDoneDto {
  @KindField('done')
  kind!: 'done';

  @TextField({ description: 'In words.', max: 2000 })
  detail!: string;
}

/** A check worth its minutes by what is known of the complaint; information, the order stands. */
export class WorthwhileCheckDto {
  @TextField({ description: 'Row of the diagnosis tables.', max: 128 })
  diagnosticCheckId!: string;

  @ListField({ description: 'Checks of the sheet that answer it.', max: 50, text: { max: 128 } })
  checkIds!: string[];

  @NumberField({ description: 'Minutes.', min: 0 })
  minutes!: number;

  @ListField({ description: 'Why.', max: 20, type: () => NextCheckReasonDto })
  reasons!: NextCheckReasonDto[];
}

export class LeadingCauseDto {
  @TextField({ description: 'The cause.', max: 128 })
  causeId!: string;

  @NumberField({
    description: 'Probability by the tables; more than one fault stays possible.',
    min: 0,
    max: 1,
  })
  probability!: number;
}

/** A check, with whatever has to be done before it, by the money it saves before something is repaired. */
export class CheckWorthDto {
  @TextField({ description: 'Row of the diagnosis tables to do now.', max: 128 })
  diagnosticCheckId!: string;

  @ListField({ description: 'Checks of the sheet that answer it.', max: 50, text: { max: 128 } })
  checkIds!: string[];

  @FlagField({ description: 'A safe and quick opening move: done first, whatever it saves.' })
  isOpeningMove!: boolean;

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

  @MoneyField({ description: 'Saving less cost; negative: not worth doing for the money alone.' })
  net!: MoneyDto;

  @FlagField({ description: 'Whether it saves more than it costs.' })
  isWorthIt!: boolean;

  @TextField({ description: 'In words.', max: 2000 })
  detail!: string;
}

export class ChecksByMoneyDto {
  @KindField('ranked')
  kind!: 'ranked';

  @TextField({ description: 'Cause whose cure costs least on average if nothing more is checked.', max: 128 })
  bestCureNow!: string;

  @MoneyField({ description: 'What that costs on average, wrong cures and coming back included.' })
  expectedCostNow!: MoneyDto;

  @ListField({
    description: 'Two or three checks: open opening moves, then those that save most per minute.',
    max: 10,
    type: () => CheckWorthDto,
  })
  checks!: CheckWorthDto[];

  @TextField({ description: 'Method.', max: 128 })
  method!: string;
}

export class ChecksByMoneyUnknownDto {
  @KindField('cannotBeSaid')
  kind!: 'cannotBeSaid';

  @TextField({ description: 'Why, as a stable code.', max: 64, example: 'sheetFeedsNoTables' })
  why!: string;

  @TextField({ description: 'In words.', max: 500 })
  detail!: string;
}

export class NextCheckResponse {
  @UnionField({
    description: 'What to do next, in the order of the sheet.',
    types: () => [NextCheckDto, CorrectFirstDto, AllChecksDoneDto],
  })
  step!: NextCheckDto | CorrectFirstDto | AllChecksDoneDto;

  @TextField({ description: 'What comes before this answer.', max: 2000 })
  precedence!: string;

  @ListField({
    description: 'Checks most worth their minutes by the complaints of the job.',
    max: 10,
    type: () => WorthwhileCheckDto,
  })
  worthwhile!: WorthwhileCheckDto[];

  @ListField({ description: 'Likeliest causes so far.', max: 10, type: () => LeadingCauseDto })
  leadingCauses!: LeadingCauseDto[];

  @UnionField({
    description: 'Checks by the money they save, at the rates of the shop and the owner of the van.',
    types: () => [ChecksByMoneyDto, ChecksByMoneyUnknownDto],
  })
  byMoney!: ChecksByMoneyDto | ChecksByMoneyUnknownDto;

  @TextField({
    description: 'Tables the probabilities come from; null where the sheet feeds none.',
    nullable: true,
    max: 64,
  })
  tablesVersion!: string | null;

  @TextField({ description: 'Method of the ranking.', nullable: true, max: 128 })
  method!: string | null;
}
