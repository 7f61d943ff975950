import { requireFinite } from '../distributions/checked-arguments.js';

/** Exposure of one stratum of the mix, and the reference rate of that stratum in events per unit of exposure. */
export interface Stratum {
  readonly exposure: number;
  readonly referenceRate: number;
}

/**
 * Number of events a reference would have had with the given mix (indirect standardisation): Σ exposure · rate.
 *
 * @param strata  exposure and reference rate of each, 0 or more
 * @returns expected events; 0 without a stratum
 * @throws RangeError on a negative or non-finite number
 * @source Breslow & Day (1987), Statistical Methods in Cancer Research II, sec. 2.3
 * @oracle a case worked by hand in the spec
 * @example expectedCount([{ exposure: 10, referenceRate: 0.5 }, { exposure: 4, referenceRate: 0.25 }]) // => 6
 */
export function expectedCount(strata: readonly Stratum[]): number {
  return strata.reduce((sum, { exposure, referenceRate }, i) => {
    requireFinite(`exposure of stratum ${i}`, exposure);
    requireFinite(`reference rate of stratum ${i}`, referenceRate);
    if (exposure < 0 || referenceRate < 0) throw new RangeError(`stratum ${i} has a negative number`);
    return sum + exposure * referenceRate;
  }, 0);
}
