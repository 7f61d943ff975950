import { normalQuantile } from '../distributions/normal.js';

/**
 * Forms of the confidence limits of a survival curve: `plain` S ± z se, cut to [0, 1]; `log` on ln S, cut at 1;
 * `logLog` on ln(−ln S), which stays inside (0, 1).
 */
export const curveLimitForms = ['plain', 'log', 'logLog'] as const;
export type CurveLimitForm = (typeof curveLimitForms)[number];

export interface Limits {
  readonly lower: number | null;
  readonly upper: number | null;
}

/** Two-sided normal multiplier of a confidence level. */
export const multiplierOf = (level: number): number => normalQuantile(0.5 + level / 2);

/**
 * Limits of a survival probability from the standard error of its logarithm, σ; null where there are none: at S = 0,
 * and in the logLog form at S = 1.
 */
export function curveLimits(
  survival: number,
  sigma: number,
  multiplier: number,
  form: CurveLimitForm,
): Limits {
  if (survival <= 0 || !Number.isFinite(sigma)) return { lower: null, upper: null };
  const reach = multiplier * sigma;
  switch (form) {
    case 'plain':
      return {
        lower: Math.max(0, survival * (1 - reach)),
        upper: Math.min(1, survival * (1 + reach)),
      };
    case 'log':
      return { lower: survival * Math.exp(-reach), upper: Math.min(1, survival * Math.exp(reach)) };
    case 'logLog': {
      if (survival >= 1) return { lower: null, upper: null };
      const hazard = -Math.log(survival);
      const factor = Math.exp(reach / hazard);
      return { lower: Math.exp(-hazard * factor), upper: Math.exp(-hazard / factor) };
    }
  }
}
