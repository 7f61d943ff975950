import fc from 'fast-check';
import { moveStock, type BalanceForMove, type PlannedMove } from './stock-balance.js';

const empty: BalanceForMove = { onHand: 0, reserved: 0, reservedForJob: 0, inJob: 0 };

describe('one move of stock', () => {
  it('by hand: receive 3, keep 2 for a job, use 1 of them, and 1 is free', () => {
    const received = moveStock(empty, { kind: 'receive', quantity: 3 });
    expect(received).toMatchObject({ kind: 'applied', after: { onHand: 3, reserved: 0 } });
    const kept = moveStock({ ...empty, onHand: 3 }, { kind: 'reserve', quantity: 2 });
    expect(kept).toMatchObject({ onHandChange: 0, reservedChange: 2, after: { onHand: 3, reserved: 2 } });
    const used = moveStock(
      { onHand: 3, reserved: 2, reservedForJob: 2, inJob: 0 },
      { kind: 'use', quantity: 1 },
    );
    expect(used).toMatchObject({ onHandChange: -1, reservedChange: -1, after: { onHand: 2, reserved: 1 } });
  });

  it('what is kept for one job is not used for another', () => {
    const forOther = { onHand: 2, reserved: 2, reservedForJob: 0, inJob: 0 };
    expect(moveStock(forOther, { kind: 'use', quantity: 1 })).toEqual({
      kind: 'refused',
      reason: 'notEnough',
      possible: 0,
    });
    expect(moveStock(forOther, { kind: 'reserve', quantity: 1 })).toMatchObject({ kind: 'refused' });
    expect(moveStock(forOther, { kind: 'remove', quantity: 1 })).toMatchObject({ kind: 'refused' });
    expect(moveStock(forOther, { kind: 'unreserve', quantity: 1 })).toMatchObject({
      kind: 'refused',
      reason: 'notReserved',
    });
  });

  it('a count is the truth, also below what is kept for jobs, and says so', () => {
    expect(
      moveStock({ onHand: 4, reserved: 3, reservedForJob: 0, inJob: 0 }, { kind: 'count', quantity: 2 }),
    ).toEqual({
      kind: 'applied',
      onHandChange: -2,
      reservedChange: 0,
      after: { onHand: 2, reserved: 3 },
      oddities: ['reservedExceedsCounted'],
    });
  });

  it('more returned than used is taken and named as odd: the piece lies on the shelf', () => {
    expect(moveStock(empty, { kind: 'return', quantity: 1 })).toMatchObject({
      kind: 'applied',
      after: { onHand: 1 },
      oddities: ['returnedMoreThanUsed'],
    });
  });

  it('a reversal that would leave less than nothing is refused', () => {
    const receipt = { kind: 'reversal', onHandChange: 2, reservedChange: 0 } as const;
    expect(moveStock({ ...empty, onHand: 1 }, receipt)).toMatchObject({ reason: 'leavesNegative' });
    expect(moveStock({ ...empty, onHand: 2 }, receipt)).toMatchObject({ after: { onHand: 0, reserved: 0 } });
  });

  it('refuses quantities that are no number of pieces', () => {
    for (const quantity of [0, -1, 1.5, Number.NaN, 2 ** 60])
      expect(() => moveStock(empty, { kind: 'receive', quantity })).toThrow(RangeError);
    expect(() => moveStock({ ...empty, onHand: -1 }, { kind: 'count', quantity: 0 })).toThrow(RangeError);
    const half = { kind: 'reversal', onHandChange: 0.5, reservedChange: 0 } as const;
    expect(() => moveStock(empty, half)).toThrow(RangeError);
  });
});

describe('any course of moves', () => {
  const job = fc.integer({ min: 0, max: 2 });
  const step = fc.record({
    job,
    kind: fc.constantFrom('receive', 'reserve', 'unreserve', 'use', 'return', 'remove', 'count', 'reversal'),
    quantity: fc.integer({ min: 1, max: 4 }),
    pick: fc.nat(),
  });

  it('never leaves less than nothing, and the balance is the sum of the changes, job by job', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 60 }), (steps) => {
        const ledger: { job: number; kind: string; onHandChange: number; reservedChange: number }[] = [];
        const sum = (
          member: 'onHandChange' | 'reservedChange',
          of: (m: (typeof ledger)[number]) => boolean,
        ) => ledger.filter(of).reduce((total, move) => total + move[member], 0);
        const reversed = new Set<number>();
        for (const { job: who, kind, quantity, pick } of steps) {
          const balance = {
            onHand: sum('onHandChange', () => true),
            reserved: sum('reservedChange', () => true),
            reservedForJob: Math.max(
              0,
              sum('reservedChange', (move) => move.job === who),
            ),
            inJob: Math.max(
              0,
              -sum('onHandChange', (move) => move.job === who && ['use', 'return'].includes(move.kind)),
            ),
          };
          const at = ledger.length === 0 ? -1 : pick % ledger.length;
          const wrong = ledger[at];
          if (kind === 'reversal' && (wrong === undefined || wrong.kind === 'reversal' || reversed.has(at)))
            continue;
          const move = (kind === 'reversal' ? { ...wrong, kind } : { kind, quantity }) as PlannedMove;
          const outcome = moveStock(balance, move);
          if (outcome.kind === 'refused') continue;
          if (kind === 'reversal') reversed.add(at);
          const { onHandChange, reservedChange, after } = outcome;
          ledger.push({
            job: wrong !== undefined && kind === 'reversal' ? wrong.job : who,
            kind,
            onHandChange,
            reservedChange,
          });
          expect(after).toEqual({
            onHand: sum('onHandChange', () => true),
            reserved: sum('reservedChange', () => true),
          });
          expect(Math.min(after.onHand, after.reserved)).toBeGreaterThanOrEqual(0);
          if (kind === 'reserve') expect(after.reserved).toBeLessThanOrEqual(after.onHand);
        }
      }),
      { seed: 59, numRuns: 300 },
    );
  });
});
