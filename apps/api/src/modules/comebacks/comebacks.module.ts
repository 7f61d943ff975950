import { Module } from '@nestjs/common';
import {
  Clock,
  IdSource,
  LinkComebackUseCase,
  ListComebacksUseCase,
  SettleComebackUseCase,
  ShowComebackUseCase,
  UnitOfWork,
} from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { ComebacksController } from './comebacks.controller.js';

@Module({
  controllers: [ComebacksController],
  providers: [
    useCase(LinkComebackUseCase, UnitOfWork, Clock, IdSource),
    useCase(SettleComebackUseCase, UnitOfWork, Clock),
    useCase(ListComebacksUseCase, UnitOfWork, Clock),
    useCase(ShowComebackUseCase, UnitOfWork, Clock),
  ],
})
export class ComebacksModule {}
