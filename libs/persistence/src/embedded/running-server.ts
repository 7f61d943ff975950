import { existsSync, readFileSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';

export interface RunningServer {
  readonly pid: number;
  readonly port: number;
}

export type StopMode = 'smart' | 'fast';

const signals = { smart: 'SIGTERM', fast: 'SIGINT' } as const;

/**
 * The server that runs on a cluster: the one its pid file names, if that process really is one.
 * After a reboot or in a container the number may by now belong to some other program.
 */
export function findRunningServer(cluster: string): RunningServer | undefined {
  const { pid, port, isListening } = readPidFile(cluster);
  return isListening && isServerOf(cluster, pid) ? { pid, port } : undefined;
}

/**
 * Whether the pid file names a process that exists and is no server of this cluster: some other program, or a killed
 * server that its parent has not collected. Either would stop a start, for ever in a container whose first process
 * collects nobody. Processes that a killed server left are found by the new one through their shared memory.
 */
export function isLeftOver(cluster: string): boolean {
  const { pid } = readPidFile(cluster);
  return pid > 0 && exists(pid) && !isServerOf(cluster, pid);
}

/**
 * Ends a server and waits until its process is gone. Smart lets sessions finish first; those that last longer than
 * `patienceMs` are ended, as they are at once with fast.
 */
export async function stopServer(
  cluster: string,
  { pid }: RunningServer,
  mode: StopMode = 'fast',
  patienceMs = 10_000,
): Promise<void> {
  send(pid, signals[mode]);
  const hurryAt = Date.now() + patienceMs;
  let hurried = mode === 'fast';
  while (isServerOf(cluster, pid)) {
    if (!hurried && Date.now() > hurryAt) {
      send(pid, signals.fast);
      hurried = true;
    }
    await wait(20);
  }
}

/** A server writes its number first, and its address once the port is its own. */
function readPidFile(cluster: string): RunningServer & { readonly isListening: boolean } {
  const file = join(cluster, 'postmaster.pid');
  const lines = existsSync(file) ? readFileSync(file, 'utf8').split('\n') : [];
  return {
    pid: Number(lines[0] ?? 0),
    port: Number(lines[3] ?? 0),
    isListening: (lines[5] ?? '').trim() !== '',
  };
}

function isServerOf(cluster: string, pid: number): boolean {
  return commandLine(pid).includes(` -D ${cluster} `);
}

/** Empty when there is no such process; also for one that has ended and was not yet collected by its parent. */
function commandLine(pid: number): string {
  if (process.platform !== 'linux') {
    return String(spawnSync('ps', ['-ww', '-o', 'command=', '-p', String(pid)]).stdout).trim();
  }
  try {
    return readFileSync(`/proc/${pid}/cmdline`, 'utf8').replaceAll('\0', ' ');
  } catch {
    return '';
  }
}

/** Also true for a process that has ended and was not yet collected. */
export function exists(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

function send(pid: number, signal: 'SIGTERM' | 'SIGINT'): void {
  try {
    process.kill(pid, signal);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ESRCH') throw error;
  }
}
