import { wearLeftIn } from '../comeback/learn-comebacks.js';
import type { ComebackOutcome } from '../comeback/comeback-outcome.js';
import { adjustingLogOdds } from '../comeback/adjusting-causes.js';
import { log, logistic } from '../portable/elementary.js';
import type { AdjustingByCause, LearnedTables } from '../tables/learned-tables.js';
import { greatestBySteps } from './greatest-at.js';

/** Complaints each chance is worth before anything was counted; JUDGEMENT. */
const worth = { otherCauses: 20, wornPart: 10 } as const;
const LEAST_APART = 0.05;

/**
 * Chances that adjusting comes back, by the cause of the complaint, from released adjustments. The cause need not have been
 * found: how worn the part was and how often the complaint had come back tell the two apart.
 *
 * @param tables   populations and complaint rates as learned so far; their chances by cause are the prior
 * @param repairs  released repairs; those other than adjusting are passed over
 * @returns mode of the posterior; undefined where the tables know no causes
 * @source two-component mixture with beta priors; a running window counts for the share watched
 */
export function fitAdjusting(
  tables: LearnedTables,
  repairs: readonly ComebackOutcome[],
): AdjustingByCause | undefined {
  const prior = tables.adjusting;
  if (prior === undefined) return undefined;
  const cases = repairs
    .filter(({ context }) => context.action === 'adjust')
    .map(({ context, wear, outcome }) => ({
      wear: wearLeftIn(context, wear, tables),
      count: context.earlierComebacks,
      cameBack: outcome.kind === 'comeback',
      watched: outcome.kind === 'running' ? outcome.shareOfWindow : 1,
    }));
  const counts = [...new Set(cases.map(({ count }) => count))];
  const value = ([otherCauses, wornPart]: readonly number[]): number => {
    if (!(otherCauses! > 0.001 && wornPart! < 0.999 && wornPart! - otherCauses! > LEAST_APART))
      return -Infinity;
    const adjusting = { otherCauses: otherCauses!, wornPart: wornPart! };
    const atNodes = new Map(
      counts.map((count) => [
        count,
        adjustingLogOdds({ adjusting, complaints: tables.complaints }, count).map(logistic),
      ]),
    );
    let sum = 0;
    for (const name of ['otherCauses', 'wornPart'] as const) {
      const [p, expected] = [adjusting[name], prior[name]];
      sum += worth[name] * (expected * log(p) + (1 - expected) * log(1 - p));
    }
    for (const { wear, count, cameBack, watched } of cases) {
      const chances = atNodes.get(count)!;
      let chance = 0;
      for (let i = 0; i < wear.length; i += 1) chance += wear[i]! * chances[i]!;
      sum += cameBack ? log(chance) : log(1 - watched * chance);
    }
    return sum;
  };
  const [otherCauses, wornPart] = greatestBySteps(
    value,
    [prior.otherCauses, prior.wornPart],
    [0.15, 0.35],
    4,
  );
  return { otherCauses: otherCauses!, wornPart: wornPart! };
}
