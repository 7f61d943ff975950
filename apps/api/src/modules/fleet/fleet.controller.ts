import { Body, Controller, Get, Post, Query } from '@nestjs/common';
import {
  FleetComparisonQuery,
  FleetComparisonResponse,
  FleetRecurrenceQuery,
  FleetRecurrenceResponse,
  ImportedFleetHistoryResponse,
  ImportFleetHistoryRequest,
} from '@endfloat/contracts';
import {
  CompareFleetsUseCase,
  ImportFleetHistoryUseCase,
  ShowFleetRecurrenceUseCase,
  type Caller,
} from '@endfloat/workshop';
import {
  Allow,
  alreadyThere,
  AlsoCsv,
  Answer,
  BodyLimit,
  bulkBodyLimit,
  CurrentCaller,
} from '../../http/index.js';
import { toImportFleetHistory } from './fleet-history.command-mapper.js';
import { presentFleetComparison, presentFleetRecurrence, recurrencePoints } from './recurrence.presenter.js';

@Controller('v1')
export class FleetController {
  constructor(
    private readonly importHistory: ImportFleetHistoryUseCase,
    private readonly recurrence: ShowFleetRecurrenceUseCase,
    private readonly compare: CompareFleetsUseCase,
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
    summary: 'How often parts are replaced, or complaints and comebacks recur, per vehicle by its age',
    description:
      'A vehicle is observed in the stretches stated for it; where none is, since the shop knew it and for a year after each visit or odometer entry. It is never observed before first use, after retirement, or while somebody else than the customer asked about owned it. As CSV: the curve.',
  })
  @AlsoCsv('fleet-recurrences', recurrencePoints, [
    { name: 'ageDays', value: ({ ageDays }) => ageDays },
    { name: 'atRisk', value: ({ atRisk }) => atRisk },
    { name: 'events', value: ({ events }) => events },
    { name: 'meanPerVehicle', value: ({ mean }) => mean },
    { name: 'standardError', value: ({ standardError }) => standardError },
    { name: 'plainLower', value: ({ plainLimits }) => plainLimits?.lower ?? null },
    { name: 'plainUpper', value: ({ plainLimits }) => plainLimits?.upper ?? null },
    { name: 'logLower', value: ({ logLimits }) => logLimits?.lower ?? null },
    { name: 'logUpper', value: ({ logLimits }) => logLimits?.upper ?? null },
  ])
  async getFleetRecurrence(
    @CurrentCaller() caller: Caller,
    @Query() query: FleetRecurrenceQuery,
  ): Promise<FleetRecurrenceResponse> {
    return presentFleetRecurrence(await this.recurrence.execute(caller, query));
  }

  @Get('fleet-comparisons')
  @Allow('owner', 'desk', 'parts', 'developer', 'auditor')
  @Answer(FleetComparisonResponse, {
    summary: 'Whether replacements, complaints or comebacks recur more often in one fleet than in another',
  })
  async compareFleetRecurrences(
    @CurrentCaller() caller: Caller,
    @Query() query: FleetComparisonQuery,
  ): Promise<FleetComparisonResponse> {
    return presentFleetComparison(await this.compare.execute(caller, query));
  }
}
