import { Body, Controller, Get, Param, Patch, Post, Query } from '@nestjs/common';
import {
  AsOfQuery,
  NewWebhookEndpointResponse,
  NewWebhookSecretResponse,
  PageQuery,
  RecordWebhookEndpointRequest,
  WebhookEndpointPage,
  WebhookEndpointPatch,
  WebhookEndpointPath,
  WebhookEndpointResponse,
} from '@endfloat/contracts';
import {
  ChangeWebhookEndpointUseCase,
  ListWebhookEndpointsUseCase,
  RecordWebhookEndpointUseCase,
  RotateWebhookSecretUseCase,
  ShowWebhookEndpointUseCase,
  type Caller,
} from '@endfloat/workshop';
import {
  Allow,
  alreadyThere,
  Answer,
  CurrentCaller,
  IfMatch,
  NeedsIdempotencyKey,
  Pager,
  type ExpectedVersion,
} from '../../http/index.js';
import { presentWebhookEndpoint } from './webhook.presenter.js';

@Controller('v1/webhook-endpoints')
export class WebhookEndpointsController {
  constructor(
    private readonly record: RecordWebhookEndpointUseCase,
    private readonly list: ListWebhookEndpointsUseCase,
    private readonly show: ShowWebhookEndpointUseCase,
    private readonly change: ChangeWebhookEndpointUseCase,
    private readonly rotate: RotateWebhookSecretUseCase,
    private readonly pager: Pager,
  ) {}

  @Post()
  @Allow('owner', 'developer')
  @NeedsIdempotencyKey()
  @Answer(NewWebhookEndpointResponse, {
    created: true,
    summary: 'Name an address that is told of what happens; its secret is shown this once',
  })
  async createWebhookEndpoint(
    @CurrentCaller() caller: Caller,
    @Body() { id, url, description, eventTypes }: RecordWebhookEndpointRequest,
  ): Promise<NewWebhookEndpointResponse> {
    const endpoint = { url, description, eventTypes };
    const { record, created, secret } = await this.record.execute(caller, { id, endpoint });
    const answer = { ...presentWebhookEndpoint(record), secret };
    return created ? answer : alreadyThere(answer);
  }

  @Get()
  @Allow('owner', 'developer', 'auditor')
  @Answer(WebhookEndpointPage, { summary: 'List the addresses that are told of what happens' })
  async listWebhookEndpoints(
    @CurrentCaller() caller: Caller,
    @Query() query: PageQuery,
  ): Promise<WebhookEndpointPage> {
    return this.pager.page(await this.list.execute(caller, this.pager.read(query)), presentWebhookEndpoint);
  }

  @Get(':endpointId')
  @Allow('owner', 'developer', 'auditor')
  @Answer(WebhookEndpointResponse, {
    summary: 'One address that is told of what happens, now or as of a moment',
  })
  async getWebhookEndpoint(
    @CurrentCaller() caller: Caller,
    @Param() { endpointId }: WebhookEndpointPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<WebhookEndpointResponse> {
    return presentWebhookEndpoint(await this.show.execute(caller, endpointId, asOf));
  }

  @Patch(':endpointId')
  @Allow('owner', 'developer')
  @Answer(WebhookEndpointResponse, {
    summary: 'Change an address, what it is told of, or whether it is told at all',
  })
  async updateWebhookEndpoint(
    @CurrentCaller() caller: Caller,
    @Param() { endpointId }: WebhookEndpointPath,
    @Body() endpoint: WebhookEndpointPatch,
    @IfMatch() expected: ExpectedVersion,
  ): Promise<WebhookEndpointResponse> {
    const change = { id: endpointId, expected, endpoint: { ...endpoint } };
    return presentWebhookEndpoint(await this.change.execute(caller, change));
  }

  @Post(':endpointId/secrets')
  @Allow('owner', 'developer')
  @Answer(NewWebhookSecretResponse, {
    created: true,
    location: ({ endpointId }: NewWebhookSecretResponse) => `/v1/webhook-endpoints/${endpointId}`,
    summary: 'Give an address a new secret, shown this once; the earlier one signs beside it for a day',
  })
  async createWebhookSecret(
    @CurrentCaller() caller: Caller,
    @Param() { endpointId }: WebhookEndpointPath,
  ): Promise<NewWebhookSecretResponse> {
    const { id, secret, recordedAt, earlierEndsAt } = await this.rotate.execute(caller, endpointId);
    return { id, endpointId, secret, recordedAt, earlierEndsAt };
  }
}
