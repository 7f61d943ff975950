import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  AsOfQuery,
  AssessmentPath,
  CorrectDecisionRequest,
  DecisionPage,
  DecisionPath,
  DecisionResponse,
  DecisionRevisions,
  ListDecisionsQuery,
  RecordDecisionRequest,
} from '@endfloat/contracts';
import { CorrectDecisionUseCase, DecideUseCase, ListDecisionsUseCase, type Caller } from '@endfloat/workshop';
import {
  Allow,
  alreadyThere,
  Answer,
  CurrentCaller,
  IfMatch,
  Pager,
  type ExpectedVersion,
} from '../../http/index.js';
import { presentDecision, toDecision } from './decision.presenter.js';

@Controller('v1/assessments/:assessmentId/decisions')
export class AssessmentDecisionsController {
  constructor(
    private readonly pager: Pager,
    private readonly decide: DecideUseCase,
    private readonly list: ListDecisionsUseCase,
  ) {}

  @Post()
  @Allow('owner', 'desk', 'technician')
  @Answer(DecisionResponse, {
    created: true,
    location: ({ id }: DecisionResponse) => `/v1/decisions/${id}`,
    summary: 'Record what was chosen after an assessment, and why when it differs',
  })
  async createDecision(
    @CurrentCaller() caller: Caller,
    @Param() { assessmentId }: AssessmentPath,
    @Body() request: RecordDecisionRequest,
  ): Promise<DecisionResponse> {
    const command = { id: request.id, assessmentId, decision: toDecision(request) };
    const { record, created } = await this.decide.execute(caller, command);
    return created ? presentDecision(record) : alreadyThere(presentDecision(record));
  }

  @Get()
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(DecisionPage, { summary: 'List the decisions on an assessment, newest first' })
  async listDecisions(
    @CurrentCaller() caller: Caller,
    @Param() { assessmentId }: AssessmentPath,
    @Query() query: ListDecisionsQuery,
  ): Promise<DecisionPage> {
    const page = await this.list.execute(caller, {
      assessmentId,
      asOf: query.asOf,
      ...this.pager.read(query),
    });
    return this.pager.page(page, presentDecision);
  }
}

@Controller('v1/decisions')
export class DecisionsController {
  constructor(
    private readonly correct: CorrectDecisionUseCase,
    private readonly list: ListDecisionsUseCase,
  ) {}

  @Get(':decisionId')
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(DecisionResponse, { summary: 'Show a decision, now or as it was known at a moment' })
  async getDecision(
    @CurrentCaller() caller: Caller,
    @Param() { decisionId }: DecisionPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<DecisionResponse> {
    return presentDecision(await this.list.one(caller, decisionId, asOf));
  }

  @Get(':decisionId/revisions')
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(DecisionRevisions, { summary: 'Every revision of a decision, oldest first' })
  async listDecisionRevisions(
    @CurrentCaller() caller: Caller,
    @Param() { decisionId }: DecisionPath,
  ): Promise<DecisionRevisions> {
    return { items: (await this.list.revisions(caller, decisionId)).map(presentDecision) };
  }

  @Post(':decisionId/corrections')
  @Allow('owner', 'desk', 'technician')
  @Answer(DecisionResponse, {
    created: true,
    location: ({ id }: DecisionResponse) => `/v1/decisions/${id}`,
    summary: 'Correct a decision',
  })
  async correctDecision(
    @CurrentCaller() caller: Caller,
    @Param() { decisionId }: DecisionPath,
    @Body() request: CorrectDecisionRequest,
    @IfMatch() expected: ExpectedVersion,
  ): Promise<DecisionResponse> {
    const command = { id: decisionId, expected, decision: toDecision(request), reason: request.reason };
    return presentDecision(await this.correct.execute(caller, command));
  }
}
