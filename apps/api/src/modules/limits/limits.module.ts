import { Module } from '@nestjs/common';
import {
  Clock,
  CorrectLimitUseCase,
  IdSource,
  ListLimitsUseCase,
  RecordLimitUseCase,
  UnitOfWork,
} from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { LimitsController } from './limits.controller.js';

@Module({
  controllers: [LimitsController],
  providers: [
    useCase(RecordLimitUseCase, UnitOfWork, Clock, IdSource),
    useCase(CorrectLimitUseCase, UnitOfWork, Clock),
    useCase(ListLimitsUseCase, UnitOfWork),
  ],
})
export class LimitsModule {}
