import { requireProbability } from '../distributions/checked-arguments.js';

/** A stated probability and what came of it. */
export interface Forecast {
  readonly probability: number;
  readonly occurred: boolean;
}

/** Refuses probabilities outside [0, 1]. */
export function requireForecasts(forecasts: readonly Forecast[]): void {
  forecasts.forEach(({ probability }, i) => requireProbability(`probability of forecast ${i}`, probability));
}
