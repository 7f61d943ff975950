import { Module } from '@nestjs/common';
import {
  Clock,
  CompareComponentLivesUseCase,
  CompareFleetsUseCase,
  IdSource,
  ImportFleetHistoryUseCase,
  ShowComponentLivesUseCase,
  ShowFleetRecurrenceUseCase,
  UnitOfWork,
} from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { ComponentLivesController } from './component-lives.controller.js';
import { FleetController } from './fleet.controller.js';

@Module({
  controllers: [FleetController, ComponentLivesController],
  providers: [
    useCase(ImportFleetHistoryUseCase, UnitOfWork, Clock, IdSource),
    useCase(ShowFleetRecurrenceUseCase, UnitOfWork, Clock),
    useCase(CompareFleetsUseCase, UnitOfWork, Clock),
    useCase(ShowComponentLivesUseCase, UnitOfWork, Clock),
    useCase(CompareComponentLivesUseCase, UnitOfWork, Clock),
  ],
})
export class FleetModule {}
