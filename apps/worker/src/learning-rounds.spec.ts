import { LearningRounds } from './learning-rounds.js';

describe('rounds of learning', () => {
  const setUp = () => {
    let now = Date.parse('2031-05-04T09:00:00Z');
    const asked: [string, string | undefined][] = [];
    const learn = {
      execute: (shopId: string, mark?: string) => {
        asked.push([shopId, mark]);
        return Promise.resolve({ mark: `mark ${String(asked.length)}`, changed: [] });
      },
    };
    const rounds = new LearningRounds(learn, { now: () => new Date(now).toISOString() });
    return { rounds, asked, later: (minutes: number) => (now += minutes * 60_000) };
  };

  it('learns at once after a start, and hands on what it has seen the next time', async () => {
    const { rounds, asked, later } = setUp();
    await rounds.round('one');
    later(11);
    await rounds.round('one');
    expect(asked).toEqual([
      ['one', undefined],
      ['one', 'mark 1'],
    ]);
  });

  it('leaves a shop alone for ten minutes, and every shop by itself', async () => {
    const { rounds, asked, later } = setUp();
    await rounds.round('one');
    later(9);
    await rounds.round('one');
    await rounds.round('two');
    expect(asked.map(([shopId]) => shopId)).toEqual(['one', 'two']);
  });
});
