import type { EventFeed, RecordedEvent } from '@endfloat/workshop/ports';
import type { ShopConnection } from '../connection/shop-connection.js';
import { longSnapshot, shortSnapshot } from './snapshot-text.js';

/**
 * A place in the feed: everything whose transaction had ended in the snapshot `seen` was told; of what ended between
 * `seen` and `upTo` everything up to `position` was told, too.
 */
export interface FeedPlace {
  readonly seen: string | null;
  readonly upTo: string | null;
  readonly position: number;
}

export function writePlace({ seen, upTo, position }: FeedPlace): string {
  const short = (snapshot: string | null): string => (snapshot === null ? '' : shortSnapshot(snapshot));
  return `${short(seen)}/${short(upTo)}/${position.toString(36)}`;
}

/** @throws RangeError when the text is none of ours */
export function readPlace(text: string | undefined): FeedPlace {
  if (text === undefined) return { seen: null, upTo: null, position: 0 };
  const [seen = '', upTo = '', position = ''] = text.split('/');
  const long = (snapshot: string): string | null => (snapshot === '' ? null : longSnapshot(snapshot));
  return { seen: long(seen), upTo: long(upTo), position: Number.parseInt(position, 36) };
}

/**
 * Events whose transactions ended after `seen` and by `upTo`, in the order in which they were written.
 *
 * Nothing is missed: a row belongs to the first span of snapshots in which its transaction has ended, whenever it was
 * written. Nothing is turned round within a record: who writes a record after another waits for the other to commit,
 * so its event has the higher position, and no snapshot shows it without the other.
 */
export function buildEventFeedSql(
  shopId: string,
  place: { readonly seen: string | null; readonly upTo: string; readonly position: number },
  limit: number,
): { text: string; values: unknown[] } {
  const columns = 'id, type, subject_id, recorded_at, payload, position';
  const ended = (snapshot: string) =>
    `pg_visible_in_snapshot(transaction_id::text::xid8, ${snapshot}::pg_snapshot)`;
  const values: unknown[] = [shopId, place.upTo, place.position, limit + 1];
  const start = `SELECT ${columns} FROM outbox WHERE shop_id = $1 AND position > $3 AND ${ended('$2')}`;
  const end = 'ORDER BY position LIMIT $4';
  if (place.seen === null) return { text: `${start} ${end}`, values };
  const later = `transaction_id >= $6 AND NOT ${ended('$5')}`;
  values.push(place.seen, place.seen.split(':', 1)[0]);
  return { text: `${start} AND ${later} ${end}`, values };
}

interface Row {
  readonly id: string;
  readonly type: string;
  readonly subject_id: string;
  readonly recorded_at: string;
  readonly payload: Readonly<Record<string, unknown>>;
  readonly position: number;
}

export class SqlEventFeed implements EventFeed {
  constructor(private readonly connection: ShopConnection) {}

  async read(
    after: string | undefined,
    limit: number,
  ): Promise<{ events: readonly RecordedEvent[]; next: string; hasMore: boolean }> {
    const { seen, upTo: begun, position } = readPlace(after);
    const upTo = begun ?? (await this.snapshot());
    const { text, values } = buildEventFeedSql(this.connection.shopId, { seen, upTo, position }, limit);
    const { rows } = await this.connection.sql.query<Row>(text, values);
    const told = rows.slice(0, limit);
    const hasMore = rows.length > limit;
    const next = hasMore
      ? { seen, upTo, position: told.at(-1)?.position ?? position }
      : { seen: upTo, upTo: null, position: 0 };
    return { events: told.map(eventFromRow), next: writePlace(next), hasMore };
  }

  async findMany(ids: readonly string[]): Promise<readonly RecordedEvent[]> {
    const { rows } = await this.connection.sql.query<Row>(
      `SELECT id, type, subject_id, recorded_at, payload, position FROM outbox
       WHERE shop_id = $1 AND id = ANY ($2::uuid[]) ORDER BY position`,
      [this.connection.shopId, [...ids]],
    );
    return rows.map(eventFromRow);
  }

  private async snapshot(): Promise<string> {
    const { rows } = await this.connection.sql.query<{ snapshot: string }>(
      'SELECT pg_current_snapshot()::text AS snapshot',
    );
    return rows[0]?.snapshot ?? '';
  }
}

function eventFromRow(row: Row): RecordedEvent {
  return { id: row.id, type: row.type, subjectId: row.subject_id, at: row.recorded_at, payload: row.payload };
}
