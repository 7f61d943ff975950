import { Module } from '@nestjs/common';
import {
  Clock,
  IdSource,
  RecordCheckSheetUseCase,
  ShowCheckSheetUseCase,
  UnitOfWork,
} from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { CheckSheetsController } from './check-sheets.controller.js';

@Module({
  controllers: [CheckSheetsController],
  providers: [
    useCase(RecordCheckSheetUseCase, UnitOfWork, Clock, IdSource),
    useCase(ShowCheckSheetUseCase, UnitOfWork),
  ],
})
export class CheckSheetsModule {}
