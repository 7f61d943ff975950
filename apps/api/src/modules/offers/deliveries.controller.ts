import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  AsOfQuery,
  CorrectDeliveryRequest,
  DeliveryPath,
  DeliveryResponse,
  DeliveryRevisions,
} from '@endfloat/contracts';
import { CorrectDeliveryUseCase, ListDeliveriesUseCase, type Caller } from '@endfloat/workshop';
import { Allow, Answer, CurrentCaller, IfMatch, type ExpectedVersion } from '../../http/index.js';
import { presentDelivery, toDelivery } from './offer.presenter.js';

@Controller('v1/deliveries')
export class DeliveriesController {
  constructor(
    private readonly correct: CorrectDeliveryUseCase,
    private readonly deliveries: ListDeliveriesUseCase,
  ) {}

  @Get(':deliveryId')
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(DeliveryResponse, { summary: 'Show a delivery, now or as it was known at a moment' })
  async getDelivery(
    @CurrentCaller() caller: Caller,
    @Param() { deliveryId }: DeliveryPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<DeliveryResponse> {
    return presentDelivery(await this.deliveries.one(caller, deliveryId, asOf));
  }

  @Get(':deliveryId/revisions')
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(DeliveryRevisions, { summary: 'Every revision of a delivery, oldest first' })
  async listDeliveryRevisions(
    @CurrentCaller() caller: Caller,
    @Param() { deliveryId }: DeliveryPath,
  ): Promise<DeliveryRevisions> {
    return { items: (await this.deliveries.revisions(caller, deliveryId)).map(presentDelivery) };
  }

  @Post(':deliveryId/corrections')
  @Allow('owner', 'desk', 'parts')
  @Answer(DeliveryResponse, {
    created: true,
    location: ({ id }: DeliveryResponse) => `/v1/deliveries/${id}`,
    summary: 'Correct a delivery, such as the day it came',
  })
  async correctDelivery(
    @CurrentCaller() caller: Caller,
    @Param() { deliveryId }: DeliveryPath,
    @Body() request: CorrectDeliveryRequest,
    @IfMatch() expected: ExpectedVersion,
  ): Promise<DeliveryResponse> {
    const command = { id: deliveryId, expected, delivery: toDelivery(request), reason: request.reason };
    return presentDelivery(await this.correct.execute(caller, command));
  }
}
