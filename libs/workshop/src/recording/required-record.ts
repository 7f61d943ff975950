import { notFound, unknownReference } from '../errors/domain.errors.js';
import type { Recorded, RecordStore } from '../ports/record-store.port.js';

/** The record in the path of a request; refused as not found when this shop has none. */
export async function requiredRecord<I extends object, C extends object>(
  store: RecordStore<I, C>,
  what: string,
  id: string,
  asOf?: string,
): Promise<Recorded<I, C>> {
  const record = await store.find(id, asOf);
  if (record === undefined) throw notFound(what);
  return record;
}

/** A record named inside a body; refused as an unknown reference at that place. */
export async function referencedRecord<I extends object, C extends object>(
  store: RecordStore<I, C>,
  what: string,
  id: string,
  pointer: string,
): Promise<Recorded<I, C>> {
  const record = await store.find(id);
  if (record === undefined) throw unknownReference(pointer, what);
  return record;
}
