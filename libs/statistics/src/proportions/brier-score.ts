import { insufficientData, type InsufficientData } from '../descriptive/outcomes.js';
import { requireForecasts, type Forecast } from './forecast.js';

export interface BrierScore {
  readonly kind: 'estimated';
  readonly forecasts: number;
  /** Mean squared difference between probability and outcome: 0 perfect, 1 always wrong with certainty. */
  readonly score: number;
  /** Share of forecasts whose event occurred. */
  readonly baseRate: number;
  /** Score of always stating the base rate of these same forecasts. */
  readonly referenceScore: number;
  /** 1 − score / reference score: above 0 better than the base rate; null when the event always or never occurred. */
  readonly skill: number | null;
}

/**
 * Brier score of probability forecasts of a yes-or-no event, in the half form (one class, range 0 to 1).
 *
 * @param forecasts  probabilities with outcomes, any order
 * @returns score, base rate and skill against it; `insufficientData` without a forecast
 * @throws RangeError on a probability outside [0, 1]
 * @source Brier (1950), Monthly Weather Review 78:1–3 (whose own form is twice this one)
 * @oracle cases worked by hand in the spec
 * @example brierScore([{ probability: 0.5, occurred: true }]) // => { kind: 'estimated', score: 0.25, baseRate: 1, skill: null }
 */
export function brierScore(forecasts: readonly Forecast[]): BrierScore | InsufficientData {
  requireForecasts(forecasts);
  const n = forecasts.length;
  if (n === 0) return insufficientData('forecasts', 1, 0);
  const score =
    forecasts.reduce((sum, { probability, occurred }) => sum + (probability - Number(occurred)) ** 2, 0) / n;
  const baseRate = forecasts.filter(({ occurred }) => occurred).length / n;
  const referenceScore = baseRate * (1 - baseRate);
  return {
    kind: 'estimated',
    forecasts: n,
    score,
    baseRate,
    referenceScore,
    skill: referenceScore === 0 ? null : 1 - score / referenceScore,
  };
}
