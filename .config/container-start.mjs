// Starts a command in a container whose passwords come as files: each process gets the one role it needs.
//   node .config/container-start.mjs migrate | open-shop | api | worker
// DATABASE_ADDRESS is host, port and database; with DATABASE_URL given, the environment is used as it is.
import { readFileSync } from 'node:fs';

const secret = (name) => readFileSync(`/run/secrets/${name}`, 'utf8').trim();
const secretOfCommand = { migrate: 'owner', 'open-shop': 'owner', api: 'api', worker: 'worker' };

const role = secretOfCommand[process.argv[2]];
if (role !== undefined && process.env.DATABASE_URL === undefined) {
  const address = process.env.DATABASE_ADDRESS ?? 'database:5432/endfloat';
  const url = `postgresql://endfloat_${role}:${encodeURIComponent(secret(role))}@${address}`;
  // One role for all three: a process uses only its own, and no other password is within its reach.
  for (const name of ['DATABASE_URL', 'ENDFLOAT_API_DATABASE_URL', 'ENDFLOAT_WORKER_DATABASE_URL'])
    process.env[name] = url;
  process.env.ENDFLOAT_SECRET ??= secret('service');
}
await import('../apps/standalone/dist/main.js');
