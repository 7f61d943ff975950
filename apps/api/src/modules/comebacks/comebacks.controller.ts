import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  AsOfQuery,
  ComebackDetailResponse,
  ComebackPage,
  ComebackPath,
  ComebackResponse,
  ComebackRevisionsResponse,
  LinkComebackRequest,
  ListComebacksQuery,
  SettleComebackRequest,
} from '@endfloat/contracts';
import {
  LinkComebackUseCase,
  ListComebacksUseCase,
  SettleComebackUseCase,
  ShowComebackUseCase,
  type Caller,
} from '@endfloat/workshop';
import {
  Allow,
  alreadyThere,
  Answer,
  CurrentCaller,
  IfMatch,
  Pager,
  type ExpectedVersion,
} from '../../http/index.js';
import { presentComeback, presentComebackDetail } from './comeback.presenter.js';

@Controller('v1/comebacks')
export class ComebacksController {
  constructor(
    private readonly pager: Pager,
    private readonly link: LinkComebackUseCase,
    private readonly settle: SettleComebackUseCase,
    private readonly list: ListComebacksUseCase,
    private readonly show: ShowComebackUseCase,
  ) {}

  @Get()
  @Allow('owner', 'desk', 'technician', 'fleetManager', 'auditor')
  @Answer(ComebackPage, { summary: 'List links between later complaints and earlier released jobs' })
  async listComebacks(
    @CurrentCaller() caller: Caller,
    @Query() query: ListComebacksQuery,
  ): Promise<ComebackPage> {
    const { complaintId, jobId, vehicleId, state, asOf } = query;
    const page = await this.list.execute(caller, {
      complaintId,
      jobId,
      vehicleId,
      state,
      asOf,
      ...this.pager.read(query),
    });
    return this.pager.page(page, presentComeback);
  }

  @Post()
  @Allow('owner', 'desk')
  @Answer(ComebackResponse, {
    created: true,
    location: ({ id }: ComebackResponse) => `/v1/comebacks/${id}`,
    summary: 'Link a complaint to an earlier job that no rule proposed',
  })
  async createComeback(
    @CurrentCaller() caller: Caller,
    @Body() request: LinkComebackRequest,
  ): Promise<ComebackResponse> {
    const { id, complaintId, jobId, note } = request;
    const { record, created } = await this.link.execute(caller, { id, complaintId, jobId, note });
    return created ? presentComeback(record) : alreadyThere(presentComeback(record));
  }

  @Get(':comebackId')
  @Allow('owner', 'desk', 'technician', 'fleetManager', 'auditor')
  @Answer(ComebackDetailResponse, { summary: 'Show a comeback: what it counts for and what it cost' })
  async getComeback(
    @CurrentCaller() caller: Caller,
    @Param() { comebackId }: ComebackPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<ComebackDetailResponse> {
    const view = await this.show.execute(caller, comebackId, asOf);
    return presentComebackDetail(view, caller.customerId === undefined);
  }

  @Get(':comebackId/revisions')
  @Allow('owner', 'desk', 'technician', 'fleetManager', 'auditor')
  @Answer(ComebackRevisionsResponse, { summary: 'List every word on a comeback, the oldest first' })
  async listComebackRevisions(
    @CurrentCaller() caller: Caller,
    @Param() { comebackId }: ComebackPath,
  ): Promise<ComebackRevisionsResponse> {
    return { items: (await this.show.revisions(caller, comebackId)).map(presentComeback) };
  }

  @Post(':comebackId/corrections')
  @Allow('owner', 'desk')
  @Answer(ComebackResponse, {
    created: true,
    location: ({ id }: ComebackResponse) => `/v1/comebacks/${id}`,
    summary: 'Confirm, refuse or attribute a comeback; earlier words on it stay readable',
  })
  async correctComeback(
    @CurrentCaller() caller: Caller,
    @Param() { comebackId }: ComebackPath,
    @Body() request: SettleComebackRequest,
    @IfMatch() expected: ExpectedVersion,
  ): Promise<ComebackResponse> {
    const { state, attribution, note, reason } = request;
    return presentComeback(
      await this.settle.execute(caller, { id: comebackId, expected, state, attribution, note, reason }),
    );
  }
}
