import { Module } from '@nestjs/common';
import {
  Clock,
  CorrectFittedPartUseCase,
  IdSource,
  ListFittedPartsUseCase,
  RecordFittedPartUseCase,
  ShowFittedPartUseCase,
  UnitOfWork,
} from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { FittedPartsController } from './fitted-parts.controller.js';

@Module({
  controllers: [FittedPartsController],
  providers: [
    useCase(RecordFittedPartUseCase, UnitOfWork, Clock, IdSource),
    useCase(CorrectFittedPartUseCase, UnitOfWork, Clock),
    useCase(ListFittedPartsUseCase, UnitOfWork, Clock),
    useCase(ShowFittedPartUseCase, UnitOfWork, Clock),
  ],
})
export class FittedPartsModule {}
