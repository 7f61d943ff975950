import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const program = [
  '--no-warnings',
  '--conditions=@endfloat/source',
  '--import',
  './.config/typescript-register.mjs',
  'apps/standalone/src/main.ts',
];

/** The program a user starts, in a process that can be killed. */
export interface KillableServer {
  readonly address: string;
  readonly output: () => string;
  /** Kills the process at once, so that nothing of it runs on; its database server stays. */
  kill(): Promise<void>;
  /** Ends it in order, its database server too. */
  stop(): Promise<void>;
}

/** What the process is told about where its records lie: its settings. */
type Place = Readonly<Record<string, string>>;

/** Three roles on a database that runs by itself. */
export interface DatabaseRoles {
  readonly ownerUrl: string;
  readonly apiUrl: string;
  readonly workerUrl: string;
}

const inFolder = (data: string): Place => ({ ENDFLOAT_DATA: data });

const onDatabase = ({ ownerUrl, apiUrl, workerUrl }: DatabaseRoles): Place => ({
  DATABASE_URL: ownerUrl,
  ENDFLOAT_API_DATABASE_URL: apiUrl,
  ENDFLOAT_WORKER_DATABASE_URL: workerUrl,
  ENDFLOAT_SECRET: 'a secret of processes that only drills know',
});

function launch(place: Place, command: readonly string[]) {
  const child = spawn(process.execPath, [...program, ...command], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'pipe'],
    env: {
      PATH: process.env['PATH'],
      HOME: process.env['HOME'],
      ...place,
      ENDFLOAT_PORT: '0',
      ENDFLOAT_DEMO: 'off',
    },
  });
  let text = '';
  const ended = new Promise<number | null>((resolve) => child.once('close', resolve));
  const until = (pattern: RegExp): Promise<string> =>
    new Promise((resolve, reject) => {
      const read = (chunk: Buffer): void => {
        text += chunk.toString();
        const found = pattern.exec(text)?.[1];
        if (found !== undefined) resolve(found);
      };
      child.stdout.on('data', read);
      child.stderr.on('data', read);
      void ended.then((code) => reject(new Error(`the process ended with ${String(code)}: ${text}`)));
    });
  return { child, ended, until, output: () => text };
}

/** Everything in one process, its database server too. */
export function startServer(data: string): Promise<KillableServer> {
  return start(inFolder(data), [], /API\s+(http:\S+)\/v1/);
}

/** The API alone, on a database that others use as well; `settings` are those of the process. */
export function startApiOn(database: DatabaseRoles, settings: Place = {}): Promise<KillableServer> {
  return start({ ...onDatabase(database), ...settings }, ['api'], /API\s+(http:\S+)\/v1/);
}

async function start(place: Place, command: readonly string[], sign: RegExp): Promise<KillableServer> {
  const { child, ended, until, output } = launch(place, command);
  const address = await until(sign);
  return {
    address,
    output,
    kill: async () => {
      child.kill('SIGKILL');
      await ended;
    },
    stop: async () => {
      child.kill('SIGTERM');
      await ended;
    },
  };
}

/** Migrates and opens a shop; the key of its owner. */
export const openShop = (data: string): Promise<string> => openShopAt(inFolder(data));

/** The same on a database that runs by itself. */
export const openShopOn = (database: DatabaseRoles): Promise<string> => openShopAt(onDatabase(database));

async function openShopAt(place: Place): Promise<string> {
  const { until, ended } = launch(place, [
    'open-shop',
    'Drill Works',
    'Odile Marrow',
    'EUR',
    'Europe/Lisbon',
  ]);
  const key = await until(/once: (\S+)/);
  await ended;
  return key;
}

/** Where the database server of a data folder listens now, as the server itself wrote it down. */
export function databasePort(data: string): string {
  return (
    readFileSync(join(data, 'cluster', 'postmaster.pid'), 'utf8')
      .split('\n')[3]
      ?.trim() ?? ''
  );
}

export interface Answer {
  readonly status: number;
  // eslint-disable-next-line @typescript-eslint/no-explicit-any -- looked into freely
  readonly body: any;
}

/** A request on its way. */
export interface Sending {
  /** the whole answer; undefined when the connection broke before it */
  readonly answer: Promise<Answer | undefined>;
  /** the first byte of an answer has come, or the connection has broken */
  readonly answered: Promise<void>;
  /** Hands the first part of the body to the system; resolves when it has been taken. */
  sendPart(bytes: number): Promise<void>;
  /** Sends the rest of the body. */
  sendAll(): Promise<void>;
}

/** A request whose body is sent when and as far as told. */
export function beginPost(server: KillableServer, key: string, path: string, body: object): Sending {
  const bytes = Buffer.from(JSON.stringify(body));
  const outgoing = request(`${server.address}${path}`, {
    method: 'POST',
    agent: false,
    headers: {
      authorization: `Bearer ${key}`,
      'content-type': 'application/json',
      'content-length': bytes.length,
    },
  });
  let sent = 0;
  let tellAnswered: () => void = () => undefined;
  const answered = new Promise<void>((resolve) => (tellAnswered = resolve));
  const answer = new Promise<Answer | undefined>((resolve) => {
    const lost = (): void => {
      tellAnswered();
      resolve(undefined);
    };
    outgoing.on('error', lost).on('response', (incoming) => {
      tellAnswered();
      const chunks: Buffer[] = [];
      incoming
        .on('data', (chunk: Buffer) => chunks.push(chunk))
        .on('error', lost)
        .on('end', () =>
          resolve({
            status: incoming.statusCode ?? 0,
            body: JSON.parse(Buffer.concat(chunks).toString()) as unknown,
          }),
        );
    });
  });
  return {
    answer,
    answered,
    sendPart: (count) =>
      new Promise((resolve) => {
        outgoing.write(bytes.subarray(sent, sent + count), () => resolve());
        sent += count;
      }),
    sendAll: () =>
      new Promise((resolve) => {
        outgoing.end(bytes.subarray(sent), () => resolve());
      }),
  };
}

/** Sends a request to its end; undefined when the connection broke. */
export async function post(
  server: KillableServer,
  key: string,
  path: string,
  body: object,
): Promise<Answer | undefined> {
  const sending = beginPost(server, key, path, body);
  void sending.sendAll();
  return sending.answer;
}

export async function get(server: KillableServer, key: string, path: string): Promise<Answer> {
  const reply = await fetch(`${server.address}${path}`, { headers: { authorization: `Bearer ${key}` } });
  return { status: reply.status, body: await reply.json() };
}
