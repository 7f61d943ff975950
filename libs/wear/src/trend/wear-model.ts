/**
 * Wear of one kind of part in one fleet. Level at km x since fitting: start + cumulative wear; wear over dx has mean
 * rate x dx and variance scale x rate x dx (the first two moments of a gamma process, never less than nothing in the mean);
 * start and logarithm of the rate differ from part to part.
 *
 * Levels are counted in the direction of wear: for a falling characteristic everything is turned round.
 */
export interface WearModel {
  readonly start: { readonly mean: number; readonly sd: number };
  /** natural logarithm of the rate in units per km */
  readonly logRate: { readonly mean: number; readonly sd: number };
  /** unit of the characteristic: variance of wear over its mean */
  readonly scale: number;
  /** null: stated, not learned */
  readonly learned: LearnedFrom | null;
}

/** How well a fleet showed its model. */
export interface LearnedFrom {
  readonly parts: number;
  /** standard uncertainty of the mean start and of the mean logarithm of the rate */
  readonly startMeanU: number;
  readonly logRateMeanU: number;
  /** standard uncertainty of the logarithm of `logRate.sd` */
  readonly logSpreadDoubt: number;
  /** standard uncertainty of the logarithm of `scale` */
  readonly logScaleDoubt: number;
  /** of these two */
  readonly correlation: number;
}

/** How the rate is known before a part's own readings are looked at. */
export type RatePrior =
  | { readonly kind: 'lognormal'; readonly mean: number; readonly sd: number }
  /** every rate above 0 equally likely up to the greatest that the points could show */
  | { readonly kind: 'flat'; readonly greatest: number };

/** One way the rates of a fleet may be spread and wear may be uneven. */
export interface WearVariant {
  readonly rate: RatePrior;
  readonly scale: number;
  readonly weight: number;
}

/** What a part's readings are combined with. */
export interface WearPrior {
  readonly start: { readonly mean: number; readonly sd: number };
  readonly variants: readonly WearVariant[];
  /** `byReadings`: weights are beliefs from before; `asGiven`: the readings have been used for them already */
  readonly weighing: 'byReadings' | 'asGiven';
}

/** Prior of a part where the model is taken as exactly true. */
export const knownPrior = ({ start, logRate, scale }: WearModel): WearPrior => ({
  start,
  variants: [{ rate: { kind: 'lognormal', ...logRate }, scale, weight: 1 }],
  weighing: 'asGiven',
});

/** Greatest doubt about the logarithm of a spread or scale that is let through: beyond, a fleet says nothing about it. */
const greatestDoubt = 1.2;

/**
 * Prior of a part where the model was learned: its means, the spread of rates and the scale are only known as well as
 * the fleet showed them. Doubt of the means adds to the spreads; for the other two stand four variants (third-degree
 * cubature in two dimensions).
 */
export function fleetPrior(model: WearModel): WearPrior {
  const { learned, logRate, scale } = model;
  if (learned === null) return knownPrior(model);
  const [first, second] = [learned.logSpreadDoubt, learned.logScaleDoubt].map((u) =>
    Math.min(u, greatestDoubt),
  ) as [number, number];
  const along = Math.SQRT2 * learned.correlation * second;
  const across = Math.SQRT2 * Math.sqrt(Math.max(0, 1 - learned.correlation ** 2)) * second;
  const steps = [
    [Math.SQRT2 * first, along],
    [-Math.SQRT2 * first, -along],
    [0, across],
    [0, -across],
  ] as const;
  return {
    start: { mean: model.start.mean, sd: Math.hypot(model.start.sd, learned.startMeanU) },
    weighing: 'asGiven',
    variants: steps.map(([ofSpread, ofScale]) => ({
      rate: {
        kind: 'lognormal',
        mean: logRate.mean,
        sd: Math.hypot(logRate.sd * Math.exp(ofSpread), learned.logRateMeanU),
      },
      scale: scale * Math.exp(ofScale),
      weight: 0.25,
    })),
  };
}

/** Beyond this spread of log rate a model says nothing, and its numbers leave double precision. */
const widest = 5;

/** Refuses a model whose spreads are not positive or whose numbers are not finite. */
export function requireWearModel({ start, logRate, scale, learned }: WearModel): void {
  const known = [start.mean, start.sd, logRate.mean, logRate.sd, scale];
  if (!known.every(Number.isFinite)) throw new RangeError('a wear model has finite numbers only');
  if (!(start.sd > 0 && logRate.sd > 0 && scale > 0))
    throw new RangeError('spreads of a wear model are positive');
  if (logRate.sd > widest) throw new RangeError('rates differ by a factor of exp(5) at most');
  if (learned !== null) requireLearned(learned);
}

function requireLearned(learned: LearnedFrom): void {
  const { parts, startMeanU, logRateMeanU, logSpreadDoubt, logScaleDoubt, correlation } = learned;
  const doubts = [startMeanU, logRateMeanU, logSpreadDoubt, logScaleDoubt];
  if (!doubts.every((doubt) => doubt >= 0 && Number.isFinite(doubt))) {
    throw new RangeError('a learned model has finite doubts that are not negative');
  }
  if (logRateMeanU > widest) throw new RangeError('a mean rate is known to a factor of exp(5) at least');
  if (!(parts >= 1 && Math.abs(correlation) <= 1))
    throw new RangeError('a learned model has a part and a correlation');
}
