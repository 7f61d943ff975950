/**
 * Compares the statistics with R and its package survival: the same invented data, the same question, one after the other
 * in one run. What counts are processor seconds of the computation alone, the best of several repetitions; starting R or
 * Node and reading the data are not counted. Where the two do not give the same figures the run fails.
 *
 *   node --no-warnings --conditions=@endfloat/source --import ./.config/typescript-register.mjs test/bench/against-r.ts
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { columnsOf, writeColumns, type BenchCase } from './against-r/tables.js';

const repetitions = 5;
/** Likelihoods are searched to different ends; everything else is the same to rounding. */
const agreement = 1e-6;

interface Row {
  readonly title: string;
  readonly which: BenchCase;
  readonly size: number;
  /** the case in against-r.R, where it is called otherwise */
  readonly inR?: string;
}

const rows: readonly Row[] = [
  { title: 'Kaplan-Meier, log-log limits, 1,000,000 lives', which: 'kaplanMeier', size: 1_000_000 },
  {
    title: 'mean cumulative function, robust limits, 1,000,000 rows',
    which: 'meanCumulativeFunction',
    size: 1_000_000,
  },
  {
    title: 'Weibull fit of 100,000 lives between inspections',
    which: 'intervalCensoredWeibull',
    size: 100_000,
  },
  { title: 'Theil-Sen with limits, 10,000 points', which: 'theilSen', size: 10_000 },
  {
    title: 'lines and distances to a limit, 100,000 parts of 8 readings, part by part',
    which: 'wearLines',
    size: 100_000,
  },
  {
    title: 'the same; in R all parts at once, by columns',
    which: 'wearLines',
    size: 100_000,
    inR: 'wearLinesAtOnce',
  },
];

interface Side {
  readonly seconds: readonly number[];
  readonly figures: readonly number[];
}

const beside = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

function printed(command: string, args: readonly string[]): string {
  const { error, status, stdout, stderr } = spawnSync(command, args, {
    encoding: 'utf8',
    timeout: 300_000,
    env: { ...process.env, LC_ALL: 'C' },
  });
  if (error !== undefined) throw error;
  if (status !== 0) throw new Error(`${command} ended with ${String(status)}: ${stderr}`);
  return stdout;
}

function ours(folder: string, which: BenchCase, times = repetitions): Side & { peakKilobytes: number } {
  const args = [...process.execArgv, beside('./against-r/case.ts'), folder, which, String(times)];
  return JSON.parse(printed(process.execPath, args)) as Side & { peakKilobytes: number };
}

function theirs(folder: string, which: string): Side {
  const text = printed('Rscript', [
    '--vanilla',
    beside('./against-r/against-r.R'),
    folder,
    which,
    String(repetitions),
  ]);
  const line = (name: string): number[] =>
    (new RegExp(`^${name} (.*)$`, 'mu').exec(text)?.[1] ?? '').trim().split(/\s+/u).map(Number);
  return { seconds: line('seconds'), figures: line('figures') };
}

/** Lends a folder that holds the data of a case. */
function withData<T>(which: BenchCase, size: number, use: (folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'endfloat-bench-'));
  try {
    mkdirSync(folder, { recursive: true });
    writeColumns(folder, columnsOf(which, size));
    return use(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function requireAgreement(title: string, one: readonly number[], other: readonly number[]): void {
  const agree =
    one.length === other.length &&
    one.every((value, place) => Math.abs(value - other[place]!) <= agreement * Math.abs(other[place]!));
  if (!agree) throw new Error(`${title}: Endfloat gives ${one.join(', ')}, R gives ${other.join(', ')}`);
}

const seconds = (value: number): string => `${value.toFixed(3)} s`;

function compared({ title, which, size, inR = which }: Row): string {
  return withData(which, size, (folder) => {
    const one = ours(folder, which);
    const other = theirs(folder, inR);
    requireAgreement(title, one.figures, other.figures);
    const [mine, its] = [Math.min(...one.seconds), Math.min(...other.seconds)];
    return `| ${title} | ${seconds(mine)} | ${seconds(its)} | ${(its / mine).toFixed(1)} |`;
  });
}

/** Peak memory of one computation, less that of one on next to nothing, at a size and at four times that size. */
function memoryOf({ title, which, size }: Row): string {
  const peak = (rowsOfCase: number): number =>
    withData(which, rowsOfCase, (folder) => ours(folder, which, 1).peakKilobytes / 1024);
  const idle = peak(100);
  const [small, large] = [peak(size) - idle, peak(4 * size) - idle];
  return `| ${title} | ${small.toFixed(0)} MB | ${large.toFixed(0)} MB | ${(large / small).toFixed(1)} |`;
}

const asked = 'cat(as.character(getRversion()), as.character(packageVersion("survival")))';
const found = spawnSync('Rscript', ['--vanilla', '-e', asked], { encoding: 'utf8' });
if (found.error !== undefined || found.status !== 0) {
  process.stdout.write(
    'Skipped: the comparison needs Rscript with its package survival, which this machine has not.\n',
  );
} else {
  const [version = '', survival = ''] = found.stdout.trim().split(' ');
  process.stdout.write(
    `${cpus()[0]?.model ?? 'unknown processor'}; Node ${process.versions.node}; R ${version} with survival ${survival}; ` +
      `processor seconds, best of ${String(repetitions)}; both sides give the same figures.\n\n` +
      `| | Endfloat | R | times as fast |\n|---|---|---|---|\n${rows.map(compared).join('\n')}\n\n` +
      '| peak memory beyond that of an empty run | at this size | at 4 times the size | ratio |\n|---|---|---|---|\n' +
      `${rows.slice(0, 5).map(memoryOf).join('\n')}\n`,
  );
}
