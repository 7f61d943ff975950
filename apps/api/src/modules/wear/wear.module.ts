import { Module } from '@nestjs/common';
import {
  Clock,
  ListWearOutlooksUseCase,
  ShowPartWearUseCase,
  ShowVehicleWearUseCase,
  UnitOfWork,
} from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { WearController } from './wear.controller.js';

@Module({
  controllers: [WearController],
  providers: [
    useCase(ShowPartWearUseCase, UnitOfWork, Clock),
    useCase(ShowVehicleWearUseCase, UnitOfWork, Clock),
    useCase(ListWearOutlooksUseCase, UnitOfWork, Clock),
  ],
})
export class WearModule {}
