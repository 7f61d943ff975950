import { compareGroups, type ComparedGroup, type GroupComparison } from '@endfloat/reliability';
import type { Clock } from '../ports/clock.port.js';
import type { Caller } from '../ports/roles.js';
import type { RateDimension } from '../ports/settled-jobs.port.js';
import type { UnitOfWork } from '../ports/unit-of-work.port.js';
import { askSettledJobs, type RateBasis, type RateQuery } from './ask-settled-jobs.js';
import { groupLabels } from './group-labels.js';
import { inOrder } from './show-comeback-rates.use-case.js';

export interface ComebackComparisonView extends Omit<GroupComparison, 'groups'> {
  readonly basis: RateBasis;
  readonly by: RateDimension;
  readonly strata: number;
  readonly groups: readonly (Omit<ComparedGroup, 'group'> & {
    readonly value: string | null;
    readonly label: string | null;
  })[];
  readonly groupsLeftOut: number;
}

/** Groups of one comparison at most: each has its own limits to work out. */
const mostCompared = 500;

/** Whether a difference is real: each group against what its own mix of jobs leads to expect. */
export class CompareComebacksUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    query: RateQuery & { readonly by: RateDimension },
  ): Promise<ComebackComparisonView> {
    const { by, ...narrowed } = query;
    return askSettledJobs(
      { work: this.work, clock: this.clock },
      caller,
      narrowed,
      async ({ tx, reads, question, settings, basis }) => {
        const tallies = await reads.tallyByMix(question, by);
        const strata = tallies.filter(({ value }) => value === undefined);
        const sizes = new Map<string | null, number>();
        for (const { value, atRisk } of tallies)
          if (value !== undefined) sizes.set(value, (sizes.get(value) ?? 0) + atRisk);
        const kept = [...sizes.keys()].sort((a, b) => sizes.get(b)! - sizes.get(a)!).slice(0, mostCompared);
        // Groups are numbered, so that a missing value is no text that a real value could have.
        const numberOf = new Map(kept.map((value, index) => [value, String(index)]));
        const cells = tallies.flatMap(({ value, mix, events, atRisk }) => {
          const group = value === undefined ? undefined : numberOf.get(value);
          return group === undefined ? [] : [{ group, stratum: mix, events, atRisk }];
        });
        const compared = compareGroups(
          cells,
          strata.map(({ mix, events, atRisk }) => ({ stratum: mix, events, atRisk })),
          Math.max(1, settings.rankingMinimumJobs),
        );
        const labels = await groupLabels(tx, by, kept);
        const groups = compared.groups
          .map(({ group, ...rest }) => {
            const value = kept[Number(group)] ?? null;
            return { ...rest, value, label: value === null ? null : (labels.get(value) ?? null) };
          })
          .sort((a, b) => (a.value === null ? 1 : b.value === null ? -1 : a.value < b.value ? -1 : 1));
        return {
          ...compared,
          basis,
          by,
          strata: strata.length,
          groups: inOrder(groups, by),
          groupsLeftOut: sizes.size - kept.length,
        };
      },
    );
  }
}
