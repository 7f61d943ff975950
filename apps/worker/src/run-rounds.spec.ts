import { runRounds } from './run-rounds.js';

const forever = 3_600_000;

describe('rounds of the worker', () => {
  it('runs at once, again when woken, and goes on after a fault', async () => {
    const faults: unknown[] = [];
    let round = 0;
    let ended: (() => void) | undefined;
    const work = (): Promise<void> => {
      round += 1;
      ended?.();
      return round === 1 ? Promise.reject(new Error('first round fails')) : Promise.resolve();
    };
    const rounds = runRounds(work, forever, (error) => faults.push(error));
    await rounds.first;
    expect([round, faults.length]).toEqual([1, 1]);
    const second = new Promise<void>((resolve) => (ended = resolve));
    await Promise.resolve();
    rounds.wake();
    await second;
    expect(round).toBe(2);
    await rounds.stop();
    expect([round, faults.length]).toEqual([2, 1]);
  });

  it('a stop waits for the round that is running', async () => {
    let finish: () => void = () => undefined;
    let finished = false;
    const rounds = runRounds(
      () =>
        new Promise<void>((resolve) => {
          finish = () => {
            finished = true;
            resolve();
          };
        }),
      forever,
      () => undefined,
    );
    const stopped = rounds.stop();
    finish();
    await stopped;
    expect(finished).toBe(true);
  });
});
