import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  AsOfQuery,
  CorePage,
  CorePath,
  CoreResponse,
  CoreRevisions,
  CorrectCoreRequest,
  ListCoresQuery,
  RecordCoreRequest,
  RecordCoreStepRequest,
} from '@endfloat/contracts';
import {
  CorrectCoreUseCase,
  ListCoresUseCase,
  RecordCoreUseCase,
  StepCoreUseCase,
  type Caller,
} from '@endfloat/workshop';
import {
  Allow,
  alreadyThere,
  AlsoCsv,
  Answer,
  CurrentCaller,
  IfMatch,
  Pager,
  type ExpectedVersion,
} from '../../http/index.js';
import { presentCore, toCore, toCoreStep } from './core.presenter.js';

const location = ({ id }: CoreResponse): string => `/v1/cores/${id}`;

@Controller('v1/cores')
export class CoresController {
  constructor(
    private readonly pager: Pager,
    private readonly record: RecordCoreUseCase,
    private readonly correct: CorrectCoreUseCase,
    private readonly step: StepCoreUseCase,
    private readonly list: ListCoresUseCase,
  ) {}

  @Post()
  @Allow('owner', 'desk', 'parts')
  @Answer(CoreResponse, { created: true, summary: 'Record an old part that a supplier wants back' })
  async createCore(
    @CurrentCaller() caller: Caller,
    @Body() request: RecordCoreRequest,
  ): Promise<CoreResponse> {
    const { id, partId, jobId } = request;
    const { created, ...view } = await this.record.execute(caller, {
      id,
      partId,
      jobId,
      core: toCore(request),
    });
    return created ? presentCore(view) : alreadyThere(presentCore(view));
  }

  @Get()
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(CorePage, { summary: 'List cores: owed, expiring soon, sent back, credited' })
  @AlsoCsv<CorePage, CoreResponse>('cores', ({ items }) => items, [
    { name: 'coreId', value: ({ id }) => id },
    { name: 'supplier', value: ({ supplier }) => supplier },
    { name: 'componentType', value: ({ componentType }) => componentType },
    { name: 'state', value: ({ state }) => state },
    { name: 'owedSince', value: ({ owedSince }) => owedSince },
    { name: 'returnBy', value: ({ returnBy }) => returnBy },
    { name: 'daysLeft', value: ({ daysLeft }) => daysLeft },
    { name: 'depositAmount', value: ({ deposit }) => deposit?.amount ?? null },
    { name: 'depositCurrency', value: ({ deposit }) => deposit?.currency ?? null },
  ])
  async listCores(@CurrentCaller() caller: Caller, @Query() query: ListCoresQuery): Promise<CorePage> {
    const { state, supplier, dueWithinDays, asOf } = query;
    const page = await this.list.execute(caller, {
      state,
      supplier,
      dueWithinDays: dueWithinDays === undefined ? undefined : Number(dueWithinDays),
      asOf,
      ...this.pager.read(query),
    });
    return this.pager.page(page, presentCore);
  }

  @Get(':coreId')
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(CoreResponse, { summary: 'Show a core, now or as it was known at a moment' })
  async getCore(
    @CurrentCaller() caller: Caller,
    @Param() { coreId }: CorePath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<CoreResponse> {
    return presentCore(await this.list.one(caller, coreId, asOf));
  }

  @Get(':coreId/revisions')
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(CoreRevisions, { summary: 'Every revision of a core, oldest first; each step is one' })
  async listCoreRevisions(
    @CurrentCaller() caller: Caller,
    @Param() { coreId }: CorePath,
  ): Promise<CoreRevisions> {
    return { items: (await this.list.revisions(caller, coreId)).map(presentCore) };
  }

  @Post(':coreId/corrections')
  @Allow('owner', 'desk', 'parts')
  @Answer(CoreResponse, { created: true, location, summary: 'Correct what is said about a core' })
  async correctCore(
    @CurrentCaller() caller: Caller,
    @Param() { coreId }: CorePath,
    @Body() request: CorrectCoreRequest,
    @IfMatch() expected: ExpectedVersion,
  ): Promise<CoreResponse> {
    const command = { id: coreId, expected, core: toCore(request), reason: request.reason };
    return presentCore(await this.correct.execute(caller, command));
  }

  @Post(':coreId/steps')
  @Allow('owner', 'desk', 'parts')
  @Answer(CoreResponse, {
    created: true,
    location,
    summary: 'The next step of a core: sent back, looked at, accepted, refused, credited',
  })
  async createCoreStep(
    @CurrentCaller() caller: Caller,
    @Param() { coreId }: CorePath,
    @Body() request: RecordCoreStepRequest,
  ): Promise<CoreResponse> {
    return presentCore(await this.step.execute(caller, { id: coreId, step: toCoreStep(request) }));
  }
}
