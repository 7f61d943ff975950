import { Module } from '@nestjs/common';
import {
  Clock,
  CorrectDeliveryUseCase,
  CorrectOfferUseCase,
  IdSource,
  ListDeliveriesUseCase,
  ListOffersUseCase,
  RecordDeliveryUseCase,
  RecordOfferUseCase,
  UnitOfWork,
} from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { DeliveriesController } from './deliveries.controller.js';
import { OffersController } from './offers.controller.js';

@Module({
  controllers: [OffersController, DeliveriesController],
  providers: [
    useCase(RecordOfferUseCase, UnitOfWork, Clock, IdSource),
    useCase(CorrectOfferUseCase, UnitOfWork, Clock),
    useCase(ListOffersUseCase, UnitOfWork),
    useCase(RecordDeliveryUseCase, UnitOfWork, Clock, IdSource),
    useCase(CorrectDeliveryUseCase, UnitOfWork, Clock),
    useCase(ListDeliveriesUseCase, UnitOfWork),
  ],
})
export class OffersModule {}
