import type { GaugeVariation } from './gauge-study.js';

/** Refuses a tolerance that is no width. */
export function requireTolerance(tolerance: number | null): void {
  if (tolerance !== null && !(tolerance > 0 && Number.isFinite(tolerance)))
    throw new RangeError('a tolerance is a finite width above zero');
}

/**
 * Figures of a study from its variances.
 *
 * @param variances  of repeatability, reproducibility and objects; not negative
 * @param tolerance  width of the tolerance in the unit of the values, or null
 * @returns standard deviations, percentages and the number of distinct categories
 * @throws RangeError on a tolerance that is not positive
 * @source AIAG, Measurement Systems Analysis, 4th ed. (2010), chapter III section B
 */
export function gaugeVariation(
  variances: { readonly repeatability: number; readonly reproducibility: number; readonly objects: number },
  tolerance: number | null,
): GaugeVariation {
  requireTolerance(tolerance);
  const { repeatability, reproducibility, objects } = variances;
  const gauge = repeatability + reproducibility;
  const total = gauge + objects;
  const percent = (part: number): number => (total > 0 ? (100 * part) / total : 0);
  return {
    repeatability: Math.sqrt(repeatability),
    reproducibility: Math.sqrt(reproducibility),
    gauge: Math.sqrt(gauge),
    objects: Math.sqrt(objects),
    total: Math.sqrt(total),
    gaugePercentOfTotal: total > 0 ? 100 * Math.sqrt(gauge / total) : 0,
    contributionPercent: {
      repeatability: percent(repeatability),
      reproducibility: percent(reproducibility),
      gauge: percent(gauge),
      objects: percent(objects),
    },
    gaugePercentOfTolerance: tolerance === null ? null : (600 * Math.sqrt(gauge)) / tolerance,
    distinctCategories: gauge > 0 ? Math.trunc(1.41 * Math.sqrt(objects / gauge)) : null,
  };
}
