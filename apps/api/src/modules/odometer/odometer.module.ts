import { Module } from '@nestjs/common';
import {
  BeginOdometerSegmentUseCase,
  Clock,
  CorrectOdometerEntryUseCase,
  IdSource,
  ListOdometerEntriesUseCase,
  RecordOdometerEntryUseCase,
  UnitOfWork,
} from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import {
  OdometerEntriesController,
  OdometerSegmentsController,
  VehicleOdometerController,
} from './odometer.controller.js';

@Module({
  controllers: [VehicleOdometerController, OdometerEntriesController, OdometerSegmentsController],
  providers: [
    useCase(RecordOdometerEntryUseCase, UnitOfWork, Clock, IdSource),
    useCase(CorrectOdometerEntryUseCase, UnitOfWork, Clock),
    useCase(ListOdometerEntriesUseCase, UnitOfWork, Clock),
    useCase(BeginOdometerSegmentUseCase, UnitOfWork, Clock, IdSource),
  ],
})
export class OdometerModule {}
