import { readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { parseArgs } from 'node:util';
import { modelVersion } from '@endfloat/decision';
import { simulatedFleets } from '@endfloat/decision/simulator';
import type { FleetShare } from './play-fleet.js';
import { WorkerProcesses } from './worker-processes.js';
import { joinedShares } from './yardstick-figures.js';
import { yardstickReport, type PlayedFleet } from './yardstick-report.js';

const SHARES = 4;
const begin = '<!-- yardstick: begin -->';
const end = '<!-- yardstick: end -->';

/** Puts the report between its marks; the rest of the file stays. */
export function withReport(text: string, report: string): string {
  const from = text.indexOf(begin);
  const to = text.indexOf(end);
  if (from < 0 || to < from) throw new RangeError(`the file has no place marked ${begin} … ${end}`);
  return `${text.slice(0, from + begin.length)}\n\n${report.trim()}\n\n${text.slice(to)}`;
}

function whole(name: string, text: string, least: number): number {
  const value = Number(text);
  if (Number.isInteger(value) && value >= least) return value;
  throw new RangeError(`--${name} is a whole number of ${String(least)} or more, got ${text}`);
}

async function run(): Promise<void> {
  const { values } = parseArgs({
    options: {
      vans: { type: 'string', default: '2000' },
      years: { type: 'string', default: '2000' },
      seed: { type: 'string', default: '20261125' },
      readme: { type: 'string' },
      processes: { type: 'string', default: String(availableParallelism()) },
    },
  });
  const vans = whole('vans', values.vans, 2 * SHARES);
  const years = whole('years', values.years, 1);
  const seed = whole('seed', values.seed, 0);
  const processes = new WorkerProcesses(whole('processes', values.processes, 1));
  const started = performance.now();
  const fleets = await Promise.all(
    simulatedFleets.map(async (fleet): Promise<PlayedFleet> => {
      const taught = await processes.run({ kind: 'learn', fleetId: fleet.id, seed, years });
      if (taught.kind !== 'learned') throw new RangeError('asked to learn, got something else');
      const shares = await Promise.all(
        Array.from({ length: SHARES }, async (_, k): Promise<FleetShare> => {
          const numbers = [Math.floor((k * vans) / SHARES), Math.floor(((k + 1) * vans) / SHARES)] as const;
          const answer = await processes.run({
            kind: 'play',
            fleetId: fleet.id,
            seed,
            numbers,
            learned: taught.tables,
          });
          if (answer.kind !== 'played') throw new RangeError('asked to play, got something else');
          return answer.share;
        }),
      );
      return { fleet, share: joinedShares(shares) };
    }),
  );
  processes.close();
  const report = yardstickReport(fleets, { vans, years, seed, modelVersion });
  process.stdout.write(`${report}\n`);
  process.stderr.write(`${((performance.now() - started) / 1000).toFixed(0)} s\n`);
  if (values.readme === undefined) return;
  writeFileSync(values.readme, withReport(readFileSync(values.readme, 'utf8'), report));
}

await run();
