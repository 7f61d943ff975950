import { partConditions, type PartCondition } from '@endfloat/catalogue';
import { stockMoveKinds, type StockMoveKind } from '@endfloat/stock';
import {
  EnumField,
  IdField,
  InstantField,
  IntegerField,
  JoinTypes,
  ListField,
  MoneyField,
  TextField,
  textPatterns,
} from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';
import { MoneyDto } from '../quantity/index.js';
import { RecordedResponse, WarningResponse } from '../recording/index.js';
import { PartStockDto } from './part.dto.js';

export class StockMoveContent {
  @IdField({ description: 'The part.' })
  partId!: string;

  @EnumField({ description: 'In which condition.', values: partConditions, enumName: 'PartCondition' })
  condition!: PartCondition;

  @EnumField({
    description:
      'What happened. `receive`: it came in. `reserve`, `unreserve`: it is kept for a job, or no longer. `use`: it went into a job. `return`: it came back from a job. `remove`: it left for another reason. `count`: so many lie there. `reversal`: an earlier move was a mistake.',
    values: stockMoveKinds,
    enumName: 'StockMoveKind',
  })
  kind!: StockMoveKind;

  @IntegerField({
    description: 'Pieces; for a count, how many lay there; for a reversal it is not looked at.',
    min: 0,
    max: 100_000,
  })
  quantity!: number;

  @InstantField({ description: 'When it happened.' })
  happenedAt!: string;

  @IdField({
    description: 'The job it is kept for, used in, or came back from.',
    nullable: true,
    optional: true,
  })
  jobId?: string | null;

  @IdField({ description: 'The move that was recorded by mistake.', nullable: true, optional: true })
  reversesId?: string | null;

  @TextField({ description: 'Serial of the piece.', nullable: true, optional: true, max: 80 })
  serial?: string | null;

  @TextField({ description: 'Batch.', nullable: true, optional: true, max: 80 })
  batch?: string | null;

  @TextField({ description: 'From whom it came.', nullable: true, optional: true, max: 120 })
  supplier?: string | null;

  @IdField({
    description: 'The offer it was ordered on; one with a deposit makes an old part owed for each piece.',
    nullable: true,
    optional: true,
  })
  offerId?: string | null;

  @IdField({
    description: 'The delivery it came by; it is recorded as arrived.',
    nullable: true,
    optional: true,
  })
  deliveryId?: string | null;

  @MoneyField({ description: 'What a piece cost.', nullable: true, optional: true })
  unitCost?: MoneyDto | null;

  @TextField({ description: 'Where it lies.', nullable: true, optional: true, max: 80 })
  place?: string | null;

  @TextField({ description: 'Why, where that must be said.', nullable: true, optional: true, max: 500 })
  note?: string | null;
}

export class RecordStockMoveRequest extends StockMoveContent {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;
}

export class StockMoveResponse extends JoinTypes(RecordedResponse, StockMoveContent) {
  @IdField({ description: 'The work line that used it.', nullable: true })
  workLineId!: string | null;

  @IntegerField({ description: 'Place in the ledger of the part in that condition, from 1.', min: 1 })
  position!: number;

  @IntegerField({ description: 'Pieces more or fewer on the shelf.', min: -100_000, max: 100_000 })
  onHandChange!: number;

  @IntegerField({ description: 'Pieces more or fewer kept for jobs.', min: -100_000, max: 100_000 })
  reservedChange!: number;

  @IntegerField({ description: 'Pieces on the shelf after it.' })
  onHandAfter!: number;

  @IntegerField({ description: 'Pieces kept for jobs after it.' })
  reservedAfter!: number;

  @ListField({
    description: 'What looked odd; it was recorded all the same.',
    max: 20,
    type: () => WarningResponse,
  })
  warnings!: WarningResponse[];
}

export class StockMovePage extends pageOf(() => StockMoveResponse) {}

export class ListStockMovesQuery extends PageQuery {
  @IdField({ description: 'Moves of this part.', optional: true })
  partId?: string;

  @IdField({ description: 'Moves for this job.', optional: true })
  jobId?: string;

  @TextField({ description: 'Moves of this batch.', optional: true, max: 80 })
  batch?: string;

  @TextField({ description: 'Moves of the piece with this serial.', optional: true, max: 80 })
  serial?: string;

  @InstantField({ description: 'The list as it was known at this moment.', optional: true })
  asOf?: string;
}

export class StockMovePath {
  @IdField({ description: 'Id of the stock move.' })
  stockMoveId!: string;
}

export class StockLineResponse extends PartStockDto {
  @TextField({ description: 'Kind of part.', max: 64 })
  componentType!: string;

  @TextField({ description: 'Number of the part.', max: 80 })
  partNumber!: string;

  @TextField({ description: 'What it is.', max: 160 })
  title!: string;

  @IntegerField({ description: 'Moves on its ledger.' })
  moves!: number;

  @InstantField({ description: 'When the last move was recorded.' })
  lastMovedAt!: string;
}

export class StockLineList {
  @ListField({
    description: 'One line a part and condition, by kind and number.',
    max: 5000,
    type: () => StockLineResponse,
  })
  items!: StockLineResponse[];
}

export class ListStockLinesQuery {
  @TextField({
    description: 'Parts of this kind.',
    optional: true,
    max: 64,
    pattern: textPatterns.catalogueId,
  })
  componentType?: string;

  @IdField({ description: 'This part only.', optional: true })
  partId?: string;

  @InstantField({ description: 'What lay there by the moves recorded until this moment.', optional: true })
  asOf?: string;
}
