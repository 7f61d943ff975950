// Before the first integration or end-to-end test: starts the server of the run in a process of its own.
import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));

const loadTypeScript = [
  '--no-warnings',
  '--conditions=@endfloat/source',
  '--import',
  './.config/typescript-register.mjs',
];
const program = 'libs/persistence/src/embedded/serve-scratch.ts';

export default async function startDatabase() {
  // One server serves all projects of the run.
  if (process.env.ENDFLOAT_TEST_SERVER !== undefined) return;
  const child = spawn(process.execPath, [...loadTypeScript, program, 'prisma/migrations'], {
    cwd: root,
    stdio: ['pipe', 'pipe', 'inherit'],
    // Out of the terminal's process group: Ctrl-C ends the run, and with it the input that the server waits on.
    detached: true,
    env: { ...process.env, NODE_OPTIONS: '' },
  });
  const ended = new Promise((resolve) => child.once('close', resolve));
  const [answer] = await Promise.race([
    new Promise((resolve) => createInterface(child.stdout).once('line', (line) => resolve([line]))),
    ended.then((code) => Promise.reject(new Error(`The database of the tests did not start (${code}).`))),
  ]);
  process.env.ENDFLOAT_TEST_SERVER = answer;
  globalThis.endfloatTestServer = { child, ended };
}
