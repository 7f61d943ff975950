/**
 * Requests a second of the product beside a bare peer with the same promises, in one run on one database, as ratios. Both
 * run in processes of their own and are asked by this one, on one machine, over loopback. Every leg is bounded.
 *
 *   npm run bench
 */
import { cpus, totalmem } from 'node:os';
import { createDatabase, startScratchServer } from '@endfloat/persistence';
import { furnishBenchShop, openBenchShop, refreshStatistics, storedDocuments } from './bench-shop.js';
import { measure, type Call, type Measured } from './measure.js';
import { previewBody } from './preview-body.js';
import { serve } from './served.js';

const connections = 8;
const bounds = { seconds: 4, requests: 20_000, connections };
const warmUp = { seconds: 1, requests: 500, connections };
/** Sets are large: one after the other. */
const setBounds = { seconds: 4, requests: 12, connections: 1 };
const many = 1000;
const inspectionsEach = 40;

type Side = 'product' | 'peer';

const server = await startScratchServer({ migrations: 'prisma/migrations' });
const name = `${server.prefix}bench`;
await createDatabase({ adminUrl: server.adminUrl, name, template: server.template });
const inDatabase = (url: string): string => Object.assign(new URL(url), { pathname: `/${name}` }).href;
const databaseUrl = inDatabase(server.apiUrl);
const authorization = await openBenchShop(databaseUrl);
const product = await serve('product', { databaseUrl });

const shop = await furnishBenchShop(product.address, authorization);
const vehicleId = await shop.vehicle();
const listed = await shop.inspection(vehicleId);
await shop.post(`/v1/inspections/${listed}/reading-sets`, {
  readings: Array.from({ length: 200 }, (_, index) => shop.reading(index)),
});
const documents = await storedDocuments(inDatabase(server.adminUrl), listed);
const peer = await serve('peer', { databaseUrl, documents });
const targets = {
  product: { address: product.address, authorization },
  peer: { address: peer.address, authorization },
};

const inspections = async (count: number): Promise<string[]> => {
  const made: string[] = [];
  for (let index = 0; index < count; index += 1) made.push(await shop.inspection(await shop.vehicle()));
  return made;
};
const post = (path: string, body: object): Call => ({ method: 'POST', path, body: JSON.stringify(body) });
const rows: string[] = [];
const figure = (value: number): string => (value >= 100 ? value.toFixed(0) : value.toFixed(1));
const line = (what: string, ours: Measured, bare: Measured, of = 'requests'): void => {
  const factor = of === 'readings' ? many : 1;
  const cells = [
    what,
    `${figure(ours.perSecond * factor)} ${of}/s`,
    `${figure(bare.perSecond * factor)} ${of}/s`,
    `${((100 * ours.perSecond) / bare.perSecond).toFixed(0)} %`,
    `${figure(ours.median)} / ${figure(ours.p95)} ms`,
    `${figure(bare.median)} / ${figure(bare.p95)} ms`,
  ];
  rows.push(`| ${cells.join(' | ')} |`);
};
/** Both sides warm, then each measured in turn. */
const compare = async (what: string, callOf: (side: Side) => (index: number) => Call): Promise<void> => {
  for (const side of ['product', 'peer'] as const) await measure(targets[side], callOf(side), warmUp);
  await refreshStatistics(inDatabase(server.adminUrl));
  line(
    what,
    await measure(targets.product, callOf('product'), bounds),
    await measure(targets.peer, callOf('peer'), bounds),
  );
};

try {
  await compare('show a vehicle', () => () => ({ method: 'GET', path: `/v1/vehicles/${vehicleId}` }));
  await compare('list 50 readings of a vehicle', () => () => ({
    method: 'GET',
    path: `/v1/readings?vehicleId=${vehicleId}&pageSize=50`,
  }));

  // Every verdict looks at all readings of its inspection, so the readings are spread over many.
  const ofSide = { product: await inspections(inspectionsEach), peer: await inspections(inspectionsEach) };
  await compare('store one reading with its verdicts', (side) => (index) => {
    const id = ofSide[side][index % inspectionsEach] ?? '';
    return post(`/v1/inspections/${id}/readings`, shop.reading(Math.floor(index / inspectionsEach)));
  });

  const setsOf = { product: await inspections(14), peer: await inspections(14) };
  const readings = Array.from({ length: many }, (_, index) => shop.reading(index));
  const set = (side: Side, from: number) => (index: number) =>
    post(`/v1/inspections/${setsOf[side][from + index] ?? ''}/reading-sets`, { readings });
  for (const side of ['product', 'peer'] as const)
    await measure(targets[side], set(side, 12), { ...setBounds, requests: 2 });
  await refreshStatistics(inDatabase(server.adminUrl));
  line(
    `store ${String(many)} readings a request`,
    await measure(targets.product, set('product', 0), setBounds),
    await measure(targets.peer, set('peer', 0), setBounds),
    'readings',
  );

  const preview = () => post('/v1/assessments/previews', previewBody);
  const nothing = (): Call => ({ method: 'GET', path: '/v1/nothing' });
  await measure(targets.product, preview, warmUp);
  line(
    'preview an assessment (peer: a route that does nothing)',
    await measure(targets.product, preview, bounds),
    await measure(targets.peer, nothing, bounds),
  );
  const short = () => post('/v1/assessments/previews', { ...previewBody, omitFlipPoints: true });
  await measure(targets.product, short, warmUp);
  line(
    'the same without flip points',
    await measure(targets.product, short, bounds),
    await measure(targets.peer, nothing, bounds),
  );
  const megabytes = async (side: { memory(): Promise<number> }) =>
    `${((await side.memory()) / 1e6).toFixed(0)} MB`;
  rows.push(`| memory held after all this | ${await megabytes(product)} | ${await megabytes(peer)} | | | |`);
} finally {
  await peer.stop();
  await product.stop();
  await server.stop();
}

const [cpu] = cpus();
process.stdout.write(
  [
    `${String(cpus().length)} x ${cpu?.model ?? 'unknown processor'}, ${(totalmem() / 1e9).toFixed(0)} GB, Node ${process.versions.node}; `,
    `${String(connections)} connections (sets: 1), at most ${String(bounds.seconds)} s a leg; client, servers and database on one machine; `,
    'commits do not wait for the disk on either side; table statistics are fresh.\n\n',
    '| | Endfloat | bare peer | ratio | median / p95 Endfloat | median / p95 peer |\n|---|---|---|---|---|---|\n',
    `${rows.join('\n')}\n`,
  ].join(''),
);
