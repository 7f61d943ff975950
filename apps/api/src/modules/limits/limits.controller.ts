import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  AsOfQuery,
  CorrectLimitRequest,
  LimitPage,
  LimitPath,
  ListLimitsQuery,
  RecordLimitRequest,
  ShopLimitResponse,
  ShopLimitRevisions,
} from '@endfloat/contracts';
import { CorrectLimitUseCase, ListLimitsUseCase, RecordLimitUseCase, type Caller } from '@endfloat/workshop';
import {
  Allow,
  alreadyThere,
  Answer,
  CurrentCaller,
  IfMatch,
  Pager,
  type ExpectedVersion,
} from '../../http/index.js';
import { presentLimitListItem, presentShopLimit } from './limit.presenter.js';

@Controller('v1/limits')
export class LimitsController {
  constructor(
    private readonly pager: Pager,
    private readonly record: RecordLimitUseCase,
    private readonly correct: CorrectLimitUseCase,
    private readonly list: ListLimitsUseCase,
  ) {}

  @Post()
  @Allow('owner', 'desk', 'technician')
  @Answer(ShopLimitResponse, {
    created: true,
    summary: "Set a limit of the shop's own, or confirm a shipped one for judging",
  })
  async createLimit(
    @CurrentCaller() caller: Caller,
    @Body() { id, limit }: RecordLimitRequest,
  ): Promise<ShopLimitResponse> {
    const { record, created } = await this.record.execute(caller, { id, limit });
    return created ? presentShopLimit(record) : alreadyThere(presentShopLimit(record));
  }

  @Get()
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(LimitPage, { summary: 'List limits as they hold in this shop, by id' })
  async listLimits(@CurrentCaller() caller: Caller, @Query() query: ListLimitsQuery): Promise<LimitPage> {
    const { characteristic, asOf } = query;
    const found = await this.list.execute(caller, { characteristic, asOf, ...this.pager.read(query) });
    return this.pager.page(found, presentLimitListItem);
  }

  @Get(':limitRecordId')
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(ShopLimitResponse, { summary: 'Show a limit the shop set or confirmed' })
  async showLimit(
    @CurrentCaller() caller: Caller,
    @Param() { limitRecordId }: LimitPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<ShopLimitResponse> {
    return presentShopLimit(await this.list.one(caller, limitRecordId, asOf));
  }

  @Get(':limitRecordId/revisions')
  @Allow('owner', 'desk', 'technician', 'developer', 'auditor')
  @Answer(ShopLimitRevisions, { summary: 'Every revision of a limit, oldest first' })
  async listLimitRevisions(
    @CurrentCaller() caller: Caller,
    @Param() { limitRecordId }: LimitPath,
  ): Promise<ShopLimitRevisions> {
    return { items: (await this.list.revisions(caller, limitRecordId)).map(presentShopLimit) };
  }

  @Post(':limitRecordId/corrections')
  @Allow('owner', 'desk', 'technician')
  @Answer(ShopLimitResponse, {
    created: true,
    location: ({ id }: ShopLimitResponse) => `/v1/limits/${id}`,
    summary: 'Correct a limit of the shop',
  })
  async correctLimit(
    @CurrentCaller() caller: Caller,
    @Param() { limitRecordId }: LimitPath,
    @IfMatch() expected: ExpectedVersion,
    @Body() { limit, reason }: CorrectLimitRequest,
  ): Promise<ShopLimitResponse> {
    return presentShopLimit(
      await this.correct.execute(caller, { id: limitRecordId, expected, limit, reason }),
    );
  }
}
