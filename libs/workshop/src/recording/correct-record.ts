import { DomainError, notFound } from '../errors/domain.errors.js';
import type { Recorded, RecordStore, Stamp } from '../ports/record-store.port.js';
import { sameContent } from '../ports/same-content.js';

/** Which revision the caller made the change from: one of those seen, or whichever is current. */
export type ExpectedRevision =
  { readonly kind: 'any' } | { readonly kind: 'oneOf'; readonly versions: ReadonlySet<number> };

/** The expectation of code that has just read the record in the same transaction. */
export function exactly(revision: number): ExpectedRevision {
  return { kind: 'oneOf', versions: new Set([revision]) };
}

/** A patch from the current revision that says what is so already: nothing is recorded for it. */
export function changesNothing<I extends object, C extends object>(
  now: Recorded<I, C>,
  expected: ExpectedRevision,
  content: C,
): boolean {
  return (
    (expected.kind === 'any' || expected.versions.has(now.revision)) && sameContent(now.content, content)
  );
}

function changedMeanwhile(what: string): DomainError {
  return new DomainError(
    'record.changedMeanwhile',
    `The ${what} was changed since you read it. Read it again and repeat your change.`,
  );
}

/**
 * Adds a revision to a record if nobody else did meanwhile; the old revision stays and can be read as of its time.
 * The store checks the revision again in the statement that writes.
 */
export async function correctRecord<I extends object, C extends object>(
  store: RecordStore<I, C>,
  what: string,
  change: { readonly id: string; readonly expected: ExpectedRevision; readonly content: C | ((now: C) => C) },
  stamp: Stamp,
): Promise<Recorded<I, C>> {
  const before = await store.find(change.id);
  if (before === undefined) throw notFound(what);
  if (change.expected.kind === 'oneOf' && !change.expected.versions.has(before.revision))
    throw changedMeanwhile(what);
  const content = typeof change.content === 'function' ? change.content(before.content) : change.content;
  const outcome = await store.correct(change.id, before.revision, content, stamp);
  if (outcome !== 'corrected') throw changedMeanwhile(what);
  const after = await store.find(change.id);
  if (after === undefined) throw notFound(what);
  return after;
}
