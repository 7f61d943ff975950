import type { Clock } from '../ports/clock.port.js';
import type { Caller } from '../ports/roles.js';
import type {
  CostDimension,
  CostTally,
  JobOutcomeFilter,
  SettledJobPosition,
  SettledJobRow,
} from '../ports/settled-jobs.port.js';
import type { UnitOfWork } from '../ports/unit-of-work.port.js';
import { askSettledJobs, type RateBasis, type RateQuery } from './ask-settled-jobs.js';
import { exactSum } from './job-facts.js';
import { outcomeOf } from './outcome-of-row.js';

export interface ComebackCostsView {
  readonly basis: RateBasis;
  readonly by: CostDimension;
  readonly rows: readonly CostTally[];
  readonly total: CostTally;
}

/** What comebacks cost at the full door rate, received in a period, by cause class or by time. */
export class ShowComebackCostsUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(caller: Caller, query: RateQuery & { readonly by: CostDimension }): Promise<ComebackCostsView> {
    const { by, ...narrowed } = query;
    return askSettledJobs(
      { work: this.work, clock: this.clock },
      caller,
      narrowed,
      async ({ reads, question, basis }) => {
        const rows = await reads.costs(question, by);
        const sum = (member: 'labour' | 'parts' | 'handling' | 'total'): string =>
          rows.reduce((total, row) => exactSum(total, row[member]), '0');
        const total: CostTally = {
          value: null,
          comebacks: rows.reduce((count, row) => count + row.comebacks, 0),
          labour: sum('labour'),
          parts: sum('parts'),
          handling: sum('handling'),
          total: sum('total'),
          gaps: rows.reduce((count, row) => count + row.gaps, 0),
        };
        return { basis, by, rows, total };
      },
    );
  }
}

export interface RatedJob {
  readonly row: SettledJobRow;
  readonly outcome: JobOutcomeFilter;
  readonly currency: string;
}

/** The jobs behind a rate, the latest release first. */
export class ListRatedJobsUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    query: RateQuery & {
      readonly outcome?: JobOutcomeFilter | undefined;
      readonly after?: SettledJobPosition | undefined;
      readonly limit: number;
    },
  ): Promise<{ readonly items: readonly RatedJob[]; readonly next?: SettledJobPosition | undefined }> {
    const { outcome, after, limit, ...narrowed } = query;
    return askSettledJobs(
      { work: this.work, clock: this.clock },
      caller,
      narrowed,
      async ({ reads, question, basis }) => {
        const page = await reads.list(question, { outcome, after, limit });
        const items = page.items.map((row) => ({
          row,
          outcome: outcomeOf(row, question).outcome,
          currency: basis.currency,
        }));
        return page.next === undefined ? { items } : { items, next: page.next };
      },
    );
  }
}
