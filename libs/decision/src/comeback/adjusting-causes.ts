import { wearNodes } from '../belief/wear-grid.js';
import { log, logistic } from '../portable/elementary.js';
import type { LearnedTables } from '../tables/learned-tables.js';

/** Comebacks beyond this many say nothing more. */
const MOST_COMEBACKS = 4;

/**
 * Chance that a complaint at some wear comes from the worn part, not from what adjusting cures.
 *
 * @param wear        share of the criterion
 * @param complaints  rates of the tables
 * @returns share of the complaint rate at that wear; 0 where nothing is ever complained of
 */
export function wornShare(
  wear: number,
  { otherCausesRate, wornRate, onsetWidth }: LearnedTables['complaints'],
): number {
  const worn = wornRate * logistic((wear - 1) / onsetWidth);
  const all = otherCausesRate + worn;
  return all === 0 ? 0 : worn / all;
}

const times = (base: number, count: number): number => {
  let product = 1;
  for (let k = 0; k < Math.min(count, MOST_COMEBACKS); k += 1) product *= base;
  return product;
};

/**
 * Chance that adjusting came back so many times at every wear node: the cause of a complaint stays the same until it is
 * cured.
 *
 * @param tables  with chances by cause
 * @param count   comebacks of the same complaint
 * @returns one number a node, rising with wear; 1 everywhere without comebacks or without chances by cause
 */
export function comebacksLikelihood(
  { adjusting, complaints }: Pick<LearnedTables, 'adjusting' | 'complaints'>,
  count: number,
): Float64Array {
  if (count === 0 || adjusting === undefined) return new Float64Array(wearNodes.length).fill(1);
  const { otherCauses, wornPart } = adjusting;
  return wearNodes.map((wear) => {
    const share = wornShare(wear, complaints);
    return share * times(wornPart, count) + (1 - share) * times(otherCauses, count);
  });
}

/**
 * Log odds that adjusting comes back, by wear node, from the causes a complaint can have: each comeback makes the one that
 * adjusting rarely cures more likely. Nothing where the tables hold no chances by cause.
 *
 * @param tables  with chances by cause
 * @param count   comebacks of the same complaint so far
 * @returns one number a node, rising with wear and with the count; 0 everywhere without chances by cause
 * @source Bayes' rule for two causes: p = (s w^(n+1) + (1 - s) o^(n+1)) / (s w^n + (1 - s) o^n)
 */
export function adjustingLogOdds(
  tables: Pick<LearnedTables, 'adjusting' | 'complaints'>,
  count: number,
): Float64Array {
  if (tables.adjusting === undefined) return new Float64Array(wearNodes.length);
  const { otherCauses, wornPart } = tables.adjusting;
  return wearNodes.map((wear) => {
    const share = wornShare(wear, tables.complaints);
    const worn = share * times(wornPart, count);
    const other = (1 - share) * times(otherCauses, count);
    const chance = (worn * wornPart + other * otherCauses) / (worn + other);
    return log(chance) - log(1 - chance);
  });
}
