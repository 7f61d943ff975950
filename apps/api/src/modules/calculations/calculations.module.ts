import { Module } from '@nestjs/common';
import { ExpectedCostsUseCase } from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { CalculationListController } from './calculation-list.controller.js';
import { LivesCalculationsController } from './lives-calculations.controller.js';
import { RecurrencesCalculationsController } from './recurrences-calculations.controller.js';
import { LinesCalculationsController } from './lines-calculations.controller.js';
import { SharesCalculationsController } from './shares-calculations.controller.js';
import { CostsCalculationsController } from './costs-calculations.controller.js';
import { BeliefsCalculationsController } from './beliefs-calculations.controller.js';
import { MeasurementsCalculationsController } from './measurements-calculations.controller.js';
import { ExpectedCostsController } from './expected-costs.controller.js';

@Module({
  controllers: [
    CalculationListController,
    LivesCalculationsController,
    RecurrencesCalculationsController,
    LinesCalculationsController,
    SharesCalculationsController,
    CostsCalculationsController,
    BeliefsCalculationsController,
    MeasurementsCalculationsController,
    ExpectedCostsController,
  ],
  providers: [useCase(ExpectedCostsUseCase)],
})
export class CalculationsModule {}
