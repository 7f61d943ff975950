import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  AsOfQuery,
  CorrectCustomerRequest,
  CustomerPage,
  CustomerPath,
  CustomerResponse,
  EraseCustomerRequest,
  ErasureResponse,
  ListCustomersQuery,
  RecordCustomerRequest,
} from '@endfloat/contracts';
import {
  CorrectCustomerUseCase,
  EraseCustomerUseCase,
  ListCustomersUseCase,
  RecordCustomerUseCase,
  ShowCustomerUseCase,
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
import { presentCustomer, toCustomerEntry } from './customer.presenter.js';

@Controller('v1/customers')
export class CustomersController {
  constructor(
    private readonly pager: Pager,
    private readonly record: RecordCustomerUseCase,
    private readonly correct: CorrectCustomerUseCase,
    private readonly show: ShowCustomerUseCase,
    private readonly list: ListCustomersUseCase,
  ) {}

  @Post()
  @Allow('owner', 'desk')
  @Answer(CustomerResponse, { created: true, summary: 'Record a customer' })
  async createCustomer(
    @CurrentCaller() caller: Caller,
    @Body() request: RecordCustomerRequest,
  ): Promise<CustomerResponse> {
    const outcome = await this.record.execute(caller, { id: request.id, customer: toCustomerEntry(request) });
    return outcome.created ? presentCustomer(outcome) : alreadyThere(presentCustomer(outcome));
  }

  @Get()
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'auditor')
  @Answer(CustomerPage, { summary: 'List customers; a fleet manager sees their own' })
  async listCustomers(
    @CurrentCaller() caller: Caller,
    @Query() query: ListCustomersQuery,
  ): Promise<CustomerPage> {
    return this.pager.page(
      await this.list.execute(caller, { ...this.pager.read(query), asOf: query.asOf }),
      presentCustomer,
    );
  }

  @Get(':customerId')
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'auditor')
  @Answer(CustomerResponse, { summary: 'Show a customer, now or as it was known at a moment' })
  async getCustomer(
    @CurrentCaller() caller: Caller,
    @Param() { customerId }: CustomerPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<CustomerResponse> {
    return presentCustomer(await this.show.execute(caller, { id: customerId, asOf }));
  }

  @Post(':customerId/corrections')
  @Allow('owner', 'desk')
  @Answer(CustomerResponse, {
    created: true,
    location: ({ id }: CustomerResponse) => `/v1/customers/${id}`,
    summary: 'Correct a customer; what was recorded before stays readable',
  })
  async correctCustomer(
    @CurrentCaller() caller: Caller,
    @Param() { customerId }: CustomerPath,
    @Body() request: CorrectCustomerRequest,
    @IfMatch() expected: ExpectedVersion,
  ): Promise<CustomerResponse> {
    const command = { id: customerId, expected, customer: toCustomerEntry(request), reason: request.reason };
    return presentCustomer(await this.correct.execute(caller, command));
  }
}

@Controller('v1/customers/:customerId/erasures')
export class ErasuresController {
  constructor(private readonly erase: EraseCustomerUseCase) {}

  @Post()
  @Allow('owner')
  @Answer(ErasureResponse, {
    created: true,
    location: () => '/v1/customers',
    summary: "Erase a customer's personal data; vehicles and their history stay",
  })
  async createErasure(
    @CurrentCaller() caller: Caller,
    @Param() { customerId }: CustomerPath,
    @Body() { reason }: EraseCustomerRequest,
  ): Promise<ErasureResponse> {
    return this.erase.execute(caller, { id: customerId, reason });
  }
}
