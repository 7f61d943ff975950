import { spawn, type ChildProcess } from 'node:child_process';
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));

interface Started {
  readonly process: ChildProcess;
  readonly output: () => string;
  /** address of the API once it answers */
  readonly address: Promise<string>;
  readonly ended: Promise<number | null>;
}

/** The program a user starts, on a free port. */
function start(
  data: string,
  settings: Readonly<Record<string, string>> = {},
  command: readonly string[] = [],
): Started {
  const child = spawn(
    process.execPath,
    [
      '--no-warnings',
      '--conditions=@endfloat/source',
      '--import',
      './.config/typescript-register.mjs',
      'apps/standalone/src/main.ts',
      ...command,
    ],
    {
      cwd: root,
      stdio: ['ignore', 'pipe', 'pipe'],
      env: {
        PATH: process.env['PATH'],
        HOME: process.env['HOME'],
        ENDFLOAT_DATA: data,
        ENDFLOAT_PORT: '0',
        ENDFLOAT_DEMO: 'off',
        ...settings,
      },
    },
  );
  let text = '';
  let found: (address: string) => void = () => undefined;
  let lost: (error: Error) => void = () => undefined;
  const address = new Promise<string>((resolve, reject) => {
    found = resolve;
    lost = reject;
  });
  const read = (chunk: Buffer): void => {
    text += chunk.toString();
    const match = /API\s+(http:\S+)\/v1/.exec(text);
    if (match?.[1] !== undefined) found(match[1]);
  };
  child.stdout.on('data', read);
  child.stderr.on('data', read);
  const ended = new Promise<number | null>((resolve) =>
    child.once('close', (code) => {
      lost(new Error(`the process ended with ${String(code)}: ${text}`));
      resolve(code);
    }),
  );
  address.catch(() => undefined);
  return { process: child, output: () => text, address, ended };
}

const readiness = async (address: string): Promise<number> => (await fetch(`${address}/readyz`)).status;

describe('starting Endfloat', () => {
  let data: string;
  const running: Started[] = [];
  const started = (...args: Parameters<typeof start>): Started => {
    const one = start(...args);
    running.push(one);
    return one;
  };

  beforeAll(() => {
    data = mkdtempSync(join(tmpdir(), 'endfloat-start-'));
    chmodSync(data, 0o755);
  });
  afterAll(async () => {
    for (const { process: child, ended } of running) {
      if (child.exitCode === null && child.signalCode === null) child.kill('SIGTERM');
      await ended;
    }
    rmSync(data, { recursive: true, force: true });
  });

  it('is ready on an empty folder, ends in order with code 0, and keeps its data for the next start', async () => {
    const shop = started(data, {}, ['open-shop', 'Trial Works', 'Odile Marrow', 'EUR', 'Europe/Lisbon']);
    expect(await shop.ended).toBe(0);
    const key = /once: (\S+)/.exec(shop.output())?.[1] ?? '';
    const first = started(data);
    const address = await first.address;
    expect(await readiness(address)).toBe(200);
    const settings = await fetch(`${address}/v1/settings`, { headers: { authorization: `Bearer ${key}` } });
    expect(await settings.json()).toMatchObject({ name: 'Trial Works', currency: 'EUR' });
    const reference = await fetch(`${address}/docs`);
    expect([
      reference.status,
      /https?:\/\/(?!127\.0\.0\.1)/.test((await reference.text()).replaceAll('http://www.w3.org', '')),
    ]).toEqual([200, false]);
    first.process.kill('SIGTERM');
    expect(await first.ended).toBe(0);
  });

  it('takes over the database after kill -9, and refuses a second start beside a running one', async () => {
    const killed = started(data);
    await killed.address;
    killed.process.kill('SIGKILL');
    await killed.ended;
    const next = started(data);
    expect(await readiness(await next.address)).toBe(200);
    expect(next.output()).toContain('taken over');
    const second = started(data);
    expect(await second.ended).toBe(1);
    expect(second.output()).toMatch(/already/i);
    expect(await readiness(await next.address)).toBe(200);
    next.process.kill('SIGTERM');
    expect(await next.ended).toBe(0);
  });

  it('says what to do when the port is taken, and stops its database again', async () => {
    const holder = createServer();
    const port = await new Promise<number>((resolve) =>
      holder.listen(0, '127.0.0.1', () => resolve((holder.address() as { port: number }).port)),
    );
    const refused = started(data, { ENDFLOAT_PORT: String(port) });
    expect(await refused.ended).toBe(1);
    expect(refused.output()).toContain(`Port ${String(port)} on 127.0.0.1 is taken by another program.`);
    await new Promise((resolve) => holder.close(resolve));
    const after = started(data);
    await after.address;
    expect(after.output()).not.toContain('taken over');
    after.process.kill('SIGTERM');
    await after.ended;
  });

  it('O3: tells metrics where a port is set for them, and leaves that port when it ends', async () => {
    const one = started(data, { ENDFLOAT_METRICS_PORT: '0' });
    const address = await one.address;
    await readiness(address);
    const metrics = /Metrics\s+(http:\S+)/.exec(one.output())?.[1] ?? '';
    const text = await (await fetch(metrics)).text();
    expect(text).toMatch(/http_server_request_duration_seconds_count\{.*http_route="\/readyz".*\} 1/);
    expect(text).toContain('db_client_connection_count{db_client_connection_state="idle"}');
    expect((await fetch(`${address}/metrics`)).status).toBe(404);
    one.process.kill('SIGTERM');
    expect(await one.ended).toBe(0);
  });

  it('names every setting it cannot use at once', async () => {
    const wrong = started(data, {
      ENDFLOAT_PORT: 'x',
      ENDFLOAT_LOG: 'loud',
      ENDFLOAT_TOKEN_ISSUERS: '/nowhere',
    });
    expect(await wrong.ended).toBe(1);
    for (const name of ['ENDFLOAT_PORT', 'ENDFLOAT_LOG', 'ENDFLOAT_TOKEN_ISSUERS'])
      expect(wrong.output()).toContain(`${name} is "`);
  });

  it('refuses settings it does not know or cannot use, in one sentence', async () => {
    const misspelt = started(data, { ENDFLOAT_PROT: '1' });
    expect(await misspelt.ended).toBe(1);
    expect(misspelt.output()).toContain('ENDFLOAT_PROT: no such setting.');
    const wrong = started(data, { ENDFLOAT_PORT: '70000' });
    expect(await wrong.ended).toBe(1);
    expect(wrong.output()).toContain('ENDFLOAT_PORT is "70000": give a whole number from 0 to 65535.');
  });
});
