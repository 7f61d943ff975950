import { logistic } from '../portable/elementary.js';
import type { LearnedTables } from '../tables/learned-tables.js';
import { wearNodes } from './wear-grid.js';

/**
 * Likelihood of a complaint by wear node: a worn part is complained of more often, so that a complaint speaks for wear.
 *
 * @param complaints  rates of the tables
 * @returns one number a node, up to 1 and rising with wear; 1 everywhere where nothing is ever complained of
 * @source Bayes' rule: proportional to the complaint rate at that wear
 */
export function complaintLikelihood({
  otherCausesRate,
  wornRate,
  onsetWidth,
}: LearnedTables['complaints']): Float64Array {
  const greatest = otherCausesRate + wornRate;
  if (greatest === 0) return new Float64Array(wearNodes.length).fill(1);
  return wearNodes.map((wear) => (otherCausesRate + wornRate * logistic((wear - 1) / onsetWidth)) / greatest);
}
