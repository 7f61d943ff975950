/**
 * What a fleet manager and a desk ask of a large shop: due list and outlooks of a thousand vans, then one van's readings,
 * history and assessment, first beside a thousand vans and then beside many times as many, in one run. The vans are
 * invented from a fixed seed; the many are copies of the thousand under other ids, made by SQL.
 *
 *   npm run bench:fleet -- [readings in the end]
 */
import { cpus, totalmem } from 'node:os';
import pg from 'pg';
import { openPorts } from '@endfloat/api';
import { createDatabase, startScratchServer } from '@endfloat/persistence';
import { openBenchShop } from './bench-shop.js';
import { makeVans, readingsEach, vansMade } from './many-vans.js';
import { measure, send, type Call, type Measured } from './measure.js';
import { serve } from './served.js';

const wanted = Number(process.argv[2] ?? 1_000_000);
const copies = Math.max(1, Math.round(wanted / (vansMade * readingsEach)) - 1);
/** Tables of a van's history, parents first; ids within a copy follow from the ids copied. */
const tables = [
  'vehicle',
  'vehicle_revision',
  'fitted_part',
  'fitted_part_revision',
  'odometer_entry',
  'odometer_entry_revision',
  'inspection',
  'inspection_revision',
  'reading',
  'reading_revision',
];
const ownIds = new Set(['id', 'vehicle_id', 'inspection_id', 'fitted_part_id']);

const server = await startScratchServer({ migrations: 'prisma/migrations' });
const name = `${server.prefix}fleet`;
await createDatabase({ adminUrl: server.adminUrl, name, template: server.template });
const inDatabase = (url: string): string => Object.assign(new URL(url), { pathname: `/${name}` }).href;
const databaseUrl = inDatabase(server.apiUrl);
const authorization = await openBenchShop(databaseUrl);
const admin = new pg.Client({ connectionString: inDatabase(server.adminUrl) });
await admin.connect();
const ports = openPorts({ url: databaseUrl, size: 2, waitMs: 2000 });
const made = await makeVans(ports, admin);
await ports.close();
const product = await serve('product', { databaseUrl });
const target = { address: product.address, authorization };

async function replicate(): Promise<void> {
  for (const table of tables) {
    const { rows } = await admin.query<{ name: string }>(
      `SELECT attname AS name FROM pg_attribute WHERE attrelid = $1::regclass AND attnum > 0 AND NOT attisdropped ORDER BY attnum`,
      [table],
    );
    const columns = rows.map(({ name: column }) => `"${column}"`);
    const values = rows.map(({ name: column }) =>
      ownIds.has(column) ? `md5("${column}"::text || k)::uuid` : `"${column}"`,
    );
    await admin.query(
      `INSERT INTO ${table} (${columns.join(', ')}) SELECT ${values.join(', ')}
       FROM (SELECT * FROM ${table}) AS made, generate_series(1, ${String(copies)}) AS k`,
    );
  }
  await admin.query('VACUUM ANALYZE');
}

const get = (path: string) => (): Call => ({ method: 'GET', path });
const van = (index: number): string => made.vehicleIds[index % vansMade] ?? '';
const alone = { seconds: 20, requests: 200, connections: 1 };
const warm = { ...alone, requests: 12 };
const timed = async (callOf: (index: number) => Call): Promise<Measured> => {
  await measure(target, callOf, warm);
  return measure(target, callOf, alone);
};
const ofVan: Readonly<Record<string, (index: number) => Call>> = {
  'readings of one van': (index) => ({
    method: 'GET',
    path: `/v1/readings?vehicleId=${van(index)}&pageSize=50`,
  }),
  'file of one van': (index) => ({ method: 'GET', path: `/v1/vehicles/${van(index)}/history` }),
  'assess one van and store it': (index) => ({
    method: 'POST',
    path: '/v1/assessments',
    body: JSON.stringify({
      vehicleId: van(index),
      jobId: null,
      componentType: 'throttle-housing',
      position: 'intake',
    }),
  }),
};
const ofFleet: Readonly<Record<string, string>> = {
  'due services, first page of 50': '/v1/due-services?pageSize=50',
  'due services, first page of 200': '/v1/due-services?pageSize=200',
  'vans by what is coming': '/v1/vehicle-outlooks?pageSize=50',
  'vans that reach a limit within 12,000 km':
    '/v1/wear-outlooks?componentType=throttle-housing&characteristic=shaft-radial-play-lower&withinKm=12000&pageSize=50',
};

const figure = (value: number): string => (value >= 100 ? value.toFixed(0) : value.toFixed(1));
const fleet: string[] = [];
const vans: string[] = [];
try {
  for (const [what, path] of Object.entries(ofFleet)) {
    const { median, p95 } = await timed(get(path));
    fleet.push(`| ${what} | ${figure(median)} ms | ${figure(p95)} ms |`);
  }
  const small = new Map<string, Measured>();
  for (const [what, callOf] of Object.entries(ofVan)) small.set(what, await timed(callOf));
  await replicate();
  const nothing = await timed(get('/livez'));
  for (const [what, callOf] of Object.entries(ofVan)) {
    const [few, many] = [small.get(what), await timed(callOf)];
    if (few === undefined) throw new Error(`${what} was not measured before`);
    const cells = [few.median, few.p99, many.median, many.p99].map((each) => `${figure(each)} ms`);
    const ratio = (many.p99 / few.p99).toFixed(2);
    vans.push(`| ${[what, ...cells, ratio, (many.median / nothing.median).toFixed(0)].join(' | ')} |`);
  }
  const check = await send(target, { method: 'GET', path: '/v1/vehicles?pageSize=1' });
  if (check.status !== 200) throw new Error(check.text);
} finally {
  await admin.end();
  await product.stop();
  await server.stop();
}

const [cpu] = cpus();
const readings = vansMade * readingsEach;
process.stdout.write(
  [
    `${String(cpus().length)} x ${cpu?.model ?? 'unknown processor'}, ${(totalmem() / 1e9).toFixed(0)} GB, Node ${process.versions.node}; one request at a time, client, server and database on one machine.\n\n`,
    `| asked of ${String(vansMade)} vans | median | p95 |\n|---|---|---|\n${fleet.join('\n')}\n\n`,
    `| asked of one van | median and p99 beside ${String(readings)} readings | | beside ${String(readings * (copies + 1))} | | ratio of p99 | times a request that does nothing |\n|---|---|---|---|---|---|---|\n`,
    `${vans.join('\n')}\n`,
  ].join(''),
);
