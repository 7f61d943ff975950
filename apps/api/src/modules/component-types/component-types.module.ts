import { Module } from '@nestjs/common';
import {
  Clock,
  IdSource,
  ListComponentTypesUseCase,
  RecordComponentTypeUseCase,
  UnitOfWork,
} from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { ComponentTypesController } from './component-types.controller.js';

@Module({
  controllers: [ComponentTypesController],
  providers: [
    useCase(RecordComponentTypeUseCase, UnitOfWork, Clock, IdSource),
    useCase(ListComponentTypesUseCase, UnitOfWork),
  ],
})
export class ComponentTypesModule {}
