import { Controller, Get, Query } from '@nestjs/common';
import {
  ComebackComparisonQuery,
  ComebackComparisonResponse,
  ComebackJobDto,
  ComebackJobPage,
  ComebackJobsQuery,
  ComebackRatesQuery,
  ComebackRatesResponse,
  type ComebackGroupDto,
  type ComebackComparedGroupDto,
} from '@endfloat/contracts';
import {
  CompareComebacksUseCase,
  ListRatedJobsUseCase,
  ShowComebackRatesUseCase,
  type Caller,
} from '@endfloat/workshop';
import { Allow, AlsoCsv, Answer, CurrentCaller, Pager } from '../../http/index.js';
import { presentComparison, presentRatedJob, presentRates } from './comeback-rates.presenter.js';
import { jobsLink, refuseForeignDimension, toGroup, toRateQuery } from './comeback-rates.query-mapper.js';

const staff = ['owner', 'desk', 'technician', 'parts', 'developer', 'auditor'] as const;

@Controller('v1')
export class ComebackRatesController {
  constructor(
    private readonly rates: ShowComebackRatesUseCase,
    private readonly compare: CompareComebacksUseCase,
    private readonly jobs: ListRatedJobsUseCase,
    private readonly pager: Pager,
  ) {}

  @Get('comeback-rates')
  @Allow(...staff, 'fleetManager')
  @Answer(ComebackRatesResponse, {
    summary: 'Which repairs come back, by one dimension, with counts, interval and cost',
    description:
      'A rate counts jobs whose watch window has elapsed and whose outcome is known; windows still running are pending, and a vehicle never seen again is not a success. Each group links to the jobs behind it.',
  })
  @AlsoCsv('comeback-rates', ({ groups }: ComebackRatesResponse) => groups, [
    { name: 'value', value: ({ value }: ComebackGroupDto) => value },
    { name: 'label', value: ({ label }) => label },
    { name: 'comebackJobs', value: ({ rate }) => rate.events },
    { name: 'jobsAtRisk', value: ({ rate }) => rate.atRisk },
    { name: 'rate', value: ({ rate }) => (rate.kind === 'estimated' ? rate.value : null) },
    { name: 'low', value: ({ rate }) => (rate.kind === 'estimated' ? rate.interval.low : null) },
    { name: 'high', value: ({ rate }) => (rate.kind === 'estimated' ? rate.interval.high : null) },
    { name: 'pending', value: ({ pending }) => pending },
    { name: 'pendingComebacks', value: ({ pendingComebacks }) => pendingComebacks },
    { name: 'notSeenSince', value: ({ notSeenSince }) => notSeenSince },
    { name: 'notAttributed', value: ({ notAttributed }) => notAttributed },
    { name: 'comebacks', value: ({ comebacks }) => comebacks },
    { name: 'cost', value: ({ cost }) => cost?.amount ?? null },
    { name: 'currency', value: ({ cost }) => cost?.currency ?? null },
  ])
  async getComebackRates(
    @CurrentCaller() caller: Caller,
    @Query() query: ComebackRatesQuery,
  ): Promise<ComebackRatesResponse> {
    refuseForeignDimension(caller, query.by);
    const view = await this.rates.execute(caller, { ...toRateQuery(query), by: query.by });
    return presentRates(view, jobsLink(query, view.basis.at), { withCost: caller.customerId === undefined });
  }

  @Get('comeback-comparisons')
  @Allow(...staff)
  @Answer(ComebackComparisonResponse, {
    summary: 'Whether a difference is real: each group against what its own mix of jobs leads to expect',
    description:
      'Expected counts for the same mix, funnel limits, shrunken rates; no finding and no rank under the number of jobs the shop has set. By person for the owner only.',
  })
  @AlsoCsv('comeback-comparisons', ({ groups }: ComebackComparisonResponse) => groups, [
    { name: 'value', value: ({ value }: ComebackComparedGroupDto) => value },
    { name: 'label', value: ({ label }) => label },
    { name: 'comebackJobs', value: ({ rate }) => rate.events },
    { name: 'jobsAtRisk', value: ({ rate }) => rate.atRisk },
    { name: 'expected', value: ({ expected }) => expected },
    { name: 'expectedRate', value: ({ expectedRate }) => expectedRate },
    { name: 'finding', value: ({ result }) => (result.kind === 'compared' ? result.finding : result.kind) },
    {
      name: 'shrunkenRate',
      value: ({ result }) => (result.kind === 'compared' ? result.shrunken.value : null),
    },
    {
      name: 'shrunkenLow',
      value: ({ result }) => (result.kind === 'compared' ? result.shrunken.interval.low : null),
    },
    {
      name: 'shrunkenHigh',
      value: ({ result }) => (result.kind === 'compared' ? result.shrunken.interval.high : null),
    },
    { name: 'rank', value: ({ result }) => (result.kind === 'compared' ? result.rank : null) },
  ])
  async getComebackComparison(
    @CurrentCaller() caller: Caller,
    @Query() query: ComebackComparisonQuery,
  ): Promise<ComebackComparisonResponse> {
    refuseForeignDimension(caller, query.by);
    const view = await this.compare.execute(caller, { ...toRateQuery(query), by: query.by });
    return presentComparison(view, jobsLink(query, view.basis.at));
  }

  @Get('comeback-jobs')
  @Allow(...staff, 'fleetManager')
  @Answer(ComebackJobPage, {
    summary: 'List the released jobs behind a rate, the latest first',
    description: 'Repeats are not listed by themselves: they belong to the first job of their chain.',
  })
  @AlsoCsv('comeback-jobs', ({ items }: ComebackJobPage) => items, [
    { name: 'jobId', value: ({ jobId }: ComebackJobDto) => jobId },
    { name: 'vehicleId', value: ({ vehicleId }) => vehicleId },
    { name: 'releasedAt', value: ({ releasedAt }) => releasedAt },
    { name: 'closesAt', value: ({ closesAt }) => closesAt },
    { name: 'closedBy', value: ({ closedBy }) => closedBy },
    { name: 'outcome', value: ({ outcome }) => outcome },
    { name: 'comebackAt', value: ({ comebackAt }) => comebackAt },
    { name: 'lastSeenAt', value: ({ lastSeenAt }) => lastSeenAt },
    { name: 'comebacks', value: ({ comebacks }) => comebacks },
    { name: 'cost', value: ({ cost }) => cost?.amount ?? null },
    { name: 'currency', value: ({ cost }) => cost?.currency ?? null },
    { name: 'mix', value: ({ mix }) => mix },
  ])
  async listComebackJobs(
    @CurrentCaller() caller: Caller,
    @Query() query: ComebackJobsQuery,
  ): Promise<ComebackJobPage> {
    refuseForeignDimension(caller, query.by);
    const list = await this.jobs.execute(caller, {
      ...toRateQuery(query),
      group: toGroup(query),
      outcome: query.outcome,
      ...this.pager.read(query),
    });
    return this.pager.page(list, (job) => presentRatedJob(job, caller.customerId === undefined));
  }
}
