import { learnComebacks } from '../comeback/learn-comebacks.js';
import type { LearnedTables } from '../tables/learned-tables.js';
import { fitAdjusting } from './fit-adjusting.js';
import { fitLeadTimes } from './fit-lead-times.js';
import { learnWear } from './learn-wear.js';
import type { SettledHistory } from './settled-history.js';

/** Tables that a settled history has taught. */
export interface TaughtTables {
  readonly tables: LearnedTables;
  /** `notConverged`: the comeback coefficients stay the priors', everything else is learned all the same */
  readonly comebacks: { readonly kind: 'estimated' | 'notConverged'; readonly iterations: number };
  readonly counts: {
    readonly parts: number;
    readonly inspections: number;
    readonly complaints: number;
    readonly repairs: number;
    readonly deliveries: number;
    /** distance watched over all parts */
    readonly watchedKm: number;
  };
}

/**
 * Learns tables from a settled history: wear of populations, complaint rates, the width of the functional criterion, chances
 * of adjusting by cause, comeback coefficients, and slips of lead times. Dropping what was learned and learning again from
 * the same history gives the same tables.
 *
 * @param history  what has settled; elapsed windows whole, running ones for their share, parts for the distance watched
 * @param priors   tables to start from, the judgement ones unless somebody has better
 * @returns tables with the priors' version and hash (whoever stores them names them anew), and what taught them
 * @throws RangeError on numbers that cannot be: negative days or distances, shares of a window beyond its ends
 * @source see `learnWear`, `fitAdjusting`, `learnComebacks`, `fitLeadTimes`
 * @oracle numbers of invented fleets are found again (learn-tables.spec.ts)
 */
export function learnTables(history: SettledHistory, priors: LearnedTables): TaughtTables {
  const fromParts: LearnedTables = { ...priors, ...learnWear(history.parts, priors) };
  const adjusting = fitAdjusting(fromParts, history.repairs);
  const withCauses: LearnedTables = {
    ...fromParts,
    ...(adjusting === undefined ? {} : { adjusting }),
    leadTime: fitLeadTimes(history.deliveries, priors.leadTime),
  };
  const taught = learnComebacks(withCauses, history.repairs);
  return {
    tables: taught.kind === 'estimated' ? { ...withCauses, comeback: taught.table } : withCauses,
    comebacks: { kind: taught.kind, iterations: taught.iterations },
    counts: {
      parts: history.parts.length,
      inspections: history.parts.reduce((sum, { inspections }) => sum + inspections.length, 0),
      complaints: history.parts.reduce((sum, { complaintsKm }) => sum + complaintsKm.length, 0),
      repairs: history.repairs.length,
      deliveries: history.deliveries.length,
      watchedKm: history.parts.reduce((sum, { watchedKm }) => sum + watchedKm, 0),
    },
  };
}
