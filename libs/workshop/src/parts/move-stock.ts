import type { PartCondition } from '@endfloat/catalogue';
import {
  moveStock,
  type BalanceForMove,
  type MoveOutcome,
  type PlannedMove,
  type StockMoveKind,
} from '@endfloat/stock';
import { DomainError, invalidInput } from '../errors/domain.errors.js';
import type { Recorded, Stamp } from '../ports/record-store.port.js';
import type { StockMove, StockMoveIdentity } from '../ports/records/stock.records.js';
import type { Warning } from '../ports/records/vehicles.records.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import { addRecord } from '../recording/add-record.js';

export type StockMoveRecord = Recorded<StockMoveIdentity, StockMove>;

/** A move as it is entered; what it does to the balance is worked out. */
export interface StockMoveEntry extends Omit<StockMove, 'warnings'> {
  readonly partId: string;
  readonly condition: PartCondition;
  readonly kind: StockMoveKind;
  readonly jobId: string | null;
  readonly workLineId: string | null;
  readonly reversesId: string | null;
}

/**
 * Writes the next line on the ledger of a part in a condition. Whoever moves the same part waits for his turn; should two
 * meet all the same, the database refuses the second line at the same place.
 *
 * @param at  JSON Pointer of the quantity in the request
 * @throws DomainError `stock.notEnough` where the shelf would hold less than nothing or another job would lose its part
 */
export async function moveOnLedger(
  tx: ShopTransaction,
  id: string,
  entry: StockMoveEntry,
  stamp: Stamp,
  at = '/quantity',
): Promise<StockMoveRecord> {
  const { partId, condition, kind, jobId, workLineId, reversesId, ...content } = entry;
  await tx.takeTurn(partId);
  const line = (await tx.stock.lines({ partIds: [partId] })).find((each) => each.condition === condition);
  const balance = await balanceFor(tx, entry, line);
  const outcome = moveStock(balance, await plannedMove(tx, entry));
  if (outcome.kind === 'refused') throw refusal(entry, outcome, at);
  const { onHandChange, reservedChange, after } = outcome;
  const identity: StockMoveIdentity = {
    partId,
    jobId,
    workLineId,
    reversesId,
    condition,
    kind,
    position: (line?.position ?? 0) + 1,
    onHandChange,
    reservedChange,
    onHandAfter: after.onHand,
    reservedAfter: after.reserved,
  };
  const warnings = await warningsOf(tx, entry, outcome, balance);
  const { record } = await addRecord(
    tx.stockMoves,
    'stock move',
    { id, identity, content: { ...content, warnings } },
    stamp,
  );
  await tx.announce({
    type: 'endfloat.stock.moved.v1',
    subjectId: id,
    at: stamp.at,
    payload: { partId, condition, kind, onHand: after.onHand, reserved: after.reserved },
  });
  return record;
}

async function balanceFor(
  tx: ShopTransaction,
  { partId, condition, jobId }: StockMoveEntry,
  line: { readonly onHand: number; readonly reserved: number } | undefined,
): Promise<BalanceForMove> {
  const ofJob =
    jobId === null ? { reserved: 0, inJob: 0 } : await tx.stock.ofJob({ partId, condition, jobId });
  return {
    onHand: line?.onHand ?? 0,
    reserved: line?.reserved ?? 0,
    reservedForJob: Math.max(0, ofJob.reserved),
    inJob: Math.max(0, ofJob.inJob),
  };
}

async function plannedMove(tx: ShopTransaction, entry: StockMoveEntry): Promise<PlannedMove> {
  if (entry.kind !== 'reversal') return { kind: entry.kind, quantity: entry.quantity };
  const wrong = entry.reversesId === null ? undefined : await tx.stockMoves.find(entry.reversesId);
  if (wrong === undefined) throw invalidInput('/reversesId', 'required', 'Name the move that was a mistake.');
  const { onHandChange, reservedChange } = wrong.identity;
  return { kind: 'reversal', onHandChange, reservedChange };
}

function refusal(
  { kind, condition }: StockMoveEntry,
  { reason, possible }: Extract<MoveOutcome, { kind: 'refused' }>,
  at: string,
): DomainError {
  if (reason === 'leavesNegative')
    return new DomainError(
      'stock.notEnough',
      'What that move brought has been used since. Reverse the later moves first, or count what lies there.',
      [{ pointer: '/reversesId', rule: 'notBelowZero', detail: 'the shelf would hold less than nothing' }],
    );
  if (reason === 'notReserved')
    return new DomainError('stock.notEnough', `Only ${String(possible)} are kept for this job.`, [
      { pointer: at, rule: 'mostPossible', detail: String(possible) },
    ]);
  return new DomainError(
    'stock.notEnough',
    `By the ledger ${String(possible)} in condition "${condition}" can be had for this (${kind}); the rest is not there or kept for other jobs. Record what came in, or count what lies there, and send it again.`,
    [{ pointer: at, rule: 'mostPossible', detail: String(possible) }],
  );
}

async function warningsOf(
  tx: ShopTransaction,
  entry: StockMoveEntry,
  outcome: Extract<MoveOutcome, { kind: 'applied' }>,
  balance: BalanceForMove,
): Promise<readonly Warning[]> {
  const { partId, condition, happenedAt, serial, kind } = entry;
  const warnings: Warning[] = outcome.oddities.map((code) => ({
    code,
    pointer: '/quantity',
    values:
      code === 'returnedMoreThanUsed'
        ? { inJob: String(balance.inJob) }
        : { reserved: String(balance.reserved) },
  }));
  const countedAt =
    outcome.onHandChange === 0 ? undefined : await tx.stock.lastCountAt({ partId, condition });
  if (kind !== 'reversal' && countedAt !== undefined && happenedAt < countedAt)
    warnings.push({ code: 'beforeLastCount', pointer: '/happenedAt', values: { countedAt } });
  if (serial !== null && ['receive', 'return', 'reserve', 'use'].includes(kind)) {
    const part = await tx.parts.find(partId);
    const componentType = part?.content.componentType;
    const fitted = (await tx.fittedParts.all({ serial, componentType, removedAt: null })).find(
      ({ content }) => (content.fittedAt ?? '') <= happenedAt && content.workLineId !== entry.workLineId,
    );
    if (fitted !== undefined)
      warnings.push({
        code: 'serialFittedElsewhere',
        pointer: '/serial',
        values: { serial, vehicleId: fitted.identity.vehicleId },
      });
  }
  return warnings;
}
