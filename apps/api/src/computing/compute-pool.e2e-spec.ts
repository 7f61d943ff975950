import { DomainError } from '@endfloat/workshop';
import { ComputeError, ComputePool } from './compute-pool.js';
import { openComputePool } from './open-compute-pool.js';

/** A line of as many points, whose slope takes seconds: every pair of points is looked at. */
const longLine = (points: number) => ({
  x: Array.from({ length: points }, (_, i) => i),
  y: Array.from({ length: points }, (_, i) => (i * 7919) % 104_729),
});
const short = { x: [0, 1, 2, 3], y: [1, 3, 5, 7] };
const own = new URL('.', import.meta.url);

const poolOf = (settings: { threads: number; mostWaiting: number; timeLimit: number }): ComputePool =>
  new ComputePool({
    ...settings,
    execArgv: [
      '--no-warnings',
      '--conditions=@endfloat/source',
      '--import',
      new URL('../../../../.config/typescript-register.mjs', own).href,
    ],
  });

const codeOf = (run: Promise<unknown>): Promise<unknown> =>
  run.then(
    () => 'answered',
    (error: unknown) => (error instanceof ComputeError ? error.code : error),
  );

describe('the pool of computing threads', () => {
  it('answers what the computation answers, and throws what it throws, refusals with their place', async () => {
    const pool = openComputePool();
    try {
      const found = (await pool.run('calculateTheilSenSlope', [short])) as { slope: { value: number } };
      expect(JSON.stringify(found)).toContain('2');
      const refused = await codeOf(pool.run('calculateTheilSenSlope', [{ x: [1, 2], y: [1] }]));
      expect(refused).toBeInstanceOf(DomainError);
      expect((refused as DomainError).faults[0]?.pointer).toBe('/y');
      expect(await codeOf(pool.run('nothing of that name', []))).toBeInstanceOf(RangeError);
      const broken = await codeOf(pool.run('replayAssessment', ['no JSON']));
      expect(broken).toBeInstanceOf(SyntaxError);
    } finally {
      await pool.close();
    }
  });

  it('refuses one too many, lets those waiting have their turn, and goes on after one that runs over its time', async () => {
    const pool = poolOf({ threads: 1, mostWaiting: 1, timeLimit: 1500 });
    try {
      await pool.run('calculateTheilSenSlope', [short]);
      const endless = codeOf(pool.run('calculateTheilSenSlope', [longLine(60_000)]));
      const next = codeOf(pool.run('calculateTheilSenSlope', [short]));
      expect(await codeOf(pool.run('calculateTheilSenSlope', [short]))).toBe('COMPUTING_FULL');
      expect(await endless).toBe('COMPUTING_TIMED_OUT');
      expect(await next).toBe('answered');
    } finally {
      await pool.close();
    }
  });

  it('ends in order: what has begun comes to its end, what waits and what comes later is refused', async () => {
    const pool = poolOf({ threads: 1, mostWaiting: 5, timeLimit: 20_000 });
    await pool.run('calculateTheilSenSlope', [short]);
    const begun = codeOf(pool.run('calculateTheilSenSlope', [longLine(2000)]));
    const waiting = codeOf(pool.run('calculateTheilSenSlope', [short]));
    const closed = pool.close();
    expect(await waiting).toBe('COMPUTING_CLOSED');
    expect(await codeOf(pool.run('calculateTheilSenSlope', [short]))).toBe('COMPUTING_CLOSED');
    expect(await begun).toBe('answered');
    await closed;
  });
});
