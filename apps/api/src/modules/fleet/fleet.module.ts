import { Module } from '@nestjs/common';
import {
  Clock,
  IdSource,
  ImportFleetHistoryUseCase,
  ShowFleetRecurrenceUseCase,
  UnitOfWork,
} from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { FleetController } from './fleet.controller.js';

@Module({
  controllers: [FleetController],
  providers: [
    useCase(ImportFleetHistoryUseCase, UnitOfWork, Clock, IdSource),
    useCase(ShowFleetRecurrenceUseCase, UnitOfWork, Clock),
  ],
})
export class FleetModule {}
