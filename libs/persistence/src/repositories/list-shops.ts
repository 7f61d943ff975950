import type pg from 'pg';

/** The shops there are. Only the worker's role sees any: its policy lets it list shops, nothing else of them. */
export async function listShopIds(pool: pg.Pool): Promise<readonly string[]> {
  const { rows } = await pool.query<{ id: string }>('SELECT id FROM shop ORDER BY id');
  return rows.map((row) => row.id);
}
