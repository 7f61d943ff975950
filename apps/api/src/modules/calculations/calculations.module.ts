import { Module } from '@nestjs/common';
import { CalculationListController } from './calculation-list.controller.js';
import { LivesCalculationsController } from './lives-calculations.controller.js';
import { RecurrencesCalculationsController } from './recurrences-calculations.controller.js';
import { LinesCalculationsController } from './lines-calculations.controller.js';
import { SharesCalculationsController } from './shares-calculations.controller.js';
import { CostsCalculationsController } from './costs-calculations.controller.js';
import { BeliefsCalculationsController } from './beliefs-calculations.controller.js';
import { MeasurementsCalculationsController } from './measurements-calculations.controller.js';

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
  ],
})
export class CalculationsModule {}
