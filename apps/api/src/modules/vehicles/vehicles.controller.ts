import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  CorrectVehicleRequest,
  ListVehiclesQuery,
  OwnershipList,
  OwnershipResponse,
  RecordVehicleRequest,
  ShowVehicleQuery,
  TransferVehicleRequest,
  VehiclePage,
  VehiclePath,
  VehicleResponse,
  VehicleRevisions,
} from '@endfloat/contracts';
import {
  CorrectVehicleUseCase,
  type Caller,
  ListOwnershipsUseCase,
  ListVehiclesUseCase,
  RecordVehicleUseCase,
  ShowVehicleUseCase,
  TransferVehicleUseCase,
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
import { toListVehiclesQuery, toRecordVehicleCommand, toVehicleEntry } from './vehicle.command-mapper.js';
import {
  presentOwnership,
  presentVehicle,
  presentVehicleOutcome,
  presentVehicleWithOwner,
} from './vehicle.presenter.js';

@Controller('v1/vehicles')
export class VehiclesController {
  constructor(
    private readonly pager: Pager,
    private readonly record: RecordVehicleUseCase,
    private readonly correct: CorrectVehicleUseCase,
    private readonly show: ShowVehicleUseCase,
    private readonly list: ListVehiclesUseCase,
  ) {}

  @Post()
  @Allow('owner', 'desk', 'technician')
  @Answer(VehicleResponse, { created: true, summary: 'Record a vehicle with its owner' })
  async createVehicle(
    @CurrentCaller() caller: Caller,
    @Body() request: RecordVehicleRequest,
  ): Promise<VehicleResponse> {
    const outcome = await this.record.execute(caller, toRecordVehicleCommand(request));
    const answer = presentVehicleOutcome(outcome);
    return outcome.created ? answer : alreadyThere(answer);
  }

  @Get()
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(VehiclePage, { summary: 'List vehicles, newest first' })
  async listVehicles(
    @CurrentCaller() caller: Caller,
    @Query() request: ListVehiclesQuery,
  ): Promise<VehiclePage> {
    const page = await this.list.execute(caller, toListVehiclesQuery(request, this.pager.read(request)));
    return this.pager.page(page, presentVehicle);
  }

  @Get(':vehicleId')
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(VehicleResponse, { summary: 'Show a vehicle, now or as it was known at a moment' })
  async showVehicle(
    @CurrentCaller() caller: Caller,
    @Param() { vehicleId }: VehiclePath,
    @Query() { asOf }: ShowVehicleQuery,
  ): Promise<VehicleResponse> {
    return presentVehicleWithOwner(await this.show.execute(caller, { id: vehicleId, asOf }));
  }

  @Get(':vehicleId/revisions')
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(VehicleRevisions, { summary: 'Every revision of a vehicle, oldest first' })
  async listVehicleRevisions(
    @CurrentCaller() caller: Caller,
    @Param() { vehicleId }: VehiclePath,
  ): Promise<VehicleRevisions> {
    return { items: (await this.show.revisions(caller, vehicleId)).map(presentVehicle) };
  }

  @Post(':vehicleId/corrections')
  @Allow('owner', 'desk', 'technician')
  @Answer(VehicleResponse, {
    created: true,
    location: ({ id }: VehicleResponse) => `/v1/vehicles/${id}`,
    summary: 'Correct what is recorded about a vehicle',
  })
  async correctVehicle(
    @CurrentCaller() caller: Caller,
    @Param() { vehicleId }: VehiclePath,
    @IfMatch() expected: ExpectedVersion,
    @Body() request: CorrectVehicleRequest,
  ): Promise<VehicleResponse> {
    const command = { id: vehicleId, expected, vehicle: toVehicleEntry(request), reason: request.reason };
    return presentVehicleOutcome(await this.correct.execute(caller, command));
  }
}

@Controller('v1/vehicles/:vehicleId/ownerships')
export class VehicleOwnershipsController {
  constructor(
    private readonly transfer: TransferVehicleUseCase,
    private readonly list: ListOwnershipsUseCase,
  ) {}

  @Post()
  @Allow('owner', 'desk')
  @Answer(OwnershipResponse, {
    created: true,
    location: ({ vehicleId }: OwnershipResponse) => `/v1/vehicles/${vehicleId}/ownerships`,
    summary: 'Record that a vehicle has another owner',
  })
  async createOwnership(
    @CurrentCaller() caller: Caller,
    @Param() { vehicleId }: VehiclePath,
    @Body() request: TransferVehicleRequest,
  ): Promise<OwnershipResponse> {
    const { record, created } = await this.transfer.execute(caller, {
      id: request.id,
      vehicleId,
      customerId: request.customerId,
      fromAt: request.fromAt,
    });
    const answer = presentOwnership(record);
    return created ? answer : alreadyThere(answer);
  }

  @Get()
  @Allow('owner', 'desk', 'auditor')
  @Answer(OwnershipList, { summary: 'Everybody who owned a vehicle, latest first' })
  async listOwnerships(
    @CurrentCaller() caller: Caller,
    @Param() { vehicleId }: VehiclePath,
  ): Promise<OwnershipList> {
    return { items: (await this.list.execute(caller, vehicleId)).map(presentOwnership) };
  }
}
