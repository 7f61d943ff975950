import { partConditions } from '@endfloat/catalogue';
import type { MonthOfUse, StockLine, StockQueries } from '@endfloat/workshop/ports';
import type { ShopConnection } from '../connection/shop-connection.js';

const whenever = '9999-12-31T00:00:00Z';

/** The last move of each ledger: what lies there after it. One look into the index a ledger, however long it is. */
export function buildStockLinesSql(
  shopId: string,
  { partIds, asOf }: Parameters<StockQueries['lines']>[0],
): { text: string; values: unknown[] } {
  return {
    text: `
SELECT p.id AS "partId", c.condition, m.position, m.on_hand_after AS "onHand", m.reserved_after AS reserved,
  to_char(m.recorded_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') AS "lastMovedAt"
FROM part p
CROSS JOIN unnest($4::text[]) AS c(condition)
CROSS JOIN LATERAL (
  SELECT position, on_hand_after, reserved_after, recorded_at FROM stock_move
  WHERE shop_id = $1 AND part_id = p.id AND condition = c.condition AND recorded_at <= $3
  ORDER BY shop_id DESC, part_id DESC, condition DESC, position DESC LIMIT 1) m
WHERE p.shop_id = $1 AND ($2::uuid[] IS NULL OR p.id = ANY($2::uuid[]))
ORDER BY p.id, c.condition`,
    values: [shopId, partIds ?? null, asOf ?? whenever, [...partConditions]],
  };
}

export function buildUseByMonthSql(
  shopId: string,
  { partIds, from, asOf }: Parameters<StockQueries['useByMonth']>[0],
): { text: string; values: unknown[] } {
  return {
    text: `
SELECT m.part_id AS "partId", to_char(date_trunc('month', r.happened_at AT TIME ZONE 'UTC'), 'YYYY-MM-DD') AS month,
  (-sum(m.on_hand_change))::int AS pieces
FROM stock_move m
JOIN stock_move_revision r ON r.shop_id = m.shop_id AND r.id = m.id AND r.replaced_at IS NULL
WHERE m.shop_id = $1 AND m.part_id = ANY($2::uuid[]) AND m.job_id IS NOT NULL
  AND m.recorded_at <= $4 AND r.happened_at >= $3::date
GROUP BY m.part_id, 2 HAVING sum(m.on_hand_change) <> 0
ORDER BY m.part_id, 2`,
    values: [shopId, partIds, from, asOf ?? whenever],
  };
}

export class SqlStockQueries implements StockQueries {
  constructor(private readonly connection: ShopConnection) {}

  async lines(query: Parameters<StockQueries['lines']>[0]): Promise<readonly StockLine[]> {
    const { text, values } = buildStockLinesSql(this.connection.shopId, query);
    return (await this.connection.sql.query<StockLine>(text, values)).rows;
  }

  async ofJob({ partId, condition, jobId }: Parameters<StockQueries['ofJob']>[0]) {
    const { rows } = await this.connection.sql.query<{ reserved: number; inJob: number }>(
      `SELECT COALESCE(sum(reserved_change), 0)::int AS reserved, COALESCE(-sum(on_hand_change), 0)::int AS "inJob"
       FROM stock_move WHERE shop_id = $1 AND part_id = $2 AND condition = $3 AND job_id = $4`,
      [this.connection.shopId, partId, condition, jobId],
    );
    return rows[0] ?? { reserved: 0, inJob: 0 };
  }

  async lastCountAt({ partId, condition }: Parameters<StockQueries['lastCountAt']>[0]) {
    const { rows } = await this.connection.sql.query<{ at: string }>(
      `SELECT to_char(r.happened_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') AS at
       FROM stock_move m JOIN stock_move_revision r ON r.shop_id = m.shop_id AND r.id = m.id AND r.replaced_at IS NULL
       WHERE m.shop_id = $1 AND m.part_id = $2 AND m.condition = $3 AND m.kind = 'count'
       ORDER BY r.happened_at DESC LIMIT 1`,
      [this.connection.shopId, partId, condition],
    );
    return rows[0]?.at;
  }

  async useByMonth(query: Parameters<StockQueries['useByMonth']>[0]): Promise<readonly MonthOfUse[]> {
    const { text, values } = buildUseByMonthSql(this.connection.shopId, query);
    return (await this.connection.sql.query<MonthOfUse>(text, values)).rows;
  }
}
