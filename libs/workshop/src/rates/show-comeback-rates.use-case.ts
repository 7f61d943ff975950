import { rateOfCounts, type RateOutcome } from '@endfloat/reliability';
import type { Clock } from '../ports/clock.port.js';
import type { Caller } from '../ports/roles.js';
import type { RateDimension, RateTally } from '../ports/settled-jobs.port.js';
import type { UnitOfWork } from '../ports/unit-of-work.port.js';
import { askSettledJobs, type RateBasis, type RateQuery } from './ask-settled-jobs.js';
import { groupLabels } from './group-labels.js';

export interface RateGroup extends RateTally {
  readonly label: string | null;
  readonly rate: RateOutcome;
}

export interface ComebackRatesView {
  readonly basis: RateBasis;
  readonly by: RateDimension | null;
  readonly groups: readonly RateGroup[];
  /** groups with the fewest jobs that are not shown */
  readonly groupsLeftOut: number;
}

/** Groups of one answer at most. */
export const mostGroups = 1000;

/** Which repairs come back, by one dimension, each with what the number rests on. */
export class ShowComebackRatesUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    query: RateQuery & { readonly by?: RateDimension | undefined },
  ): Promise<ComebackRatesView> {
    const { by, ...narrowed } = query;
    return askSettledJobs(
      { work: this.work, clock: this.clock },
      caller,
      narrowed,
      async ({ tx, reads, question, basis }) => {
        const all = by === undefined ? [await reads.total(question)] : await reads.tally(question, by);
        const tallies = inOrder(largest(all), by);
        const labels =
          by === undefined
            ? new Map<string, string>()
            : await groupLabels(
                tx,
                by,
                tallies.map(({ value }) => value),
              );
        const groups = tallies.map((tally) => ({
          ...tally,
          label: tally.value === null ? null : (labels.get(tally.value) ?? null),
          rate: rateOfCounts(tally),
        }));
        return { basis, by: by ?? null, groups, groupsLeftOut: all.length - groups.length };
      },
    );
  }
}

function largest(tallies: readonly RateTally[]): readonly RateTally[] {
  if (tallies.length <= mostGroups) return tallies;
  const jobs = (tally: RateTally): number => tally.atRisk + tally.pending + tally.notSeenSince;
  const kept = new Set([...tallies].sort((a, b) => jobs(b) - jobs(a)).slice(0, mostGroups));
  return tallies.filter((tally) => kept.has(tally));
}

/** Ages by number; everything else as it came, by value. */
export function inOrder<T extends { readonly value: string | null }>(
  items: readonly T[],
  by: RateDimension | undefined,
): readonly T[] {
  if (by !== 'vehicleAge') return items;
  const age = ({ value }: T): number => (value === null ? Infinity : Number(value));
  return [...items].sort((a, b) => age(a) - age(b));
}
