import { Module } from '@nestjs/common';
import {
  Clock,
  CorrectJobUseCase,
  CorrectWorkLineUseCase,
  HandOverUnrepairedUseCase,
  IdSource,
  ListEstimatesUseCase,
  ListWorkLinesUseCase,
  OpenJobUseCase,
  ProposeEstimateUseCase,
  RecordConsentUseCase,
  RecordJobEventUseCase,
  RecordProofPointUseCase,
  RecordWorkLineUseCase,
  ReleaseJobUseCase,
  ShowJobUseCase,
  ShowProofUseCase,
  UnitOfWork,
} from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { JobEventsController, JobsController } from './jobs.controller.js';
import { JobProofController, JobReleaseController } from './release.controller.js';
import {
  ConsentsController,
  EstimatesController,
  JobWorkLinesController,
  WorkLinesController,
} from './work.controller.js';

@Module({
  controllers: [
    JobsController,
    JobEventsController,
    JobWorkLinesController,
    WorkLinesController,
    EstimatesController,
    ConsentsController,
    JobProofController,
    JobReleaseController,
  ],
  providers: [
    useCase(OpenJobUseCase, UnitOfWork, Clock, IdSource),
    useCase(CorrectJobUseCase, UnitOfWork, Clock),
    useCase(RecordJobEventUseCase, UnitOfWork, Clock, IdSource),
    useCase(ShowJobUseCase, UnitOfWork, Clock),
    useCase(RecordWorkLineUseCase, UnitOfWork, Clock, IdSource),
    useCase(CorrectWorkLineUseCase, UnitOfWork, Clock, IdSource),
    useCase(ListWorkLinesUseCase, UnitOfWork),
    useCase(ProposeEstimateUseCase, UnitOfWork, Clock, IdSource),
    useCase(RecordConsentUseCase, UnitOfWork, Clock, IdSource),
    useCase(ListEstimatesUseCase, UnitOfWork),
    useCase(RecordProofPointUseCase, UnitOfWork, Clock, IdSource),
    useCase(ShowProofUseCase, UnitOfWork),
    useCase(ReleaseJobUseCase, UnitOfWork, Clock, IdSource),
    useCase(HandOverUnrepairedUseCase, UnitOfWork, Clock, IdSource),
  ],
})
export class JobsModule {}
