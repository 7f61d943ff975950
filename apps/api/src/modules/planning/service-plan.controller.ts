import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  AsOfQuery,
  CorrectServicePlanItemRequest,
  ListServicePlanItemsQuery,
  RecordServicePlanItemRequest,
  ServicePlanItemPage,
  ServicePlanItemPath,
  ServicePlanItemResponse,
  ServicePlanItemRevisions,
} from '@endfloat/contracts';
import {
  CorrectServicePlanItemUseCase,
  FindServicePlanItemsUseCase,
  RecordServicePlanItemUseCase,
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
import { presentServicePlanItem, toServicePlanItem } from './service-plan.presenter.js';

const readers = ['owner', 'desk', 'technician', 'parts', 'developer', 'auditor'] as const;

@Controller('v1/service-plan-items')
export class ServicePlanController {
  constructor(
    private readonly pager: Pager,
    private readonly record: RecordServicePlanItemUseCase,
    private readonly correct: CorrectServicePlanItemUseCase,
    private readonly find: FindServicePlanItemsUseCase,
  ) {}

  @Post()
  @Allow('owner', 'desk')
  @Answer(ServicePlanItemResponse, {
    created: true,
    summary: 'Record something the shop does at intervals of days or distance',
  })
  async createServicePlanItem(
    @CurrentCaller() caller: Caller,
    @Body() request: RecordServicePlanItemRequest,
  ): Promise<ServicePlanItemResponse> {
    const command = { id: request.id, item: toServicePlanItem(request) };
    const { record, created } = await this.record.execute(caller, command);
    return created ? presentServicePlanItem(record) : alreadyThere(presentServicePlanItem(record));
  }

  @Get()
  @Allow(...readers)
  @Answer(ServicePlanItemPage, { summary: 'List the items of the service plan' })
  async listServicePlanItems(
    @CurrentCaller() caller: Caller,
    @Query() query: ListServicePlanItemsQuery,
  ): Promise<ServicePlanItemPage> {
    const { componentType, asOf } = query;
    const page = await this.find.execute(caller, { componentType, asOf, ...this.pager.read(query) });
    return this.pager.page(page, presentServicePlanItem);
  }

  @Get(':planItemId')
  @Allow(...readers)
  @Answer(ServicePlanItemResponse, {
    summary: 'Show an item of the plan, now or as it was known at a moment',
  })
  async getServicePlanItem(
    @CurrentCaller() caller: Caller,
    @Param() { planItemId }: ServicePlanItemPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<ServicePlanItemResponse> {
    return presentServicePlanItem(await this.find.one(caller, planItemId, asOf));
  }

  @Get(':planItemId/revisions')
  @Allow(...readers)
  @Answer(ServicePlanItemRevisions, { summary: 'Every revision of an item of the plan, oldest first' })
  async listServicePlanItemRevisions(
    @CurrentCaller() caller: Caller,
    @Param() { planItemId }: ServicePlanItemPath,
  ): Promise<ServicePlanItemRevisions> {
    return { items: (await this.find.revisions(caller, planItemId)).map(presentServicePlanItem) };
  }

  @Post(':planItemId/corrections')
  @Allow('owner', 'desk')
  @Answer(ServicePlanItemResponse, {
    created: true,
    location: ({ id }: ServicePlanItemResponse) => `/v1/service-plan-items/${id}`,
    summary: 'Correct an item of the plan: another interval, or no longer in use',
  })
  async correctServicePlanItem(
    @CurrentCaller() caller: Caller,
    @Param() { planItemId }: ServicePlanItemPath,
    @Body() request: CorrectServicePlanItemRequest,
    @IfMatch() expected: ExpectedVersion,
  ): Promise<ServicePlanItemResponse> {
    const command = { id: planItemId, expected, item: toServicePlanItem(request), reason: request.reason };
    return presentServicePlanItem(await this.correct.execute(caller, command));
  }
}
