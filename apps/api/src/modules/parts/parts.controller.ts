import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  ArrivalSheetList,
  AsOfQuery,
  CorrectPartRequest,
  ListPartsQuery,
  PartDetailsResponse,
  PartPage,
  PartPath,
  PartResponse,
  PartRevisions,
  RecordPartRequest,
} from '@endfloat/contracts';
import {
  CorrectPartUseCase,
  ListArrivalInspectionsUseCase,
  ListPartsUseCase,
  RecordPartUseCase,
  type Caller,
} from '@endfloat/workshop';
import {
  Allow,
  alreadyThere,
  AlsoCsv,
  Answer,
  CurrentCaller,
  IfMatch,
  Pager,
  type ExpectedVersion,
} from '../../http/index.js';
import { presentArrivalSheet } from './arrival-inspection.presenter.js';
import { presentPart, presentPartView, toPart } from './part.presenter.js';

@Controller('v1/parts')
export class PartsController {
  constructor(
    private readonly pager: Pager,
    private readonly record: RecordPartUseCase,
    private readonly correct: CorrectPartUseCase,
    private readonly list: ListPartsUseCase,
    private readonly arrivals: ListArrivalInspectionsUseCase,
  ) {}

  @Post()
  @Allow('owner', 'desk', 'parts')
  @Answer(PartResponse, { created: true, summary: 'Record a number under which a part can be ordered' })
  async createPart(
    @CurrentCaller() caller: Caller,
    @Body() request: RecordPartRequest,
  ): Promise<PartResponse> {
    const { record, created } = await this.record.execute(caller, { id: request.id, part: toPart(request) });
    return created ? presentPart(record) : alreadyThere(presentPart(record));
  }

  @Get()
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(PartPage, { summary: 'List parts: of a kind, by number, or those that fit a vehicle' })
  @AlsoCsv<PartPage, PartResponse>('parts', ({ items }) => items, [
    { name: 'partId', value: ({ id }) => id },
    { name: 'componentType', value: ({ componentType }) => componentType },
    { name: 'partNumber', value: ({ partNumber }) => partNumber },
    { name: 'title', value: ({ title }) => title },
    { name: 'applications', value: ({ applications }) => applications.join('; ') },
    { name: 'supersededById', value: ({ supersededById }) => supersededById },
  ])
  async listParts(@CurrentCaller() caller: Caller, @Query() query: ListPartsQuery): Promise<PartPage> {
    const { componentType, partNumber, vehicleId, asOf } = query;
    const page = await this.list.execute(caller, {
      componentType,
      partNumber,
      vehicleId,
      asOf,
      ...this.pager.read(query),
    });
    return this.pager.page(page, presentPart);
  }

  @Get(':partId')
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(PartDetailsResponse, {
    summary: 'Show a part, what may stand in for it, and what of that lies there',
  })
  async getPart(
    @CurrentCaller() caller: Caller,
    @Param() { partId }: PartPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<PartDetailsResponse> {
    return presentPartView(await this.list.one(caller, partId, asOf));
  }

  @Get(':partId/revisions')
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(PartRevisions, { summary: 'Every revision of a part, oldest first' })
  async listPartRevisions(
    @CurrentCaller() caller: Caller,
    @Param() { partId }: PartPath,
  ): Promise<PartRevisions> {
    return { items: (await this.list.revisions(caller, partId)).map(presentPart) };
  }

  @Get(':partId/arrival-sheets')
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(ArrivalSheetList, {
    summary: 'The check sheets a part can be looked at by on arrival, without what needs a vehicle',
  })
  async listArrivalSheets(
    @CurrentCaller() caller: Caller,
    @Param() { partId }: PartPath,
  ): Promise<ArrivalSheetList> {
    return { items: (await this.arrivals.sheets(caller, partId)).map(presentArrivalSheet) };
  }

  @Post(':partId/corrections')
  @Allow('owner', 'desk', 'parts')
  @Answer(PartResponse, {
    created: true,
    location: ({ id }: PartResponse) => `/v1/parts/${id}`,
    summary: 'Correct a part, or name its successor',
  })
  async correctPart(
    @CurrentCaller() caller: Caller,
    @Param() { partId }: PartPath,
    @Body() request: CorrectPartRequest,
    @IfMatch() expected: ExpectedVersion,
  ): Promise<PartResponse> {
    const command = { id: partId, expected, part: toPart(request), reason: request.reason };
    return presentPart(await this.correct.execute(caller, command));
  }
}
