import { Controller, Get, Query } from '@nestjs/common';
import {
  DueServicePage,
  ListDueServicesQuery,
  ListVehicleOutlooksQuery,
  VehicleOutlookPage,
  type FleetPageQuery,
} from '@endfloat/contracts';
import type { DueStanding } from '@endfloat/reliability';
import {
  ListDueServicesUseCase,
  ListVehicleOutlooksUseCase,
  lookBackDays,
  type Caller,
} from '@endfloat/workshop';
import { Allow, AlsoCsv, Answer, CurrentCaller, Pager } from '../../http/index.js';
import { outlookMethod, presentDueService, presentVehicleOutlook } from './outlook.presenter.js';

const readers = ['owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor'] as const;

const soonOf = ({ withinDays = '30', withinKm = '1000' }: FleetPageQuery) => ({
  days: Number(withinDays),
  km: Number(withinKm),
});

@Controller('v1')
export class OutlooksController {
  constructor(
    private readonly pager: Pager,
    private readonly due: ListDueServicesUseCase,
    private readonly outlooks: ListVehicleOutlooksUseCase,
  ) {}

  @Get('due-services')
  @Allow(...readers)
  @Answer(DueServicePage, {
    summary: 'What is due and overdue on each vehicle by the service plan, the longest overdue first',
    description:
      'Counted from when it was last done: recorded as such, by work that the item names, or by a part newly fitted; what was never done counts from first use. The earlier of date and distance; the date alone where the distance is not known. Today is a day in UTC.',
  })
  @AlsoCsv('due-services', ({ items }: DueServicePage) => items, [
    { name: 'vehicleId', value: ({ vehicleId }) => vehicleId },
    { name: 'label', value: ({ label }) => label },
    { name: 'plate', value: ({ plate }) => plate },
    { name: 'planItemId', value: ({ planItemId }) => planItemId },
    { name: 'name', value: ({ name }) => name },
    { name: 'standing', value: ({ standing }) => standing },
    { name: 'basis', value: ({ basis }) => basis },
    { name: 'lastDoneAt', value: ({ lastDoneAt }) => lastDoneAt },
    { name: 'lastDoneKm', value: ({ lastDoneKm }) => lastDoneKm },
    { name: 'dueOn', value: ({ dueOn }) => dueOn },
    { name: 'dueKm', value: ({ dueKm }) => dueKm },
    { name: 'daysLeft', value: ({ daysLeft }) => daysLeft },
    { name: 'kmLeft', value: ({ kmLeft }) => kmLeft },
    { name: 'expectedOn', value: ({ expectedOn }) => expectedOn },
    { name: 'reachedFirst', value: ({ reachedFirst }) => reachedFirst },
  ])
  async listDueServices(
    @CurrentCaller() caller: Caller,
    @Query() query: ListDueServicesQuery,
  ): Promise<DueServicePage> {
    const { customerId, vehicleId, asOf, standing } = query;
    const list = await this.due.execute(caller, {
      customerId,
      vehicleId,
      asOf,
      standings: standing?.split(',') as DueStanding[] | undefined,
      soonWithin: soonOf(query),
      ...this.pager.read(query),
    });
    const { overdue, dueSoon, later, unknown } = list.counts;
    const { items, nextCursor } = this.pager.page(list, presentDueService);
    return { items, nextCursor, counts: { overdue, dueSoon, later, unknown }, vehicles: list.vehicles };
  }

  @Get('vehicle-outlooks')
  @Allow(...readers)
  @Answer(VehicleOutlookPage, {
    summary:
      'Vehicles by what is coming, with the reasons: open findings, comebacks, repeated complaints, services',
    description:
      'Which of them will reach a wear limit is at GET /v1/wear-outlooks, by characteristic and with its chance.',
  })
  @AlsoCsv('vehicle-outlooks', ({ items }: VehicleOutlookPage) => items, [
    { name: 'rank', value: ({ rank }) => rank },
    { name: 'vehicleId', value: ({ vehicleId }) => vehicleId },
    { name: 'label', value: ({ label }) => label },
    { name: 'plate', value: ({ plate }) => plate },
    {
      name: 'reasons',
      value: ({ reasons }) => reasons.map(({ reason, count }) => `${reason} ${String(count)}`).join(', '),
    },
    { name: 'daysToService', value: ({ daysToService }) => daysToService },
  ])
  async listVehicleOutlooks(
    @CurrentCaller() caller: Caller,
    @Query() query: ListVehicleOutlooksQuery,
  ): Promise<VehicleOutlookPage> {
    const { customerId, vehicleId, asOf } = query;
    const list = await this.outlooks.execute(caller, {
      customerId,
      vehicleId,
      asOf,
      soonWithin: soonOf(query),
      ...this.pager.read(query),
    });
    const { items, nextCursor } = this.pager.page(list, presentVehicleOutlook);
    return { items, nextCursor, lookBackDays, method: outlookMethod };
  }
}
