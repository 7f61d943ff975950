import { Module } from '@nestjs/common';
import {
  Clock,
  CompareComebacksUseCase,
  ListRatedJobsUseCase,
  ShowComebackChartUseCase,
  ShowComebackCostsUseCase,
  ShowComebackCurveUseCase,
  ShowComebackRatesUseCase,
  UnitOfWork,
} from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { ComebackCoursesController } from './comeback-courses.controller.js';
import { ComebackRatesController } from './comeback-rates.controller.js';

@Module({
  controllers: [ComebackRatesController, ComebackCoursesController],
  providers: [
    useCase(ShowComebackRatesUseCase, UnitOfWork, Clock),
    useCase(CompareComebacksUseCase, UnitOfWork, Clock),
    useCase(ListRatedJobsUseCase, UnitOfWork, Clock),
    useCase(ShowComebackCurveUseCase, UnitOfWork, Clock),
    useCase(ShowComebackChartUseCase, UnitOfWork, Clock),
    useCase(ShowComebackCostsUseCase, UnitOfWork, Clock),
  ],
})
export class ComebackRatesModule {}
