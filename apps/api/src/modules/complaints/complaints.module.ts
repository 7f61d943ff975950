import { Module } from '@nestjs/common';
import {
  Clock,
  CorrectComplaintUseCase,
  IdSource,
  ShowComplaintUseCase,
  TakeComplaintUseCase,
  UnitOfWork,
} from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { ComplaintsController } from './complaints.controller.js';

@Module({
  controllers: [ComplaintsController],
  providers: [
    useCase(TakeComplaintUseCase, UnitOfWork, Clock, IdSource),
    useCase(CorrectComplaintUseCase, UnitOfWork, Clock, IdSource),
    useCase(ShowComplaintUseCase, UnitOfWork, Clock),
  ],
})
export class ComplaintsModule {}
