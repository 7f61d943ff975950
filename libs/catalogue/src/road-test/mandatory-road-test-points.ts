import { roadTestPoints } from './road-test-points.js';

/**
 * Ids of the road-test points that must pass before a job with these complaints is released, in driving order.
 *
 * @param symptomIds  coded complaints of the job; ids the catalogue does not know add nothing
 * @returns each point once; empty for no complaint
 * @example mandatoryRoadTestPoints(['stalls-cold']) // => ['cold-start-idle', 'cold-first-stop']
 */
export function mandatoryRoadTestPoints(symptomIds: readonly string[]): readonly string[] {
  const asked = new Set(symptomIds);
  return roadTestPoints
    .filter((point) => point.mandatoryFor.some((id) => asked.has(id)))
    .map((point) => point.id);
}
