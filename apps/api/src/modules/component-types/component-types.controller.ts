import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  AsOfQuery,
  ComponentTypeList,
  ComponentTypePath,
  ComponentTypeResponse,
  RecordComponentTypeRequest,
} from '@endfloat/contracts';
import { ListComponentTypesUseCase, RecordComponentTypeUseCase, type Caller } from '@endfloat/workshop';
import { Allow, alreadyThere, Answer, CurrentCaller } from '../../http/index.js';
import { presentComponentType } from './component-type.presenter.js';

@Controller('v1/component-types')
export class ComponentTypesController {
  constructor(
    private readonly record: RecordComponentTypeUseCase,
    private readonly list: ListComponentTypesUseCase,
  ) {}

  @Post()
  @Allow('owner', 'desk', 'technician')
  @Answer(ComponentTypeResponse, {
    created: true,
    location: ({ code }: ComponentTypeResponse) => `/v1/component-types/${code}`,
    summary: "Add a kind of part of the shop's own",
  })
  async createComponentType(
    @CurrentCaller() caller: Caller,
    @Body() { id, componentType }: RecordComponentTypeRequest,
  ): Promise<ComponentTypeResponse> {
    const outcome = await this.record.execute(caller, { id, definition: componentType });
    const answer = presentComponentType(outcome);
    return outcome.created ? answer : alreadyThere(answer);
  }

  @Get()
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(ComponentTypeList, { summary: "List kinds of part: the shipped ones and the shop's own" })
  async listComponentTypes(
    @CurrentCaller() caller: Caller,
    @Query() { asOf }: AsOfQuery,
  ): Promise<ComponentTypeList> {
    return { items: (await this.list.execute(caller, asOf)).map(presentComponentType) };
  }

  @Get(':componentTypeCode')
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(ComponentTypeResponse, { summary: 'Show a kind of part with what can be measured on it' })
  async showComponentType(
    @CurrentCaller() caller: Caller,
    @Param() { componentTypeCode }: ComponentTypePath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<ComponentTypeResponse> {
    return presentComponentType(await this.list.one(caller, componentTypeCode, asOf));
  }
}
