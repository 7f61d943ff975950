/**
 * The house, written down a second time: which room may import which. `.config/boundaries.cjs` states it as rules,
 * DEVELOPERS.md as a table for readers; the specs of this folder hold all three equal.
 */
const floor = ['statistics'];
const upToMetrology = [...floor, 'metrology'];
const middle = ['wear', 'reliability', 'diagnosis', 'decision', 'stock', 'catalogue'] as const;
const computing = [...upToMetrology, ...middle];

export interface Room {
  readonly folder: string;
  /** names of the rooms it may import */
  readonly imports: readonly string[];
  /** an npm package it may import, undefined where it takes none */
  readonly npm?: string;
  /** whether it may touch files, sockets, processes */
  readonly node: boolean;
}

const lib = (name: string, imports: readonly string[], more: Partial<Room> = {}): [string, Room] => [
  name,
  { folder: `libs/${name}`, imports, node: false, ...more },
];
const app = (name: string, imports: readonly string[], more: Partial<Room> = {}): [string, Room] => [
  name,
  { folder: `apps/${name}`, imports, node: true, ...more },
];

const below = ['workshop', 'contracts', 'persistence', ...computing];

export const house: ReadonlyMap<string, Room> = new Map([
  lib('statistics', [], { npm: '@stdlib/math-base-special-expm1' }),
  lib('metrology', floor, { npm: 'decimal.js' }),
  ...middle.map((name) => lib(name, upToMetrology)),
  lib('workshop', computing),
  lib('contracts', ['workshop', ...computing], { npm: 'class-validator' }),
  lib('persistence', ['workshop', ...computing], { npm: 'pg', node: true }),
  lib('client', []),
  app('api', below, { npm: '@nestjs/common' }),
  app('worker', below, { npm: '@nestjs/common' }),
  app('demo', ['workshop', 'persistence', ...computing]),
  app('standalone', ['workshop', 'persistence', 'api', 'worker', 'demo'], { npm: 'reflect-metadata' }),
]);

/** Rooms that compute on plain data. */
export const computingRooms: readonly string[] = computing;
