import { FlagField, IntegerField, ListField, NestedField, NumberField, TextField } from '../fields/index.js';
import { LearnedTablesHead, LeftOutOfLearningDto } from './learned-tables.dto.js';

/** One number of the tables: what it started from, what was counted, and what follows. */
export class LearnedNumberDto {
  @TextField({ description: 'The cause.', max: 128 })
  causeId!: string;

  @NumberField({ description: 'Starting value, judgement.', min: 0, max: 1 })
  startingValue!: number;

  @NumberField({ description: 'Jobs the starting value is worth.', min: 0 })
  startingWorthJobs!: number;

  @IntegerField({ description: 'Jobs in which it was so.' })
  yes!: number;

  @IntegerField({ description: 'Jobs in which it was asked or done and was not so.' })
  no!: number;

  @NumberField({ description: 'Current value.', min: 0, max: 1 })
  current!: number;

  @NumberField({
    description: 'Lower end of its 90 % interval; null where start and counts leave no doubt to state.',
    nullable: true,
    min: 0,
    max: 1,
  })
  lower!: number | null;

  @NumberField({ description: 'Upper end.', nullable: true, min: 0, max: 1 })
  upper!: number | null;

  @IntegerField({ description: 'Jobs counted in which the check was chosen because of earlier results.' })
  fromSelectedChecks!: number;

  @FlagField({
    description:
      'All counts come from checks chosen because of earlier results: a selected group of vans, the number may be biased.',
  })
  fedOnlyBySelectedChecks!: boolean;
}

/** One row: a symptom or a check, with its number under each cause. */
export class LearnedRowDto {
  @TextField({ description: 'The symptom or check.', max: 128 })
  id!: string;

  @ListField({ description: 'Its number under each cause.', max: 100, type: () => LearnedNumberDto })
  cells!: LearnedNumberDto[];
}

/** Jobs behind the tables. */
export class TeachingJobsDto {
  @IntegerField({ description: 'Released jobs looked at.' })
  released!: number;

  @IntegerField({ description: 'Jobs that taught: cause confirmed, window elapsed, van seen afterwards.' })
  taught!: number;

  @IntegerField({
    description: 'Of these, jobs whose comeback established another cause, counted for that one.',
  })
  taughtByComeback!: number;

  @ListField({
    description: 'Jobs that teach nothing, by reason.',
    max: 50,
    type: () => LeftOutOfLearningDto,
  })
  notTaught!: LeftOutOfLearningDto[];
}

export class LearnedDiagnosisResponse extends LearnedTablesHead {
  @NestedField({ description: 'What taught them.', type: () => TeachingJobsDto })
  jobs!: TeachingJobsDto;

  @ListField({ description: 'Weight of each cause.', max: 100, type: () => LearnedNumberDto })
  causes!: LearnedNumberDto[];

  @ListField({ description: 'How often each symptom shows.', max: 200, type: () => LearnedRowDto })
  symptoms!: LearnedRowDto[];

  @ListField({ description: 'How often each check is positive.', max: 200, type: () => LearnedRowDto })
  checks!: LearnedRowDto[];
}
