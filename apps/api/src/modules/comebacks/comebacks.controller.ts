import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  ComebackPage,
  ComebackPath,
  ComebackResponse,
  LinkComebackRequest,
  ListComebacksQuery,
  SettleComebackRequest,
} from '@endfloat/contracts';
import {
  LinkComebackUseCase,
  ListComebacksUseCase,
  SettleComebackUseCase,
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
import { presentComeback } from './comeback.presenter.js';

@Controller('v1/comebacks')
export class ComebacksController {
  constructor(
    private readonly pager: Pager,
    private readonly link: LinkComebackUseCase,
    private readonly settle: SettleComebackUseCase,
    private readonly list: ListComebacksUseCase,
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
    location: ({ complaintId }: ComebackResponse) => `/v1/complaints/${complaintId}`,
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

  @Post(':comebackId/corrections')
  @Allow('owner', 'desk')
  @Answer(ComebackResponse, {
    created: true,
    location: ({ complaintId }: ComebackResponse) => `/v1/complaints/${complaintId}`,
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
