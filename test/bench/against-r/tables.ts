import { writeFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

export const benchCases = [
  'kaplanMeier',
  'meanCumulativeFunction',
  'intervalCensoredWeibull',
  'theilSen',
  'wearLines',
] as const;
export type BenchCase = (typeof benchCases)[number];

export type Columns = Readonly<Record<string, Float64Array>>;

/** Mulberry32: the same invented data in every run. */
function seededUniform(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

const normal = (uniform: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());

/** Whole kilometres of a Weibull life of shape 2, at least 1. */
const lifeOf = (uniform: () => number): number =>
  Math.max(1, Math.round(120_000 * Math.sqrt(-Math.log(1 - uniform()))));

const filled = (size: number, valueAt: (row: number) => number): Float64Array =>
  Float64Array.from({ length: size }, (_, row) => valueAt(row));

/** Lives of which about half are cut off, in whole km. */
function lives(rows: number, uniform: () => number): Columns {
  const life = filled(rows, () => lifeOf(uniform));
  const end = filled(rows, () => Math.round(40_000 + 160_000 * uniform()));
  return {
    age: filled(rows, (row) => Math.min(life[row]!, end[row]!)),
    event: filled(rows, (row) => Number(life[row]! <= end[row]!)),
  };
}

/** One span and on average four events a unit: a fifth of the rows are units. */
function recurrences(rows: number, uniform: () => number): Columns {
  const units = Math.round(rows / 5);
  const spanEnd = filled(units, () => Math.round(60_000 + 140_000 * uniform()));
  const eventUnit = filled(rows - units, () => Math.floor(units * uniform()));
  return {
    spanEnd,
    eventUnit,
    eventAge: filled(rows - units, (row) => Math.ceil(spanEnd[eventUnit[row]!]! * Math.sqrt(1 - uniform()))),
  };
}

/** Lives between two inspections 15,000 km apart; beyond 150,000 km nobody looked. */
function inspections(rows: number, uniform: () => number): Columns {
  const lower = new Float64Array(rows);
  const upper = new Float64Array(rows);
  for (let row = 0; row < rows; row += 1) {
    const life = lifeOf(uniform);
    const first = 15_000 * uniform();
    const before = Math.floor((life - first) / 15_000);
    lower[row] = life < first ? 0 : Math.min(first + 15_000 * before, 150_000);
    upper[row] = lower[row] === 150_000 ? Infinity : life < first ? first : first + 15_000 * (before + 1);
  }
  return { lower, upper };
}

const points = (rows: number, uniform: () => number): Columns => {
  const x = filled(rows, () => 200_000 * uniform());
  return { x, y: filled(rows, (row) => 0.5 + 8e-6 * x[row]! + 0.05 * normal(uniform)) };
};

/** Eight readings of each of the parts, one part after the other. */
const readings = (parts: number, uniform: () => number): Columns => {
  const km = filled(8 * parts, (row) => 12_000 * ((row % 8) + uniform()));
  return {
    km,
    value: filled(8 * parts, (row) => 0.2 + 8e-6 * km[row]! + 0.02 * normal(uniform)),
  };
};

const makers: Readonly<Record<BenchCase, (size: number, uniform: () => number) => Columns>> = {
  kaplanMeier: lives,
  meanCumulativeFunction: recurrences,
  intervalCensoredWeibull: inspections,
  theilSen: points,
  wearLines: readings,
};

/** Invented data of a case, always the same for a size. */
export const columnsOf = (which: BenchCase, size: number): Columns =>
  makers[which](size, seededUniform(20260725 + size));

const fileOf = (folder: string, name: string): string => join(folder, `${name}.f64`);

/** Writes each column as plain doubles of this machine, which R and Node read alike. */
export function writeColumns(folder: string, columns: Columns): void {
  for (const [name, column] of Object.entries(columns)) {
    writeFileSync(fileOf(folder, name), new Uint8Array(column.buffer, column.byteOffset, column.byteLength));
  }
}

export function readColumns(folder: string, names: readonly string[]): Columns {
  return Object.fromEntries(
    names.map((name) => {
      const { buffer, byteOffset, byteLength } = readFileSync(fileOf(folder, name));
      return [name, new Float64Array(buffer.slice(byteOffset, byteOffset + byteLength))];
    }),
  );
}
