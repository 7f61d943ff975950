/**
 * Coverage of 90 % intervals by simulation, as a table in Markdown: how often they hold a truth that is known here and
 * not to the method. Seeded, so that every run prints the same table.
 *
 *   node --no-warnings --conditions=@endfloat/source --import ./.config/typescript-register.mjs test/oracles/wear-coverage/run.ts
 */
import { seededUniform } from '../statistics-survival/seeded-uniform.js';
import {
  aloneCoverage,
  fleetCoverage,
  lifeCoverage,
  shareCoverage,
  type Coverage,
} from './coverage-cases.js';
import { needsCoverage } from './needs-coverage.js';

const seed = 20_261_125;
const scale = Number(process.argv[2] ?? '1');
const runs = (count: number): number => Math.max(1, Math.round(scale * count));
const next = seededUniform(seed);

const cases: readonly (() => readonly Coverage[])[] = [
  () => fleetCoverage(next, runs(160), { parts: 25, readings: [4, 8] }),
  () => fleetCoverage(next, runs(160), { parts: 25, readings: [1, 4] }),
  () => fleetCoverage(next, runs(400), { parts: 10, readings: [4, 8] }),
  () => fleetCoverage(next, runs(500), { parts: 8, readings: [2, 5] }),
  () => fleetCoverage(next, runs(160), { parts: 25, readings: [4, 8], biasU: 0.02 }),
  () => [needsCoverage(seededUniform(seed + 1), runs(200), 25)],
  () => [needsCoverage(seededUniform(seed + 2), runs(120), 40)],
  () => aloneCoverage(next, runs(4000), 8),
  () => aloneCoverage(next, runs(4000), 8, 0.02),
  () => aloneCoverage(next, runs(6000), 4),
  () => lifeCoverage(next, runs(4000), 60),
  () => lifeCoverage(next, runs(4000), 20),
  () => lifeCoverage(next, runs(4000), 8),
  () => shareCoverage(next, runs(20_000), 20, [0.05, 0.5]),
  () => shareCoverage(next, runs(20_000), 100, [0.05, 0.5]),
  () => shareCoverage(next, runs(20_000), 20, [0.005, 0.05]),
];

const per = (part: number, whole: number): string => `${((100 * part) / whole).toFixed(1)} %`;
console.log(
  '| 90 % interval of | held | standard error | missed below / above | asked | answered too little |',
);
console.log('|---|---|---|---|---|---|');
for (const make of cases) {
  for (const { what, held, above, asked, unanswered, standardError } of make()) {
    if (asked === 0) continue;
    const missed = `${per(asked - held - above, asked)} / ${per(above, asked)}`;
    console.log(
      `| ${what} | ${per(held, asked)} | ${per(standardError, 1)} | ${missed} | ${String(asked)} | ${String(unanswered)} |`,
    );
  }
}
