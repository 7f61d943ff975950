import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  AsOfQuery,
  ComplaintPage,
  ComplaintPath,
  ComplaintResponse,
  CorrectComplaintRequest,
  ListComplaintsQuery,
  TakeComplaintRequest,
} from '@endfloat/contracts';
import {
  CorrectComplaintUseCase,
  ShowComplaintUseCase,
  TakeComplaintUseCase,
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
import { presentComplaint, presentComplaintSummary, toComplaintEntry } from './complaint.presenter.js';

@Controller('v1/complaints')
export class ComplaintsController {
  constructor(
    private readonly pager: Pager,
    private readonly take: TakeComplaintUseCase,
    private readonly correct: CorrectComplaintUseCase,
    private readonly show: ShowComplaintUseCase,
  ) {}

  @Post()
  @Allow('owner', 'desk', 'technician', 'fleetManager')
  @Answer(ComplaintResponse, {
    created: true,
    summary: 'Take a complaint; earlier jobs it may be a comeback of are proposed',
  })
  async createComplaint(
    @CurrentCaller() caller: Caller,
    @Body() request: TakeComplaintRequest,
  ): Promise<ComplaintResponse> {
    const { id, vehicleId } = request;
    const outcome = await this.take.execute(caller, { id, vehicleId, complaint: toComplaintEntry(request) });
    return outcome.created ? presentComplaint(outcome) : alreadyThere(presentComplaint(outcome));
  }

  @Get()
  @Allow('owner', 'desk', 'technician', 'fleetManager', 'developer', 'auditor')
  @Answer(ComplaintPage, { summary: 'List complaints, latest first' })
  async listComplaints(
    @CurrentCaller() caller: Caller,
    @Query() query: ListComplaintsQuery,
  ): Promise<ComplaintPage> {
    const { vehicleId, jobId, asOf } = query;
    const page = await this.show.list(caller, { vehicleId, jobId, asOf, ...this.pager.read(query) });
    return this.pager.page(page, ({ record, words }) => presentComplaintSummary(record, words));
  }

  @Get(':complaintId')
  @Allow('owner', 'desk', 'technician', 'fleetManager', 'developer', 'auditor')
  @Answer(ComplaintResponse, { summary: 'Show a complaint with its comeback links' })
  async getComplaint(
    @CurrentCaller() caller: Caller,
    @Param() { complaintId }: ComplaintPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<ComplaintResponse> {
    return presentComplaint(await this.show.execute(caller, { id: complaintId, asOf }));
  }

  @Post(':complaintId/corrections')
  @Allow('owner', 'desk', 'technician')
  @Answer(ComplaintResponse, {
    created: true,
    location: ({ id }: ComplaintResponse) => `/v1/complaints/${id}`,
    summary: 'Correct a complaint: a symptom coded wrongly, a question asked later',
  })
  async correctComplaint(
    @CurrentCaller() caller: Caller,
    @Param() { complaintId }: ComplaintPath,
    @Body() request: CorrectComplaintRequest,
    @IfMatch() expected: ExpectedVersion,
  ): Promise<ComplaintResponse> {
    const command = {
      id: complaintId,
      expected,
      complaint: toComplaintEntry(request),
      reason: request.reason,
    };
    return presentComplaint(await this.correct.execute(caller, command));
  }
}
