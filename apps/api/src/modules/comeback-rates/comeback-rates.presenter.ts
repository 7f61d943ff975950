import type {
  ComebackComparisonResponse,
  ComebackGroupDto,
  ComebackJobDto,
  ComebackRatesResponse,
  ComebackComparedGroupDto,
} from '@endfloat/contracts';
import type { ComebackComparisonView, ComebackRatesView, RatedJob } from '@endfloat/workshop';
import { presentAmount, presentBasis, presentRate } from './comeback-basis.presenter.js';

/** Makes the link to the jobs of a group; undefined value: all jobs of the question. */
export type JobsLink = (value: string | null | undefined) => string;

export function presentRates(
  { basis, by, groups, groupsLeftOut }: ComebackRatesView,
  jobs: JobsLink,
  options: { readonly withCost: boolean },
): ComebackRatesResponse {
  return {
    ...presentBasis(basis, 'rates'),
    by,
    groups: groups.map((group): ComebackGroupDto => ({
      value: group.value,
      label: group.label,
      rate: presentRate(group, group.rate),
      pending: group.pending,
      pendingComebacks: group.pendingComebacks,
      notSeenSince: group.notSeenSince,
      seenOnlyInsideWindow: group.seenOnlyInsideWindow,
      notAttributed: group.notAttributed,
      comebacks: group.comebacks,
      cost: options.withCost ? presentAmount(group.cost, basis.currency) : null,
      costGaps: options.withCost ? group.costGaps : 0,
      jobs: jobs(by === null ? undefined : group.value),
    })),
    groupsLeftOut,
  };
}

export function presentComparison(view: ComebackComparisonView, jobs: JobsLink): ComebackComparisonResponse {
  const { basis, by, overall, strata, minimum, priorJobs, priorFrom, groups, groupsLeftOut } = view;
  return {
    ...presentBasis(basis, 'comparison'),
    by,
    overall: presentRate(overall, overall),
    strata,
    minimumJobs: minimum,
    priorJobs,
    priorFrom,
    groups: groups.map((group) => presentCompared(group, jobs)),
    groupsLeftOut,
  };
}

function presentCompared(
  {
    value,
    label,
    rate,
    events,
    atRisk,
    expected,
    expectedRate,
    against,
  }: ComebackComparisonView['groups'][number],
  jobs: JobsLink,
): ComebackComparedGroupDto {
  const group = {
    value,
    label,
    rate: presentRate({ events, atRisk }, rate),
    expected,
    expectedRate: expectedRate === null ? null : Math.min(1, expectedRate),
    jobs: jobs(value),
  };
  if (against.kind === 'belowMinimum') {
    return { ...group, result: { kind: 'belowMinimum', needed: against.needed, got: against.got } };
  }
  const { ratio, inner, outer, finding, shrunken, rank } = against;
  const level = 0.95;
  return {
    ...group,
    result: {
      kind: 'compared',
      ratio:
        ratio.kind === 'estimated'
          ? {
              value: ratio.ratio,
              interval: {
                low: ratio.interval.lower,
                high: ratio.interval.upper,
                level,
                method: 'exactPoisson',
              },
              finding: ratio.finding,
            }
          : null,
      funnel: [
        { coverage: 0.95, ...bounded(inner) },
        { coverage: 0.998, ...bounded(outer) },
      ],
      finding,
      shrunken: {
        value: shrunken.value,
        interval: {
          low: shrunken.interval.lower,
          high: shrunken.interval.upper,
          level,
          method: 'betaPosterior',
        },
      },
      rank,
    },
  };
}

const bounded = ({ lower, upper }: { readonly lower: number; readonly upper: number }) => ({
  lower: Math.min(1, lower),
  upper: Math.min(1, upper),
});

export function presentRatedJob({ row, outcome, currency }: RatedJob, withCost: boolean): ComebackJobDto {
  return {
    jobId: row.jobId,
    vehicleId: row.vehicleId,
    releasedAt: row.releasedAt,
    closesAt: row.closesAt,
    closedBy: row.closedBy,
    outcome,
    comebackAt: row.comebackAt,
    lastSeenAt: row.lastSeenAt,
    comebacks: row.comebacks,
    comebackIds: row.repeats.slice(0, 1000).map(({ comebackId }) => comebackId),
    cost: withCost ? presentAmount(row.cost, currency) : null,
    mix: row.mix,
  };
}
