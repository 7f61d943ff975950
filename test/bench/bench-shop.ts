import { createHash } from 'node:crypto';
import pg from 'pg';
import { openPorts, writeKeyPrefix } from '@endfloat/api';
import { CreateApiKeyUseCase, OpenShopUseCase } from '@endfloat/workshop';
import { send } from './measure.js';
import type { StoredDocuments } from './peer.js';

const secret = createHash('sha256').update('only the benchmark').digest('base64url');

/** Opens the shop of the benchmark in a fresh database; the header its owner sends. */
export async function openBenchShop(databaseUrl: string): Promise<string> {
  const ports = openPorts({ url: databaseUrl, size: 1, waitMs: 2000 });
  const { work, clock, ids } = ports;
  const [shopId, userId, keyId] = [ids.next(), ids.next(), ids.next()];
  await new OpenShopUseCase(work, clock, ids).execute({
    shopId,
    settings: {
      name: 'Quillmarsh Van Works',
      timeZone: 'Europe/Lisbon',
      currency: 'EUR',
      labourRatePerHour: '80.00',
      downtimeCostPerDay: '60.00',
      comebackHandling: '250.00',
      comebackWindowDays: 90,
      comebackWindowKm: '5000',
      planningDistanceKm: '120000',
      rankingMinimumJobs: 20,
    },
    owner: { id: userId, displayName: 'Odile Marrow' },
  });
  await new CreateApiKeyUseCase(work, clock).execute(
    { shopId, userId, roles: ['owner'] },
    {
      id: keyId,
      userId,
      name: 'benchmark',
      secretHash: createHash('sha256').update(secret).digest('hex'),
      roles: ['owner'],
      expiresAt: null,
    },
  );
  await ports.close();
  return `Bearer ${writeKeyPrefix(shopId, keyId)}.${secret}`;
}

const startedAt = '2026-03-02T08:00:00Z';

/** The things that requests are about, made over HTTP. */
export interface BenchShop {
  vehicle(): Promise<string>;
  /** An inspection with the linkage passed, so that play is judged. */
  inspection(vehicleId: string): Promise<string>;
  reading(index: number): object;
  post(path: string, body: object): Promise<{ id: string }>;
}

export async function furnishBenchShop(address: string, authorization: string): Promise<BenchShop> {
  const call = async (method: 'GET' | 'POST', path: string, body?: object) => {
    const { status, text } = await send(
      { address, authorization },
      { method, path, body: body === undefined ? undefined : JSON.stringify(body) },
    );
    if (status >= 300) throw new Error(`${path}: ${String(status)} ${text}`);
    return JSON.parse(text) as { id: string; items: { id: string }[] };
  };
  const post = (path: string, body: object) => call('POST', path, body);
  const { id: customerId } = await post('/v1/customers', {
    kind: 'fleetOperator',
    contact: { name: 'Pellow Haulage' },
    downtimeCostPerDay: null,
    planningDistanceKm: null,
  });
  const { id: instrumentId } = await post('/v1/instruments', {
    kind: 'dialIndicator',
    name: 'dial 3',
    serial: null,
    errorModel: { kind: 'maximumPermissibleError', limit: { value: '0.015', unit: 'mm' } },
    resolution: { value: '0.01', unit: 'mm' },
    retiredOn: null,
  });
  await post(`/v1/instruments/${instrumentId}/calibrations`, {
    calibratedOn: '2026-02-02',
    dueOn: '2027-02-02',
    passed: true,
    certificate: null,
    note: null,
  });
  const sheets = await call('GET', '/v1/check-sheets?code=throttle-housing');
  const blank = { phase: 'asFound', position: null, place: null, conditions: {}, note: null };
  const reading = (index: number): object => ({
    ...blank,
    checkId: 'shaft-radial-play-lower',
    result: { kind: 'number', shown: `0.1${String(index % 10)}`, unit: 'mm' },
    instrumentId,
    takenAt: new Date(Date.parse(startedAt) + 60_000 + index * 1000).toISOString(),
  });
  return {
    post,
    reading,
    vehicle: async () =>
      (
        await post('/v1/vehicles', {
          chassisNumber: null,
          plate: null,
          label: 'Van 14',
          firstUsedOn: '1991-04-02',
          application: null,
          attributes: {},
          expectedKmPerYear: '22000',
          observedSpans: [],
          retiredOn: null,
          customerId,
          ownedFrom: '2020-01-01T00:00:00Z',
        })
      ).id,
    inspection: async (vehicleId) => {
      const checkSheetId = sheets.items[0]?.id;
      const { id } = await post('/v1/inspections', {
        vehicleId,
        jobId: null,
        checkSheetId,
        startedAt,
        technicianId: null,
      });
      const passed = (checkId: string) => ({
        ...blank,
        checkId,
        result: { kind: 'yesNo', answer: true },
        instrumentId: null,
        takenAt: startedAt,
      });
      const readings = [passed('linkage-return'), passed('linkage-free-play')];
      await post(`/v1/inspections/${id}/reading-sets`, { readings });
      return id;
    },
  };
}

/** Counts the tables as the server does by itself within minutes; a database that is seconds old plans blindly. */
export async function refreshStatistics(superuserUrl: string): Promise<void> {
  const session = new pg.Client({ connectionString: superuserUrl });
  await session.connect();
  await session.query('ANALYZE');
  await session.end();
}

/** What the product wrote beside the columns for the reading of an inspection. */
export async function storedDocuments(superuserUrl: string, inspectionId: string): Promise<StoredDocuments> {
  const session = new pg.Client({ connectionString: superuserUrl });
  await session.connect();
  const [readings, verdicts] = [
    await session.query<{ document: object }>(
      `SELECT r.document FROM reading i JOIN reading_revision r USING (shop_id, id)
       WHERE i.inspection_id = $1 AND r.check_id = 'shaft-radial-play-lower' LIMIT 1`,
      [inspectionId],
    ),
    await session.query<StoredDocuments['verdicts'][number]>(
      `SELECT v.check_id AS "checkId", v.phase, v.limit_id AS "limitId", r.outcome,
              r.probability_inside AS probability, r.document
       FROM verdict v JOIN verdict_revision r USING (shop_id, id)
       WHERE v.inspection_id = $1 AND v.check_id = 'shaft-radial-play-lower' AND r.replaced_at IS NULL`,
      [inspectionId],
    ),
  ];
  await session.end();
  const [reading] = readings.rows;
  if (reading === undefined || verdicts.rows.length === 0) throw new Error('no reading was judged');
  return { reading: reading.document, verdicts: verdicts.rows };
}
