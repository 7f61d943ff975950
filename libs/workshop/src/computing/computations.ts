import { assessRepairOrReplace, replayAssessment } from '@endfloat/decision';
import { calculateLifeFit } from '../calculations/life-fits.js';
import { calculateMannKendallTest, calculateTheilSenSlope } from '../calculations/lines.js';
import { calculateMixedLine } from '../calculations/mixed-lines.js';
import { calculateMeanCumulativeFunction } from '../calculations/recurrences.js';
import { calculateSurvivalCurve, calculateTurnbullEstimate } from '../calculations/survival-curves.js';
import { learnDecision } from '../decide/learning/learned-documents.js';
import { previewAssessment } from '../decide/preview-assessment.js';
import type { Computing } from '../ports/computing.port.js';

/** Computations that may take long: functions of plain data, by name. */
const computations = {
  assessRepairOrReplace,
  replayAssessment,
  previewAssessment,
  learnDecision,
  calculateLifeFit,
  calculateMannKendallTest,
  calculateMeanCumulativeFunction,
  calculateMixedLine,
  calculateSurvivalCurve,
  calculateTheilSenSlope,
  calculateTurnbullEstimate,
} as const;

type Computations = typeof computations;

/** Runs one of the computations beside the rest of the process. */
export function compute<N extends keyof Computations>(
  computing: Computing,
  name: N,
  ...parts: Parameters<Computations[N]>
): Promise<ReturnType<Computations[N]>> {
  return computing.run(name, parts) as Promise<ReturnType<Computations[N]>>;
}

/**
 * The computation of that name, run here and now: what stands at the other end of the port.
 *
 * @throws RangeError on a name that is not in the table; whatever the computation throws
 */
export function computeHere(name: string, parts: readonly unknown[]): unknown {
  const found = Object.entries(computations).find(([each]) => each === name)?.[1];
  if (found === undefined) throw new RangeError(`there is no computation ${name}`);
  return (found as (...each: readonly unknown[]) => unknown)(...parts);
}
