import { DomainError, notFound } from '../errors/domain.errors.js';
import type { Recorded, RecordStore, Stamp } from '../ports/record-store.port.js';

/** Adds a revision to a record if nobody else did meanwhile. The old revision stays and can be read as of its time. */
export async function correctRecord<I extends object, C extends object>(
  store: RecordStore<I, C>,
  what: string,
  change: { readonly id: string; readonly fromRevision: number; readonly content: C },
  stamp: Stamp,
): Promise<Recorded<I, C>> {
  const outcome = await store.correct(change.id, change.fromRevision, change.content, stamp);
  if (outcome === 'notFound') throw notFound(what);
  if (outcome === 'changedMeanwhile') {
    throw new DomainError(
      'record.changedMeanwhile',
      `The ${what} was changed since you read it. Read it again and repeat your change.`,
    );
  }
  const current = await store.find(change.id);
  if (current === undefined) throw notFound(what);
  return current;
}
