import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  AsOfQuery,
  CheckSheetPage,
  CheckSheetPath,
  CheckSheetResponse,
  ListCheckSheetsQuery,
  RecordCheckSheetRequest,
} from '@endfloat/contracts';
import { RecordCheckSheetUseCase, ShowCheckSheetUseCase, type Caller } from '@endfloat/workshop';
import { Allow, alreadyThere, Answer, CurrentCaller, Pager } from '../../http/index.js';
import { presentCheckSheet, presentCheckSheetSummary } from './check-sheet.presenter.js';

@Controller('v1/check-sheets')
export class CheckSheetsController {
  constructor(
    private readonly pager: Pager,
    private readonly record: RecordCheckSheetUseCase,
    private readonly show: ShowCheckSheetUseCase,
  ) {}

  @Post()
  @Allow('owner', 'desk', 'technician')
  @Answer(CheckSheetResponse, {
    created: true,
    summary: 'Record a check sheet; the same code again makes its next version',
  })
  async createCheckSheet(
    @CurrentCaller() caller: Caller,
    @Body() { id, checkSheet }: RecordCheckSheetRequest,
  ): Promise<CheckSheetResponse> {
    const outcome = await this.record.execute(caller, { id, definition: checkSheet });
    const answer = presentCheckSheet(outcome);
    return outcome.created ? answer : alreadyThere(answer);
  }

  @Get()
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(CheckSheetPage, { summary: 'List check sheets, newest first' })
  async listCheckSheets(
    @CurrentCaller() caller: Caller,
    @Query() query: ListCheckSheetsQuery,
  ): Promise<CheckSheetPage> {
    const { code, asOf } = query;
    const page = await this.show.list(caller, { code, asOf, ...this.pager.read(query) });
    return this.pager.page(page, presentCheckSheetSummary);
  }

  @Get(':checkSheetId')
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(CheckSheetResponse, {
    summary: 'Show a version of a check sheet: checks, units, limits, prerequisites, cautions',
  })
  async showCheckSheet(
    @CurrentCaller() caller: Caller,
    @Param() { checkSheetId }: CheckSheetPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<CheckSheetResponse> {
    return presentCheckSheet(await this.show.execute(caller, { id: checkSheetId, asOf }));
  }
}
