import type { LearnedTables } from '@endfloat/decision';
import type { FleetShare } from './play-fleet.js';
import { fleetOf, playShare, tablesAfterYears } from './play-fleet.js';

/** One piece of the yardstick's work. */
export type YardstickTask =
  | { readonly kind: 'learn'; readonly fleetId: string; readonly seed: number; readonly years: number }
  | {
      readonly kind: 'play';
      readonly fleetId: string;
      readonly seed: number;
      readonly numbers: readonly [from: number, to: number];
      readonly learned: LearnedTables;
    };

/** What a piece of work gives. */
export type YardstickAnswer =
  | { readonly kind: 'learned'; readonly tables: LearnedTables }
  | { readonly kind: 'played'; readonly share: FleetShare };

/** Does one piece of work. */
export function doTask(task: YardstickTask): YardstickAnswer {
  const fleet = fleetOf(task.fleetId);
  if (task.kind === 'learn')
    return { kind: 'learned', tables: tablesAfterYears(fleet, task.seed, task.years) };
  return { kind: 'played', share: playShare(fleet, task.seed, task.numbers, task.learned) };
}

process.on('message', (task: YardstickTask) => {
  process.send?.(doTask(task));
});
