import { Module } from '@nestjs/common';
import {
  Clock,
  CorrectReadingUseCase,
  EvaluateReadingUseCase,
  IdSource,
  ListReadingsUseCase,
  RecordReadingsUseCase,
  ShowReadingUseCase,
  UnitOfWork,
  WithdrawReadingUseCase,
} from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import {
  InspectionReadingsController,
  ReadingsController,
  ReadingWithdrawalsController,
} from './readings.controller.js';

@Module({
  controllers: [InspectionReadingsController, ReadingsController, ReadingWithdrawalsController],
  providers: [
    useCase(RecordReadingsUseCase, UnitOfWork, Clock, IdSource),
    useCase(CorrectReadingUseCase, UnitOfWork, Clock, IdSource),
    useCase(WithdrawReadingUseCase, UnitOfWork, Clock, IdSource),
    useCase(ListReadingsUseCase, UnitOfWork, Clock),
    useCase(ShowReadingUseCase, UnitOfWork, Clock),
    useCase(EvaluateReadingUseCase, UnitOfWork, Clock),
  ],
})
export class ReadingsModule {}
