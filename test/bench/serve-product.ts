import { AppModule, createApi, openPorts, usualApiSettings } from '@endfloat/api';
import { tellParent } from './served.js';

const { databaseUrl } = JSON.parse(process.env['BENCH_SETTINGS'] ?? '{}') as { databaseUrl: string };
const limit = { requests: 100_000_000, seconds: 60 };
const ports = openPorts({ url: databaseUrl, size: 10, waitMs: 2000 });
const app = await createApi({
  settings: {
    ...usualApiSettings,
    cursorKey: 'a key for cursors that only the benchmark knows',
    logLevel: 'warn',
    drainTime: 0,
    rateLimits: { perAddress: limit, perCaller: limit, wrongCredentials: limit },
  },
  module: AppModule.register(ports.providers),
});
await app.listen(0, '127.0.0.1');
tellParent(await app.getUrl(), () => app.close().then(() => ports.close()));
