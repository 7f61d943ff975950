import { Body, Controller, Get, Post, Query } from '@nestjs/common';
import {
  ListOrderProposalsQuery,
  ListPartNeedsQuery,
  OrderProposalList,
  PartNeedList,
  StockLevelPreviewRequest,
  StockLevelPreviewResponse,
  type GroupProposalDto,
  type PartNeedDto,
  type VanChanceDto,
} from '@endfloat/contracts';
import {
  horizonOfQuery,
  ListOrderProposalsUseCase,
  ListPartNeedsUseCase,
  previewStockLevel,
  type Caller,
} from '@endfloat/workshop';
import { Allow, AlsoCsv, Answer, CurrentCaller } from '../../http/index.js';
import { presentProposals } from './order-proposals.presenter.js';
import { presentNeeds } from './part-needs.presenter.js';
import { presentPreview, toPreview } from './stock-level-preview.presenter.js';

interface VanNeedRow {
  readonly need: PartNeedDto;
  readonly van: VanChanceDto;
}

const bestOf = ({ outcome }: GroupProposalDto) => (outcome.kind === 'proposed' ? outcome.best : null);

@Controller('v1')
export class OrderProposalsController {
  constructor(
    private readonly needs: ListPartNeedsUseCase,
    private readonly proposals: ListOrderProposalsUseCase,
  ) {}

  @Get('part-needs')
  @Allow('owner', 'desk', 'parts', 'developer', 'auditor')
  @Answer(PartNeedList, {
    summary: 'How many of a part will be needed in the next days or km, with the vans behind it',
    description:
      'Each van has a chance of its own: measured wear by its trend, else the life of such parts, a replacement planned on an open job, a repair still being watched. The number of pieces is the exact distribution of their sum, with an equal-tailed interval of 90 %. As CSV: one line a van.',
  })
  @AlsoCsv<PartNeedList, VanNeedRow>(
    'part-needs',
    ({ items }) => items.flatMap((need) => need.vans.map((van) => ({ need, van }))),
    [
      { name: 'componentType', value: ({ need }) => need.componentType },
      { name: 'vehicleId', value: ({ van }) => van.vehicleId },
      { name: 'label', value: ({ van }) => van.label },
      { name: 'position', value: ({ van }) => van.position },
      { name: 'chance', value: ({ van }) => van.chance },
      { name: 'sources', value: ({ van }) => van.reasons.map(({ source }) => source).join('; ') },
    ],
  )
  async listPartNeeds(
    @CurrentCaller() caller: Caller,
    @Query() query: ListPartNeedsQuery,
  ): Promise<PartNeedList> {
    const { componentType, days, km, asOf } = query;
    const needs = await this.needs.execute(caller, {
      componentType,
      horizon: horizonOfQuery(
        days === undefined ? undefined : Number(days),
        km === undefined ? undefined : Number(km),
      ),
      confidence: 0.9,
      asOf,
    });
    return presentNeeds(needs);
  }

  @Get('order-proposals')
  @Allow('owner', 'desk', 'parts', 'developer', 'auditor')
  @Answer(OrderProposalList, {
    summary: 'What to order now, and why',
    description:
      'The level that keeps the named service over the lead time as this supplier delivers, less what is on the shelf and on order. Nothing is stored: other measures, targets and lead times may be asked for freely. As CSV: one line a part.',
  })
  @AlsoCsv<OrderProposalList, GroupProposalDto>('order-proposals', ({ items }) => items, [
    { name: 'componentType', value: ({ componentType }) => componentType },
    { name: 'partId', value: ({ partId }) => partId },
    { name: 'partNumber', value: ({ partNumber }) => partNumber },
    { name: 'quantity', value: (group) => bestOf(group)?.quantity ?? null },
    { name: 'supplier', value: (group) => bestOf(group)?.supplier ?? null },
    { name: 'condition', value: (group) => bestOf(group)?.condition ?? null },
    { name: 'onHand', value: ({ onHand }) => onHand },
    { name: 'onOrder', value: ({ onOrder }) => onOrder },
    { name: 'meanLeadDays', value: (group) => bestOf(group)?.leadTimes.meanDays ?? null },
    { name: 'meanDemand', value: (group) => bestOf(group)?.demand.mean ?? null },
    { name: 'text', value: (group) => bestOf(group)?.text ?? null },
  ])
  async listOrderProposals(
    @CurrentCaller() caller: Caller,
    @Query() query: ListOrderProposalsQuery,
  ): Promise<OrderProposalList> {
    const { componentType, condition, measure = 'cycleService', target = '0.95', leadTimeDays, asOf } = query;
    const asked = {
      componentType,
      condition,
      measure,
      target: Number(target),
      leadTimeDays: leadTimeDays === undefined ? undefined : Number(leadTimeDays),
      asOf,
    };
    return presentProposals(await this.proposals.execute(caller, asked), asked);
  }

  @Post('stock-level-previews')
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(StockLevelPreviewResponse, {
    summary:
      'A stock level for a demand, lead times and a service or costs that are named; nothing is stored',
  })
  previewStockLevel(@Body() request: StockLevelPreviewRequest): StockLevelPreviewResponse {
    return presentPreview(previewStockLevel(toPreview(request)));
  }
}
