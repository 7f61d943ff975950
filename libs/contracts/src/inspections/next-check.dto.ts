import { CheckDto } from '../check-sheets/index.js';
import { KindField, ListField, NestedField, NumberField, TextField, UnionField } from '../fields/index.js';

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

  @TextField({
    description: 'Tables the probabilities come from; null where the sheet feeds none.',
    nullable: true,
    max: 64,
  })
  tablesVersion!: string | null;

  @TextField({ description: 'Method of the ranking.', nullable: true, max: 128 })
  method!: string | null;
}
