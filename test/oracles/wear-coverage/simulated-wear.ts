import { normalQuantile } from '@endfloat/statistics';
import type { WearPoint } from '@endfloat/wear';

/** Everything about the simulated parts that is known here and not to the method under test. Invented figures. */
export const truth = {
  limit: 0.2,
  start: { mean: 0.03, sd: 0.01 },
  logRate: { mean: Math.log(1e-6), sd: 0.4 },
  /** variance of wear over its mean, mm */
  scale: 0.004,
  u: 0.02,
} as const;

export interface SimulatedPart {
  readonly points: readonly WearPoint[];
  /** mean wear a km of this part, mm */
  readonly rate: number;
  /** km from the last reading to the limit, 0 where it was reached before */
  readonly toLimit: number;
}

/** How the readings of a part are taken. */
export interface ReadingPlan {
  readonly readings: number;
  /** standard deviation of the bias of each instrument; the instrument changes half-way where it is above 0 */
  readonly biasU: number;
}

/** A part whose wear is a gamma process, read with errors. */
export function simulatedPart(next: () => number, { readings, biasU }: ReadingPlan): SimulatedPart {
  const normal = (): number => normalQuantile(next());
  const rate = Math.exp(truth.logRate.mean + truth.logRate.sd * normal());
  const worn = (km: number): number => gamma(next, (rate * km) / truth.scale) * truth.scale;
  const biases = [biasU * normal(), biasU * normal()] as const;
  let [level, km] = [truth.start.mean + truth.start.sd * normal(), 0];
  const points = Array.from({ length: readings }, (_, index): WearPoint => {
    const driven = 8000 + 14_000 * next();
    level += worn(driven);
    km += driven;
    const which = biasU > 0 && 2 * index >= readings ? 1 : 0;
    return {
      km,
      value: level + biases[which] + truth.u * normal(),
      u: truth.u,
      instrumentId: `dial-${String(which)}`,
      biasU,
    };
  });
  const step = 250;
  let toLimit = 0;
  while (level < truth.limit) {
    level += worn(step);
    toLimit += step;
  }
  return { points, rate, toLimit };
}

/** Marsaglia & Tsang (2000), ACM TOMS 26:363-372. */
function gamma(next: () => number, shape: number): number {
  if (shape < 1) return gamma(next, shape + 1) * next() ** (1 / shape);
  const d = shape - 1 / 3;
  for (;;) {
    const x = normalQuantile(next());
    const v = (1 + x / Math.sqrt(9 * d)) ** 3;
    if (v > 0 && Math.log(next()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
  }
}
