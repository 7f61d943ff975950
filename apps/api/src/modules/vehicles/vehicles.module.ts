import { Module } from '@nestjs/common';
import {
  Clock,
  CorrectVehicleUseCase,
  IdSource,
  ListOwnershipsUseCase,
  ListVehiclesUseCase,
  RecordVehicleUseCase,
  ShowVehicleUseCase,
  TransferVehicleUseCase,
  UnitOfWork,
} from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { VehicleOwnershipsController, VehiclesController } from './vehicles.controller.js';

@Module({
  controllers: [VehiclesController, VehicleOwnershipsController],
  providers: [
    useCase(RecordVehicleUseCase, UnitOfWork, Clock, IdSource),
    useCase(CorrectVehicleUseCase, UnitOfWork, Clock),
    useCase(ShowVehicleUseCase, UnitOfWork, Clock),
    useCase(ListVehiclesUseCase, UnitOfWork, Clock),
    useCase(TransferVehicleUseCase, UnitOfWork, Clock, IdSource),
    useCase(ListOwnershipsUseCase, UnitOfWork),
  ],
})
export class VehiclesModule {}
