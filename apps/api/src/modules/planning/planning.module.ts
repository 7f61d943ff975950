import { Module } from '@nestjs/common';
import {
  Clock,
  CorrectServicePlanItemUseCase,
  CorrectServiceUseCase,
  FindServicePlanItemsUseCase,
  FindServicesUseCase,
  IdSource,
  ListDueServicesUseCase,
  ListVehicleOutlooksUseCase,
  PreviewKeepingUseCase,
  RecordServicePlanItemUseCase,
  RecordServiceUseCase,
  ShowFleetCostsUseCase,
  UnitOfWork,
} from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { CostsController } from './costs.controller.js';
import { OutlooksController } from './outlooks.controller.js';
import { ServicePlanController } from './service-plan.controller.js';
import { ServiceRecordsController } from './service-records.controller.js';

@Module({
  controllers: [ServicePlanController, ServiceRecordsController, OutlooksController, CostsController],
  providers: [
    useCase(RecordServicePlanItemUseCase, UnitOfWork, Clock, IdSource),
    useCase(CorrectServicePlanItemUseCase, UnitOfWork, Clock),
    useCase(FindServicePlanItemsUseCase, UnitOfWork),
    useCase(RecordServiceUseCase, UnitOfWork, Clock, IdSource),
    useCase(CorrectServiceUseCase, UnitOfWork, Clock),
    useCase(FindServicesUseCase, UnitOfWork, Clock),
    useCase(ListDueServicesUseCase, UnitOfWork, Clock),
    useCase(ListVehicleOutlooksUseCase, UnitOfWork, Clock),
    useCase(ShowFleetCostsUseCase, UnitOfWork, Clock),
    useCase(PreviewKeepingUseCase, UnitOfWork, Clock),
  ],
})
export class PlanningModule {}
