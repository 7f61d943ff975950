import { Controller, Get, Param, Query } from '@nestjs/common';
import {
  AssessmentPath,
  AssessmentSummary,
  AssessmentSummaryPage,
  ListAssessmentsQuery,
} from '@endfloat/contracts';
import { ShowAssessmentsUseCase, type Caller } from '@endfloat/workshop';
import { Allow, Answer, CurrentCaller, Pager } from '../../http/index.js';
import { presentSummary } from './assessment-summary.presenter.js';

/** What an owner of vans may see of assessments: never what an option costs the shop, nor from whom it buys. */
@Controller('v1/assessment-summaries')
export class AssessmentSummariesController {
  constructor(
    private readonly pager: Pager,
    private readonly show: ShowAssessmentsUseCase,
  ) {}

  @Get()
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(AssessmentSummaryPage, { summary: 'List assessments without costs, newest first' })
  async listAssessmentSummaries(
    @CurrentCaller() caller: Caller,
    @Query() query: ListAssessmentsQuery,
  ): Promise<AssessmentSummaryPage> {
    const { vehicleId, jobId, asOf } = query;
    const page = await this.show.execute(caller, { vehicleId, jobId, asOf, ...this.pager.read(query) });
    return this.pager.page(page, presentSummary);
  }

  @Get(':assessmentId')
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(AssessmentSummary, { summary: 'Show what was recommended and why, without costs' })
  async getAssessmentSummary(
    @CurrentCaller() caller: Caller,
    @Param() { assessmentId }: AssessmentPath,
  ): Promise<AssessmentSummary> {
    return presentSummary(await this.show.one(caller, assessmentId));
  }
}
