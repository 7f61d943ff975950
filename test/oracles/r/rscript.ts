import { spawnSync } from 'node:child_process';

/** Versions of R and of its package survival, as `4.2.2` and `3.5.3`. */
export interface VersionsOfR {
  readonly r: string;
  readonly survival: string;
}

/** Bound for a run of R that hangs, in milliseconds; a run takes about one second. */
const patience = 60_000;

function run(args: readonly string[], input?: string): string | null {
  const { error, status, stdout, stderr } = spawnSync('Rscript', ['--vanilla', ...args], {
    encoding: 'utf8',
    input,
    timeout: patience,
    maxBuffer: 64 * 1024 * 1024,
    env: { ...process.env, LC_ALL: 'C' },
  });
  if (error !== undefined && 'code' in error && error.code === 'ENOENT') return null;
  if (error !== undefined) throw error;
  if (status !== 0) throw new Error(`Rscript ${args.join(' ')} ended with ${String(status)}: ${stderr}`);
  return stdout;
}

/**
 * The versions at hand.
 *
 * @returns null where there is no Rscript, or no package survival
 */
export function versionsOfR(): VersionsOfR | null {
  const asked =
    'cat(as.character(getRversion()), if (requireNamespace("survival", quietly = TRUE)) as.character(packageVersion("survival")))';
  const [r, survival] = run(['-e', asked])?.trim().split(' ') ?? [];
  return r === undefined || survival === undefined ? null : { r, survival };
}

/**
 * What an R script prints.
 *
 * @throws Error where Rscript is absent or ends with an error
 */
export function printedByR(script: string, ...args: string[]): string {
  const printed = run([script, ...args]);
  if (printed === null) throw new Error('There is no Rscript on this machine.');
  return printed;
}
