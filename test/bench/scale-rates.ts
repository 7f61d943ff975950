/**
 * Comeback rates over a million released jobs: the route beside the bare SQL aggregate that answers the same question, in
 * one run, by each dimension. The jobs are made by SQL from a fixed seed, in the table that jobs are settled into.
 *
 *   node --no-warnings --conditions=@endfloat/source --import ./.config/typescript-register.mjs test/bench/scale-rates.ts [jobs]
 */
import { cpus, totalmem } from 'node:os';
import pg from 'pg';
import { createDatabase, startScratchServer } from '@endfloat/persistence';
import { openBenchShop } from './bench-shop.js';
import { send } from './measure.js';
import { serve } from './served.js';

const jobs = Number(process.argv[2] ?? 1_000_000);
const rounds = 7;
/** Shares of what a hash of the number of a job gives, so that every run makes the same jobs. */
const draw = (salt: string): string =>
  `(('x' || substr(md5('${salt}' || n), 1, 7))::bit(28)::int / 268435456.0)`;
const pick = (salt: string, ...values: string[]): string =>
  `(ARRAY['${values.join("','")}'])[1 + floor(${draw(salt)} * ${String(values.length)})::int]`;

const loadSql = `
INSERT INTO settled_job (shop_id, job_id, method_version, vehicle_id, customer_id, released_at, closes_at, closed_by, is_repeat,
  comeback_at, any_comeback_at, first_seen_at, seen_after_closing_at, last_seen_at, diagnosed_by, age_years, mix, fitted_by,
  symptoms, symptom_families, actions, components, part_conditions, suppliers, counts_against, unattributed, comebacks, cost,
  cost_gaps, repeats)
SELECT $1::uuid, md5('job' || n)::uuid, 1, md5('van' || n / 30)::uuid, md5('customer' || n / 600)::uuid, released,
  released + interval '90 days', 'days', ${draw('repeat')} < 0.01, back, back, seen, seen, seen,
  md5('person' || floor(${draw('diagnosed')} * 12))::uuid, floor(8 + ${draw('age')} * 30)::int,
  family || '/' || component, ARRAY[md5('person' || floor(${draw('fitted')} * 12))::uuid],
  CASE WHEN ${draw('two')} < 0.4 THEN ARRAY[symptom, 'stalls-cold'] ELSE ARRAY[symptom] END, ARRAY[family],
  ARRAY[${pick('action', 'clean', 'replace', 'reBush', 'adjustSwitch')}], ARRAY[component],
  ARRAY[${pick('condition', 'new', 'used', 'remanufactured')}], ARRAY[${pick('supplier', 'Ambry Parts', 'Tollgate Supply', 'Fenn and Daughter', 'Harl Castings')}],
  CASE WHEN back IS NULL THEN '{}'::text[] ELSE ARRAY[${pick('against', 'diagnosis', 'fitting', 'supplier')}] END, false,
  CASE WHEN back IS NULL THEN 0 ELSE 1 END, CASE WHEN back IS NULL THEN 0 ELSE 330.00 END, 0, '[]'
FROM (
  SELECT n, released, ${pick('component', 'throttle-housing', 'idle-switch', 'pedal-cable', 'plenum-hose')} AS component,
    ${pick('family', 'idle-speed', 'stalling', 'light-throttle', 'overrun')} AS family,
    ${pick('symptom', 'idle-rises-with-ac', 'idle-hunts', 'bucks-at-light-throttle')} AS symptom,
    CASE WHEN ${draw('back')} < 0.06 THEN released + ${draw('when')} * interval '89 days' END AS back,
    CASE WHEN ${draw('seen')} < 0.9 THEN released + (20 + 200 * ${draw('later')}) * interval '1 day' END AS seen
  FROM (SELECT n, timestamptz '2020-01-01Z' + n * interval '3 minutes' AS released FROM generate_series(1, $2::int) AS n) AS numbered
) AS drawn`;

/** The bare aggregates: written for one dimension each, counting what the route answers. */
const figures = `
  count(*) FILTER (WHERE closes_at <= $2 AND (comeback_at <= $2 OR first_seen_at <= $2) AND comeback_at <= $2) AS events,
  count(*) FILTER (WHERE closes_at <= $2 AND (comeback_at <= $2 OR first_seen_at <= $2)) AS at_risk,
  count(*) FILTER (WHERE closes_at > $2) AS pending,
  count(*) FILTER (WHERE closes_at > $2 AND comeback_at <= $2) AS pending_comebacks,
  count(*) FILTER (WHERE closes_at <= $2 AND comeback_at IS NULL AND first_seen_at IS NULL) AS not_seen_since,
  count(*) FILTER (WHERE closes_at <= $2 AND first_seen_at <= $2 AND comeback_at IS NULL AND seen_after_closing_at IS NULL) AS seen_inside,
  sum(comebacks) FILTER (WHERE comeback_at <= $2) AS comebacks, sum(cost) FILTER (WHERE comeback_at <= $2) AS cost,
  sum(cost_gaps) FILTER (WHERE comeback_at <= $2) AS cost_gaps`;
const where = 'WHERE shop_id = $1 AND released_at <= $2 AND NOT is_repeat GROUP BY 1 ORDER BY 1';
const listed = (column: string): string =>
  `SELECT value, ${figures} FROM settled_job LEFT JOIN LATERAL unnest(${column}) AS value ON true ${where}`;
const single = (expression: string): string =>
  `SELECT ${expression} AS value, ${figures} FROM settled_job ${where}`;
const bare: Readonly<Record<string, string>> = {
  symptom: listed('symptoms'),
  action: listed('actions'),
  partCondition: listed('part_conditions'),
  supplier: listed('suppliers'),
  component: listed('components'),
  fittedBy: listed('fitted_by'),
  diagnosedBy: single('diagnosed_by'),
  customer: single('customer_id'),
  vehicleAge: single('age_years / 5 * 5'),
  month: single(`to_char(released_at AT TIME ZONE 'Europe/Lisbon', 'YYYY-MM')`),
};

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;
async function timed(work: () => Promise<unknown>): Promise<number> {
  const from = performance.now();
  await work();
  return performance.now() - from;
}

const server = await startScratchServer({ migrations: 'prisma/migrations' });
const name = `${server.prefix}rates`;
await createDatabase({ adminUrl: server.adminUrl, name, template: server.template });
const inDatabase = (url: string): string => Object.assign(new URL(url), { pathname: `/${name}` }).href;
const authorization = await openBenchShop(inDatabase(server.apiUrl));
const admin = new pg.Client({ connectionString: inDatabase(server.adminUrl) });
await admin.connect();
const { rows } = await admin.query<{ id: string }>('SELECT id FROM shop');
const shopId = rows[0]?.id ?? '';
const loaded = await timed(() => admin.query(loadSql, [shopId, jobs]));
await admin.query('VACUUM ANALYZE settled_job');
const product = await serve('product', { databaseUrl: inDatabase(server.apiUrl) });
const peer = new pg.Client({ connectionString: inDatabase(server.apiUrl) });
await peer.connect();

const lines: string[] = [];
try {
  for (const [by, text] of Object.entries(bare)) {
    const at = new Date().toISOString();
    const against = by === 'diagnosedBy' || by === 'fittedBy' ? '&against=anybody' : '';
    const path = `/v1/comeback-rates?by=${by}&at=${at}${against}`;
    const ask = async (): Promise<void> => {
      const { status, text: body } = await send(
        { address: product.address, authorization },
        { method: 'GET', path },
      );
      if (status !== 200) throw new Error(`${path}: ${String(status)} ${body}`);
    };
    const aggregate = async (): Promise<void> => {
      await peer.query(`BEGIN READ ONLY; SELECT set_config('app.shop', '${shopId}', true)`);
      await peer.query(text, [shopId, at]);
      await peer.query('COMMIT');
    };
    await ask();
    await aggregate();
    const [ours, theirs]: [number[], number[]] = [[], []];
    for (let round = 0; round < rounds; round += 1) {
      ours.push(await timed(ask));
      theirs.push(await timed(aggregate));
    }
    const [a, b] = [median(ours), median(theirs)];
    lines.push(`| ${by} | ${a.toFixed(0)} ms | ${b.toFixed(0)} ms | ${(a / b).toFixed(2)} |`);
  }
} finally {
  await peer.end();
  await admin.end();
  await product.stop();
  await server.stop();
}

const [cpu] = cpus();
process.stdout.write(
  [
    `${String(jobs)} released jobs, made in ${(loaded / 1000).toFixed(0)} s; ${String(cpus().length)} x ${cpu?.model ?? 'unknown processor'}, `,
    `${(totalmem() / 1e9).toFixed(0)} GB, Node ${process.versions.node}; median of ${String(rounds)}, both sides in turn on one machine.\n\n`,
    '| comeback rates by | route over HTTP | bare SQL aggregate | ratio |\n|---|---|---|---|\n',
    `${lines.join('\n')}\n`,
  ].join(''),
);
