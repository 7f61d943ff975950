import { Module } from '@nestjs/common';
import {
  Clock,
  CorrectInspectionUseCase,
  Fingerprint,
  IdSource,
  NextCheckUseCase,
  RecordInspectionUseCase,
  ShowInspectionUseCase,
  UnitOfWork,
} from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { InspectionsController } from './inspections.controller.js';

@Module({
  controllers: [InspectionsController],
  providers: [
    useCase(RecordInspectionUseCase, UnitOfWork, Clock, IdSource),
    useCase(CorrectInspectionUseCase, UnitOfWork, Clock, IdSource),
    useCase(ShowInspectionUseCase, UnitOfWork, Clock),
    useCase(NextCheckUseCase, UnitOfWork, Clock, Fingerprint),
  ],
})
export class InspectionsModule {}
