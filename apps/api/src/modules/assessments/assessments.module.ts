import { Module } from '@nestjs/common';
import {
  AssessUseCase,
  Clock,
  Computing,
  Fingerprint,
  IdSource,
  PreviewAssessmentUseCase,
  ReplayAssessmentUseCase,
  ShowAssessmentsUseCase,
  UnitOfWork,
} from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { AssessmentsController } from './assessments.controller.js';
import { AssessmentSummariesController } from './assessment-summaries.controller.js';

@Module({
  controllers: [AssessmentsController, AssessmentSummariesController],
  providers: [
    useCase(AssessUseCase, UnitOfWork, Clock, IdSource, Fingerprint, Computing),
    useCase(ShowAssessmentsUseCase, UnitOfWork, Clock),
    useCase(ReplayAssessmentUseCase, UnitOfWork, Clock, Fingerprint, Computing),
    useCase(PreviewAssessmentUseCase, UnitOfWork, Fingerprint, Computing),
  ],
})
export class AssessmentsModule {}
