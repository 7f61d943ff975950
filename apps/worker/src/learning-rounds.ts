import type { Clock, LearnTablesUseCase } from '@endfloat/workshop';

/** Least time between two rounds of learning of one shop, milliseconds; learning reads the whole history. Judgement. */
const leastPause = 10 * 60_000;

interface LastRound {
  readonly mark: string;
  readonly at: number;
}

/**
 * Learns the tables of a shop anew when something was recorded since it last did, at most every ten minutes. What it
 * remembers is only to save work: after a restart it learns once and finds the same tables.
 */
export class LearningRounds {
  private readonly last = new Map<string, LastRound>();

  constructor(
    private readonly learn: Pick<LearnTablesUseCase, 'execute'>,
    private readonly clock: Clock,
  ) {}

  async round(shopId: string): Promise<void> {
    const at = Date.parse(this.clock.now());
    const last = this.last.get(shopId);
    if (last !== undefined && at - last.at < leastPause) return;
    const { mark } = await this.learn.execute(shopId, last?.mark);
    this.last.set(shopId, { mark, at });
  }
}
