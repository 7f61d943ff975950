import { IdField, InstantField, ListField, NestedField } from '../fields/index.js';
import type { FieldClass } from '../fields/json-schema.js';

/** When something happened, and in which visit. When it was recorded, and by whom, stands on the record itself. */
export class HistoryMoment {
  @InstantField({
    description: 'When it happened; null: before the shop knew the vehicle.',
    nullable: true,
  })
  happenedAt!: string | null;

  @IdField({ description: 'The job it belongs to; null: none.', nullable: true })
  jobId!: string | null;
}

export const RecordField = (description: string, type: () => FieldClass): PropertyDecorator =>
  NestedField({ description, type });

export const OtherRevisionsField = (type: () => FieldClass): PropertyDecorator =>
  ListField({
    description:
      'With `corrections=all`: the other revisions of the record, oldest first, later ones than the moment asked about as well. Empty otherwise.',
    max: 1000,
    type,
  });
