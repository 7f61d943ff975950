import type { FixedRule } from '@endfloat/decision/simulator';
import { fixedRules, simulatedWorld } from '@endfloat/decision/simulator';
import type { FleetShare, Predicted, ThinkingPolicy } from './play-fleet.js';
import { renewalsOfRules, ruleKey } from './play-fleet.js';

/** A mean over vans with its standard error. */
export interface MeanOfVans {
  readonly mean: number;
  readonly standardError: number;
}

/** One policy in one fleet. */
export interface PolicyFigures {
  readonly policy: ThinkingPolicy | FixedRule;
  /** renewal that suits a fixed rule best in this fleet; null for the others */
  readonly renewal: string | null;
  /** money per 100,000 km per van */
  readonly cost: MeanOfVans;
  /** mean cost over the clairvoyant's, and the standard error of the difference in the same unit */
  readonly ratio: MeanOfVans;
  /** Endfloat after learning less this policy, money per 100,000 km, van by van */
  readonly learnedLess: MeanOfVans;
  readonly priorsLess: MeanOfVans;
  readonly informedLess: MeanOfVans;
}

/** Predictions against what came of them. */
export interface Calibration {
  readonly brier: number;
  /** Brier score of always predicting the overall share */
  readonly brierOfShare: number;
  readonly bins: readonly {
    readonly lower: number;
    readonly upper: number;
    readonly count: number;
    readonly predicted: number;
    readonly observed: number;
  }[];
}

const perHundredThousand = 100_000 / simulatedWorld.planningDistanceKm;

/** Mean and standard error. */
export function meanOfVans(values: readonly number[]): MeanOfVans {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) * (value - mean), 0);
  return { mean, standardError: Math.sqrt(squares / (values.length - 1) / values.length) };
}

const difference = (one: readonly number[], other: readonly number[]): MeanOfVans =>
  meanOfVans(one.map((value, k) => (value - other[k]!) * perHundredThousand));

/** The best renewal of a fixed rule in hindsight. */
function bestOfRule(share: FleetShare, rule: FixedRule): { renewal: string; costs: readonly number[] } {
  return renewalsOfRules
    .map((renewal) => ({ renewal, costs: share.costs[ruleKey(rule, renewal)]! }))
    .reduce((best, each) => (meanOfVans(each.costs).mean < meanOfVans(best.costs).mean ? each : best));
}

/**
 * Figures of every policy in one fleet.
 *
 * @param share  all its vans, two or more
 * @returns fixed rules with their best renewal, then the thinking policies
 */
export function figuresOf(share: FleetShare): readonly PolicyFigures[] {
  const reference = share.costs['clairvoyant']!;
  const base = meanOfVans(reference).mean;
  const learned = share.costs['endfloatLearned']!;
  const priors = share.costs['endfloatPriors']!;
  const informed = share.costs['informed']!;
  const figures = (
    policy: PolicyFigures['policy'],
    renewal: string | null,
    costs: readonly number[],
  ): PolicyFigures => {
    const ratio = meanOfVans(costs).mean / base;
    const rest = meanOfVans(costs.map((cost, k) => cost - ratio * reference[k]!));
    return {
      policy,
      renewal,
      cost: meanOfVans(costs.map((cost) => cost * perHundredThousand)),
      ratio: { mean: ratio, standardError: rest.standardError / base },
      learnedLess: difference(learned, costs),
      priorsLess: difference(priors, costs),
      informedLess: difference(informed, costs),
    };
  };
  return [
    ...fixedRules.map((rule) => {
      const { renewal, costs } = bestOfRule(share, rule);
      return figures(rule, renewal, costs);
    }),
    figures('endfloatPriors', null, priors),
    figures('endfloatLearned', null, learned),
    figures('informed', null, informed),
    figures('clairvoyant', null, reference),
  ];
}

/**
 * Brier score and reliability table.
 *
 * @param predictions  chances and what came of them; one or more
 * @returns ten bins of equal width, empty ones left out
 */
export function calibrationOf(predictions: readonly Predicted[]): Calibration {
  const count = predictions.length;
  const share = predictions.filter(([, cameBack]) => cameBack).length / count;
  const brier = predictions.reduce((sum, [p, cameBack]) => sum + (p - Number(cameBack)) ** 2, 0) / count;
  const bins = Array.from({ length: 10 }, (_, k) => {
    const inside = predictions.filter(([p]) => Math.min(9, Math.floor(p * 10)) === k);
    return {
      lower: k / 10,
      upper: (k + 1) / 10,
      count: inside.length,
      predicted: inside.reduce((sum, [p]) => sum + p, 0) / Math.max(1, inside.length),
      observed: inside.filter(([, cameBack]) => cameBack).length / Math.max(1, inside.length),
    };
  });
  return { brier, brierOfShare: share * (1 - share), bins: bins.filter((bin) => bin.count > 0) };
}

/** Joins the shares of one fleet, in the order of its vans. */
export function joinedShares(shares: readonly FleetShare[]): FleetShare {
  const join = <T>(lists: (readonly T[] | undefined)[]): T[] => lists.flatMap((list) => [...(list ?? [])]);
  const names = Object.keys(shares[0]!.costs);
  const policies = Object.keys(shares[0]!.intervals) as ThinkingPolicy[];
  return {
    costs: Object.fromEntries(names.map((name) => [name, join(shares.map(({ costs }) => costs[name]))])),
    predictions: Object.fromEntries(
      policies.map((policy) => [policy, join(shares.map(({ predictions }) => predictions[policy]))]),
    ),
    intervals: Object.fromEntries(
      policies.map((policy) => [policy, join(shares.map(({ intervals }) => intervals[policy]))]),
    ),
    yearlyKm: join(shares.map(({ yearlyKm }) => yearlyKm)),
  };
}
