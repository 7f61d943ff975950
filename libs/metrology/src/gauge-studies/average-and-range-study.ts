import type { Repeatability } from '../uncertainty/pool-standard-deviations.js';
import type { GaugeMeasurement, GaugeStudyRefusal, GaugeVariation } from './gauge-study.js';
import { gaugeVariation, requireTolerance } from './gauge-variation.js';
import type { StudyCells } from './study-cells.js';
import { meanOf, studyCells } from './study-cells.js';

/** Result of the average-and-range method. */
export interface AverageAndRangeStudy {
  readonly kind: 'estimated';
  readonly meanRange: number;
  /** Largest less smallest mean of the appraisers. */
  readonly appraiserRange: number;
  /** Largest less smallest mean of the objects. */
  readonly objectRange: number;
  readonly variation: GaugeVariation;
  /** Repeatability against total, in per cent of standard deviations; the others alike. */
  readonly percentOfTotal: {
    readonly repeatability: number;
    readonly reproducibility: number;
    readonly objects: number;
  };
  /** Degrees of freedom are approximate: ranges use about nine tenths of what the values hold. */
  readonly repeatability: Repeatability;
  readonly method: string;
}

/** Constants 1 / d2* by number of values the range is taken of, as printed (four digits). */
const perTrials: Readonly<Record<number, number>> = { 2: 0.8862, 3: 0.5908 };
const perAppraisers: Readonly<Record<number, number>> = { 2: 0.7071, 3: 0.5231 };
const perObjects: Readonly<Record<number, number>> = {
  2: 0.7071,
  3: 0.5231,
  4: 0.4467,
  5: 0.403,
  6: 0.3742,
  7: 0.3534,
  8: 0.3375,
  9: 0.3249,
  10: 0.3146,
};

/**
 * Crossed gauge study by averages and ranges: the sheet that is filled in by hand.
 *
 * @param measurements  balanced: 2 or 3 trials, 2 or 3 appraisers, 2 to 10 objects; any order
 * @param tolerance     width of the tolerance in the unit of the values, or null (default)
 * @returns `estimated`, zeros throughout where all values are equal; `insufficientData` (also where the constants are
 *   not tabulated for so many) or `notBalanced`
 * @throws RangeError on a non-finite value or a tolerance that is not positive
 * @source AIAG, Measurement Systems Analysis, 4th ed. (2010), average and range method, constants K1, K2, K3
 * @oracle libs/metrology/src/published-cases
 * @example averageAndRangeStudy([]) // => { kind: 'insufficientData', needed: 'two objects', got: 0 }
 */
export function averageAndRangeStudy(
  measurements: readonly GaugeMeasurement[],
  tolerance: number | null = null,
): AverageAndRangeStudy | GaugeStudyRefusal {
  requireTolerance(tolerance);
  const cells = studyCells(measurements);
  if (cells.kind !== 'cells') return cells;
  const { objects, appraisers, trials } = cells;
  const [k1, k2, k3] = [perTrials[trials], perAppraisers[appraisers.length], perObjects[objects.length]];
  if (k1 === undefined) return { kind: 'insufficientData', needed: 'two or three trials', got: trials };
  if (k2 === undefined)
    return { kind: 'insufficientData', needed: 'two or three appraisers', got: appraisers.length };
  if (k3 === undefined)
    return { kind: 'insufficientData', needed: 'two to ten objects', got: objects.length };
  const ranges = rangesOf(cells);
  const repeatability = ranges.meanRange * k1;
  const byAppraiser = (ranges.appraiserRange * k2) ** 2 - repeatability ** 2 / (objects.length * trials);
  const variation = gaugeVariation(
    {
      repeatability: repeatability ** 2,
      reproducibility: Math.max(0, byAppraiser),
      objects: (ranges.objectRange * k3) ** 2,
    },
    tolerance,
  );
  const percent = (part: number): number => (variation.total > 0 ? (100 * part) / variation.total : 0);
  return {
    kind: 'estimated',
    ...ranges,
    variation,
    percentOfTotal: {
      repeatability: percent(variation.repeatability),
      reproducibility: percent(variation.reproducibility),
      objects: percent(variation.objects),
    },
    repeatability: {
      standardDeviation: repeatability,
      degreesOfFreedom: 0.9 * objects.length * appraisers.length * (trials - 1),
    },
    method: 'average and range',
  };
}

function rangesOf({ objects, appraisers, cell }: StudyCells): {
  readonly meanRange: number;
  readonly appraiserRange: number;
  readonly objectRange: number;
} {
  const spread = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
  return {
    meanRange: meanOf(
      objects.flatMap((object) => appraisers.map((appraiser) => spread(cell(object, appraiser)))),
    ),
    appraiserRange: spread(
      appraisers.map((appraiser) => meanOf(objects.flatMap((object) => cell(object, appraiser)))),
    ),
    objectRange: spread(
      objects.map((object) => meanOf(appraisers.flatMap((appraiser) => cell(object, appraiser)))),
    ),
  };
}
