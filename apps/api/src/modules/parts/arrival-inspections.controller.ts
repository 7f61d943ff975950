import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  ArrivalInspectionPage,
  ArrivalInspectionPath,
  ArrivalInspectionResponse,
  ArrivalInspectionRevisions,
  AsOfQuery,
  CorrectArrivalInspectionRequest,
  ListArrivalInspectionsQuery,
  RecordArrivalInspectionRequest,
} from '@endfloat/contracts';
import {
  CorrectArrivalInspectionUseCase,
  ListArrivalInspectionsUseCase,
  RecordArrivalInspectionUseCase,
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
import { presentArrivalInspection, toArrivalEntry } from './arrival-inspection.presenter.js';

@Controller('v1/arrival-inspections')
export class ArrivalInspectionsController {
  constructor(
    private readonly pager: Pager,
    private readonly record: RecordArrivalInspectionUseCase,
    private readonly correct: CorrectArrivalInspectionUseCase,
    private readonly list: ListArrivalInspectionsUseCase,
  ) {}

  @Post()
  @Allow('owner', 'technician', 'parts')
  @Answer(ArrivalInspectionResponse, {
    created: true,
    summary: 'Record what a part was like on arrival, by the sheet it is checked by on a vehicle',
  })
  async createArrivalInspection(
    @CurrentCaller() caller: Caller,
    @Body() request: RecordArrivalInspectionRequest,
  ): Promise<ArrivalInspectionResponse> {
    const { id, partId, checkSheetId, stockMoveId } = request;
    const { created, ...view } = await this.record.execute(caller, {
      id,
      identity: { partId, checkSheetId, stockMoveId },
      entry: toArrivalEntry(request, caller),
    });
    const answer = presentArrivalInspection(view);
    return created ? answer : alreadyThere(answer);
  }

  @Get()
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(ArrivalInspectionPage, { summary: 'List inspections on arrival, the latest first' })
  async listArrivalInspections(
    @CurrentCaller() caller: Caller,
    @Query() query: ListArrivalInspectionsQuery,
  ): Promise<ArrivalInspectionPage> {
    const { partId, serial, asOf } = query;
    const page = await this.list.execute(caller, { partId, serial, asOf, ...this.pager.read(query) });
    return this.pager.page(page, presentArrivalInspection);
  }

  @Get(':arrivalInspectionId')
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(ArrivalInspectionResponse, { summary: 'Show an inspection on arrival' })
  async getArrivalInspection(
    @CurrentCaller() caller: Caller,
    @Param() { arrivalInspectionId }: ArrivalInspectionPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<ArrivalInspectionResponse> {
    return presentArrivalInspection(await this.list.one(caller, arrivalInspectionId, asOf));
  }

  @Get(':arrivalInspectionId/revisions')
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(ArrivalInspectionRevisions, { summary: 'Every revision of an inspection on arrival, oldest first' })
  async listArrivalInspectionRevisions(
    @CurrentCaller() caller: Caller,
    @Param() { arrivalInspectionId }: ArrivalInspectionPath,
  ): Promise<ArrivalInspectionRevisions> {
    return {
      items: (await this.list.revisions(caller, arrivalInspectionId)).map(presentArrivalInspection),
    };
  }

  @Post(':arrivalInspectionId/corrections')
  @Allow('owner', 'technician', 'parts')
  @Answer(ArrivalInspectionResponse, {
    created: true,
    location: ({ id }: ArrivalInspectionResponse) => `/v1/arrival-inspections/${id}`,
    summary: 'Correct an inspection on arrival; its readings are judged anew',
  })
  async correctArrivalInspection(
    @CurrentCaller() caller: Caller,
    @Param() { arrivalInspectionId }: ArrivalInspectionPath,
    @Body() request: CorrectArrivalInspectionRequest,
    @IfMatch() expected: ExpectedVersion,
  ): Promise<ArrivalInspectionResponse> {
    const entry = toArrivalEntry(request, caller);
    const command = { id: arrivalInspectionId, expected, entry, reason: request.reason };
    return presentArrivalInspection(await this.correct.execute(caller, command));
  }
}
