import { DomainError } from '../errors/domain.errors.js';
import type { Recorded, RecordStore, Stamp } from '../ports/record-store.port.js';

/** A record that was written, or found again because the same one had been sent before. */
export interface AddedRecord<I extends object, C extends object> {
  readonly record: Recorded<I, C>;
  /** false: the same record was there already, nothing was written */
  readonly created: boolean;
}

/**
 * Writes a new record. Sending the same id with the same content again is answered with the first one, so that a
 * telephone without reception can post again safely; the same id with other content is refused.
 */
export async function addRecord<I extends object, C extends object>(
  store: RecordStore<I, C>,
  what: string,
  record: { readonly id: string; readonly identity: I; readonly content: C },
  stamp: Stamp,
): Promise<AddedRecord<I, C>> {
  const outcome = await store.add(record.id, record.identity, record.content, stamp);
  const stored = outcome === 'otherContent' ? undefined : await store.find(record.id);
  if (stored === undefined) {
    throw new DomainError(
      'record.idTaken',
      `Another ${what} is already recorded under this id. Choose a new id, or correct the first one.`,
      [{ pointer: '/id', rule: 'unique', detail: 'taken by other content' }],
    );
  }
  return { record: stored, created: outcome === 'added' };
}
