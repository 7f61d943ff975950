import { Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  ListWebhookDeliveriesQuery,
  WebhookDeliveryDetail,
  WebhookDeliveryPage,
  WebhookDeliveryPath,
} from '@endfloat/contracts';
import {
  ListWebhookDeliveriesUseCase,
  ReplayWebhookDeliveryUseCase,
  ShowWebhookDeliveryUseCase,
  type Caller,
} from '@endfloat/workshop';
import { Allow, Answer, CurrentCaller, Pager } from '../../http/index.js';
import { presentDeliveryView, presentWebhookDelivery } from './webhook.presenter.js';

@Controller('v1/webhook-deliveries')
export class WebhookDeliveriesController {
  constructor(
    private readonly list: ListWebhookDeliveriesUseCase,
    private readonly show: ShowWebhookDeliveryUseCase,
    private readonly replay: ReplayWebhookDeliveryUseCase,
    private readonly pager: Pager,
  ) {}

  @Get()
  @Allow('owner', 'developer', 'auditor')
  @Answer(WebhookDeliveryPage, { summary: 'What was told to which address, newest first' })
  async listWebhookDeliveries(
    @CurrentCaller() caller: Caller,
    @Query() query: ListWebhookDeliveriesQuery,
  ): Promise<WebhookDeliveryPage> {
    const { endpointId, state } = query;
    const list = await this.list.execute(caller, { ...this.pager.read(query), endpointId, state });
    return this.pager.page(list, presentWebhookDelivery);
  }

  @Get(':deliveryId')
  @Allow('owner', 'developer', 'auditor')
  @Answer(WebhookDeliveryDetail, { summary: 'One delivery with its attempts' })
  async getWebhookDelivery(
    @CurrentCaller() caller: Caller,
    @Param() { deliveryId }: WebhookDeliveryPath,
  ): Promise<WebhookDeliveryDetail> {
    return presentDeliveryView(await this.show.execute(caller, deliveryId));
  }

  @Post(':deliveryId/replays')
  @Allow('owner', 'developer')
  @Answer(WebhookDeliveryDetail, {
    created: true,
    location: ({ id }: WebhookDeliveryDetail) => `/v1/webhook-deliveries/${id}`,
    summary: 'Tell an event once more, under the same webhook-id',
  })
  async createWebhookReplay(
    @CurrentCaller() caller: Caller,
    @Param() { deliveryId }: WebhookDeliveryPath,
  ): Promise<WebhookDeliveryDetail> {
    return presentDeliveryView(await this.replay.execute(caller, deliveryId));
  }
}
