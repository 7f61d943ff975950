import type { Clock } from '../ports/clock.port.js';
import type { UnitOfWork } from '../ports/unit-of-work.port.js';

/** Erases answers that are kept no longer; run by the worker, one shop at a time. Twice at once does no harm. */
export class EraseExpiredAnswersUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  /** Answers how many were erased. */
  execute(shopId: string): Promise<number> {
    return this.work.run(shopId, (tx) => tx.storedAnswers.eraseExpired(this.clock.now()));
  }
}
