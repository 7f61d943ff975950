import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** A server in a process of its own. */
export interface Served {
  readonly address: string;
  /** bytes the process holds in memory */
  memory(): Promise<number>;
  stop(): Promise<void>;
}

/** Starts one of the two servers and waits until it listens. */
export async function serve(name: 'product' | 'peer', settings: object): Promise<Served> {
  const child = fork(fileURLToPath(new URL(`./serve-${name}.ts`, import.meta.url)), [], {
    env: { ...process.env, BENCH_SETTINGS: JSON.stringify(settings) },
  });
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  const told = (): Promise<unknown> =>
    new Promise((resolve, reject) => {
      child.once('message', resolve);
      void ended.then(() => reject(new Error(`the ${name} ended`)));
    });
  const address = (await told()) as string;
  return {
    address,
    memory: async () => {
      const answer = told();
      child.send('memory');
      return (await answer) as number;
    },
    stop: async () => {
      child.kill('SIGTERM');
      await ended;
    },
  };
}

/** The other end: tells the address, answers questions about memory, ends on a signal. */
export function tellParent(address: string, stop: () => Promise<unknown>): void {
  process.on('message', () => process.send?.(process.memoryUsage.rss()));
  process.once('SIGTERM', () => void stop().then(() => process.exit(0)));
  process.once('disconnect', () => process.exit(0));
  process.send?.(address);
}
