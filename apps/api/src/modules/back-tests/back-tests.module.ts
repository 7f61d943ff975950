import { Module } from '@nestjs/common';
import { Clock, ShowBackTestUseCase, UnitOfWork } from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { BackTestsController } from './back-tests.controller.js';

@Module({
  controllers: [BackTestsController],
  providers: [useCase(ShowBackTestUseCase, UnitOfWork, Clock)],
})
export class BackTestsModule {}
