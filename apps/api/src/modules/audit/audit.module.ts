import { Module } from '@nestjs/common';
import { Clock, ListAuditEntriesUseCase, UnitOfWork } from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { AuditEntriesController } from './audit-entries.controller.js';

@Module({
  controllers: [AuditEntriesController],
  providers: [useCase(ListAuditEntriesUseCase, UnitOfWork, Clock)],
})
export class AuditModule {}
