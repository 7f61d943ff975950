import { Module } from '@nestjs/common';
import {
  Clock,
  CorrectDecisionUseCase,
  DecideUseCase,
  IdSource,
  ListDecisionsUseCase,
  UnitOfWork,
} from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { AssessmentDecisionsController, DecisionsController } from './decisions.controller.js';

@Module({
  controllers: [AssessmentDecisionsController, DecisionsController],
  providers: [
    useCase(DecideUseCase, UnitOfWork, Clock, IdSource),
    useCase(CorrectDecisionUseCase, UnitOfWork, Clock),
    useCase(ListDecisionsUseCase, UnitOfWork, Clock),
  ],
})
export class DecisionsModule {}
