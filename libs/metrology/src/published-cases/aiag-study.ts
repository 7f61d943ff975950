import type { GaugeMeasurement } from '../gauge-studies/gauge-study.js';

/**
 * Crossed gauge study of 10 parts by 3 appraisers with 3 trials each. One row an appraiser and part: the three trials.
 *
 * @source AIAG, Measurement Systems Analysis, 4th ed. (2010), chapter III section B
 */
const rows: readonly (readonly [appraiser: string, part: number, trials: readonly number[]])[] = [
  ['A', 1, [0.29, 0.41, 0.64]],
  ['A', 2, [-0.56, -0.68, -0.58]],
  ['A', 3, [1.34, 1.17, 1.27]],
  ['A', 4, [0.47, 0.5, 0.64]],
  ['A', 5, [-0.8, -0.92, -0.84]],
  ['A', 6, [0.02, -0.11, -0.21]],
  ['A', 7, [0.59, 0.75, 0.66]],
  ['A', 8, [-0.31, -0.2, -0.17]],
  ['A', 9, [2.26, 1.99, 2.01]],
  ['A', 10, [-1.36, -1.25, -1.31]],
  ['B', 1, [0.08, 0.25, 0.07]],
  ['B', 2, [-0.47, -1.22, -0.68]],
  ['B', 3, [1.19, 0.94, 1.34]],
  ['B', 4, [0.01, 1.03, 0.2]],
  ['B', 5, [-0.56, -1.2, -1.28]],
  ['B', 6, [-0.2, 0.22, 0.06]],
  ['B', 7, [0.47, 0.55, 0.83]],
  ['B', 8, [-0.63, 0.08, -0.34]],
  ['B', 9, [1.8, 2.12, 2.19]],
  ['B', 10, [-1.68, -1.62, -1.5]],
  ['C', 1, [0.04, -0.11, -0.15]],
  ['C', 2, [-1.38, -1.13, -0.96]],
  ['C', 3, [0.88, 1.09, 0.67]],
  ['C', 4, [0.14, 0.2, 0.11]],
  ['C', 5, [-1.46, -1.07, -1.45]],
  ['C', 6, [-0.29, -0.67, -0.49]],
  ['C', 7, [0.02, 0.01, 0.21]],
  ['C', 8, [-0.46, -0.56, -0.49]],
  ['C', 9, [1.77, 1.45, 1.87]],
  ['C', 10, [-1.49, -1.77, -2.16]],
];

/** The study as measurements. */
export const aiagStudy: readonly GaugeMeasurement[] = rows.flatMap(([appraiser, part, trials]) =>
  trials.map((value) => ({ object: String(part), appraiser, value })),
);
