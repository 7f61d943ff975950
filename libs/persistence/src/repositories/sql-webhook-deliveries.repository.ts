import type {
  DeliveryList,
  DeliveryState,
  WebhookAttempt,
  WebhookDelivery,
  WebhookDeliveryStore,
} from '@endfloat/workshop/ports';
import type { ShopConnection } from '../connection/shop-connection.js';

interface Row {
  readonly id: string;
  readonly endpoint_id: string;
  readonly event_id: string;
  readonly type: string;
  readonly subject_id: string;
  readonly state: DeliveryState;
  readonly attempts: number;
  readonly due_at: string;
  readonly recorded_at: string;
  readonly settled_at: string | null;
}

const columns = `d.id, d.endpoint_id, d.event_id, o.type, o.subject_id, d.state, d.attempts, d.due_at, d.recorded_at,
  d.settled_at`;
const from = 'webhook_delivery d JOIN outbox o ON o.shop_id = d.shop_id AND o.id = d.event_id';

export class SqlWebhookDeliveryStore implements WebhookDeliveryStore {
  constructor(private readonly connection: ShopConnection) {}

  async add(delivery: { id: string; endpointId: string; eventId: string; at: string }): Promise<void> {
    await this.connection.sql.query(
      `INSERT INTO webhook_delivery (shop_id, id, endpoint_id, event_id, state, attempts, due_at, recorded_at)
       VALUES ($1, $2, $3, $4, 'waiting', 0, $5, $5)`,
      [this.connection.shopId, delivery.id, delivery.endpointId, delivery.eventId, delivery.at],
    );
  }

  async find(id: string): Promise<WebhookDelivery | undefined> {
    const { rows } = await this.connection.sql.query<Row>(
      `SELECT ${columns} FROM ${from} WHERE d.shop_id = $1 AND d.id = $2`,
      [this.connection.shopId, id],
    );
    return rows[0] === undefined ? undefined : deliveryFromRow(rows[0]);
  }

  async list(query: Parameters<WebhookDeliveryStore['list']>[0]): Promise<DeliveryList> {
    const { rows } = await this.connection.sql.query<Row>(
      `SELECT ${columns} FROM ${from}
       WHERE d.shop_id = $1 AND ($2::uuid IS NULL OR d.endpoint_id = $2) AND ($3::text IS NULL OR d.state = $3)
         AND ($4::timestamptz IS NULL OR (d.recorded_at, d.id) < ($4, $5::uuid))
       ORDER BY d.recorded_at DESC, d.id DESC LIMIT $6`,
      [
        this.connection.shopId,
        query.endpointId ?? null,
        query.state ?? null,
        query.after?.sortValue ?? null,
        query.after?.id ?? null,
        query.limit + 1,
      ],
    );
    const items = rows.slice(0, query.limit).map(deliveryFromRow);
    const last = items.at(-1);
    return rows.length <= query.limit || last === undefined
      ? { items }
      : { items, next: { sortValue: last.recordedAt, id: last.id } };
  }

  async attemptsOf(id: string): Promise<readonly WebhookAttempt[]> {
    const { rows } = await this.connection.sql.query<
      Omit<WebhookAttempt, 'startedAt' | 'endedAt'> & { started_at: string; ended_at: string }
    >(
      `SELECT number, started_at, ended_at, outcome, status FROM webhook_attempt
       WHERE shop_id = $1 AND delivery_id = $2 ORDER BY number`,
      [this.connection.shopId, id],
    );
    return rows.map(({ number, started_at, ended_at, outcome, status }) => ({
      number,
      startedAt: started_at,
      endedAt: ended_at,
      outcome,
      status,
    }));
  }

  /** One statement: rows that another transaction has locked are passed over, not waited for. */
  async claimDue(
    query: Parameters<WebhookDeliveryStore['claimDue']>[0],
  ): Promise<readonly WebhookDelivery[]> {
    const { rows } = await this.connection.sql.query<Row>(
      `WITH ranked AS (
         SELECT id, row_number() OVER (PARTITION BY endpoint_id ORDER BY due_at, id) AS place
         FROM webhook_delivery
         WHERE shop_id = $1 AND settled_at IS NULL AND due_at <= $2 AND endpoint_id <> ALL ($6::uuid[])
       ), chosen AS (
         SELECT d.id FROM webhook_delivery d
         WHERE d.shop_id = $1 AND d.settled_at IS NULL AND d.due_at <= $2
           AND d.id IN (SELECT id FROM ranked WHERE place <= $4)
         ORDER BY d.due_at, d.id LIMIT $5 FOR UPDATE SKIP LOCKED
       ), begun AS (
         UPDATE webhook_delivery d SET attempts = d.attempts + 1, due_at = $3
         FROM chosen WHERE d.shop_id = $1 AND d.id = chosen.id RETURNING d.*
       )
       SELECT ${columns} FROM begun d JOIN outbox o ON o.shop_id = d.shop_id AND o.id = d.event_id ORDER BY d.id`,
      [
        this.connection.shopId,
        query.now,
        query.until,
        query.perEndpoint,
        query.limit,
        [...query.exceptEndpoints],
      ],
    );
    return rows.map(deliveryFromRow);
  }

  async recordAttempt(deliveryId: string, attempt: WebhookAttempt): Promise<boolean> {
    const { rowCount } = await this.connection.sql.query(
      `INSERT INTO webhook_attempt (shop_id, delivery_id, number, started_at, ended_at, outcome, status)
       VALUES ($1, $2, $3, $4, $5, $6, $7) ON CONFLICT DO NOTHING`,
      [
        this.connection.shopId,
        deliveryId,
        attempt.number,
        attempt.startedAt,
        attempt.endedAt,
        attempt.outcome,
        attempt.status,
      ],
    );
    return rowCount === 1;
  }

  async settle(id: string, state: Exclude<DeliveryState, 'waiting'>, at: string): Promise<boolean> {
    const { rowCount } = await this.connection.sql.query(
      `UPDATE webhook_delivery SET state = $3, settled_at = $4
       WHERE shop_id = $1 AND id = $2 AND settled_at IS NULL`,
      [this.connection.shopId, id, state, at],
    );
    return rowCount === 1;
  }

  async postpone(id: string, dueAt: string): Promise<void> {
    await this.connection.sql.query(
      'UPDATE webhook_delivery SET due_at = $3 WHERE shop_id = $1 AND id = $2 AND settled_at IS NULL',
      [this.connection.shopId, id, dueAt],
    );
  }

  async withdrawAll(endpointId: string, at: string): Promise<number> {
    const { rowCount } = await this.connection.sql.query(
      `UPDATE webhook_delivery SET state = 'withdrawn', settled_at = $3
       WHERE shop_id = $1 AND endpoint_id = $2 AND settled_at IS NULL`,
      [this.connection.shopId, endpointId, at],
    );
    return rowCount ?? 0;
  }
}

function deliveryFromRow(row: Row): WebhookDelivery {
  return {
    id: row.id,
    endpointId: row.endpoint_id,
    eventId: row.event_id,
    eventType: row.type,
    subjectId: row.subject_id,
    state: row.state,
    attempts: row.attempts,
    dueAt: row.due_at,
    recordedAt: row.recorded_at,
    settledAt: row.settled_at,
  };
}
