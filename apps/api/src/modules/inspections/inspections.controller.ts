import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  AsOfQuery,
  CorrectInspectionRequest,
  InspectionPage,
  InspectionPath,
  InspectionProgressResponse,
  InspectionResponse,
  InspectionRevisions,
  ListInspectionsQuery,
  NextCheckResponse,
  RecordInspectionRequest,
} from '@endfloat/contracts';
import {
  CorrectInspectionUseCase,
  NextCheckUseCase,
  RecordInspectionUseCase,
  ShowInspectionUseCase,
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
import { toInspection, toRecordInspectionCommand } from './inspection.command-mapper.js';
import { presentInspection, presentProgress } from './inspection.presenter.js';
import { presentNextCheck } from './next-check.presenter.js';

@Controller('v1/inspections')
export class InspectionsController {
  constructor(
    private readonly pager: Pager,
    private readonly record: RecordInspectionUseCase,
    private readonly correct: CorrectInspectionUseCase,
    private readonly show: ShowInspectionUseCase,
    private readonly nextCheck: NextCheckUseCase,
  ) {}

  @Post()
  @Allow('owner', 'desk', 'technician')
  @Answer(InspectionResponse, { created: true, summary: 'Begin an inspection by a check sheet' })
  async createInspection(
    @CurrentCaller() caller: Caller,
    @Body() request: RecordInspectionRequest,
  ): Promise<InspectionResponse> {
    const { record, created } = await this.record.execute(caller, toRecordInspectionCommand(request));
    return created ? presentInspection(record) : alreadyThere(presentInspection(record));
  }

  @Get()
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(InspectionPage, { summary: 'List inspections of a vehicle or a job, newest first' })
  async listInspections(
    @CurrentCaller() caller: Caller,
    @Query() query: ListInspectionsQuery,
  ): Promise<InspectionPage> {
    const { vehicleId, jobId, asOf } = query;
    const page = await this.show.list(caller, { vehicleId, jobId, asOf, ...this.pager.read(query) });
    return this.pager.page(page, presentInspection);
  }

  @Get(':inspectionId')
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(InspectionResponse, { summary: 'Show an inspection, now or as it was known at a moment' })
  async showInspection(
    @CurrentCaller() caller: Caller,
    @Param() { inspectionId }: InspectionPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<InspectionResponse> {
    return presentInspection(await this.show.execute(caller, { id: inspectionId, asOf }));
  }

  @Get(':inspectionId/checks')
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(InspectionProgressResponse, {
    summary: 'Where every check of an inspection stands, with readings and verdicts',
  })
  async showInspectionChecks(
    @CurrentCaller() caller: Caller,
    @Param() { inspectionId }: InspectionPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<InspectionProgressResponse> {
    return presentProgress(await this.show.progress(caller, { id: inspectionId, asOf }));
  }

  @Get(':inspectionId/next-check')
  @Allow('owner', 'desk', 'technician', 'developer', 'auditor')
  @Answer(NextCheckResponse, { summary: 'Which check comes next, with what, why, and what to watch out for' })
  async showNextCheck(
    @CurrentCaller() caller: Caller,
    @Param() { inspectionId }: InspectionPath,
  ): Promise<NextCheckResponse> {
    return presentNextCheck(await this.nextCheck.execute(caller, inspectionId));
  }

  @Get(':inspectionId/revisions')
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(InspectionRevisions, { summary: 'Every revision of an inspection, oldest first' })
  async listInspectionRevisions(
    @CurrentCaller() caller: Caller,
    @Param() { inspectionId }: InspectionPath,
  ): Promise<InspectionRevisions> {
    return { items: (await this.show.revisions(caller, inspectionId)).map(presentInspection) };
  }

  @Post(':inspectionId/corrections')
  @Allow('owner', 'desk', 'technician')
  @Answer(InspectionResponse, {
    created: true,
    location: ({ id }: InspectionResponse) => `/v1/inspections/${id}`,
    summary: 'Correct what is said about an inspection, e.g. that as found was never taken',
  })
  async correctInspection(
    @CurrentCaller() caller: Caller,
    @Param() { inspectionId }: InspectionPath,
    @IfMatch() expected: ExpectedVersion,
    @Body() request: CorrectInspectionRequest,
  ): Promise<InspectionResponse> {
    const command = { id: inspectionId, expected, inspection: toInspection(request), reason: request.reason };
    return presentInspection(await this.correct.execute(caller, command));
  }
}
