/** When, by whom and why a revision was recorded. */
export interface Stamp {
  readonly at: string;
  readonly by: string;
  readonly reason?: string | undefined;
}

/** One revision of a record together with its identity. */
export interface Recorded<I extends object, C extends object> {
  readonly id: string;
  readonly identity: I;
  readonly revision: number;
  readonly content: C;
  /** when this revision was recorded */
  readonly recordedAt: string;
  readonly recordedBy: string;
  readonly reason: string | null;
  readonly replacedAt: string | null;
  /** when the first revision was recorded */
  readonly firstRecordedAt: string;
}

/** A place in a sorted list: the sort value and the id of the last row seen. */
export interface ListPosition {
  readonly sortValue: string;
  readonly id: string;
}

/** Filter value: equal to one value, or to any of several. */
export type FilterValue = string | number | boolean | null | readonly string[];

export interface ListQuery<I extends object, C extends object> {
  readonly where?: Partial<Record<keyof I | keyof C | 'id', FilterValue | undefined>> | undefined;
  readonly after?: ListPosition | undefined;
  readonly limit: number;
  /** the list as it was known at this moment */
  readonly asOf?: string | undefined;
}

export interface ListPage<I extends object, C extends object> {
  readonly items: readonly Recorded<I, C>[];
  /** where to go on; absent on the last page */
  readonly next?: ListPosition | undefined;
}

/**
 * Store of one kind of record: an identity that never changes and revisions of its content.
 * A correction adds a revision; nothing is edited or deleted.
 */
export interface RecordStore<I extends object, C extends object> {
  /**
   * Records something new. The same id with the same identity and content is the same record again.
   * `otherContent`: the id, or another key that must be unique, is taken by something else.
   * Throws DomainError `record.unknownReference` when the identity points at nothing of this shop.
   */
  add(id: string, identity: I, content: C, stamp: Stamp): Promise<'added' | 'sameAgain' | 'otherContent'>;
  /**
   * Many at once, in one statement; ids must be new. Throws DomainError `record.idTaken` when one of them was taken,
   * also by a transaction that ended meanwhile.
   */
  addMany(
    records: readonly { readonly id: string; readonly identity: I; readonly content: C }[],
    stamp: Stamp,
  ): Promise<void>;
  /** Adds a revision if `fromRevision` is still the current one; check and write are one statement. */
  correct(
    id: string,
    fromRevision: number,
    content: C,
    stamp: Stamp,
  ): Promise<'corrected' | 'changedMeanwhile' | 'notFound'>;
  /** The current revision, or the one that was current at `asOf`. */
  find(id: string, asOf?: string): Promise<Recorded<I, C> | undefined>;
  findMany(ids: readonly string[], asOf?: string): Promise<readonly Recorded<I, C>[]>;
  list(query: ListQuery<I, C>): Promise<ListPage<I, C>>;
  /** All matching records, no paging; for sets that are small by nature (the readings of one inspection). */
  all(where: NonNullable<ListQuery<I, C>['where']>, asOf?: string): Promise<readonly Recorded<I, C>[]>;
  /** Every revision, oldest first. */
  history(id: string): Promise<readonly Recorded<I, C>[]>;
}
