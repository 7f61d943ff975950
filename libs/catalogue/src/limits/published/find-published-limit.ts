import type { Limit } from '@endfloat/metrology';
import type { PublishedLimit } from './published-limit.js';
import { publishedLimits } from './published-limits.js';

const byId: ReadonlyMap<string, PublishedLimit> = new Map(publishedLimits.map((entry) => [entry.id, entry]));

/**
 * The limits made of published rules, for a check sheet.
 *
 * @param ids  ids of rules
 * @returns their limits in the order asked for
 * @throws RangeError on an id that the catalogue does not hold
 */
export function limitsOfRules(...ids: readonly string[]): readonly Limit[] {
  return ids.flatMap((id) => {
    const entry = byId.get(id);
    if (entry === undefined) throw new RangeError(`the catalogue holds no rule ${id}`);
    return entry.limits;
  });
}

/**
 * Every limit of the published rules for one characteristic, all places side by side.
 *
 * @param characteristic  id of the characteristic
 * @returns the limits; empty where no rule is known
 */
export function publishedLimitsFor(characteristic: string): readonly Limit[] {
  return publishedLimits
    .flatMap((entry) => entry.limits)
    .filter((limit) => limit.characteristic === characteristic);
}
