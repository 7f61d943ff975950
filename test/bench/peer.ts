import { createHash, randomUUID, timingSafeEqual } from 'node:crypto';
import Fastify, { type FastifyInstance } from 'fastify';
import pg from 'pg';

/** What the product stores beside the columns, taken from rows it wrote; the peer computes no verdict. */
export interface StoredDocuments {
  readonly reading: object;
  readonly verdicts: readonly {
    readonly checkId: string;
    readonly phase: string;
    readonly limitId: string;
    readonly outcome: string;
    readonly probability: string | null;
    readonly document: object;
  }[];
}

interface Reading {
  readonly checkId: string;
  readonly phase: string;
  readonly result: { readonly shown: string; readonly unit: string };
  readonly instrumentId: string;
  readonly takenAt: string;
}

interface Caller {
  readonly shopId: string;
  readonly userId: string;
}

const characteristic = 'shaft-radial-play-lower';

/**
 * The least that keeps the same promises: Fastify and pg with hand-written SQL, the key looked up in a transaction of the
 * shop, the work in another one, row-level security behind both, and the same fields in rows and answers.
 */
export function openPeer(databaseUrl: string, documents: StoredDocuments): FastifyInstance {
  const pool = new pg.Pool({ connectionString: databaseUrl, max: 10 });
  pool.on('error', () => undefined);
  const app = Fastify({ bodyLimit: 2 * 1024 * 1024 });
  app.addHook('onClose', () => pool.end());

  const inShop = async <T>(
    shopId: string,
    access: 'READ ONLY' | 'READ WRITE',
    work: (client: pg.PoolClient) => Promise<T>,
  ): Promise<T> => {
    const client = await pool.connect();
    try {
      await client.query(`BEGIN ${access}; SELECT set_config('app.shop', '${shopId}', true)`);
      const result = await work(client);
      await client.query('COMMIT');
      return result;
    } catch (error) {
      await client.query('ROLLBACK');
      throw error;
    } finally {
      client.release();
    }
  };

  const identify = async (header: string | undefined): Promise<Caller> => {
    const [, prefix = '', secret = ''] = /^Bearer ([^.]+)\.(.+)$/.exec(header ?? '') ?? [];
    const hex = Buffer.from(prefix, 'base64url').toString('hex');
    const uuid = (text: string) => text.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
    const shopId = uuid(hex.slice(0, 32));
    const [row] = await inShop(shopId, 'READ ONLY', async (client) => {
      const { rows } = await client.query<{ user_id: string; secret_hash: string }>(
        `SELECT k.user_id, k.secret_hash FROM api_key k
         JOIN shop_user_revision u ON u.shop_id = k.shop_id AND u.id = k.user_id AND u.replaced_at IS NULL
         WHERE k.shop_id = $1 AND k.id = $2 AND k.revoked_at IS NULL AND u.active`,
        [shopId, uuid(hex.slice(32))],
      );
      return rows;
    });
    const given = createHash('sha256').update(secret).digest();
    if (row === undefined || !timingSafeEqual(given, Buffer.from(row.secret_hash, 'hex')))
      throw new Error('no such key');
    return { shopId, userId: row.user_id };
  };

  app.get('/v1/nothing', () => ({ done: true }));

  app.get<{ Params: { id: string } }>('/v1/vehicles/:id', async ({ params, headers }, reply) => {
    const { shopId } = await identify(headers.authorization);
    return inShop(shopId, 'READ ONLY', async (client) => {
      const { rows } = await client.query<VehicleRow>(
        `SELECT i.id, r.revision, r.recorded_at, r.recorded_by, r.reason, r.replaced_at, r.document, o.customer_id, o.from_at
         FROM vehicle i JOIN vehicle_revision r ON r.shop_id = i.shop_id AND r.id = i.id AND r.replaced_at IS NULL
         LEFT JOIN LATERAL (
           SELECT v.customer_id, v.from_at FROM vehicle_ownership w
           JOIN vehicle_ownership_revision v ON v.shop_id = w.shop_id AND v.id = w.id AND v.replaced_at IS NULL
           WHERE w.shop_id = i.shop_id AND w.vehicle_id = i.id AND v.from_at <= now() ORDER BY v.from_at DESC LIMIT 1) o ON true
         WHERE i.shop_id = $1 AND i.id = $2`,
        [shopId, params.id],
      );
      const [row] = rows;
      if (row === undefined) return reply.code(404).send({});
      const owner = { customerId: row.customer_id, fromAt: row.from_at };
      return reply
        .header('etag', `"${String(row.revision)}"`)
        .send({ ...recorded(row), ...row.document, owner });
    });
  });

  app.get<{ Querystring: { vehicleId: string } }>('/v1/readings', async ({ query, headers }) => {
    const { shopId } = await identify(headers.authorization);
    return inShop(shopId, 'READ ONLY', async (client) => {
      const { rows } = await client.query<ReadingRow>(
        `SELECT i.id, i.inspection_id, r.* FROM inspection n
         JOIN reading i ON i.shop_id = n.shop_id AND i.inspection_id = n.id
         JOIN reading_revision r ON r.shop_id = i.shop_id AND r.id = i.id AND r.replaced_at IS NULL
         WHERE n.shop_id = $1 AND n.vehicle_id = $2 ORDER BY r.taken_at, i.id LIMIT 51`,
        [shopId, query.vehicleId],
      );
      const last = rows[49];
      const nextCursor =
        rows.length > 50 && last !== undefined
          ? Buffer.from(JSON.stringify([last.taken_at, last.id])).toString('base64url')
          : null;
      return { items: rows.slice(0, 50).map(presentReading), nextCursor };
    });
  });

  const store = async (caller: Caller, inspectionId: string, readings: readonly Reading[]) => {
    const { shopId, userId } = caller;
    const at = new Date().toISOString();
    const ids = readings.map(() => randomUUID());
    const columns = [
      readings.map(({ checkId }) => checkId),
      readings.map(({ phase }) => phase),
      readings.map(({ result }) => result.shown),
      readings.map(({ result }) => result.unit),
      readings.map(({ takenAt }) => takenAt),
      readings.map(({ instrumentId }) => instrumentId),
    ];
    await inShop(shopId, 'READ WRITE', async (client) => {
      await client.query(
        `INSERT INTO reading (shop_id, id, inspection_id, recorded_at, recorded_by)
         SELECT $1, id, $2, $3, $4 FROM unnest($5::uuid[]) AS id`,
        [shopId, inspectionId, at, userId, ids],
      );
      await client.query(
        `INSERT INTO reading_revision (shop_id, id, revision, check_id, characteristic, phase, result_kind, shown, unit,
           canonical_value, canonical_unit, taken_at, instrument_id, measured_by, value_confirmed, document, recorded_at, recorded_by)
         SELECT $1, g.id, 1, g.check_id, $4, g.phase, 'number', g.shown, g.unit, g.shown::numeric, g.unit, g.taken_at,
           g.instrument_id, $3, true, $5, $2, $3
         FROM unnest($6::uuid[], $7::text[], $8::text[], $9::text[], $10::text[], $11::timestamptz[], $12::uuid[])
           AS g(id, check_id, phase, shown, unit, taken_at, instrument_id)`,
        [shopId, at, userId, characteristic, documents.reading, ids, ...columns],
      );
      await storeVerdicts(client, caller, inspectionId, at);
      await client.query(
        `INSERT INTO outbox (shop_id, id, type, subject_id, payload, recorded_at) VALUES ($1, $2, $3, $4, $5, $6)`,
        [shopId, randomUUID(), 'endfloat.inspection.read.v1', inspectionId, { readings: ids.length }, at],
      );
    });
    return readings.map((reading, index) => ({ ...reading, id: ids[index], inspectionId, recordedAt: at }));
  };

  /** New verdicts, or a new revision of each that is there, as a further reading makes them. */
  const storeVerdicts = async (
    client: pg.PoolClient,
    { shopId, userId }: Caller,
    inspectionId: string,
    at: string,
  ): Promise<void> => {
    const { rows } = await client.query<{ id: string; revision: number; limit_id: string }>(
      `UPDATE verdict_revision r SET replaced_at = $3 FROM verdict v
       WHERE v.shop_id = $1 AND v.inspection_id = $2 AND r.shop_id = v.shop_id AND r.id = v.id AND r.replaced_at IS NULL
       RETURNING v.id, r.revision, v.limit_id`,
      [shopId, inspectionId, at],
    );
    for (const { checkId, phase, limitId, outcome, probability, document } of documents.verdicts) {
      const known = rows.find((row) => row.limit_id === limitId);
      const id = known?.id ?? randomUUID();
      if (known === undefined) {
        await client.query('INSERT INTO verdict VALUES ($1, $2, $3, $4, $5, $6, $7, $8)', [
          ...[shopId, id, inspectionId, checkId, phase, limitId, at, userId],
        ]);
      }
      await client.query(
        `INSERT INTO verdict_revision (shop_id, id, revision, outcome, probability_inside, document, recorded_at, recorded_by)
         VALUES ($1, $2, $3, $4, $5, $6, $7, $8)`,
        [shopId, id, (known?.revision ?? 0) + 1, outcome, probability, document, at, userId],
      );
    }
  };

  app.post<{ Params: { id: string }; Body: Reading }>(
    '/v1/inspections/:id/readings',
    async ({ params, body, headers }, reply) => {
      const caller = await identify(headers.authorization);
      const [stored] = await store(caller, params.id, [body]);
      return reply.code(201).send({ ...stored, judgement: documents.verdicts });
    },
  );
  app.post<{ Params: { id: string }; Body: { readings: Reading[] } }>(
    '/v1/inspections/:id/reading-sets',
    async ({ params, body, headers }, reply) => {
      const caller = await identify(headers.authorization);
      const readings = await store(caller, params.id, body.readings);
      return reply.code(201).send({ readings, verdicts: documents.verdicts });
    },
  );
  return app;
}

interface Revision {
  readonly id: string;
  readonly revision: number;
  readonly recorded_at: Date;
  readonly recorded_by: string;
  readonly reason: string | null;
  readonly replaced_at: Date | null;
  readonly document: object;
}
type VehicleRow = Revision & { readonly customer_id: string; readonly from_at: Date };
type ReadingRow = Revision & Readonly<Record<string, unknown>>;

function recorded(row: Revision): object {
  return {
    id: row.id,
    version: row.revision,
    recordedAt: row.recorded_at,
    recordedBy: row.recorded_by,
    reason: row.reason,
    replacedAt: row.replaced_at,
  };
}

function presentReading(row: ReadingRow): object {
  return {
    ...recorded(row),
    ...row.document,
    inspectionId: row['inspection_id'],
    checkId: row['check_id'],
    phase: row['phase'],
    result: { kind: row['result_kind'], shown: row['shown'], unit: row['unit'] },
    instrumentId: row['instrument_id'],
    measuredBy: row['measured_by'],
    takenAt: row['taken_at'],
    characteristic: row['characteristic'],
    fittedPartId: row['fitted_part_id'],
    canonical: { value: row['canonical_value'], unit: row['canonical_unit'] },
    distanceKm: row['distance_km'],
    valueConfirmed: row['value_confirmed'],
  };
}
