import type { Repeatability } from '../uncertainty/pool-standard-deviations.js';
import { source } from './crossed-gauge-study.js';
import type { GaugeMeasurement, GaugeStudyRefusal, GaugeVariation, VarianceSource } from './gauge-study.js';
import { gaugeVariation, requireTolerance } from './gauge-variation.js';
import { meanOf, squaresAbout } from './study-cells.js';

/** Result of a nested study. */
export interface NestedGaugeStudy {
  readonly kind: 'estimated';
  readonly sources: {
    readonly appraisers: VarianceSource;
    readonly objectsWithinAppraisers: VarianceSource;
    readonly error: VarianceSource;
  };
  readonly variation: GaugeVariation;
  readonly repeatability: Repeatability;
  readonly method: string;
}

/**
 * Nested gauge study: every appraiser has objects of his own, because an object is changed by measuring it or cannot be
 * carried from one to the other. Random analysis of variance, objects within appraisers; components below zero are zero.
 *
 * @param measurements  balanced: the same number of objects for each of at least two appraisers, at least two values of
 *   each object, any order; an object belongs to the appraiser it is listed with
 * @param tolerance     width of the tolerance in the unit of the values, or null (default)
 * @returns `estimated` (zeros throughout where all values are equal), `insufficientData`, or `notBalanced` (with an
 *   empty `object` where an appraiser has another number of objects than the first)
 * @throws RangeError on a non-finite value or a tolerance that is not positive
 * @source Montgomery, Design and Analysis of Experiments, two-stage nested design (from memory); worked by hand in the spec
 * @example nestedGaugeStudy([]) // => { kind: 'insufficientData', needed: 'two appraisers', got: 0 }
 */
export function nestedGaugeStudy(
  measurements: readonly GaugeMeasurement[],
  tolerance: number | null = null,
): NestedGaugeStudy | GaugeStudyRefusal {
  requireTolerance(tolerance);
  const groups = groupsOf(measurements);
  const refusal = refusalOf(groups);
  if (refusal !== null) return refusal;
  const values = groups.map(({ objects }) => objects.map(({ readings }) => readings));
  const [appraisers, perAppraiser, trials] = [values.length, values[0]!.length, values[0]![0]!.length];
  const grand = meanOf(values.flat(2));
  const appraiserMeans = values.map((objects) => meanOf(objects.flat()));
  const bySquares = values.reduce(
    (sum, objects, index) => sum + trials * squaresAbout(objects.map(meanOf), appraiserMeans[index]!),
    0,
  );
  const errorSquares = values
    .flat()
    .reduce((sum, readings) => sum + squaresAbout(readings, meanOf(readings)), 0);
  const sources = {
    appraisers: source(perAppraiser * trials * squaresAbout(appraiserMeans, grand), appraisers - 1),
    objectsWithinAppraisers: source(bySquares, appraisers * (perAppraiser - 1)),
    error: source(errorSquares, appraisers * perAppraiser * (trials - 1)),
  };
  const within = sources.error.meanSquare;
  const nested = sources.objectsWithinAppraisers.meanSquare;
  return {
    kind: 'estimated',
    sources,
    variation: gaugeVariation(
      {
        repeatability: within,
        reproducibility: Math.max(0, (sources.appraisers.meanSquare - nested) / (perAppraiser * trials)),
        objects: Math.max(0, (nested - within) / trials),
      },
      tolerance,
    ),
    repeatability: { standardDeviation: Math.sqrt(within), degreesOfFreedom: sources.error.degreesOfFreedom },
    method: 'nested random analysis of variance, objects within appraisers',
  };
}

interface Group {
  readonly appraiser: string;
  readonly objects: readonly { readonly object: string; readonly readings: readonly number[] }[];
}

function groupsOf(measurements: readonly GaugeMeasurement[]): readonly Group[] {
  const byAppraiser = new Map<string, Map<string, number[]>>();
  for (const { object, appraiser, value } of measurements) {
    if (!Number.isFinite(value)) throw new RangeError('a measurement is a finite number');
    const objects = byAppraiser.get(appraiser) ?? new Map<string, number[]>();
    byAppraiser.set(appraiser, objects);
    objects.set(object, [...(objects.get(object) ?? []), value]);
  }
  return [...byAppraiser]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([appraiser, objects]) => ({
      appraiser,
      objects: [...objects]
        .sort(([a], [b]) => (a < b ? -1 : 1))
        .map(([object, readings]) => ({ object, readings: [...readings].sort((a, b) => a - b) })),
    }));
}

function refusalOf(groups: readonly Group[]): GaugeStudyRefusal | null {
  if (groups.length < 2) return { kind: 'insufficientData', needed: 'two appraisers', got: groups.length };
  const first = groups[0]!.objects;
  const trials = first[0]!.readings.length;
  for (const { appraiser, objects } of groups) {
    if (objects.length !== first.length) {
      return { kind: 'notBalanced', object: '', appraiser, count: objects.length };
    }
    const uneven = objects.find(({ readings }) => readings.length !== trials);
    if (uneven !== undefined) {
      return { kind: 'notBalanced', object: uneven.object, appraiser, count: uneven.readings.length };
    }
  }
  if (first.length < 2)
    return { kind: 'insufficientData', needed: 'two objects an appraiser', got: first.length };
  return trials < 2 ? { kind: 'insufficientData', needed: 'two trials', got: trials } : null;
}
