import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  AsOfQuery,
  CorrectServiceRequest,
  ListServiceRecordsQuery,
  RecordServiceRequest,
  ServiceRecordPage,
  ServiceRecordPath,
  ServiceRecordResponse,
  ServiceRecordRevisions,
} from '@endfloat/contracts';
import {
  CorrectServiceUseCase,
  FindServicesUseCase,
  RecordServiceUseCase,
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
import { presentServiceRecord, toServiceIdentity, toServiceRecord } from './service-plan.presenter.js';

const readers = ['owner', 'desk', 'technician', 'fleetManager', 'developer', 'auditor'] as const;

@Controller('v1/service-records')
export class ServiceRecordsController {
  constructor(
    private readonly pager: Pager,
    private readonly record: RecordServiceUseCase,
    private readonly correct: CorrectServiceUseCase,
    private readonly find: FindServicesUseCase,
  ) {}

  @Post()
  @Allow('owner', 'desk', 'technician')
  @Answer(ServiceRecordResponse, {
    created: true,
    summary: 'Record that an item of the plan was done where no work line says so',
  })
  async createServiceRecord(
    @CurrentCaller() caller: Caller,
    @Body() request: RecordServiceRequest,
  ): Promise<ServiceRecordResponse> {
    const command = {
      id: request.id,
      identity: toServiceIdentity(request),
      service: toServiceRecord(request),
    };
    const { record, created } = await this.record.execute(caller, command);
    return created ? presentServiceRecord(record) : alreadyThere(presentServiceRecord(record));
  }

  @Get()
  @Allow(...readers)
  @Answer(ServiceRecordPage, { summary: 'List what was recorded as done by the plan, the latest first' })
  async listServiceRecords(
    @CurrentCaller() caller: Caller,
    @Query() query: ListServiceRecordsQuery,
  ): Promise<ServiceRecordPage> {
    const { vehicleId, planItemId, asOf } = query;
    const page = await this.find.execute(caller, { vehicleId, planItemId, asOf, ...this.pager.read(query) });
    return this.pager.page(page, presentServiceRecord);
  }

  @Get(':serviceRecordId')
  @Allow(...readers)
  @Answer(ServiceRecordResponse, { summary: 'Show a service, now or as it was known at a moment' })
  async getServiceRecord(
    @CurrentCaller() caller: Caller,
    @Param() { serviceRecordId }: ServiceRecordPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<ServiceRecordResponse> {
    return presentServiceRecord(await this.find.one(caller, serviceRecordId, asOf));
  }

  @Get(':serviceRecordId/revisions')
  @Allow(...readers)
  @Answer(ServiceRecordRevisions, { summary: 'Every revision of a service, oldest first' })
  async listServiceRecordRevisions(
    @CurrentCaller() caller: Caller,
    @Param() { serviceRecordId }: ServiceRecordPath,
  ): Promise<ServiceRecordRevisions> {
    return { items: (await this.find.revisions(caller, serviceRecordId)).map(presentServiceRecord) };
  }

  @Post(':serviceRecordId/corrections')
  @Allow('owner', 'desk', 'technician')
  @Answer(ServiceRecordResponse, {
    created: true,
    location: ({ id }: ServiceRecordResponse) => `/v1/service-records/${id}`,
    summary: 'Correct a service',
  })
  async correctServiceRecord(
    @CurrentCaller() caller: Caller,
    @Param() { serviceRecordId }: ServiceRecordPath,
    @Body() request: CorrectServiceRequest,
    @IfMatch() expected: ExpectedVersion,
  ): Promise<ServiceRecordResponse> {
    const command = {
      id: serviceRecordId,
      expected,
      service: toServiceRecord(request),
      reason: request.reason,
    };
    return presentServiceRecord(await this.correct.execute(caller, command));
  }
}
