import { Module } from '@nestjs/common';
import { Clock, ShowVehicleHistoryUseCase, UnitOfWork } from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { HistoryController } from './history.controller.js';

@Module({
  controllers: [HistoryController],
  providers: [useCase(ShowVehicleHistoryUseCase, UnitOfWork, Clock)],
})
export class HistoryModule {}
