import {
  betaBinomialFit,
  betaPosterior,
  funnelLimits,
  observedToExpected,
  type Interval,
  type ObservedToExpectedOutcome,
} from '@endfloat/statistics';
import { rateOfCounts, type RateOutcome } from './rate-of-counts.js';

/** Jobs of one group and one stratum of the mix. */
export interface MixCell {
  readonly group: string;
  readonly stratum: string;
  readonly events: number;
  readonly atRisk: number;
}

/** All jobs of one stratum, each counted once. */
export type StratumTotal = Omit<MixCell, 'group'>;

export const funnelFindings = ['aboveOuter', 'aboveInner', 'inside', 'belowInner', 'belowOuter'] as const;
export type FunnelFinding = (typeof funnelFindings)[number];

/** Coverage of the two pairs of funnel limits. */
export const funnelCoverages = { inner: 0.95, outer: 0.998 } as const;

/** Jobs that the prior of a shrunken rate is worth where the groups themselves do not tell; judgement. */
export const usualPriorJobs = 50;

export interface ComparedGroup {
  readonly group: string;
  readonly events: number;
  readonly atRisk: number;
  readonly rate: RateOutcome;
  /** comebacks that jobs of the same mix had in the whole shop */
  readonly expected: number;
  /** expected / jobs; null without a job */
  readonly expectedRate: number | null;
  readonly against:
    | { readonly kind: 'belowMinimum'; readonly needed: number; readonly got: number }
    | {
        readonly kind: 'compared';
        readonly ratio: ObservedToExpectedOutcome;
        /** limits around the expected rate of this group's own mix */
        readonly inner: Interval;
        readonly outer: Interval;
        readonly finding: FunnelFinding;
        readonly shrunken: {
          readonly value: number;
          readonly interval: Interval;
          readonly priorJobs: number;
        };
        /** 1 is the lowest shrunken rate; equal rates share a rank */
        readonly rank: number;
      };
}

export interface GroupComparison {
  readonly groups: readonly ComparedGroup[];
  readonly overall: RateOutcome & { readonly events: number; readonly atRisk: number };
  readonly priorJobs: number;
  readonly priorFrom: 'fittedToGroups' | 'judgement';
  readonly minimum: number;
}

function priorJobsOf(groups: readonly { readonly events: number; readonly atRisk: number }[]): number | null {
  if (groups.length < 5) return null;
  const fit = betaBinomialFit(groups.map(({ events, atRisk }) => ({ successes: events, trials: atRisk })));
  return fit.kind === 'estimated' ? Math.min(5000, Math.max(1, fit.alpha + fit.beta)) : null;
}

function findingOf(value: number, inner: Interval, outer: Interval): FunnelFinding {
  if (value > outer.upper) return 'aboveOuter';
  if (value < outer.lower) return 'belowOuter';
  if (value > inner.upper) return 'aboveInner';
  return value < inner.lower ? 'belowInner' : 'inside';
}

function compared(
  group: { readonly events: number; readonly atRisk: number; readonly expected: number },
  priorJobs: number,
  confidence: number,
): Omit<Extract<ComparedGroup['against'], { kind: 'compared' }>, 'rank'> {
  const { events, atRisk, expected } = group;
  const target = Math.min(1, expected / atRisk);
  const inner = funnelLimits(target, atRisk, funnelCoverages.inner);
  const outer = funnelLimits(target, atRisk, funnelCoverages.outer);
  // A target of 0 or 1 is no chance to shrink towards: half a job keeps the prior proper.
  const centre = Math.min(1 - 0.5 / (priorJobs + 1), Math.max(0.5 / (priorJobs + 1), target));
  const prior = { alpha: centre * priorJobs, beta: (1 - centre) * priorJobs };
  const posterior = betaPosterior(prior, { successes: events, trials: atRisk }, confidence);
  return {
    kind: 'compared',
    ratio: observedToExpected(events, expected, confidence),
    inner,
    outer,
    finding: findingOf(events / atRisk, inner, outer),
    shrunken: { value: posterior.mean, interval: posterior.interval, priorJobs },
  };
}

/**
 * Compares groups fairly: each with what jobs of its own mix had in the whole shop (indirect standardisation), with
 * funnel limits around that expectation and a rate shrunken towards it. Groups under a minimum get counts and interval,
 * and no finding, no shrunken rate and no rank.
 *
 * The reference contains the group's own jobs; a group that makes up a stratum alone is compared with itself there and
 * cannot differ. The prior is worth the number of jobs that a beta-binomial fit to the groups tells (1 to 5000) where
 * five or more reach the minimum and differ by more than chance, else 50 jobs (judgement). With g groups about g/20 lie
 * outside the inner limits, and g/500 outside the outer ones, where nothing differs.
 *
 * @param cells       jobs and comebacks by group and stratum; a job may belong to several groups
 * @param strata      the same by stratum, each job once
 * @param minimum     jobs under which nothing is compared; 1 or more
 * @param confidence  level of intervals, default 0.95
 * @returns groups by name; the overall rate
 * @throws RangeError on counts that are not whole or contradictory, a cell of an unknown stratum, a minimum below 1 or
 *   not whole, a confidence outside (0, 1)
 * @source Breslow & Day (1987), Statistical Methods in Cancer Research II, sec. 2.3; Spiegelhalter (2005), Stat. Med.
 *   24:1185-1202; shrinkage Gelman et al. (2013), Bayesian Data Analysis, sec. 5.1; the 50 jobs are judgement
 * @oracle a fair-comparison trap and a shrunken pair worked by hand in the spec
 */
export function compareGroups(
  cells: readonly MixCell[],
  strata: readonly StratumTotal[],
  minimum: number,
  confidence = 0.95,
): GroupComparison {
  if (!Number.isSafeInteger(minimum) || minimum < 1)
    throw new RangeError(`minimum must be 1 or more, got ${minimum}`);
  for (const { events, atRisk } of [...cells, ...strata])
    if (!(Number.isSafeInteger(events) && Number.isSafeInteger(atRisk) && events >= 0 && events <= atRisk))
      throw new RangeError(`counts must be whole, events not more than jobs, got ${events} of ${atRisk}`);
  const rates = new Map(
    strata.map(({ stratum, events, atRisk }) => [stratum, atRisk === 0 ? 0 : events / atRisk]),
  );
  const sums = new Map<string, { events: number; atRisk: number; expected: number }>();
  for (const { group, stratum, events, atRisk } of cells) {
    const rate = rates.get(stratum);
    if (rate === undefined) throw new RangeError(`a cell of the unknown stratum ${stratum.slice(0, 64)}`);
    const sum = sums.get(group) ?? { events: 0, atRisk: 0, expected: 0 };
    sum.events += events;
    sum.atRisk += atRisk;
    sum.expected += atRisk * rate;
    sums.set(group, sum);
  }
  const large = [...sums.values()].filter(({ atRisk }) => atRisk >= minimum);
  const fitted = priorJobsOf(large);
  const priorJobs = fitted ?? usualPriorJobs;
  const groups = [...sums.entries()]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([group, sum]) => ({
      group,
      ...sum,
      rate: rateOfCounts(sum, confidence),
      expectedRate: sum.atRisk === 0 ? null : sum.expected / sum.atRisk,
      against:
        sum.atRisk < minimum
          ? ({ kind: 'belowMinimum', needed: minimum, got: sum.atRisk } as const)
          : compared(sum, priorJobs, confidence),
    }));
  const values = groups.flatMap(({ against }) =>
    against.kind === 'compared' ? [against.shrunken.value] : [],
  );
  const total = {
    events: strata.reduce((sum, { events }) => sum + events, 0),
    atRisk: strata.reduce((sum, { atRisk }) => sum + atRisk, 0),
  };
  return {
    groups: groups.map(({ against, ...group }) => ({
      ...group,
      against:
        against.kind === 'belowMinimum'
          ? against
          : { ...against, rank: rankOf(against.shrunken.value, values) },
    })),
    overall: { ...total, ...rateOfCounts(total, confidence) },
    priorJobs,
    priorFrom: fitted === null ? 'judgement' : 'fittedToGroups',
    minimum,
  };
}

const rankOf = (value: number, values: readonly number[]): number =>
  1 + values.filter((other) => other < value).length;
