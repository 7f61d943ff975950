import type pg from 'pg';

/** One property of a database: what it belongs to, and how it stands there. */
export interface SchemaFact {
  readonly subject: string;
  readonly definition: string;
}

/**
 * Everything a Prisma schema can say, read from the catalogue of schema `public`. Left out is what stands in SQL
 * only: partial, expression and covering indexes, exclusion and check constraints, policies, triggers, functions,
 * and when a foreign key is checked.
 */
const facts = `
WITH relations AS (
  SELECT c.oid, c.relname FROM pg_class c
  WHERE c.relnamespace = 'public'::regnamespace AND c.relkind IN ('r', 'p') AND NOT c.relispartition
    AND c.relname <> '_prisma_migrations' AND c.relname <> ALL ($1::text[])
)
SELECT 'table ' || relname AS subject, 'exists' AS definition FROM relations
UNION ALL
SELECT 'column ' || r.relname || '.' || a.attname,
       format_type(a.atttypid, a.atttypmod) || CASE WHEN a.attnotnull THEN ' not null' ELSE '' END
       || CASE WHEN a.attidentity <> '' THEN ' identity' ELSE '' END
       || CASE WHEN d.oid IS NULL THEN '' ELSE ' default ' || pg_get_expr(d.adbin, d.adrelid) END
FROM relations r
JOIN pg_attribute a ON a.attrelid = r.oid AND a.attnum > 0 AND NOT a.attisdropped
LEFT JOIN pg_attrdef d ON d.adrelid = r.oid AND d.adnum = a.attnum AND a.attgenerated = ''
UNION ALL
SELECT 'constraint ' || r.relname || '.' || k.conname,
       regexp_replace(pg_get_constraintdef(k.oid), '( NOT DEFERRABLE| DEFERRABLE| INITIALLY DEFERRED| NOT VALID)+$', '')
FROM relations r JOIN pg_constraint k ON k.conrelid = r.oid AND k.contype IN ('p', 'f')
UNION ALL
SELECT 'index ' || r.relname || '.' || i.relname, pg_get_indexdef(i.oid)
FROM relations r
JOIN pg_index x ON x.indrelid = r.oid AND x.indpred IS NULL AND x.indexprs IS NULL AND x.indnatts = x.indnkeyatts
  AND NOT x.indisprimary AND NOT x.indisexclusion
JOIN pg_class i ON i.oid = x.indexrelid
UNION ALL
SELECT 'enum ' || t.typname, string_agg(quote_literal(e.enumlabel), ', ' ORDER BY e.enumsortorder)
FROM pg_type t JOIN pg_enum e ON e.enumtypid = t.oid
WHERE t.typnamespace = 'public'::regnamespace
GROUP BY t.typname
ORDER BY 1`;

/** @param withoutTables - tables that stand in SQL only */
export async function readSchema(
  session: pg.Client,
  withoutTables: readonly string[],
): Promise<SchemaFact[]> {
  const { rows } = await session.query<SchemaFact>(facts, [withoutTables]);
  return rows;
}
