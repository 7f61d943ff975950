import { Controller, Get, Query } from '@nestjs/common';
import {
  ComebackChartQuery,
  ComebackChartResponse,
  ComebackCostsQuery,
  ComebackCostsResponse,
  ComebackCurveQuery,
  ComebackCurveResponse,
  type ComebackChartPlaceDto,
  type ComebackCostRowDto,
  type ComebackCurvePointDto,
} from '@endfloat/contracts';
import {
  ShowComebackChartUseCase,
  ShowComebackCostsUseCase,
  ShowComebackCurveUseCase,
  type Caller,
} from '@endfloat/workshop';
import { Allow, AlsoCsv, Answer, CurrentCaller } from '../../http/index.js';
import { presentChart, presentCosts, presentCurve } from './comeback-course.presenter.js';
import { refuseForeignDimension, toGroup, toRateQuery } from './comeback-rates.query-mapper.js';

const staff = ['owner', 'desk', 'technician', 'parts', 'developer', 'auditor'] as const;

@Controller('v1')
export class ComebackCoursesController {
  constructor(
    private readonly curve: ShowComebackCurveUseCase,
    private readonly chart: ShowComebackChartUseCase,
    private readonly costs: ShowComebackCostsUseCase,
  ) {}

  @Get('comeback-curves')
  @Allow(...staff, 'fleetManager')
  @Answer(ComebackCurveResponse, {
    summary: 'How soon jobs come back: share not come back by days since release',
    description:
      'A job that has not come back is observed until its vehicle was last seen. As CSV: the curve.',
  })
  @AlsoCsv(
    'comeback-curves',
    ({ curve }: ComebackCurveResponse) => (curve.kind === 'estimated' ? curve.points : []),
    [
      { name: 'days', value: ({ days }: ComebackCurvePointDto) => days },
      { name: 'atRisk', value: ({ atRisk }) => atRisk },
      { name: 'comebacks', value: ({ comebacks }) => comebacks },
      { name: 'notComeBack', value: ({ notComeBack }) => notComeBack },
      { name: 'standardError', value: ({ standardError }) => standardError },
      { name: 'lower', value: ({ lower }) => lower },
      { name: 'upper', value: ({ upper }) => upper },
    ],
  )
  async getComebackCurve(
    @CurrentCaller() caller: Caller,
    @Query() query: ComebackCurveQuery,
  ): Promise<ComebackCurveResponse> {
    refuseForeignDimension(caller, query.by);
    return presentCurve(await this.curve.execute(caller, { ...toRateQuery(query), group: toGroup(query) }));
  }

  @Get('comeback-charts')
  @Allow(...staff, 'fleetManager')
  @Answer(ComebackChartResponse, {
    summary: 'How comebacks change over time, by the chart that fits their number, with signals named',
    description: 'Periods without a job whose outcome is known have no place. As CSV: the places.',
  })
  @AlsoCsv(
    'comeback-charts',
    ({ result }: ComebackChartResponse) => (result.kind === 'estimated' ? result.places : []),
    [
      { name: 'label', value: ({ label }: ComebackChartPlaceDto) => label },
      { name: 'value', value: ({ value }) => value },
      { name: 'lower', value: ({ lower }) => lower },
      { name: 'upper', value: ({ upper }) => upper },
      { name: 'signals', value: ({ signals }) => signals.join(' ') },
      { name: 'jobs', value: ({ jobs }) => jobs },
      { name: 'comebackJobs', value: ({ events }) => events },
      { name: 'pending', value: ({ pending }) => pending },
    ],
  )
  async getComebackChart(
    @CurrentCaller() caller: Caller,
    @Query() query: ComebackChartQuery,
  ): Promise<ComebackChartResponse> {
    refuseForeignDimension(caller, query.by);
    const { chart, period = 'month', baseline } = query;
    return presentChart(
      await this.chart.execute(caller, {
        ...toRateQuery(query),
        group: toGroup(query),
        chart,
        period,
        baseline: baseline === undefined ? undefined : Number(baseline),
      }),
    );
  }

  @Get('comeback-costs')
  @Allow('owner', 'desk', 'developer', 'auditor')
  @Answer(ComebackCostsResponse, {
    summary: 'What comebacks cost at the full door rate, by cause class or by time',
  })
  @AlsoCsv('comeback-costs', ({ rows }: ComebackCostsResponse) => rows, [
    { name: 'value', value: ({ value }: ComebackCostRowDto) => value },
    { name: 'comebacks', value: ({ comebacks }) => comebacks },
    { name: 'labour', value: ({ labour }) => labour.amount },
    { name: 'parts', value: ({ parts }) => parts.amount },
    { name: 'handling', value: ({ handling }) => handling.amount },
    { name: 'total', value: ({ total }) => total.amount },
    { name: 'currency', value: ({ total }) => total.currency },
    { name: 'gaps', value: ({ gaps }) => gaps },
  ])
  async getComebackCosts(
    @CurrentCaller() caller: Caller,
    @Query() query: ComebackCostsQuery,
  ): Promise<ComebackCostsResponse> {
    const { by = 'attribution', ...narrowed } = query;
    return presentCosts(await this.costs.execute(caller, { ...toRateQuery(narrowed), by }));
  }
}
