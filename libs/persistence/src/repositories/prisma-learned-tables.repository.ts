import type { LearnedSubject, LearnedTablesStore, StoredTables } from '@endfloat/workshop/ports';
import type { Prisma } from '../generated/client.js';
import type { LearnedTablesModel } from '../generated/models.js';
import type { ShopConnection } from '../connection/shop-connection.js';

/** Learned tables: added to, never changed; the latest of a subject is in use. */
export class PrismaLearnedTablesStore implements LearnedTablesStore {
  constructor(private readonly connection: ShopConnection) {}

  async add({ subject, version, hash, learnedAt, document }: StoredTables): Promise<void> {
    const { shopId, prisma } = this.connection;
    await prisma.learnedTables.create({
      data: {
        shopId,
        subject,
        tablesVersion: version,
        hash,
        learnedAt,
        document: document as Prisma.InputJsonObject,
      },
    });
  }

  async latest(subject: LearnedSubject): Promise<StoredTables | undefined> {
    return this.first({ subject });
  }

  async byHash(subject: LearnedSubject, hash: string): Promise<StoredTables | undefined> {
    return this.first({ subject, hash });
  }

  private async first(where: Prisma.LearnedTablesWhereInput): Promise<StoredTables | undefined> {
    const row = await this.connection.prisma.learnedTables.findFirst({
      where: { shopId: this.connection.shopId, ...where },
      orderBy: { learnedAt: 'desc' },
    });
    return row === null ? undefined : tablesFromRow(row);
  }
}

function tablesFromRow(row: LearnedTablesModel): StoredTables {
  return {
    subject: row.subject as LearnedSubject,
    version: row.tablesVersion,
    hash: row.hash,
    learnedAt: row.learnedAt.toISOString(),
    document: row.document,
  };
}
