import { Body, Controller, Post } from '@nestjs/common';
import { ExpectedCostsRequest, ExpectedCostsResponse } from '@endfloat/contracts';
import { ExpectedCostsUseCase } from '@endfloat/workshop';
import { Allow, Answer } from '../../http/index.js';
import { toExpectedCostsCommand } from './expected-costs.command-mapper.js';
import { presentExpectedCosts } from './expected-costs.presenter.js';

@Controller('v1/calculations/expected-costs')
export class ExpectedCostsController {
  constructor(private readonly expectedCosts: ExpectedCostsUseCase) {}

  @Post()
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(ExpectedCostsResponse, {
    summary: 'Expected cost of options by plain arithmetic, with the order and the break-even',
  })
  calculateExpectedCosts(@Body() request: ExpectedCostsRequest): ExpectedCostsResponse {
    return presentExpectedCosts(this.expectedCosts.execute(toExpectedCostsCommand(request)));
  }
}
