import type { AuditAction, AuditEntry, AuditQuery, AuditTrail } from '@endfloat/workshop/ports';
import type { ShopConnection } from '../connection/shop-connection.js';
import { recordTables } from '../repositories/record-tables.js';

/** fitted_part -> fittedPart */
const kindOf = (table: string): string =>
  table.replace(/_([a-z])/g, (_all, letter: string) => letter.toUpperCase());

const span = 'shop_id = $1 AND recorded_at >= $2 AND recorded_at < $3';

/** One branch for each table of revisions, and one for each plain table whose rows somebody answers for. */
function branches(kind: string | undefined): string[] {
  const revisions = Object.values(recordTables)
    .map(({ name }) => ({ kind: kindOf(name), name }))
    .map(({ kind: each, name }) => ({
      kind: each,
      text: `SELECT '${each}' AS kind, id, revision, CASE revision WHEN 1 THEN 'recorded' ELSE 'corrected' END AS action,
  recorded_at AS at, recorded_by AS by, reason FROM ${name}_revision WHERE ${span}`,
    }));
  const plain = [
    {
      kind: 'apiKey',
      text: `SELECT 'apiKey', id, 1, 'keyMade', recorded_at, recorded_by, NULL FROM api_key WHERE ${span}`,
    },
    {
      kind: 'apiKey',
      text: `SELECT 'apiKey', id, 2, 'keyRevoked', revoked_at, revoked_by, NULL FROM api_key
  WHERE shop_id = $1 AND revoked_at >= $2 AND revoked_at < $3`,
    },
    {
      kind: 'personalRecord',
      text: `SELECT 'personalRecord', id, 2, 'personalDataErased', erased_at, erased_by, erase_reason FROM personal_record
  WHERE shop_id = $1 AND erased_at >= $2 AND erased_at < $3`,
    },
    {
      kind: 'webhookSecret',
      text: `SELECT 'webhookSecret', id, 1, 'secretMade', recorded_at, recorded_by, NULL FROM webhook_secret WHERE ${span}`,
    },
  ];
  return [...revisions, ...plain]
    .filter((each) => kind === undefined || each.kind === kind)
    .map(({ text }) => text);
}

/** Kinds that the trail knows. */
export const auditedKinds: readonly string[] = [
  ...new Set([
    ...Object.values(recordTables).map(({ name }) => kindOf(name)),
    'apiKey',
    'personalRecord',
    'webhookSecret',
  ]),
].sort();

/**
 * Who recorded, corrected, revoked or erased what within a span of time, newest first. It reads the revisions
 * themselves: there is no second book that could say something else.
 */
export function buildAuditTrailSql(shopId: string, query: AuditQuery): { text: string; values: unknown[] } {
  const parts = branches(query.kind);
  const all =
    parts.length === 0
      ? [
          `SELECT 'none' AS kind, $1::uuid AS id, 1 AS revision, 'recorded' AS action, $2::timestamptz AS at, $1::uuid AS by, NULL::text AS reason WHERE $3 < $2`,
        ]
      : parts;
  return {
    text: `SELECT * FROM (SELECT e.*, e.kind || '/' || e.id || '/' || e.revision AS place FROM (
${all.join('\nUNION ALL\n')}
) AS e (kind, id, revision, action, at, by, reason)) AS f
WHERE ($4::uuid IS NULL OR by = $4) AND ($5::uuid IS NULL OR id = $5)
  AND ($6::timestamptz IS NULL OR (at, place) < ($6, $7::text))
ORDER BY at DESC, place DESC LIMIT $8`,
    values: [
      shopId,
      query.from,
      query.until,
      query.by ?? null,
      query.recordId ?? null,
      query.after?.sortValue ?? null,
      query.after?.id ?? null,
      query.limit + 1,
    ],
  };
}

interface Row {
  readonly kind: string;
  readonly id: string;
  readonly revision: number;
  readonly action: AuditAction;
  readonly at: string;
  readonly by: string | null;
  readonly reason: string | null;
  readonly place: string;
}

export class SqlAuditTrail implements AuditTrail {
  constructor(private readonly connection: ShopConnection) {}

  async list(query: AuditQuery): ReturnType<AuditTrail['list']> {
    const { text, values } = buildAuditTrailSql(this.connection.shopId, query);
    const { rows } = await this.connection.sql.query<Row>(text, values);
    const items = rows.slice(0, query.limit);
    const last = items.at(-1);
    return {
      items: items.map(entryFromRow),
      next:
        rows.length > query.limit && last !== undefined ? { sortValue: last.at, id: last.place } : undefined,
    };
  }
}

function entryFromRow({ kind, id, revision, action, at, by, reason }: Row): AuditEntry {
  return { kind, recordId: id, version: revision, action, at, by, reason };
}
