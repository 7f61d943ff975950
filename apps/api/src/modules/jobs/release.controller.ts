import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  AsOfQuery,
  HandOverUnrepairedRequest,
  JobPath,
  ProofPointResponse,
  ProofResponse,
  RecordProofPointRequest,
  ReleaseJobRequest,
  ReleaseResponse,
  UnrepairedHandoverResponse,
} from '@endfloat/contracts';
import {
  HandOverUnrepairedUseCase,
  RecordProofPointUseCase,
  ReleaseJobUseCase,
  ShowProofUseCase,
  type Caller,
} from '@endfloat/workshop';
import { Allow, alreadyThere, Answer, CurrentCaller } from '../../http/index.js';
import {
  presentProof,
  presentProofPoint,
  presentRelease,
  presentUnrepairedHandover,
  toProofPoint,
} from './proof.presenter.js';

@Controller('v1/jobs/:jobId')
export class JobProofController {
  constructor(
    private readonly record: RecordProofPointUseCase,
    private readonly show: ShowProofUseCase,
  ) {}

  @Post('proof-points')
  @Allow('owner', 'technician')
  @Answer(ProofPointResponse, {
    created: true,
    location: ({ jobId }: ProofPointResponse) => `/v1/jobs/${jobId}/proof`,
    summary: 'Record one point of the proof; a point tried again is a new record',
  })
  async createProofPoint(
    @CurrentCaller() caller: Caller,
    @Param() { jobId }: JobPath,
    @Body() request: RecordProofPointRequest,
  ): Promise<ProofPointResponse> {
    const { record, created } = await this.record.execute(caller, {
      id: request.id,
      jobId,
      point: toProofPoint(request),
    });
    return created ? presentProofPoint(record) : alreadyThere(presentProofPoint(record));
  }

  @Get('proof')
  @Allow('owner', 'desk', 'technician', 'auditor')
  @Answer(ProofResponse, { summary: 'What was tested, and what a release still wants' })
  async getProof(
    @CurrentCaller() caller: Caller,
    @Param() { jobId }: JobPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<ProofResponse> {
    return presentProof(await this.show.execute(caller, jobId, asOf));
  }
}

@Controller('v1/jobs/:jobId')
export class JobReleaseController {
  constructor(
    private readonly release: ReleaseJobUseCase,
    private readonly handOver: HandOverUnrepairedUseCase,
  ) {}

  @Post('releases')
  @Allow('owner', 'technician')
  @Answer(ReleaseResponse, {
    created: true,
    location: ({ jobId }: ReleaseResponse) => `/v1/jobs/${jobId}`,
    summary: 'Release a job: the van may leave, the watch window starts',
    description:
      'Refused without proof, with work still planned, and always with a dangerous finding open. Safety is never traded against money.',
  })
  async createRelease(
    @CurrentCaller() caller: Caller,
    @Param() { jobId }: JobPath,
    @Body() request: ReleaseJobRequest,
  ): Promise<ReleaseResponse> {
    const { id, releasedAt, releasedBy, statement } = request;
    const { record, created } = await this.release.execute(caller, {
      id,
      jobId,
      releasedAt,
      releasedBy,
      statement,
    });
    return created ? presentRelease(record) : alreadyThere(presentRelease(record));
  }

  @Post('unrepaired-handovers')
  @Allow('owner', 'desk')
  @Answer(UnrepairedHandoverResponse, {
    created: true,
    location: ({ jobId }: UnrepairedHandoverResponse) => `/v1/jobs/${jobId}`,
    summary: 'Hand a van with a dangerous finding over unrepaired, not for the road, with the warning given',
  })
  async createUnrepairedHandover(
    @CurrentCaller() caller: Caller,
    @Param() { jobId }: JobPath,
    @Body() request: HandOverUnrepairedRequest,
  ): Promise<UnrepairedHandoverResponse> {
    const { id, handedOverAt, name, warningGiven } = request;
    const { record, created } = await this.handOver.execute(caller, {
      id,
      jobId,
      handedOverAt,
      name,
      warningGiven,
    });
    return created ? presentUnrepairedHandover(record) : alreadyThere(presentUnrepairedHandover(record));
  }
}
