import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  AsOfQuery,
  ConsentResponse,
  CorrectWorkLineRequest,
  EstimateResponse,
  EstimatesResponse,
  JobPath,
  ProposeEstimateRequest,
  RecordConsentRequest,
  RecordWorkLineRequest,
  WorkLineList,
  WorkLinePath,
  WorkLineResponse,
} from '@endfloat/contracts';
import {
  CorrectWorkLineUseCase,
  ListEstimatesUseCase,
  ListWorkLinesUseCase,
  ProposeEstimateUseCase,
  RecordConsentUseCase,
  RecordWorkLineUseCase,
  type Caller,
} from '@endfloat/workshop';
import {
  Allow,
  alreadyThere,
  Answer,
  CurrentCaller,
  IfMatch,
  type ExpectedVersion,
} from '../../http/index.js';
import {
  presentConsent,
  presentEstimate,
  presentWorkLine,
  toEstimateLine,
  toWorkLine,
} from './work.presenter.js';

@Controller('v1/jobs/:jobId/work-lines')
export class JobWorkLinesController {
  constructor(
    private readonly record: RecordWorkLineUseCase,
    private readonly list: ListWorkLinesUseCase,
  ) {}

  @Post()
  @Allow('owner', 'desk', 'technician')
  @Answer(WorkLineResponse, {
    created: true,
    location: ({ jobId }: WorkLineResponse) => `/v1/jobs/${jobId}/work-lines`,
    summary: 'Plan or record work; what is done needs consent',
  })
  async createWorkLine(
    @CurrentCaller() caller: Caller,
    @Param() { jobId }: JobPath,
    @Body() request: RecordWorkLineRequest,
  ): Promise<WorkLineResponse> {
    const { record, created } = await this.record.execute(caller, {
      id: request.id,
      jobId,
      line: toWorkLine(request),
    });
    return created ? presentWorkLine(record) : alreadyThere(presentWorkLine(record));
  }

  @Get()
  @Allow('owner', 'desk', 'technician', 'parts', 'auditor')
  @Answer(WorkLineList, { summary: 'Work of a job' })
  async listWorkLines(
    @CurrentCaller() caller: Caller,
    @Param() { jobId }: JobPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<WorkLineList> {
    return { items: (await this.list.execute(caller, jobId, asOf)).map(presentWorkLine) };
  }
}

@Controller('v1/work-lines/:workLineId')
export class WorkLinesController {
  constructor(private readonly correct: CorrectWorkLineUseCase) {}

  @Post('corrections')
  @Allow('owner', 'desk', 'technician')
  @Answer(WorkLineResponse, {
    created: true,
    location: ({ jobId }: WorkLineResponse) => `/v1/jobs/${jobId}/work-lines`,
    summary: 'Change a work line: done now, dropped, or recorded wrongly',
  })
  async correctWorkLine(
    @CurrentCaller() caller: Caller,
    @Param() { workLineId }: WorkLinePath,
    @Body() request: CorrectWorkLineRequest,
    @IfMatch() expected: ExpectedVersion,
  ): Promise<WorkLineResponse> {
    const command = { id: workLineId, expected, line: toWorkLine(request), reason: request.reason };
    return presentWorkLine(await this.correct.execute(caller, command));
  }
}

@Controller('v1/jobs/:jobId/estimates')
export class EstimatesController {
  constructor(
    private readonly propose: ProposeEstimateUseCase,
    private readonly list: ListEstimatesUseCase,
  ) {}

  @Post()
  @Allow('owner', 'desk')
  @Answer(EstimateResponse, {
    created: true,
    location: ({ jobId }: EstimateResponse) => `/v1/jobs/${jobId}/estimates`,
    summary: 'Price the work of a job; every proposal is a new version',
  })
  async createEstimate(
    @CurrentCaller() caller: Caller,
    @Param() { jobId }: JobPath,
    @Body() request: ProposeEstimateRequest,
  ): Promise<EstimateResponse> {
    const { id, lines, ceilingAmount } = request;
    const { record, created } = await this.propose.execute(caller, {
      id,
      jobId,
      lines: lines.map(toEstimateLine),
      ceilingAmount,
    });
    return created ? presentEstimate(record) : alreadyThere(presentEstimate(record));
  }

  @Get()
  @Allow('owner', 'desk', 'technician', 'parts', 'auditor')
  @Answer(EstimatesResponse, { summary: 'Versions of the estimate with the answers to them' })
  async listEstimates(
    @CurrentCaller() caller: Caller,
    @Param() { jobId }: JobPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<EstimatesResponse> {
    const { estimates, consents } = await this.list.execute(caller, jobId, asOf);
    return { estimates: estimates.map(presentEstimate), consents: consents.map(presentConsent) };
  }
}

@Controller('v1/jobs/:jobId/consents')
export class ConsentsController {
  constructor(private readonly record: RecordConsentUseCase) {}

  @Post()
  @Allow('owner', 'desk')
  @Answer(ConsentResponse, {
    created: true,
    location: ({ jobId }: ConsentResponse) => `/v1/jobs/${jobId}/estimates`,
    summary: "Record the customer's answer to one version of the estimate",
  })
  async createConsent(
    @CurrentCaller() caller: Caller,
    @Param() { jobId }: JobPath,
    @Body() request: RecordConsentRequest,
  ): Promise<ConsentResponse> {
    const { id, estimateId, answer, answeredAt, way, declinedWork, name } = request;
    const command = { id, jobId, estimateId, name, consent: { answer, answeredAt, way, declinedWork } };
    const { record, created } = await this.record.execute(caller, command);
    return created ? presentConsent(record) : alreadyThere(presentConsent(record));
  }
}
