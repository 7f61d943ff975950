import { normalQuantile } from '../distributions/normal.js';
import { studentTQuantile } from '../distributions/student-t.js';
import { upperProbability } from '../inference/confidence-level.js';
import type { LineFit } from './line-fit.js';

/** Two-sided quantile that goes with the line: Student's t, or the normal one when the scatter is known. */
export function lineQuantile(fit: LineFit, confidence: number): number {
  const probability = upperProbability(confidence);
  return fit.degreesOfFreedom === null
    ? normalQuantile(probability)
    : studentTQuantile(probability, fit.degreesOfFreedom);
}
