import type {
  ApiKey,
  ApiKeyStore,
  NewApiKey,
  PersonalRecord,
  PersonalRecordStore,
  ShopEvent,
  ShopRole,
  ShopStore,
} from '@endfloat/workshop/ports';
import { Prisma } from '../generated/client.js';
import type * as rows from '../generated/models.js';
import type { ShopConnection } from '../connection/shop-connection.js';

/** Tables without revisions, read and written through Prisma on the connection of the transaction. */
export class PrismaShopStore implements ShopStore {
  constructor(private readonly connection: ShopConnection) {}

  async add(recordedAt: string): Promise<boolean> {
    const { count } = await this.connection.prisma.shop.createMany({
      data: [{ id: this.connection.shopId, recordedAt }],
      skipDuplicates: true,
    });
    return count === 1;
  }

  async exists(): Promise<boolean> {
    return (await this.connection.prisma.shop.findFirst({ where: { id: this.connection.shopId } })) !== null;
  }
}

export class PrismaApiKeyStore implements ApiKeyStore {
  constructor(private readonly connection: ShopConnection) {}

  async add(key: NewApiKey): Promise<void> {
    await this.connection.prisma.apiKey.create({
      data: { shopId: this.connection.shopId, ...key, roles: [...key.roles] },
    });
  }

  async find(id: string): Promise<ApiKey | undefined> {
    const row = await this.connection.prisma.apiKey.findFirst({
      where: { shopId: this.connection.shopId, id },
    });
    return row === null ? undefined : apiKeyFromRow(row);
  }

  async list(): Promise<readonly ApiKey[]> {
    const found = await this.connection.prisma.apiKey.findMany({
      where: { shopId: this.connection.shopId },
      orderBy: { id: 'asc' },
    });
    return found.map(apiKeyFromRow);
  }

  async revoke(id: string, at: string, by: string): Promise<boolean> {
    const { count } = await this.connection.prisma.apiKey.updateMany({
      where: { shopId: this.connection.shopId, id, revokedAt: null },
      data: { revokedAt: at, revokedBy: by },
    });
    return count === 1;
  }

  async endAt(id: string, at: string): Promise<boolean> {
    const { rowCount } = await this.connection.sql.query(
      `UPDATE api_key SET expires_at = LEAST(COALESCE(expires_at, $3), $3)
       WHERE shop_id = $1 AND id = $2 AND revoked_at IS NULL`,
      [this.connection.shopId, id, at],
    );
    return rowCount === 1;
  }

  async noteUse(id: string, at: string): Promise<void> {
    await this.connection.prisma.apiKey.updateMany({
      where: {
        shopId: this.connection.shopId,
        id,
        OR: [{ lastUsedAt: null }, { lastUsedAt: { lt: at } }],
      },
      data: { lastUsedAt: at },
    });
  }
}

function apiKeyFromRow(row: rows.ApiKeyModel): ApiKey {
  return {
    id: row.id,
    userId: row.userId,
    name: row.name,
    secretHash: row.secretHash,
    roles: row.roles as ShopRole[],
    expiresAt: row.expiresAt?.toISOString() ?? null,
    recordedAt: row.recordedAt.toISOString(),
    recordedBy: row.recordedBy,
    revokedAt: row.revokedAt?.toISOString() ?? null,
    revokedBy: row.revokedBy,
    readOnly: row.readOnly,
    replaces: row.replaces,
    lastUsedAt: row.lastUsedAt?.toISOString() ?? null,
  };
}

export class PrismaPersonalRecordStore implements PersonalRecordStore {
  constructor(private readonly connection: ShopConnection) {}

  async add(record: Omit<PersonalRecord, 'erasedAt'>, by: string): Promise<void> {
    await this.connection.prisma.personalRecord.create({
      data: {
        shopId: this.connection.shopId,
        ...record,
        content: record.content ?? Prisma.DbNull,
        recordedBy: by,
      },
    });
  }

  async findMany(ids: readonly string[]): Promise<readonly PersonalRecord[]> {
    const found = await this.connection.prisma.personalRecord.findMany({
      where: { shopId: this.connection.shopId, id: { in: [...ids] } },
    });
    return found.map(personalRecordFromRow);
  }

  async ofCustomer(customerId: string): Promise<readonly PersonalRecord[]> {
    const found = await this.connection.prisma.personalRecord.findMany({
      where: { shopId: this.connection.shopId, customerId },
      orderBy: { recordedAt: 'asc' },
    });
    return found.map(personalRecordFromRow);
  }

  async erase(ids: readonly string[], by: string, at: string, reason: string): Promise<number> {
    const { count } = await this.connection.prisma.personalRecord.updateMany({
      where: { shopId: this.connection.shopId, id: { in: [...ids] }, erasedAt: null },
      data: { content: Prisma.DbNull, erasedAt: at, erasedBy: by, eraseReason: reason },
    });
    return count;
  }
}

function personalRecordFromRow(row: rows.PersonalRecordModel): PersonalRecord {
  return {
    id: row.id,
    customerId: row.customerId,
    kind: row.kind as PersonalRecord['kind'],
    content: row.content as PersonalRecord['content'],
    recordedAt: row.recordedAt.toISOString(),
    erasedAt: row.erasedAt?.toISOString() ?? null,
  };
}

/**
 * Writes an event into the outbox of the transaction, and a delivery for each endpoint that is to be told of it: both
 * exist if and only if the transaction commits.
 */
export async function announceEvent(connection: ShopConnection, id: string, event: ShopEvent): Promise<void> {
  await connection.sql.query(
    `WITH event AS (
       INSERT INTO outbox (shop_id, id, type, subject_id, payload, recorded_at)
       VALUES ($1, $2, $3, $4, $5, $6) RETURNING id
     )
     INSERT INTO webhook_delivery (shop_id, id, endpoint_id, event_id, state, attempts, due_at, recorded_at)
     SELECT $1, endfloat_uuid7(), r.id, event.id, 'waiting', 0, $6, $6
     FROM event, webhook_endpoint_revision r
     WHERE r.shop_id = $1 AND r.replaced_at IS NULL AND r.state = 'active'
       AND (r.document->'eventTypes' = 'null'::jsonb OR r.document->'eventTypes' ? $3)`,
    [connection.shopId, id, event.type, event.subjectId, JSON.stringify(event.payload), event.at],
  );
}
