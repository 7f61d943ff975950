import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  AsOfQuery,
  ListStockLinesQuery,
  ListStockMovesQuery,
  RecordStockMoveRequest,
  StockLineList,
  StockMovePage,
  StockMovePath,
  StockMoveResponse,
  type StockLineResponse,
} from '@endfloat/contracts';
import {
  ListStockMovesUseCase,
  ListStockUseCase,
  RecordStockMoveUseCase,
  type Caller,
} from '@endfloat/workshop';
import { Allow, alreadyThere, AlsoCsv, Answer, CurrentCaller, Pager } from '../../http/index.js';
import { presentStockLine, presentStockMove, toStockMove } from './stock.presenter.js';

@Controller('v1')
export class StockController {
  constructor(
    private readonly pager: Pager,
    private readonly record: RecordStockMoveUseCase,
    private readonly moves: ListStockMovesUseCase,
    private readonly stock: ListStockUseCase,
  ) {}

  @Post('stock-moves')
  @Allow('owner', 'desk', 'technician', 'parts')
  @Answer(StockMoveResponse, {
    created: true,
    summary: 'Record what came in, went out, is kept for a job, or was counted',
    description:
      'One line on the ledger of a part in a condition. Lines are never corrected: a mistake is put right by a reversal. The shelf never holds less than nothing, and what is kept for one job is not used for another.',
  })
  async createStockMove(
    @CurrentCaller() caller: Caller,
    @Body() request: RecordStockMoveRequest,
  ): Promise<StockMoveResponse> {
    const { record, created } = await this.record.execute(caller, {
      id: request.id,
      move: toStockMove(request),
    });
    return created ? presentStockMove(record) : alreadyThere(presentStockMove(record));
  }

  @Get('stock-moves')
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(StockMovePage, { summary: 'List stock moves, what was recorded last first' })
  @AlsoCsv<StockMovePage, StockMoveResponse>('stock-moves', ({ items }) => items, [
    { name: 'stockMoveId', value: ({ id }) => id },
    { name: 'partId', value: ({ partId }) => partId },
    { name: 'condition', value: ({ condition }) => condition },
    { name: 'position', value: ({ position }) => position },
    { name: 'kind', value: ({ kind }) => kind },
    { name: 'happenedAt', value: ({ happenedAt }) => happenedAt },
    { name: 'quantity', value: ({ quantity }) => quantity },
    { name: 'onHandAfter', value: ({ onHandAfter }) => onHandAfter },
    { name: 'reservedAfter', value: ({ reservedAfter }) => reservedAfter },
    { name: 'jobId', value: ({ jobId }) => jobId ?? null },
    { name: 'serial', value: ({ serial }) => serial ?? null },
    { name: 'batch', value: ({ batch }) => batch ?? null },
    { name: 'note', value: ({ note }) => note ?? null },
  ])
  async listStockMoves(
    @CurrentCaller() caller: Caller,
    @Query() query: ListStockMovesQuery,
  ): Promise<StockMovePage> {
    const { partId, jobId, batch, serial, asOf } = query;
    const page = await this.moves.execute(caller, {
      partId,
      jobId,
      batch,
      serial,
      asOf,
      ...this.pager.read(query),
    });
    return this.pager.page(page, presentStockMove);
  }

  @Get('stock-moves/:stockMoveId')
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(StockMoveResponse, { summary: 'Show a stock move' })
  async getStockMove(
    @CurrentCaller() caller: Caller,
    @Param() { stockMoveId }: StockMovePath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<StockMoveResponse> {
    return presentStockMove(await this.moves.one(caller, stockMoveId, asOf));
  }

  @Get('stock-lines')
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(StockLineList, { summary: 'What lies on the shelf, now or as it was known at a moment' })
  @AlsoCsv<StockLineList, StockLineResponse>('stock-lines', ({ items }) => items, [
    { name: 'partId', value: ({ partId }) => partId },
    { name: 'componentType', value: ({ componentType }) => componentType },
    { name: 'partNumber', value: ({ partNumber }) => partNumber },
    { name: 'title', value: ({ title }) => title },
    { name: 'condition', value: ({ condition }) => condition },
    { name: 'onHand', value: ({ onHand }) => onHand },
    { name: 'reserved', value: ({ reserved }) => reserved },
    { name: 'available', value: ({ available }) => available },
  ])
  async listStockLines(
    @CurrentCaller() caller: Caller,
    @Query() { componentType, partId, asOf }: ListStockLinesQuery,
  ): Promise<StockLineList> {
    const lines = await this.stock.execute(caller, { componentType, partId, asOf });
    return { items: lines.map(presentStockLine) };
  }
}
