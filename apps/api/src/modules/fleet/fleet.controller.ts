import { Body, Controller, Get, Post, Query } from '@nestjs/common';
import {
  FleetRecurrenceQuery,
  FleetRecurrenceResponse,
  ImportedFleetHistoryResponse,
  ImportFleetHistoryRequest,
} from '@endfloat/contracts';
import { ImportFleetHistoryUseCase, ShowFleetRecurrenceUseCase, type Caller } from '@endfloat/workshop';
import { Allow, alreadyThere, Answer, BodyLimit, bulkBodyLimit, CurrentCaller } from '../../http/index.js';
import { presentFleetRecurrence, toImportFleetHistory } from './fleet.presenter.js';

@Controller('v1')
export class FleetController {
  constructor(
    private readonly importHistory: ImportFleetHistoryUseCase,
    private readonly recurrence: ShowFleetRecurrenceUseCase,
  ) {}

  @Post('fleet-histories')
  @Allow('owner', 'desk')
  @BodyLimit(bulkBodyLimit)
  @Answer(ImportedFleetHistoryResponse, {
    created: true,
    location: () => '/v1/vehicles',
    summary: 'Take over the replacement history of a fleet: all of it, or nothing',
  })
  async createFleetHistory(
    @CurrentCaller() caller: Caller,
    @Body() request: ImportFleetHistoryRequest,
  ): Promise<ImportedFleetHistoryResponse> {
    const { vehicleIds, fittedParts, created } = await this.importHistory.execute(
      caller,
      toImportFleetHistory(request),
    );
    const answer = { vehicleIds: [...vehicleIds], fittedParts };
    return created ? answer : alreadyThere(answer);
  }

  @Get('fleet-recurrences')
  @Allow('owner', 'desk', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(FleetRecurrenceResponse, {
    summary: 'How often parts of one kind are replaced per vehicle, by age of the vehicle',
  })
  async getFleetRecurrence(
    @CurrentCaller() caller: Caller,
    @Query() { componentType, customerId, until, asOf }: FleetRecurrenceQuery,
  ): Promise<FleetRecurrenceResponse> {
    return presentFleetRecurrence(
      await this.recurrence.execute(caller, { componentType, customerId, until, asOf }),
    );
  }
}
