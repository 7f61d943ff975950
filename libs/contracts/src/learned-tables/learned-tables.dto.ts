import { learnedSubjects, type LearnedSubject } from '@endfloat/workshop/ports';
import { InstantField, IntegerField, ListField, TextField } from '../fields/index.js';

export const tableHash = { max: 64, pattern: '^[0-9a-f]{64}$' };

/** Asks for tables that were in use earlier. */
export class LearnedTablesQuery {
  @TextField({
    description: 'SHA-256 of the tables wanted, as an assessment names it; absent: those in use.',
    optional: true,
    ...tableHash,
  })
  hash?: string;
}

/** Head of learned tables: which they are, and when they were learned. */
export class LearnedTablesHead {
  @TextField({ description: 'Version: the starting tables, and how many outcomes were counted.', max: 64 })
  version!: string;

  @TextField({ description: 'SHA-256 of the tables.', ...tableHash })
  hash!: string;

  @InstantField({
    description: 'When they were learned; null: nothing has taught them yet, they are judgement.',
    nullable: true,
  })
  learnedAt!: string | null;

  @TextField({ description: 'Method.', max: 128 })
  method!: string;
}

/** Something left out of the learning, and how often. */
export class LeftOutOfLearningDto {
  @TextField({ description: 'Stable code.', max: 64, example: 'windowRunning' })
  reason!: string;

  @IntegerField({ description: 'How many.' })
  count!: number;

  @TextField({ description: 'In words.', max: 500 })
  detail!: string;
}

/** What a round of learning changed. */
export class LearningRoundResponse {
  @ListField({
    description: 'Tables that changed; empty where everything was learned before.',
    max: 2,
    choice: { values: learnedSubjects, enumName: 'LearnedSubject' },
  })
  changed!: LearnedSubject[];
}
