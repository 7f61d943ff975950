import { Controller, Get, Param, Query } from '@nestjs/common';
import {
  FittedPartPath,
  PartWearResponse,
  VehiclePath,
  VehicleWearResponse,
  WearOutlookPage,
  WearOutlooksQuery,
  WearQuery,
} from '@endfloat/contracts';
import {
  ListWearOutlooksUseCase,
  ShowPartWearUseCase,
  ShowVehicleWearUseCase,
  type Caller,
} from '@endfloat/workshop';
import { Allow, Answer, CurrentCaller, Pager } from '../../http/index.js';
import { presentFleet, presentOutlook, presentPartWear } from './wear.presenter.js';
import { toRequiredWearUntil, toWearUntil } from './wear.query-mapper.js';

const readers = ['owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor'] as const;

@Controller('v1')
export class WearController {
  constructor(
    private readonly partWear: ShowPartWearUseCase,
    private readonly vehicleWear: ShowVehicleWearUseCase,
    private readonly outlooks: ListWearOutlooksUseCase,
    private readonly pager: Pager,
  ) {}

  @Get('fitted-parts/:fittedPartId/wear')
  @Allow(...readers)
  @Answer(PartWearResponse, {
    summary: 'Wear of one fitted part: trend, distance to the limit, chance of reaching it',
  })
  async getFittedPartWear(
    @CurrentCaller() caller: Caller,
    @Param() { fittedPartId }: FittedPartPath,
    @Query() query: WearQuery,
  ): Promise<PartWearResponse> {
    const { characteristic, asOf } = query;
    return presentPartWear(
      await this.partWear.execute(caller, { fittedPartId, characteristic, asOf, until: toWearUntil(query) }),
    );
  }

  @Get('vehicles/:vehicleId/wear')
  @Allow(...readers)
  @Answer(VehicleWearResponse, { summary: 'Wear of every part that is fitted to a vehicle' })
  async getVehicleWear(
    @CurrentCaller() caller: Caller,
    @Param() { vehicleId }: VehiclePath,
    @Query() query: WearQuery,
  ): Promise<VehicleWearResponse> {
    const { characteristic, asOf } = query;
    const parts = await this.vehicleWear.execute(caller, {
      vehicleId,
      characteristic,
      asOf,
      until: toWearUntil(query),
    });
    return { vehicleId, parts: parts.map(presentPartWear) };
  }

  @Get('wear-outlooks')
  @Allow(...readers)
  @Answer(WearOutlookPage, {
    summary: 'Which vans will reach a limit before their next visit, the likeliest first',
    description:
      'One entry a fitted part and place. The parts of the kind in the shop are fitted once for each request, the 100 recorded last; of the parts that are fitted and yours to see, at most the 4000 recorded last are worked out. Entries without an answer come last, with the reason.',
  })
  async listWearOutlooks(
    @CurrentCaller() caller: Caller,
    @Query() query: WearOutlooksQuery,
  ): Promise<WearOutlookPage> {
    const { componentType, characteristic, asOf } = query;
    const list = await this.outlooks.execute(caller, {
      componentType,
      characteristic,
      asOf,
      until: toRequiredWearUntil(query),
      ...this.pager.read(query),
    });
    const { items, nextCursor } = this.pager.page(list, presentOutlook);
    return { items, nextCursor, fleet: presentFleet(list.fleet), partsLeftOut: list.partsLeftOut };
  }
}
