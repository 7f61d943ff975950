import { Body, Controller, Get, Param, Patch, Post, Query } from '@nestjs/common';
import {
  AsOfQuery,
  PageQuery,
  RecordUserRequest,
  SettingsPatch,
  SettingsResponse,
  UserPage,
  UserPatch,
  UserPath,
  UserResponse,
} from '@endfloat/contracts';
import {
  ChangeSettingsUseCase,
  ChangeUserUseCase,
  ListUsersUseCase,
  RecordUserUseCase,
  ShowSettingsUseCase,
  type Caller,
} from '@endfloat/workshop';
import {
  Allow,
  alreadyThere,
  Answer,
  CurrentCaller,
  IfMatch,
  Pager,
  type ExpectedVersion,
} from '../../http/index.js';
import { presentSettings, presentUser } from './shop.presenter.js';

@Controller('v1/settings')
export class SettingsController {
  constructor(
    private readonly show: ShowSettingsUseCase,
    private readonly change: ChangeSettingsUseCase,
  ) {}

  @Get()
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(SettingsResponse, { summary: 'Rates, windows and thresholds of the shop, now or as of a moment' })
  async getSettings(
    @CurrentCaller() caller: Caller,
    @Query() { asOf }: AsOfQuery,
  ): Promise<SettingsResponse> {
    return presentSettings(await this.show.execute(caller, asOf));
  }

  @Patch()
  @Allow('owner')
  @Answer(SettingsResponse, { summary: 'Change some settings; earlier ones stay readable as of their time' })
  async updateSettings(
    @CurrentCaller() caller: Caller,
    @Body() settings: SettingsPatch,
    @IfMatch() expected: ExpectedVersion,
  ): Promise<SettingsResponse> {
    return presentSettings(await this.change.execute(caller, { expected, settings: { ...settings } }));
  }
}

@Controller('v1/users')
export class UsersController {
  constructor(
    private readonly pager: Pager,
    private readonly record: RecordUserUseCase,
    private readonly change: ChangeUserUseCase,
    private readonly list: ListUsersUseCase,
  ) {}

  @Post()
  @Allow('owner')
  @Answer(UserResponse, { created: true, summary: 'Record a person who works with the records' })
  async createUser(
    @CurrentCaller() caller: Caller,
    @Body() { id, ...user }: RecordUserRequest,
  ): Promise<UserResponse> {
    const { record, created } = await this.record.execute(caller, { id, user });
    return created ? presentUser(record) : alreadyThere(presentUser(record));
  }

  @Get()
  @Allow('owner', 'desk', 'technician', 'parts', 'auditor')
  @Answer(UserPage, { summary: 'List the people of the shop and of its customers' })
  async listUsers(@CurrentCaller() caller: Caller, @Query() query: PageQuery): Promise<UserPage> {
    return this.pager.page(await this.list.execute(caller, this.pager.read(query)), presentUser);
  }

  @Get(':userId')
  @Allow('owner', 'desk', 'technician', 'parts', 'auditor')
  @Answer(UserResponse, { summary: 'Show a person of the shop or of a customer' })
  async getUser(
    @CurrentCaller() caller: Caller,
    @Param() { userId }: UserPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<UserResponse> {
    return presentUser(await this.list.one(caller, userId, asOf));
  }

  @Patch(':userId')
  @Allow('owner')
  @Answer(UserResponse, { summary: "Change a person's name, roles, or whether they may still work here" })
  async updateUser(
    @CurrentCaller() caller: Caller,
    @Param() { userId }: UserPath,
    @Body() user: UserPatch,
    @IfMatch() expected: ExpectedVersion,
  ): Promise<UserResponse> {
    return presentUser(await this.change.execute(caller, { id: userId, expected, user: { ...user } }));
  }
}
