import {
  fitLifeDistribution,
  kaplanMeier,
  lifeMoments,
  lifeQuantile,
  lifeScale,
  turnbullEstimate,
  weibullShape,
  type LifeFit,
  type LifeFitOutcome,
  type WaldEstimate,
} from '@endfloat/statistics';
import {
  censoredSample,
  countLives,
  knownLives,
  lifeSample,
  type KnownLife,
  type LifeCounts,
} from './life-rows.js';
import type { PartLife } from './part-life.js';

/** Share of parts still going by an age. */
export interface SurvivorPoint {
  readonly age: number;
  /** Where the age is known to an interval only: its beginning; else the age itself. */
  readonly fromAge: number;
  readonly surviving: number;
  readonly standardError: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  /** parts at risk just before; null for intervals, where it is not defined */
  readonly atRisk: number | null;
}

export type SurvivorCurve =
  | {
      readonly kind: 'estimated';
      readonly method: 'kaplanMeier' | 'turnbull';
      readonly points: readonly SurvivorPoint[];
      readonly level: number;
    }
  | { readonly kind: 'noEvents' }
  | { readonly kind: 'insufficientData'; readonly needed: number; readonly got: number }
  | { readonly kind: 'notConverged' }
  /** lives between inspections together with late entries: the estimate need not exist */
  | { readonly kind: 'intervalsWithLateEntry' };

/** Life by which a share of the parts has ended. */
export interface BLife extends WaldEstimate {
  readonly share: number;
}

export type FittedLife =
  | {
      readonly kind: 'estimated';
      readonly family: 'weibull' | 'lognormal';
      readonly fit: LifeFit;
      /** of a Weibull distribution; below 1 early failures, above 1 wear */
      readonly shape: WaldEstimate | null;
      readonly scale: WaldEstimate;
      readonly mean: number;
      readonly bLives: readonly BLife[];
      /** a B-life lies beyond the greatest age at which a part was seen */
      readonly isBeyondData: boolean;
    }
  | Exclude<LifeFitOutcome, LifeFit>;

export interface ComponentLives {
  readonly counts: LifeCounts;
  readonly greatestAge: number;
  readonly curve: SurvivorCurve;
  readonly weibull: FittedLife;
  readonly lognormal: FittedLife;
  /** the family with the lower criterion of Akaike; null where fewer than both were estimated */
  readonly closer: 'weibull' | 'lognormal' | null;
}

export interface LivesOptions {
  /** finest life that is told apart, for lives of 0; default 1 (a day, a km) */
  readonly grain?: number;
  /** two-sided; default 0.95 */
  readonly level?: number;
  /** default 0.1 and 0.5 */
  readonly shares?: readonly number[];
}

/**
 * Lives of a kind of part from what is known of each: survivor curve, Weibull and lognormal distribution with the lives by
 * which given shares have ended, by all kinds of censoring and late entry.
 *
 * @param lives    answers of partLife on one scale
 * @param options  grain of the scale, level, shares
 * @returns each estimate with its own reason where there is none; a distribution needs two lives that have ended and
 *   are not met by one and the same life; `noEvents` for the curve where all last still
 * @throws RangeError on a grain that is not positive, a share or level outside (0, 1)
 * @source Kaplan & Meier (1958), JASA 53; Turnbull (1976), JRSS B 38; Meeker & Escobar (1998), ch. 7, 8, 11
 * @oracle heat exchanger tubes and generator fans published in Meeker & Escobar (1998) and Nelson (1982), in the spec
 * @example componentLives([{ kind: 'leftOut', why: 'fittedUnknown' }]).curve // => { kind: 'insufficientData', needed: 1, got: 0 }
 */
export function componentLives(lives: readonly PartLife[], options: LivesOptions = {}): ComponentLives {
  const { grain = 1, level = 0.95, shares = [0.1, 0.5] } = options;
  if (!(grain > 0 && Number.isFinite(grain)))
    throw new RangeError(`the grain must be positive and finite, got ${grain}`);
  const outside = shares.find((share) => !(share > 0 && share < 1));
  if (outside !== undefined)
    throw new RangeError(`a share must lie strictly between 0 and 1, got ${outside}`);
  const known = knownLives(lives);
  const ends = known.flatMap(({ lower, upper }) => [lower, upper]).filter(Number.isFinite);
  const greatestAge = ends.reduce((most, each) => Math.max(most, each), 0);
  const fitted = (family: 'weibull' | 'lognormal') =>
    fittedLife(family, known, { grain, level, shares, greatestAge });
  const [weibull, lognormal] = [fitted('weibull'), fitted('lognormal')];
  return {
    counts: countLives(lives),
    greatestAge,
    curve: survivorCurve(known, level),
    weibull,
    lognormal,
    closer:
      weibull.kind === 'estimated' && lognormal.kind === 'estimated'
        ? weibull.fit.akaike <= lognormal.fit.akaike
          ? 'weibull'
          : 'lognormal'
        : null,
  };
}

function fittedLife(
  family: 'weibull' | 'lognormal',
  known: readonly KnownLife[],
  options: Required<LivesOptions> & { readonly greatestAge: number },
): FittedLife {
  const { grain, level, shares, greatestAge } = options;
  const fit = fitLifeDistribution(family, lifeSample(known, grain));
  if (fit.kind !== 'estimated') return fit;
  const bLives = shares.map((share) => ({ share, ...lifeQuantile(fit, share, level) }));
  return {
    kind: 'estimated',
    family,
    fit,
    shape: family === 'weibull' ? weibullShape(fit, level) : null,
    scale: lifeScale(fit, level),
    mean: lifeMoments(fit).mean,
    bLives,
    isBeyondData: bLives.some(({ estimate }) => estimate > greatestAge),
  };
}

function survivorCurve(known: readonly KnownLife[], level: number): SurvivorCurve {
  const simple = censoredSample(known);
  if (simple !== undefined) {
    const curve = kaplanMeier(simple, { level });
    if (curve.kind === 'insufficientData')
      return { kind: 'insufficientData', needed: curve.needed, got: curve.got };
    if (curve.kind === 'noEvents') return { kind: 'noEvents' };
    const points = curve.ages.map((age, i) => ({
      age,
      fromAge: age,
      surviving: curve.survival[i]!,
      standardError: curve.standardErrors[i]!,
      lower: curve.lower[i]!,
      upper: curve.upper[i]!,
      atRisk: curve.atRisk[i]!,
    }));
    return { kind: 'estimated', method: 'kaplanMeier', points, level };
  }
  if (known.some(({ entry }) => entry > 0)) return { kind: 'intervalsWithLateEntry' };
  return turnbullCurve(known, level);
}

function turnbullCurve(known: readonly KnownLife[], level: number): SurvivorCurve {
  const { lower, upper } = lifeSample(known, 1);
  const curve = turnbullEstimate({ lower, upper }, { level });
  if (curve.kind === 'insufficientData')
    return { kind: 'insufficientData', needed: curve.needed, got: curve.got };
  if (curve.kind === 'notConverged') return { kind: 'notConverged' };
  const points = curve.upperAges.flatMap((age, i) =>
    Number.isFinite(age)
      ? [
          {
            age,
            fromAge: curve.lowerAges[i]!,
            surviving: curve.survival[i]!,
            standardError: curve.standardErrors[i]!,
            lower: curve.lower[i]!,
            upper: curve.upper[i]!,
            atRisk: null,
          },
        ]
      : [],
  );
  return { kind: 'estimated', method: 'turnbull', points, level };
}
