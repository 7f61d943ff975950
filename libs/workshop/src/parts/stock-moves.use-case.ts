import { DomainError, invalidInput } from '../errors/domain.errors.js';
import { localDay } from '../bench/local-day.js';
import { notNegative } from '../decide/offers.use-case.js';
import { courseOf, isUnderWay, jobState } from '../jobs/job-state.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { ListPage, ListPosition, Stamp } from '../ports/record-store.port.js';
import type { StockMove, StockMoveIdentity } from '../ports/records/stock.records.js';
import type { Caller } from '../ports/roles.js';
import { sameContent } from '../ports/same-content.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import type { AddedRecord } from '../recording/add-record.js';
import { againWhenTaken } from '../recording/again-when-taken.js';
import { correctRecord, exactly } from '../recording/correct-record.js';
import { refuseFuture } from '../recording/happened-at.js';
import { referencedRecord, requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';
import { settingsOf } from '../shop/open-shop.use-case.js';
import { coresOfReceipt } from './cores-of-receipt.js';
import { moveOnLedger, type StockMoveEntry, type StockMoveRecord } from './move-stock.js';

export interface RecordStockMoveCommand {
  readonly id?: string | undefined;
  readonly move: StockMoveEntry;
}

/** Records what came in, went out, is kept for a job or was counted. Nothing is ever below nothing. */
export class RecordStockMoveUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    { id: given, move }: RecordStockMoveCommand,
  ): Promise<AddedRecord<StockMoveIdentity, StockMove>> {
    const stamp = stampOf(this.clock, caller);
    const id = given ?? this.ids.next();
    refuseWrongMove(move, stamp.at);
    const entry: StockMoveEntry = {
      ...move,
      unitCost: move.unitCost === null ? null : notNegative(move.unitCost, '/unitCost'),
    };
    return againWhenTaken(() =>
      this.work.run(caller.shopId, async (tx) => {
        await refuseUnknown(tx, entry);
        await tx.takeTurn(entry.partId);
        const known = await tx.stockMoves.find(id);
        if (known !== undefined) return { record: sameMove(known, entry), created: false };
        await refuseWhenOver(tx, entry);
        const record = await moveOnLedger(tx, id, await withOriginal(tx, entry), stamp);
        if (entry.kind === 'receive') await arrived(tx, this.ids, record, stamp);
        return { record, created: true };
      }),
    );
  }
}

export class ListStockMovesUseCase {
  constructor(private readonly work: UnitOfWork) {}

  /** Moves of a part, for a job, or of a batch; what was recorded last first. */
  execute(
    caller: Caller,
    query: {
      readonly partId?: string | undefined;
      readonly jobId?: string | undefined;
      readonly batch?: string | undefined;
      readonly serial?: string | undefined;
      readonly asOf?: string | undefined;
      readonly after?: ListPosition | undefined;
      readonly limit: number;
    },
  ): Promise<ListPage<StockMoveIdentity, StockMove>> {
    const { partId, jobId, batch, serial, ...page } = query;
    return this.work.read(caller.shopId, (tx) =>
      tx.stockMoves.list({ where: { partId, jobId, batch, serial }, ...page }),
    );
  }

  one(caller: Caller, id: string, asOf?: string): Promise<StockMoveRecord> {
    return this.work.read(caller.shopId, (tx) => requiredRecord(tx.stockMoves, 'stock move', id, asOf));
  }
}

const ofJobs: readonly string[] = ['reserve', 'unreserve', 'use', 'return'];

function refuseWrongMove(move: StockMoveEntry, now: string): void {
  refuseFuture(move.happenedAt, now, '/happenedAt');
  const broken = shapeRules.find(({ isBroken }) => isBroken(move));
  if (broken !== undefined) throw invalidInput(broken.pointer, broken.rule, broken.detail);
}

const says = (text: string | null): boolean => (text ?? '').trim() !== '';

/** What each kind of move says and what it leaves out. */
const shapeRules: readonly {
  readonly pointer: string;
  readonly rule: string;
  readonly detail: string;
  readonly isBroken: (move: StockMoveEntry) => boolean;
}[] = [
  {
    pointer: '/jobId',
    rule: 'required',
    detail: 'Say for which job.',
    isBroken: ({ kind, jobId }) => ofJobs.includes(kind) && jobId === null,
  },
  {
    pointer: '/jobId',
    rule: 'absent',
    detail: 'Only what is kept for, used in or back from a job names one.',
    isBroken: ({ kind, jobId }) => !ofJobs.includes(kind) && jobId !== null,
  },
  {
    pointer: '/reversesId',
    rule: 'reversal',
    detail: 'A reversal, and nothing else, names the move that was a mistake.',
    isBroken: ({ kind, reversesId }) => (kind === 'reversal') !== (reversesId !== null),
  },
  {
    pointer: '/note',
    rule: 'required',
    detail:
      'Say why: what was wrong with the move, or why it leaves the shelf (scrap, back to the supplier, lost).',
    isBroken: ({ kind, note }) => (kind === 'remove' || kind === 'reversal') && !says(note),
  },
  {
    pointer: '/quantity',
    rule: 'positive',
    detail: 'Only a count can find nothing.',
    isBroken: ({ kind, quantity }) => kind !== 'count' && kind !== 'reversal' && quantity === 0,
  },
  {
    pointer: '/serial',
    rule: 'onePiece',
    detail: 'A serial belongs to one piece: record the pieces one by one.',
    isBroken: ({ serial, quantity }) => serial !== null && quantity > 1,
  },
  {
    pointer: '/offerId',
    rule: 'absent',
    detail: 'Only what comes in names the offer and the delivery it came by.',
    isBroken: ({ kind, offerId, deliveryId }) =>
      kind !== 'receive' && (offerId !== null || deliveryId !== null),
  },
];

async function refuseUnknown(tx: ShopTransaction, move: StockMoveEntry): Promise<void> {
  await referencedRecord(tx.parts, 'part', move.partId, '/partId');
  if (move.jobId !== null) await referencedRecord(tx.jobs, 'job', move.jobId, '/jobId');
  if (move.offerId !== null) await referencedRecord(tx.offers, 'offer', move.offerId, '/offerId');
  if (move.deliveryId !== null) {
    const { identity } = await referencedRecord(tx.deliveries, 'delivery', move.deliveryId, '/deliveryId');
    if (move.offerId !== null && identity.offerId !== move.offerId)
      throw invalidInput('/deliveryId', 'sameOffer', 'This delivery belongs to another offer.');
  }
  if (move.reversesId === null) return;
  const wrong = await referencedRecord(tx.stockMoves, 'stock move', move.reversesId, '/reversesId');
  const { partId, condition, kind } = wrong.identity;
  if (partId !== move.partId || condition !== move.condition)
    throw invalidInput('/reversesId', 'sameLedger', 'This move is about another part or condition.');
  if (kind === 'reversal')
    throw invalidInput('/reversesId', 'noReversal', 'A reversal is not reversed: record the move again.');
}

async function refuseWhenOver(
  tx: ShopTransaction,
  { kind, jobId, reversesId }: StockMoveEntry,
): Promise<void> {
  if (kind === 'reserve' && jobId !== null) {
    const state = jobState(await courseOf(tx, jobId));
    if (!isUnderWay(state))
      throw new DomainError('record.wrongState', `The job is ${state}: nothing more is kept for it.`);
  }
  if (reversesId === null) return;
  const [before] = await tx.stockMoves.all({ reversesId });
  if (before !== undefined)
    throw new DomainError('record.wrongState', 'This move has been reversed already.', [
      { pointer: '/reversesId', rule: 'once', detail: `reversal ${before.id}` },
    ]);
}

/** A reversal counts for the job of the move it takes back. */
async function withOriginal(tx: ShopTransaction, entry: StockMoveEntry): Promise<StockMoveEntry> {
  if (entry.reversesId === null) return entry;
  const wrong = await tx.stockMoves.find(entry.reversesId);
  const { jobId = null, workLineId = null } = wrong?.identity ?? {};
  return { ...entry, jobId, workLineId, quantity: wrong?.content.quantity ?? entry.quantity };
}

function sameMove(known: StockMoveRecord, entry: StockMoveEntry): StockMoveRecord {
  const { partId, condition, kind, jobId, workLineId, reversesId, ...content } = entry;
  const { warnings, ...before } = known.content;
  const derived = reversesId === null ? {} : { quantity: before.quantity };
  const was = known.identity;
  const isSame =
    sameContent(before, { ...content, ...derived }) &&
    [was.partId, was.condition, was.kind, was.reversesId].join() ===
      [partId, condition, kind, reversesId].join() &&
    (reversesId !== null || (was.jobId === jobId && was.workLineId === workLineId));
  if (isSame && warnings.length >= 0) return known;
  throw new DomainError(
    'record.idTaken',
    'Another stock move is already recorded under this id. Choose a new id.',
    [{ pointer: '/id', rule: 'unique', detail: 'taken by other content' }],
  );
}

/** What came in by an order: the delivery has arrived, and the supplier waits for the old parts. */
async function arrived(
  tx: ShopTransaction,
  ids: IdSource,
  record: StockMoveRecord,
  stamp: Stamp,
): Promise<void> {
  const { deliveryId, happenedAt } = record.content;
  const day = localDay(happenedAt, (await settingsOf(tx)).timeZone);
  await coresOfReceipt(tx, ids, record, day, stamp);
  if (deliveryId === null) return;
  const delivery = await requiredRecord(tx.deliveries, 'delivery', deliveryId);
  if (delivery.content.arrivedOn !== null || day < delivery.content.orderedOn) return;
  const content = { ...delivery.content, arrivedOn: day };
  await correctRecord(
    tx.deliveries,
    'delivery',
    { id: deliveryId, expected: exactly(delivery.revision), content },
    { ...stamp, reason: 'came in' },
  );
}
