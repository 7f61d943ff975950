import { onConnection } from '../embedded/admin-connection.js';

export interface UnguardedTable {
  readonly table: string;
  readonly missing: readonly ('enabled' | 'forced' | 'policy')[];
}

const query = `
SELECT c.relname AS table,
       array_remove(ARRAY[
         CASE WHEN NOT c.relrowsecurity THEN 'enabled' END,
         CASE WHEN NOT c.relforcerowsecurity THEN 'forced' END,
         CASE WHEN NOT EXISTS (SELECT FROM pg_policy p WHERE p.polrelid = c.oid) THEN 'policy' END
       ], NULL) AS missing
FROM pg_class c
WHERE c.relkind IN ('r', 'p') AND c.relnamespace NOT IN ('pg_catalog'::regnamespace, 'information_schema'::regnamespace)
  AND EXISTS (SELECT FROM pg_attribute a WHERE a.attrelid = c.oid AND a.attname = 'shop_id' AND NOT a.attisdropped)
ORDER BY 1`;

/**
 * Tables with a column `shop_id` on which row-level security is not enabled, not forced upon the owner, or has no
 * policy. Empty: every shop's rows are guarded.
 */
export async function findUnguardedTables(url: string): Promise<UnguardedTable[]> {
  const tables = await onConnection(url, (session) => session.query<UnguardedTable>(query));
  return tables.rows.filter(({ missing }) => missing.length > 0);
}
