import { openPeer, type StoredDocuments } from './peer.js';
import { tellParent } from './served.js';

const { databaseUrl, documents } = JSON.parse(process.env['BENCH_SETTINGS'] ?? '{}') as {
  databaseUrl: string;
  documents: StoredDocuments;
};
const app = openPeer(databaseUrl, documents);
tellParent(await app.listen({ port: 0, host: '127.0.0.1' }), () => app.close());
