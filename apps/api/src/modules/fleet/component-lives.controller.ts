import { Controller, Get, Query } from '@nestjs/common';
import {
  ComponentLivesQuery,
  ComponentLivesResponse,
  LivesComparisonQuery,
  LivesComparisonResponse,
} from '@endfloat/contracts';
import { CompareComponentLivesUseCase, ShowComponentLivesUseCase, type Caller } from '@endfloat/workshop';
import { Allow, AlsoCsv, Answer, CurrentCaller } from '../../http/index.js';
import {
  presentComponentLives,
  presentLivesComparison,
  survivorPoints,
} from './component-lives.presenter.js';

@Controller('v1')
export class ComponentLivesController {
  constructor(
    private readonly lives: ShowComponentLivesUseCase,
    private readonly compare: CompareComponentLivesUseCase,
  ) {}

  @Get('component-lives')
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(ComponentLivesResponse, {
    summary: 'How long parts of a kind last: survivors by age, Weibull and lognormal lives, B-lives',
    description:
      'From when parts were fitted, removed and inspected. A part that is still fitted, one last seen before its vehicle stayed away, one found worn between two inspections and one fitted before the vehicle was known each count for what is known of them; those that say nothing are counted by reason. As CSV: the curve.',
  })
  @AlsoCsv('component-lives', survivorPoints, [
    { name: 'age', value: ({ age }) => age },
    { name: 'fromAge', value: ({ fromAge }) => fromAge },
    { name: 'atRisk', value: ({ atRisk }) => atRisk },
    { name: 'surviving', value: ({ surviving }) => surviving },
    { name: 'standardError', value: ({ standardError }) => standardError },
    { name: 'lower', value: ({ lower }) => lower },
    { name: 'upper', value: ({ upper }) => upper },
  ])
  async getComponentLives(
    @CurrentCaller() caller: Caller,
    @Query() query: ComponentLivesQuery,
  ): Promise<ComponentLivesResponse> {
    const { ends = 'replaced', scale = 'days' } = query;
    return presentComponentLives(await this.lives.execute(caller, { ...query, ends, scale }));
  }

  @Get('component-life-comparisons')
  @Allow('owner', 'desk', 'parts', 'developer', 'auditor')
  @Answer(LivesComparisonResponse, {
    summary:
      'Whether parts of one supplier, condition, customer or application last as long as those of another',
  })
  async compareComponentLives(
    @CurrentCaller() caller: Caller,
    @Query() query: LivesComparisonQuery,
  ): Promise<LivesComparisonResponse> {
    const { ends = 'replaced', scale = 'days' } = query;
    return presentLivesComparison(await this.compare.execute(caller, { ...query, ends, scale }));
  }
}
