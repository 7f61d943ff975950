import { Module } from '@nestjs/common';
import {
  Clock,
  CorrectCustomerUseCase,
  EraseCustomerUseCase,
  IdSource,
  ListCustomersUseCase,
  RecordCustomerUseCase,
  ShowCustomerUseCase,
  UnitOfWork,
} from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { CustomersController, ErasuresController } from './customers.controller.js';

@Module({
  controllers: [CustomersController, ErasuresController],
  providers: [
    useCase(RecordCustomerUseCase, UnitOfWork, Clock, IdSource),
    useCase(CorrectCustomerUseCase, UnitOfWork, Clock, IdSource),
    useCase(ShowCustomerUseCase, UnitOfWork),
    useCase(ListCustomersUseCase, UnitOfWork),
    useCase(EraseCustomerUseCase, UnitOfWork, Clock),
  ],
})
export class CustomersModule {}
