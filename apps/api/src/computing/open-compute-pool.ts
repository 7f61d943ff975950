import { availableParallelism } from 'node:os';
import { ComputePool } from './compute-pool.js';

/** From the source, as tests and scripts run it, a thread must be told how to read TypeScript; the build needs nothing. */
const fromSource = [
  '--no-warnings',
  '--conditions=@endfloat/source',
  '--import',
  new URL('../../../../.config/typescript-register.mjs', import.meta.url).href,
];

/**
 * The pool of a process: a thread for each processor, at most four; at most 200 computations waiting, some seconds' worth;
 * ten seconds for one, far beyond what any takes that comes to an end. All three are judgement.
 */
export function openComputePool(): ComputePool {
  return new ComputePool({
    threads: Math.min(4, availableParallelism()),
    mostWaiting: 200,
    timeLimit: 10_000,
    ...(import.meta.url.endsWith('.ts') ? { execArgv: fromSource } : {}),
  });
}
