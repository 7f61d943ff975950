import type { GaugeMeasurement, GaugeStudyRefusal } from './gauge-study.js';

/** Values of a balanced study by object and appraiser, names sorted so that the order of the input does not matter. */
export interface StudyCells {
  readonly kind: 'cells';
  readonly objects: readonly string[];
  readonly appraisers: readonly string[];
  readonly trials: number;
  /** Sorted values of one object by one appraiser. */
  readonly cell: (object: string, appraiser: string) => readonly number[];
}

/**
 * Sorts the values of a crossed study into cells.
 *
 * @param measurements  any order
 * @returns cells, `insufficientData` with fewer than two objects, appraisers or trials, `notBalanced` where a cell has
 *   another number of values than the first
 * @throws RangeError on a non-finite value
 */
export function studyCells(measurements: readonly GaugeMeasurement[]): StudyCells | GaugeStudyRefusal {
  const values = new Map<string, Map<string, number[]>>();
  for (const { object, appraiser, value } of measurements) {
    if (!Number.isFinite(value)) throw new RangeError('a measurement is a finite number');
    const row = values.get(object) ?? new Map<string, number[]>();
    values.set(object, row);
    row.set(appraiser, [...(row.get(appraiser) ?? []), value]);
  }
  const objects = [...values.keys()].sort();
  const appraisers = [...new Set(measurements.map(({ appraiser }) => appraiser))].sort();
  const cell = (object: string, appraiser: string): readonly number[] =>
    [...(values.get(object)?.get(appraiser) ?? [])].sort((a, b) => a - b);
  if (objects.length < 2) return { kind: 'insufficientData', needed: 'two objects', got: objects.length };
  if (appraisers.length < 2)
    return { kind: 'insufficientData', needed: 'two appraisers', got: appraisers.length };
  const trials = cell(objects[0]!, appraisers[0]!).length;
  for (const object of objects) {
    for (const appraiser of appraisers) {
      const count = cell(object, appraiser).length;
      if (count !== trials) return { kind: 'notBalanced', object, appraiser, count };
    }
  }
  if (trials < 2) return { kind: 'insufficientData', needed: 'two trials', got: trials };
  return { kind: 'cells', objects, appraisers, trials, cell };
}

/**
 * Mean of numbers.
 *
 * @param values  at least one
 * @returns arithmetic mean
 */
export function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/**
 * Sum of squared distances from a centre.
 *
 * @param values  any number of values
 * @param centre  the centre
 * @returns the sum
 */
export function squaresAbout(values: readonly number[], centre: number): number {
  return values.reduce((sum, value) => sum + (value - centre) ** 2, 0);
}
