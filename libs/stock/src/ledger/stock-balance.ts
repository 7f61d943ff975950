/**
 * What may happen to pieces of one part in one condition. `receive`: they come in. `reserve` and `unreserve`: they are kept
 * for a job, or no longer. `use`: they go into a job. `return`: they come back from a job. `remove`: they leave for another
 * reason, such as scrap or back to the supplier. `count`: so many lie on the shelf. `reversal`: an earlier move was
 * recorded by mistake.
 */
export const stockMoveKinds = [
  'receive',
  'reserve',
  'unreserve',
  'use',
  'return',
  'remove',
  'count',
  'reversal',
] as const;
/** A kind of `stockMoveKinds`. */
export type StockMoveKind = (typeof stockMoveKinds)[number];

/** Pieces on the shelf, and how many of them are kept for jobs. */
export interface StockBalance {
  readonly onHand: number;
  readonly reserved: number;
}

/** The same with what concerns the job of the move. */
export interface BalanceForMove extends StockBalance {
  /** kept for the job of the move; 0 without a job */
  readonly reservedForJob: number;
  /** went into that job and did not come back */
  readonly inJob: number;
}

/** A move that is about to be recorded. `quantity` is what was counted for a count, 1 or more for others. */
export type PlannedMove =
  | { readonly kind: Exclude<StockMoveKind, 'reversal'>; readonly quantity: number }
  | {
      readonly kind: 'reversal';
      /** what the move that was a mistake had changed */
      readonly onHandChange: number;
      readonly reservedChange: number;
    };

/** Why a move cannot be. */
export const stockMoveRefusals = ['notEnough', 'notReserved', 'leavesNegative'] as const;
/** A reason of `stockMoveRefusals`. */
export type StockMoveRefusal = (typeof stockMoveRefusals)[number];

/** What looks odd about a move that is recorded all the same. */
export const stockMoveOddities = ['returnedMoreThanUsed', 'reservedExceedsCounted'] as const;
/** A code of `stockMoveOddities`. */
export type StockMoveOddity = (typeof stockMoveOddities)[number];

/** What a move does to the balance. */
export type MoveOutcome =
  | {
      readonly kind: 'applied';
      readonly onHandChange: number;
      readonly reservedChange: number;
      readonly after: StockBalance;
      readonly oddities: readonly StockMoveOddity[];
    }
  | {
      readonly kind: 'refused';
      readonly reason: StockMoveRefusal;
      /** how many the move could have had at most */
      readonly possible: number;
    };

const requireCount = (name: string, value: number, least: number): void => {
  if (!Number.isSafeInteger(value) || value < least)
    throw new RangeError(`${name} must be whole, ${least} or more, got ${value}`);
};

/**
 * One move on the ledger. What is on the shelf never goes below 0, and what is kept for one job is not used for another.
 * What a job uses is taken from what was kept for it first.
 *
 * @param balance  before the move, with what concerns its job; counts, 0 or more
 * @param move     kind and quantity
 * @returns the changes and the balance after; `refused` with how many there could have been (0 for a reversal). More
 *   returned than used, and a count below what is kept for jobs, are facts: they are applied and named as odd.
 * @throws RangeError on counts that are not whole or negative, a quantity of 0 (but of a count), a change to be
 *   reversed that is not whole
 * @source bookkeeping identity; common practice, no source
 * @example moveStock({ onHand: 2, reserved: 1, reservedForJob: 1, inJob: 0 }, { kind: 'use', quantity: 2 }).after // => { onHand: 0, reserved: 0 }
 */
export function moveStock(balance: BalanceForMove, move: PlannedMove): MoveOutcome {
  for (const [name, value] of Object.entries(balance)) requireCount(name, value as number, 0);
  if (move.kind === 'reversal') {
    for (const change of [move.onHandChange, move.reservedChange])
      if (!Number.isSafeInteger(change)) throw new RangeError(`a change must be whole, got ${change}`);
    return changed(balance, -move.onHandChange, -move.reservedChange) ?? refused('leavesNegative', 0);
  }
  requireCount('quantity', move.quantity, move.kind === 'count' ? 0 : 1);
  return effects[move.kind](balance, move.quantity);
}

const freeOf = ({ onHand, reserved }: StockBalance): number => Math.max(0, onHand - reserved);

const effects: Readonly<
  Record<Exclude<StockMoveKind, 'reversal'>, (balance: BalanceForMove, quantity: number) => MoveOutcome>
> = {
  receive: (balance, quantity) => applied(balance, quantity, 0),
  return: (balance, quantity) =>
    applied(balance, quantity, 0, quantity > balance.inJob ? ['returnedMoreThanUsed'] : []),
  reserve: (balance, quantity) =>
    quantity > freeOf(balance) ? refused('notEnough', freeOf(balance)) : applied(balance, 0, quantity),
  unreserve: (balance, quantity) =>
    quantity > balance.reservedForJob
      ? refused('notReserved', balance.reservedForJob)
      : applied(balance, 0, -quantity),
  use: (balance, quantity) => {
    const possible = Math.min(balance.onHand, freeOf(balance) + balance.reservedForJob);
    return quantity > possible
      ? refused('notEnough', possible)
      : applied(balance, -quantity, -Math.min(quantity, balance.reservedForJob));
  },
  remove: (balance, quantity) =>
    quantity > freeOf(balance) ? refused('notEnough', freeOf(balance)) : applied(balance, -quantity, 0),
  count: (balance, quantity) =>
    applied(
      balance,
      quantity - balance.onHand,
      0,
      balance.reserved > quantity ? ['reservedExceedsCounted'] : [],
    ),
};

function refused(reason: StockMoveRefusal, possible: number): MoveOutcome {
  return { kind: 'refused', reason, possible };
}

function applied(
  { onHand, reserved }: StockBalance,
  onHandChange: number,
  reservedChange: number,
  oddities: readonly StockMoveOddity[] = [],
): MoveOutcome & { readonly kind: 'applied' } {
  const after = { onHand: onHand + onHandChange, reserved: reserved + reservedChange };
  return {
    kind: 'applied',
    onHandChange: onHandChange + 0,
    reservedChange: reservedChange + 0,
    after,
    oddities,
  };
}

function changed(balance: StockBalance, onHandChange: number, reservedChange: number): MoveOutcome | null {
  const outcome = applied(balance, onHandChange, reservedChange);
  return outcome.after.onHand < 0 || outcome.after.reserved < 0 ? null : outcome;
}
