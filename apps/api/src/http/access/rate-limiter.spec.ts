import { RateLimiter } from './rate-limiter.js';

describe('RateLimiter', () => {
  let now = 0;
  const limiter = (requests: number) => new RateLimiter({ name: 'trial', requests, seconds: 10 }, () => now);
  beforeEach(() => {
    now = 1000;
  });

  it('admits so many in a window and begins anew after it', () => {
    const two = limiter(2);
    expect(two.take('a')).toEqual({ isAdmitted: true, remaining: 1, reset: 10 });
    now += 4000;
    expect(two.take('a')).toEqual({ isAdmitted: true, remaining: 0, reset: 6 });
    expect(two.take('a')).toEqual({ isAdmitted: false, remaining: 0, reset: 6 });
    now += 6000;
    expect(two.take('a')).toEqual({ isAdmitted: true, remaining: 1, reset: 10 });
  });

  it('counts each key for itself', () => {
    const one = limiter(1);
    expect(one.take('a').isAdmitted).toBe(true);
    expect(one.take('b').isAdmitted).toBe(true);
    expect([one.isSpent('a'), one.isSpent('c')]).toEqual([true, false]);
    now += 10_000;
    expect(one.isSpent('a')).toBe(false);
  });

  it('keeps no more keys than it has room for, and forgets the oldest first', () => {
    const one = limiter(1);
    for (let key = 0; key <= 50_000; key++) one.take(String(key));
    expect([one.isSpent('0'), one.isSpent('1'), one.isSpent('50000')]).toEqual([false, true, true]);
  });
});
