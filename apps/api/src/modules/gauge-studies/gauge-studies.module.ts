import { Module } from '@nestjs/common';
import {
  Clock,
  CorrectGaugeStudyUseCase,
  IdSource,
  RecordGaugeStudyUseCase,
  ShowGaugeStudyUseCase,
  UnitOfWork,
} from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { GaugeStudiesController } from './gauge-studies.controller.js';

@Module({
  controllers: [GaugeStudiesController],
  providers: [
    useCase(RecordGaugeStudyUseCase, UnitOfWork, Clock, IdSource),
    useCase(CorrectGaugeStudyUseCase, UnitOfWork, Clock),
    useCase(ShowGaugeStudyUseCase, UnitOfWork),
  ],
})
export class GaugeStudiesModule {}
