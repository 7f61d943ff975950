import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  AsOfQuery,
  CorrectFittedPartRequest,
  FittedPartPage,
  FittedPartPath,
  FittedPartResponse,
  ListFittedPartsQuery,
  RecordFittedPartRequest,
} from '@endfloat/contracts';
import {
  CorrectFittedPartUseCase,
  ListFittedPartsUseCase,
  RecordFittedPartUseCase,
  ShowFittedPartUseCase,
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
import { presentFittedPart, toFittedPartEntry } from './fitted-part.presenter.js';

@Controller('v1/fitted-parts')
export class FittedPartsController {
  constructor(
    private readonly pager: Pager,
    private readonly record: RecordFittedPartUseCase,
    private readonly correct: CorrectFittedPartUseCase,
    private readonly show: ShowFittedPartUseCase,
    private readonly list: ListFittedPartsUseCase,
  ) {}

  @Post()
  @Allow('owner', 'desk', 'technician', 'parts')
  @Answer(FittedPartResponse, { created: true, summary: 'Record a part that is, or was, on a vehicle' })
  async createFittedPart(
    @CurrentCaller() caller: Caller,
    @Body() request: RecordFittedPartRequest,
  ): Promise<FittedPartResponse> {
    const { id, vehicleId } = request;
    const { record, created } = await this.record.execute(caller, {
      id,
      vehicleId,
      part: toFittedPartEntry(request),
    });
    return created ? presentFittedPart(record) : alreadyThere(presentFittedPart(record));
  }

  @Get()
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(FittedPartPage, { summary: 'List fitted parts of a vehicle, of a kind, or of a batch' })
  async listFittedParts(
    @CurrentCaller() caller: Caller,
    @Query() query: ListFittedPartsQuery,
  ): Promise<FittedPartPage> {
    const { vehicleId, componentType, batch, asOf } = query;
    const page = await this.list.execute(caller, {
      vehicleId,
      componentType,
      batch,
      asOf,
      ...this.pager.read(query),
    });
    return this.pager.page(page, presentFittedPart);
  }

  @Get(':fittedPartId')
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(FittedPartResponse, { summary: 'Show a fitted part, now or as it was known at a moment' })
  async getFittedPart(
    @CurrentCaller() caller: Caller,
    @Param() { fittedPartId }: FittedPartPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<FittedPartResponse> {
    return presentFittedPart(await this.show.execute(caller, { id: fittedPartId, asOf }));
  }

  @Post(':fittedPartId/corrections')
  @Allow('owner', 'desk', 'technician', 'parts')
  @Answer(FittedPartResponse, {
    created: true,
    location: ({ id }: FittedPartResponse) => `/v1/fitted-parts/${id}`,
    summary: 'Correct what is recorded about a fitted part, its removal included',
  })
  async correctFittedPart(
    @CurrentCaller() caller: Caller,
    @Param() { fittedPartId }: FittedPartPath,
    @Body() request: CorrectFittedPartRequest,
    @IfMatch() expected: ExpectedVersion,
  ): Promise<FittedPartResponse> {
    const command = { id: fittedPartId, expected, part: toFittedPartEntry(request), reason: request.reason };
    return presentFittedPart(await this.correct.execute(caller, command));
  }
}
