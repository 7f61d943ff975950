import { IdField, InstantField, IntegerField, TextField } from '../fields/index.js';

/** What every recorded thing says of itself beside its content. */
export class RecordedResponse {
  @IdField({ description: 'Id of the record.' })
  id!: string;

  @IntegerField({
    description: 'Number of this revision, from 1; the ETag is made from it.',
    min: 1,
    max: 2147483647,
  })
  version!: number;

  @InstantField({ description: 'When this revision was recorded.' })
  recordedAt!: string;

  @IdField({ description: 'User whose key recorded this revision.' })
  recordedBy!: string;

  @TextField({
    description: 'Why the record was corrected; null for the first revision.',
    nullable: true,
    max: 500,
  })
  reason!: string | null;

  @InstantField({
    description: 'When a later revision replaced this one; null for the current one.',
    nullable: true,
  })
  replacedAt!: string | null;
}

/** `asOf` on reads: the record as it was known then. */
export class AsOfQuery {
  @InstantField({
    description: 'Answer with what was recorded by this moment; what was recorded later is not known.',
    optional: true,
  })
  asOf?: string;
}

/** Why a record is corrected. */
export const ReasonField = (): PropertyDecorator =>
  TextField({
    description: 'Why the record is corrected; kept with the correction.',
    min: 3,
    max: 500,
    example: 'digits swapped when typing',
  });

/** An oddity that was recorded and refuses nothing. */
export class WarningResponse {
  @TextField({ description: 'Stable code of the warning.', max: 64, example: 'checkDigitDiffers' })
  code!: string;

  @TextField({ description: 'JSON Pointer to what looks odd.', max: 200, example: '/chassisNumber' })
  pointer!: string;

  @TextField({ description: 'The warning in words.', max: 500 })
  detail!: string;
}
