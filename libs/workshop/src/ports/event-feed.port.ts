/** What happened, as it lies in the outbox. */
export interface RecordedEvent {
  readonly id: string;
  readonly type: string;
  readonly subjectId: string;
  readonly at: string;
  readonly payload: Readonly<Record<string, unknown>>;
}

/** Reads what happened in the order in which it became true. */
export interface EventFeed {
  /**
   * The next events after a place in the feed; undefined is its beginning. An event that was committed later comes
   * later, also when its transaction had begun earlier, so nothing is missed by who goes on from `next`; events of one
   * record come in the order in which they happened to it.
   */
  read(
    after: string | undefined,
    limit: number,
  ): Promise<{ readonly events: readonly RecordedEvent[]; readonly next: string; readonly hasMore: boolean }>;
  findMany(ids: readonly string[]): Promise<readonly RecordedEvent[]>;
}
