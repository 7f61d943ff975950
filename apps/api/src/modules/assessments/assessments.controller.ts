import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  AsOfQuery,
  AssessmentAnswer,
  AssessmentPage,
  AssessmentPath,
  AssessmentResponse,
  AssessRequest,
  ListAssessmentsQuery,
  PreviewAssessmentRequest,
  ReplayResponse,
} from '@endfloat/contracts';
import {
  AssessUseCase,
  PreviewAssessmentUseCase,
  ReplayAssessmentUseCase,
  ShowAssessmentsUseCase,
  type Caller,
} from '@endfloat/workshop';
import { Allow, alreadyThere, Answer, CurrentCaller, Pager } from '../../http/index.js';
import { toPreviewCommand, toQuestion } from './assessment.command-mapper.js';
import { presentAssessment, presentPreview, presentReplay } from './assessment.presenter.js';

@Controller('v1/assessments')
export class AssessmentsController {
  constructor(
    private readonly pager: Pager,
    private readonly assess: AssessUseCase,
    private readonly show: ShowAssessmentsUseCase,
    private readonly replay: ReplayAssessmentUseCase,
    private readonly preview: PreviewAssessmentUseCase,
  ) {}

  @Post()
  @Allow('owner', 'desk', 'technician')
  @Answer(AssessmentResponse, {
    created: true,
    summary: 'Repair or replace: what every option costs in the end, and what to do',
    description:
      'Gathers readings, verdicts, comebacks, offers with lead times as delivered, rates, consent and dangerous findings, reckons every option, and keeps question, inputs and answer.',
  })
  async createAssessment(
    @CurrentCaller() caller: Caller,
    @Body() request: AssessRequest,
  ): Promise<AssessmentResponse> {
    const { record, created } = await this.assess.execute(caller, {
      id: request.id,
      question: toQuestion(request),
    });
    return created ? presentAssessment(record) : alreadyThere(presentAssessment(record));
  }

  @Get()
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(AssessmentPage, { summary: 'List assessments of a vehicle or for a job, newest first' })
  async listAssessments(
    @CurrentCaller() caller: Caller,
    @Query() query: ListAssessmentsQuery,
  ): Promise<AssessmentPage> {
    const { vehicleId, jobId, asOf } = query;
    const page = await this.show.execute(caller, { vehicleId, jobId, asOf, ...this.pager.read(query) });
    return this.pager.page(page, presentAssessment);
  }

  @Post('previews')
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer')
  @Answer(AssessmentAnswer, {
    summary: 'Assess what is sent along, history and prices included, without keeping anything',
  })
  async previewAssessment(
    @CurrentCaller() caller: Caller,
    @Body() request: PreviewAssessmentRequest,
  ): Promise<AssessmentAnswer> {
    const by = request.tables ?? 'judgement';
    return presentPreview(await this.preview.execute(caller, toPreviewCommand(request), by));
  }

  @Get(':assessmentId')
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(AssessmentResponse, { summary: 'Show an assessment as it was made' })
  async getAssessment(
    @CurrentCaller() caller: Caller,
    @Param() { assessmentId }: AssessmentPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<AssessmentResponse> {
    return presentAssessment(await this.show.one(caller, assessmentId, asOf));
  }

  @Post(':assessmentId/replays')
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(ReplayResponse, {
    summary: 'Run an assessment again from its stored inputs and say whether every digit is equal',
  })
  async replayAssessment(
    @CurrentCaller() caller: Caller,
    @Param() { assessmentId }: AssessmentPath,
  ): Promise<ReplayResponse> {
    return presentReplay(await this.replay.execute(caller, assessmentId));
  }
}
