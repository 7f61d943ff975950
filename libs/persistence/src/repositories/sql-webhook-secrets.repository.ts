import type { WebhookSecret, WebhookSecretStore } from '@endfloat/workshop/ports';
import type { ShopConnection } from '../connection/shop-connection.js';

interface Row {
  readonly id: string;
  readonly endpoint_id: string;
  readonly sealed: string;
  readonly recorded_at: string;
  readonly recorded_by: string;
  readonly ends_at: string | null;
}

export class SqlWebhookSecretStore implements WebhookSecretStore {
  constructor(private readonly connection: ShopConnection) {}

  async add(secret: Omit<WebhookSecret, 'endsAt'>): Promise<void> {
    await this.connection.sql.query(
      `INSERT INTO webhook_secret (shop_id, id, endpoint_id, sealed, recorded_at, recorded_by)
       VALUES ($1, $2, $3, $4, $5, $6)`,
      [
        this.connection.shopId,
        secret.id,
        secret.endpointId,
        secret.sealed,
        secret.recordedAt,
        secret.recordedBy,
      ],
    );
  }

  async signing(endpointId: string, now: string): Promise<readonly WebhookSecret[]> {
    const { rows } = await this.connection.sql.query<Row>(
      `SELECT id, endpoint_id, sealed, recorded_at, recorded_by, ends_at FROM webhook_secret
       WHERE shop_id = $1 AND endpoint_id = $2 AND (ends_at IS NULL OR ends_at > $3)
       ORDER BY recorded_at DESC, id DESC`,
      [this.connection.shopId, endpointId, now],
    );
    return rows.map((row) => ({
      id: row.id,
      endpointId: row.endpoint_id,
      sealed: row.sealed,
      recordedAt: row.recorded_at,
      recordedBy: row.recorded_by,
      endsAt: row.ends_at,
    }));
  }

  async endAll(endpointId: string, endsAt: string): Promise<void> {
    await this.connection.sql.query(
      `UPDATE webhook_secret SET ends_at = $3
       WHERE shop_id = $1 AND endpoint_id = $2 AND (ends_at IS NULL OR ends_at > $3)`,
      [this.connection.shopId, endpointId, endsAt],
    );
  }
}
