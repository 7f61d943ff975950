import { Controller, Get, Param, Query } from '@nestjs/common';
import { VehicleHistoryQuery, VehicleHistoryResponse, VehiclePath } from '@endfloat/contracts';
import { ShowVehicleHistoryUseCase, type Caller } from '@endfloat/workshop';
import { Allow, AlsoCsv, Answer, CurrentCaller } from '../../http/index.js';
import { presentVehicleHistory } from './vehicle-history.presenter.js';
import { historyColumns, historyLines } from './vehicle-history.table.js';

@Controller('v1/vehicles/:vehicleId/history')
export class HistoryController {
  constructor(private readonly show: ShowVehicleHistoryUseCase) {}

  @Get()
  @Allow('owner', 'desk', 'technician', 'fleetManager', 'auditor')
  @Answer(VehicleHistoryResponse, {
    summary: 'Everything about a vehicle as it was known at a moment, in the order in which it happened',
    description:
      "Who measured what, with which instrument, in calibration or not, under which edition of which limit; what was complained of, decided, agreed, done, proved and signed. A customer's user is told of their own vehicles, without the shop's money and without the words of an earlier owner. Each kind of record is bounded; `cut` says what was left out. As CSV: one line a revision, what the columns do not say as JSON in the last.",
  })
  @AlsoCsv('vehicle-history', historyLines, historyColumns)
  async getVehicleHistory(
    @CurrentCaller() caller: Caller,
    @Param() { vehicleId }: VehiclePath,
    @Query() { asOf, corrections }: VehicleHistoryQuery,
  ): Promise<VehicleHistoryResponse> {
    const query = { vehicleId, asOf, isEveryRevisionWanted: corrections === 'all' };
    return presentVehicleHistory(await this.show.execute(caller, query));
  }
}
