import { Module } from '@nestjs/common';
import {
  Clock,
  Computing,
  Fingerprint,
  LearnTablesUseCase,
  ShowLearnedTablesUseCase,
  UnitOfWork,
} from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { LearnedTablesController } from './learned-tables.controller.js';

@Module({
  controllers: [LearnedTablesController],
  providers: [
    useCase(LearnTablesUseCase, UnitOfWork, Clock, Fingerprint, Computing),
    useCase(ShowLearnedTablesUseCase, UnitOfWork, Fingerprint),
  ],
})
export class LearnedTablesModule {}
