import { Controller, Get } from '@nestjs/common';
import { CalculationList } from '@endfloat/contracts';
import { listCalculations } from '@endfloat/workshop';
import { Allow, Answer } from '../../http/index.js';
import { everyone } from './calculation.decorator.js';
import { presentCalculations } from './calculation-list.presenter.js';

@Controller('v1/calculations')
export class CalculationListController {
  @Get()
  @Allow(...everyone)
  @Answer(CalculationList, {
    summary: 'Every calculation with its source, and its published cases computed anew at this request',
  })
  listCalculations(): CalculationList {
    return presentCalculations(listCalculations());
  }
}
