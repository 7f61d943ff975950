import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  AsOfQuery,
  CorrectJobRequest,
  JobEventResponse,
  JobPage,
  JobPath,
  JobResponse,
  ListJobsQuery,
  OpenJobRequest,
  RecordJobEventRequest,
} from '@endfloat/contracts';
import {
  CorrectJobUseCase,
  OpenJobUseCase,
  RecordJobEventUseCase,
  ShowJobUseCase,
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
import { toOdometerShown } from '../odometer/odometer.presenter.js';
import { presentJob, presentJobEvent, toJob, toJobEvent } from './job.presenter.js';

@Controller('v1/jobs')
export class JobsController {
  constructor(
    private readonly pager: Pager,
    private readonly open: OpenJobUseCase,
    private readonly correct: CorrectJobUseCase,
    private readonly show: ShowJobUseCase,
  ) {}

  @Post()
  @Allow('owner', 'desk', 'technician')
  @Answer(JobResponse, { created: true, summary: 'Open a job: one visit with the complaints it deals with' })
  async createJob(@CurrentCaller() caller: Caller, @Body() request: OpenJobRequest): Promise<JobResponse> {
    const { id, vehicleId, complaintIds, odometer } = request;
    const shown = odometer === null ? null : toOdometerShown(odometer);
    const outcome = await this.open.execute(caller, {
      id,
      vehicleId,
      complaintIds,
      odometer: shown,
      job: toJob(request),
    });
    return outcome.created ? presentJob(outcome) : alreadyThere(presentJob(outcome));
  }

  @Get()
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(JobPage, { summary: 'List jobs, latest first' })
  async listJobs(@CurrentCaller() caller: Caller, @Query() query: ListJobsQuery): Promise<JobPage> {
    const { vehicleId, assignedTo, asOf } = query;
    return this.pager.page(
      await this.show.list(caller, { vehicleId, assignedTo, asOf, ...this.pager.read(query) }),
      presentJob,
    );
  }

  @Get(':jobId')
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(JobResponse, { summary: 'Show a job with its state, now or as it was known at a moment' })
  async getJob(
    @CurrentCaller() caller: Caller,
    @Param() { jobId }: JobPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<JobResponse> {
    return presentJob(await this.show.execute(caller, { id: jobId, asOf }));
  }

  @Post(':jobId/corrections')
  @Allow('owner', 'desk', 'technician')
  @Answer(JobResponse, {
    created: true,
    location: ({ id }: JobResponse) => `/v1/jobs/${id}`,
    summary: 'Correct a job: whom it is assigned to, the cause once it is established',
  })
  async correctJob(
    @CurrentCaller() caller: Caller,
    @Param() { jobId }: JobPath,
    @Body() request: CorrectJobRequest,
    @IfMatch() expected: ExpectedVersion,
  ): Promise<JobResponse> {
    return presentJob(
      await this.correct.execute(caller, {
        id: jobId,
        expected,
        job: toJob(request),
        reason: request.reason,
      }),
    );
  }
}

@Controller('v1/jobs/:jobId/events')
export class JobEventsController {
  constructor(private readonly record: RecordJobEventUseCase) {}

  @Post()
  @Allow('owner', 'desk', 'technician')
  @Answer(JobEventResponse, {
    created: true,
    location: ({ jobId }: JobEventResponse) => `/v1/jobs/${jobId}`,
    summary: 'Record that a job waits, goes on, is finished or closed',
  })
  async createJobEvent(
    @CurrentCaller() caller: Caller,
    @Param() { jobId }: JobPath,
    @Body() request: RecordJobEventRequest,
  ): Promise<JobEventResponse> {
    const { record, created } = await this.record.execute(caller, {
      id: request.id,
      jobId,
      event: toJobEvent(request),
    });
    return created ? presentJobEvent(record) : alreadyThere(presentJobEvent(record));
  }
}
