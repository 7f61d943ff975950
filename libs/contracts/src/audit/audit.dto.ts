import { auditActions, type AuditAction } from '@endfloat/workshop/ports';
import { EnumField, IdField, InstantField, IntegerField, TextField } from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';

const kindPattern = '^[a-z][A-Za-z]*$';

export class ListAuditEntriesQuery extends PageQuery {
  @InstantField({ description: 'From this moment on; 31 days before the end where absent.', optional: true })
  from?: string;

  @InstantField({ description: 'Before this moment; now where absent.', optional: true })
  until?: string;

  @IdField({ description: 'By this user only.', optional: true })
  userId?: string;

  @TextField({
    description: 'Of this kind of record only.',
    optional: true,
    max: 60,
    pattern: kindPattern,
    example: 'fittedPart',
  })
  kind?: string;

  @IdField({ description: 'Of this record only.', optional: true })
  recordId?: string;
}

export class AuditEntryResponse {
  @TextField({ description: 'Kind of record.', max: 60, pattern: kindPattern, example: 'fittedPart' })
  kind!: string;

  @IdField({ description: 'The record.' })
  recordId!: string;

  @IntegerField({ description: 'Number of the revision that was made.', min: 1, max: 2147483647 })
  version!: number;

  @EnumField({ description: 'What was done.', values: auditActions, enumName: 'AuditAction', open: true })
  action!: AuditAction;

  @InstantField({ description: 'When it was recorded.' })
  at!: string;

  @IdField({
    description:
      'User who did it; 00000000-0000-7000-8000-000000000000 is the service itself. Null: not kept.',
    nullable: true,
  })
  by!: string | null;

  @TextField({ description: 'Why; null where nobody was asked.', nullable: true, max: 500 })
  reason!: string | null;
}

export class AuditEntryPage extends pageOf(() => AuditEntryResponse) {}
