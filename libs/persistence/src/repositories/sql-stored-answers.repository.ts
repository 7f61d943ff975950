import type { StoredAnswer, StoredAnswerStore } from '@endfloat/workshop/ports';
import type { ShopConnection } from '../connection/shop-connection.js';

interface Row {
  readonly key_hash: string;
  readonly fingerprint: string;
  readonly status: number;
  readonly location: string | null;
  readonly content: string | null;
  readonly recorded_at: string;
  readonly expires_at: string;
}

export class SqlStoredAnswerStore implements StoredAnswerStore {
  constructor(private readonly connection: ShopConnection) {}

  async claim(keyHash: string): Promise<boolean> {
    const { sql, shopId } = this.connection;
    const { rows } = await sql.query<{ held: boolean }>(
      'SELECT pg_try_advisory_xact_lock(hashtextextended($1, 1)) AS held',
      [`${shopId}/${keyHash}`],
    );
    return rows[0]?.held === true;
  }

  async find(keyHash: string, now: string): Promise<StoredAnswer | undefined> {
    const { rows } = await this.connection.sql.query<Row>(
      `SELECT key_hash, fingerprint, status, location, content, recorded_at, expires_at FROM stored_answer
       WHERE shop_id = $1 AND key_hash = $2 AND expires_at > $3 ORDER BY recorded_at DESC LIMIT 1`,
      [this.connection.shopId, keyHash, now],
    );
    return rows[0] === undefined ? undefined : answerFromRow(rows[0]);
  }

  async add(answer: StoredAnswer): Promise<void> {
    await this.connection.sql.query(
      `INSERT INTO stored_answer (shop_id, key_hash, fingerprint, status, location, content, recorded_at, expires_at)
       VALUES ($1, $2, $3, $4, $5, $6, $7, $8)`,
      [
        this.connection.shopId,
        answer.keyHash,
        answer.fingerprint,
        answer.status,
        answer.location,
        answer.content,
        answer.recordedAt,
        answer.expiresAt,
      ],
    );
  }

  async eraseExpired(now: string): Promise<number> {
    const { rowCount } = await this.connection.sql.query(
      `UPDATE stored_answer SET content = NULL, erased_at = $2
       WHERE shop_id = $1 AND erased_at IS NULL AND expires_at <= $2`,
      [this.connection.shopId, now],
    );
    return rowCount ?? 0;
  }
}

function answerFromRow(row: Row): StoredAnswer {
  return {
    keyHash: row.key_hash,
    fingerprint: row.fingerprint,
    status: row.status,
    location: row.location,
    content: row.content,
    recordedAt: row.recorded_at,
    expiresAt: row.expires_at,
  };
}
