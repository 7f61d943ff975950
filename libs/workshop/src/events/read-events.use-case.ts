import type { RecordedEvent } from '../ports/event-feed.port.js';
import type { Caller } from '../ports/roles.js';
import type { UnitOfWork } from '../ports/unit-of-work.port.js';

/** A stretch of the feed. `next` is always there: whoever asks again with it misses nothing. */
export interface EventStretch {
  readonly events: readonly RecordedEvent[];
  readonly next: string;
  /** more is there already; otherwise wait before asking again */
  readonly hasMore: boolean;
}

/** What happened in the shop after a place in the feed, in the order in which it became true. */
export class ReadEventsUseCase {
  constructor(private readonly work: UnitOfWork) {}

  /** @param query.after `next` of the stretch before; undefined for the beginning */
  execute(
    caller: Caller,
    query: { readonly after?: string | undefined; readonly limit: number },
  ): Promise<EventStretch> {
    return this.work.read(caller.shopId, (tx) => tx.events.read(query.after, query.limit));
  }
}
