import { Controller, Get, Query } from '@nestjs/common';
import { BackTestQueryDto, BackTestResponse } from '@endfloat/contracts';
import { ShowBackTestUseCase, type Caller } from '@endfloat/workshop';
import { Allow, Answer, CurrentCaller } from '../../http/index.js';
import { presentBackTest } from './back-test.presenter.js';

@Controller('v1/back-tests')
export class BackTestsController {
  constructor(private readonly show: ShowBackTestUseCase) {}

  @Get()
  @Allow('owner', 'developer', 'auditor')
  @Answer(BackTestResponse, {
    summary: 'Did decisions turn out as predicted, and what would fixed rules have cost',
    description:
      'Decisions after an assessment whose watch window has elapsed: predicted against observed comebacks, and the expected cost of each fixed rule on the same vans. Pending ones are counted apart.',
  })
  async getBackTest(
    @CurrentCaller() caller: Caller,
    @Query() query: BackTestQueryDto,
  ): Promise<BackTestResponse> {
    return presentBackTest(await this.show.execute(caller, query));
  }
}
