import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  AsOfQuery,
  BeginOdometerSegmentRequest,
  CorrectOdometerEntryRequest,
  ListOdometerEntriesQuery,
  OdometerEntryPage,
  OdometerEntryPath,
  OdometerEntryResponse,
  OdometerSegmentList,
  OdometerSegmentResponse,
  RecordOdometerEntryRequest,
  VehiclePath,
} from '@endfloat/contracts';
import {
  BeginOdometerSegmentUseCase,
  CorrectOdometerEntryUseCase,
  ListOdometerEntriesUseCase,
  RecordOdometerEntryUseCase,
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
import { presentOdometerEntry, presentOdometerSegment, toOdometerShown } from './odometer.presenter.js';

@Controller('v1/vehicles/:vehicleId/odometer-entries')
export class VehicleOdometerController {
  constructor(
    private readonly pager: Pager,
    private readonly record: RecordOdometerEntryUseCase,
    private readonly list: ListOdometerEntriesUseCase,
  ) {}

  @Post()
  @Allow('owner', 'desk', 'technician', 'fleetManager')
  @Answer(OdometerEntryResponse, {
    created: true,
    location: ({ id }: OdometerEntryResponse) => `/v1/odometer-entries/${id}`,
    summary: 'Record what the odometer showed; oddities warn and never refuse',
  })
  async createOdometerEntry(
    @CurrentCaller() caller: Caller,
    @Param() { vehicleId }: VehiclePath,
    @Body() request: RecordOdometerEntryRequest,
  ): Promise<OdometerEntryResponse> {
    const command = { id: request.id, vehicleId, entry: toOdometerShown(request) };
    const { record, created } = await this.record.execute(caller, command);
    return created ? presentOdometerEntry(record) : alreadyThere(presentOdometerEntry(record));
  }

  @Get()
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(OdometerEntryPage, { summary: 'List odometer entries of a vehicle, latest reading first' })
  async listOdometerEntries(
    @CurrentCaller() caller: Caller,
    @Param() { vehicleId }: VehiclePath,
    @Query() query: ListOdometerEntriesQuery,
  ): Promise<OdometerEntryPage> {
    const page = await this.list.execute(caller, { vehicleId, asOf: query.asOf, ...this.pager.read(query) });
    return this.pager.page(page, presentOdometerEntry);
  }
}

@Controller('v1/odometer-entries/:odometerEntryId')
export class OdometerEntriesController {
  constructor(
    private readonly list: ListOdometerEntriesUseCase,
    private readonly correct: CorrectOdometerEntryUseCase,
  ) {}

  @Get()
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(OdometerEntryResponse, { summary: 'Show an odometer entry, now or as it was known at a moment' })
  async getOdometerEntry(
    @CurrentCaller() caller: Caller,
    @Param() { odometerEntryId }: OdometerEntryPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<OdometerEntryResponse> {
    return presentOdometerEntry(await this.list.one(caller, odometerEntryId, asOf));
  }

  @Post('corrections')
  @Allow('owner', 'desk', 'technician')
  @Answer(OdometerEntryResponse, {
    created: true,
    location: ({ id }: OdometerEntryResponse) => `/v1/odometer-entries/${id}`,
    summary: 'Correct an odometer entry, or settle a contradiction',
  })
  async correctOdometerEntry(
    @CurrentCaller() caller: Caller,
    @Param() { odometerEntryId }: OdometerEntryPath,
    @Body() request: CorrectOdometerEntryRequest,
    @IfMatch() expected: ExpectedVersion,
  ): Promise<OdometerEntryResponse> {
    const { reliable = null, reason } = request;
    const command = { id: odometerEntryId, expected, entry: toOdometerShown(request), reliable, reason };
    return presentOdometerEntry(await this.correct.execute(caller, command));
  }
}

@Controller('v1/vehicles/:vehicleId/odometer-segments')
export class OdometerSegmentsController {
  constructor(
    private readonly begin: BeginOdometerSegmentUseCase,
    private readonly list: ListOdometerEntriesUseCase,
  ) {}

  @Post()
  @Allow('owner', 'desk', 'technician')
  @Answer(OdometerSegmentResponse, {
    created: true,
    location: ({ vehicleId }: OdometerSegmentResponse) => `/v1/vehicles/${vehicleId}/odometer-segments`,
    summary: 'Begin a new stretch: the display rolled over, was replaced, or counts another unit',
  })
  async createOdometerSegment(
    @CurrentCaller() caller: Caller,
    @Param() { vehicleId }: VehiclePath,
    @Body() request: BeginOdometerSegmentRequest,
  ): Promise<OdometerSegmentResponse> {
    const { id, cause, startedAt, shown, unit, digits, distanceKm, note } = request;
    const command = { id, vehicleId, cause, startedAt, shown, unit, digits, distanceKm, note };
    const { record, created } = await this.begin.execute(caller, command);
    return created ? presentOdometerSegment(record) : alreadyThere(presentOdometerSegment(record));
  }

  @Get()
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(OdometerSegmentList, { summary: 'Stretches of the odometer of a vehicle' })
  async listOdometerSegments(
    @CurrentCaller() caller: Caller,
    @Param() { vehicleId }: VehiclePath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<OdometerSegmentList> {
    return { items: (await this.list.segments(caller, vehicleId, asOf)).map(presentOdometerSegment) };
  }
}
