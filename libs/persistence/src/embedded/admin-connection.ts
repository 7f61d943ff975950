import pg from 'pg';

/** Runs the work on one connection that ends with it. */
export async function onConnection<T>(url: string, work: (session: pg.Client) => Promise<T>): Promise<T> {
  const session = new pg.Client({ connectionString: url, application_name: 'endfloat administration' });
  // A connection that breaks fails the query on it; without a listener it would end the process too.
  session.on('error', () => undefined);
  await session.connect();
  try {
    return await work(session);
  } finally {
    await session.end();
  }
}
