import { Module } from '@nestjs/common';
import {
  Clock,
  CorrectArrivalInspectionUseCase,
  CorrectCoreUseCase,
  CorrectPartUseCase,
  CorrectWarrantyClaimUseCase,
  IdSource,
  ListArrivalInspectionsUseCase,
  ListCoresUseCase,
  ListOrderProposalsUseCase,
  ListPartNeedsUseCase,
  ListPartsUseCase,
  ListStockMovesUseCase,
  ListStockUseCase,
  ListWarrantyClaimsUseCase,
  RecordArrivalInspectionUseCase,
  RecordCoreUseCase,
  RecordPartUseCase,
  RecordStockMoveUseCase,
  RecordWarrantyClaimUseCase,
  StepCoreUseCase,
  StepWarrantyClaimUseCase,
  UnitOfWork,
} from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { ArrivalInspectionsController } from './arrival-inspections.controller.js';
import { CoresController } from './cores.controller.js';
import { OrderProposalsController } from './order-proposals.controller.js';
import { PartsController } from './parts.controller.js';
import { StockController } from './stock.controller.js';
import { WarrantyClaimsController } from './warranty-claims.controller.js';

@Module({
  controllers: [
    PartsController,
    StockController,
    CoresController,
    WarrantyClaimsController,
    ArrivalInspectionsController,
    OrderProposalsController,
  ],
  providers: [
    useCase(RecordPartUseCase, UnitOfWork, Clock, IdSource),
    useCase(CorrectPartUseCase, UnitOfWork, Clock),
    useCase(ListPartsUseCase, UnitOfWork),
    useCase(RecordStockMoveUseCase, UnitOfWork, Clock, IdSource),
    useCase(ListStockMovesUseCase, UnitOfWork),
    useCase(ListStockUseCase, UnitOfWork),
    useCase(RecordCoreUseCase, UnitOfWork, Clock, IdSource),
    useCase(CorrectCoreUseCase, UnitOfWork, Clock),
    useCase(StepCoreUseCase, UnitOfWork, Clock),
    useCase(ListCoresUseCase, UnitOfWork, Clock),
    useCase(RecordWarrantyClaimUseCase, UnitOfWork, Clock, IdSource),
    useCase(CorrectWarrantyClaimUseCase, UnitOfWork, Clock),
    useCase(StepWarrantyClaimUseCase, UnitOfWork, Clock),
    useCase(ListWarrantyClaimsUseCase, UnitOfWork),
    useCase(RecordArrivalInspectionUseCase, UnitOfWork, Clock, IdSource),
    useCase(CorrectArrivalInspectionUseCase, UnitOfWork, Clock),
    useCase(ListArrivalInspectionsUseCase, UnitOfWork),
    useCase(ListPartNeedsUseCase, UnitOfWork, Clock),
    useCase(ListOrderProposalsUseCase, UnitOfWork, Clock),
  ],
})
export class PartsModule {}
