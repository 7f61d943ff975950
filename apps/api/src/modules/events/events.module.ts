import { Module } from '@nestjs/common';
import { ReadEventsUseCase, UnitOfWork } from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { EventsController } from './events.controller.js';

@Module({ controllers: [EventsController], providers: [useCase(ReadEventsUseCase, UnitOfWork)] })
export class EventsModule {}
