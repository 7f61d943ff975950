import { Module } from '@nestjs/common';
import {
  Clock,
  CorrectInstrumentUseCase,
  IdSource,
  InstrumentVerdictsUseCase,
  RecordCalibrationUseCase,
  RecordInstrumentUseCase,
  ShowInstrumentUseCase,
  UnitOfWork,
} from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { InstrumentsController, InstrumentStandingController } from './instruments.controller.js';

@Module({
  controllers: [InstrumentsController, InstrumentStandingController],
  providers: [
    useCase(RecordInstrumentUseCase, UnitOfWork, Clock, IdSource),
    useCase(CorrectInstrumentUseCase, UnitOfWork, Clock),
    useCase(ShowInstrumentUseCase, UnitOfWork, Clock),
    useCase(RecordCalibrationUseCase, UnitOfWork, Clock, IdSource),
    useCase(InstrumentVerdictsUseCase, UnitOfWork, Clock),
  ],
})
export class InstrumentsModule {}
