import { mkdir, writeFile } from 'node:fs/promises';
import { AppModule } from './app.module.js';
import { createApi } from './create-api.js';
import { usualApiSettings } from './http/settings.js';
import { openPorts } from './ports.module.js';

/** Where the committed copy of the document stands. */
const target = new URL('../../../libs/contracts/openapi/openapi.json', import.meta.url);

/** Text of the document; the ports are bound as ever, but nothing is asked of the database. */
async function documentText(): Promise<string> {
  const ports = openPorts({ url: 'postgresql://nobody@127.0.0.1:1/none', size: 1, waitMs: 1 });
  const settings = {
    ...usualApiSettings,
    cursorKey: 'signs nothing here',
    drainTime: 0,
    logLevel: 'silent' as const,
  };
  const app = await createApi({ settings, module: AppModule.register(ports.providers) });
  const { payload } = await app.inject({ method: 'GET', url: '/openapi.json' });
  await app.close();
  await ports.close();
  return `${JSON.stringify(JSON.parse(payload), null, 2)}\n`;
}

await mkdir(new URL('.', target), { recursive: true });
await writeFile(target, await documentText());
