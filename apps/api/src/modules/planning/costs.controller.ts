import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  FleetCostsPage,
  FleetCostsQuery,
  KeepingPreviewResponse,
  PreviewKeepingRequest,
  VehicleCostsQuery,
  VehicleCostsResponse,
  VehiclePath,
  type VehicleCostsDto,
} from '@endfloat/contracts';
import { PreviewKeepingUseCase, ShowFleetCostsUseCase, type Caller } from '@endfloat/workshop';
import {
  Allow,
  AlsoCsv,
  Answer,
  CurrentCaller,
  HttpProblem,
  Pager,
  type CsvColumn,
} from '../../http/index.js';
import {
  presentCostTerms,
  presentKeeping,
  presentTogether,
  presentVehicleCosts,
  toKeepingCommand,
} from './costs.presenter.js';

const costColumns: readonly CsvColumn<VehicleCostsDto>[] = [
  { name: 'vehicleId', value: ({ vehicle }) => vehicle.vehicleId },
  { name: 'label', value: ({ vehicle }) => vehicle.label },
  { name: 'plate', value: ({ vehicle }) => vehicle.plate },
  { name: 'currency', value: ({ total }) => total.currency },
  { name: 'labour', value: ({ labour }) => labour.amount },
  { name: 'parts', value: ({ parts }) => parts.amount },
  { name: 'downtimeCost', value: ({ downtimeCost }) => downtimeCost.amount },
  { name: 'total', value: ({ total }) => total.amount },
  { name: 'hours', value: ({ hours }) => hours },
  { name: 'lines', value: ({ lines }) => lines },
  { name: 'downtimeDays', value: ({ downtime }) => downtime.days },
  { name: 'inWorkDays', value: ({ downtime }) => downtime.inWork },
  { name: 'waitingForConsentDays', value: ({ downtime }) => downtime.waitingForConsent },
  { name: 'waitingForPartDays', value: ({ downtime }) => downtime.waitingForPart },
  { name: 'waitingForBayDays', value: ({ downtime }) => downtime.waitingForBay },
  { name: 'waitingForReleaseDays', value: ({ downtime }) => downtime.waitingForRelease },
  { name: 'km', value: ({ perKm }) => (perKm.kind === 'known' ? perKm.km : null) },
  { name: 'amountPerKm', value: ({ perKm }) => (perKm.kind === 'known' ? perKm.amountPerKm : null) },
];

@Controller('v1')
export class CostsController {
  constructor(
    private readonly pager: Pager,
    private readonly costs: ShowFleetCostsUseCase,
    private readonly keeping: PreviewKeepingUseCase,
  ) {}

  @Get('fleet-costs')
  @Allow('owner', 'desk', 'fleetManager', 'developer', 'auditor')
  @Answer(FleetCostsPage, {
    summary:
      'What vehicles cost within a time: work, parts, days off the road by reason, cost of a km; the dearest first',
  })
  @AlsoCsv('fleet-costs', ({ items }: FleetCostsPage) => items, costColumns)
  async listFleetCosts(
    @CurrentCaller() caller: Caller,
    @Query() query: FleetCostsQuery,
  ): Promise<FleetCostsPage> {
    const { customerId, from, until, asOf } = query;
    const found = await this.costs.execute(caller, {
      customerId,
      from,
      until,
      asOf,
      ...this.pager.read(query),
    });
    const { items, nextCursor } = this.pager.page(found, presentVehicleCosts);
    return {
      items,
      nextCursor,
      vehicles: found.vehicles,
      vehiclesWithDistance: found.withDistance.vehicles,
      together: presentTogether(found),
      terms: presentCostTerms(found),
    };
  }

  @Get('vehicles/:vehicleId/costs')
  @Allow('owner', 'desk', 'fleetManager', 'developer', 'auditor')
  @Answer(VehicleCostsResponse, {
    summary: 'What a vehicle cost within a time, year by year, and the cost of a km',
  })
  @AlsoCsv('vehicle-costs', (costs: VehicleCostsResponse) => [costs], costColumns)
  async getVehicleCosts(
    @CurrentCaller() caller: Caller,
    @Param() { vehicleId }: VehiclePath,
    @Query() { from, until, asOf }: VehicleCostsQuery,
  ): Promise<VehicleCostsResponse> {
    const found = await this.costs.one(caller, { vehicleId, from, until, asOf });
    const [costs] = found.items;
    if (costs === undefined) throw new HttpProblem('not-found');
    return { ...presentVehicleCosts(costs), terms: presentCostTerms(found) };
  }

  @Post('vehicles/:vehicleId/keeping-previews')
  @Allow('owner', 'desk', 'fleetManager')
  @Answer(KeepingPreviewResponse, {
    summary: 'Keep a vehicle, and for how long, or replace it by another; nothing is stored',
  })
  async previewKeeping(
    @CurrentCaller() caller: Caller,
    @Param() { vehicleId }: VehiclePath,
    @Body() request: PreviewKeepingRequest,
  ): Promise<KeepingPreviewResponse> {
    return presentKeeping(await this.keeping.execute(caller, toKeepingCommand(vehicleId, request)));
  }
}
