/**
 * A scratch server in a process of its own: says where it is in one line of JSON, and ends with its standard input.
 * That is when whoever started it lets go, and also when that one is killed. A signal ends it too.
 *
 *   serve-scratch <folder of migrations>      with DATABASE_URL: on that server
 */
import { once } from 'node:events';
import { startScratchServer } from './scratch-server.js';

const ended = Promise.race([
  once(process.stdin.resume(), 'end'),
  once(process, 'SIGTERM'),
  once(process, 'SIGINT'),
]);
// Whoever was to read the line may be gone before it is written; cleaning up goes on all the same.
process.stdout.on('error', () => undefined);
const databaseUrl = process.env['DATABASE_URL'] || undefined;
const server = await startScratchServer({ migrations: process.argv[2]!, databaseUrl });
process.stdout.write(`${JSON.stringify(server)}\n`);
await ended;
process.stdin.destroy();
await server.stop();
