// Prisma's client generator asks for an engine binary it does not use; any executable satisfies it.
import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const schema = `${root}prisma/schema.prisma`;
const client = `${root}libs/persistence/src/generated/client.ts`;
const noEngine = `${root}.config/no-engine.sh`;

if (existsSync(client) && statSync(client).mtimeMs > statSync(schema).mtimeMs) process.exit(0);
chmodSync(noEngine, 0o755);
const { status } = spawnSync(
  process.execPath,
  [`${root}node_modules/prisma/build/index.js`, 'generate', '--config', '.config/prisma.ts'],
  {
    cwd: root,
    stdio: ['ignore', 'ignore', 'inherit'],
    env: {
      ...process.env,
      PRISMA_SCHEMA_ENGINE_BINARY: noEngine,
      CHECKPOINT_DISABLE: '1',
      PRISMA_HIDE_UPDATE_MESSAGE: '1',
    },
  },
);
process.exit(status ?? 1);
