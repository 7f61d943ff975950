import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  ballBearings,
  defectiveChips,
  heatExchanger,
  locomotiveControls,
  sulfateSamples,
  waferDefects,
} from '@endfloat/statistics';
import { norris } from '../statistics-regression/norris.js';
import { sleepStudy } from '../statistics-regression/sleep-study.js';
import { genfan } from '../statistics-survival/genfan.js';
import { milHdbk189 } from '../statistics-survival/milhdbk189.js';
import { nistRepairs } from '../statistics-survival/nist-repairs.js';
import { nistWeibull } from '../statistics-survival/nist-weibull.js';
import { valveSeat } from '../statistics-survival/valveseat.js';

type Columns = Readonly<Record<string, readonly (number | string)[]>>;

const lives = nistWeibull(54);

/** The tables that the generators read, by name, from the data that the specs use. */
const tables: Readonly<Record<string, Columns>> = {
  genfan: { hours: genfan.ages, status: genfan.events },
  nist_weibull: { time: lives.ages, status: lives.events, count: lives.ages.map(() => 1) },
  nist_repairs: { time: nistRepairs.eventAges },
  milhdbk189: { time: milHdbk189.eventAges },
  valveseat: {
    id: [...valveSeat.eventUnits, ...valveSeat.ends.map((_, unit) => unit)],
    time: [...valveSeat.eventAges, ...valveSeat.ends],
    status: [...valveSeat.eventAges.map(() => 1), ...valveSeat.ends.map(() => 0)],
  },
  lzbearing: { megacycles: ballBearings },
  heatexchanger: {
    lower: heatExchanger.lower,
    upper: heatExchanger.upper.map((age) => age ?? 'NA'),
    event: heatExchanger.upper.map((age, row) =>
      age === null ? 'Right' : heatExchanger.lower[row] === 0 ? 'Left' : 'Interval',
    ),
    count: heatExchanger.weights,
  },
  locomotivecontrol: {
    kilomiles: locomotiveControls.ages,
    event: locomotiveControls.events.map((failed) => (failed === 1 ? 'Failed' : 'Survived')),
    count: locomotiveControls.weights,
  },
  norris: { x: norris.map(([x]) => x), y: norris.map(([, y]) => y) },
  sleepstudy: {
    subject: sleepStudy.flatMap(([subject, times]) => times.map(() => subject)),
    day: sleepStudy.flatMap(([, times]) => times.map((_, day) => day)),
    time: sleepStudy.flatMap(([, times]) => times),
  },
  sulfate: { date: sulfateSamples.x, ppm: sulfateSamples.y },
  counts: { defects: waferDefects },
  proportions: { fraction: defectiveChips.map((count) => count / 50) },
};

function csvOf(columns: Columns): string {
  const names = Object.keys(columns);
  const rows = (columns[names[0] ?? ''] ?? []).map((_, row) =>
    names.map((name) => columns[name]?.[row] ?? 'NA').join(','),
  );
  return `${[names.join(','), ...rows].join('\n')}\n`;
}

/** Writes every table as CSV into a new folder, lends its name, and takes the folder away afterwards. */
export function withGeneratorTables<T>(use: (folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'endfloat-tables-'));
  try {
    for (const [name, columns] of Object.entries(tables)) {
      writeFileSync(join(folder, `${name}.csv`), csvOf(columns));
    }
    return use(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
