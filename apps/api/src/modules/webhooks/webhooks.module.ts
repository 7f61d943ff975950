import { Module } from '@nestjs/common';
import {
  ChangeWebhookEndpointUseCase,
  Clock,
  IdSource,
  ListWebhookDeliveriesUseCase,
  ListWebhookEndpointsUseCase,
  RecordWebhookEndpointUseCase,
  ReplayWebhookDeliveryUseCase,
  RotateWebhookSecretUseCase,
  ShowWebhookDeliveryUseCase,
  ShowWebhookEndpointUseCase,
  UnitOfWork,
  WebhookTerms,
} from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { WebhookDeliveriesController } from './webhook-deliveries.controller.js';
import { WebhookEndpointsController } from './webhook-endpoints.controller.js';

@Module({
  controllers: [WebhookEndpointsController, WebhookDeliveriesController],
  providers: [
    useCase(RecordWebhookEndpointUseCase, UnitOfWork, Clock, IdSource, WebhookTerms),
    useCase(ListWebhookEndpointsUseCase, UnitOfWork),
    useCase(ShowWebhookEndpointUseCase, UnitOfWork),
    useCase(ChangeWebhookEndpointUseCase, UnitOfWork, Clock, WebhookTerms),
    useCase(RotateWebhookSecretUseCase, UnitOfWork, Clock, IdSource, WebhookTerms),
    useCase(ListWebhookDeliveriesUseCase, UnitOfWork),
    useCase(ShowWebhookDeliveryUseCase, UnitOfWork),
    useCase(ReplayWebhookDeliveryUseCase, UnitOfWork, Clock, IdSource),
  ],
})
export class WebhooksModule {}
