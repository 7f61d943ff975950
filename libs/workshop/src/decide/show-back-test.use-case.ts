import { invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { Caller } from '../ports/roles.js';
import type { UnitOfWork } from '../ports/unit-of-work.port.js';
import { settingsOf } from '../shop/open-shop.use-case.js';
import { backTest, type BackTest } from './back-test.js';

export interface BackTestQuery {
  readonly componentType?: string | undefined;
  /** releases from this moment on, and before that one */
  readonly releasedFrom?: string | undefined;
  readonly releasedBefore?: string | undefined;
}

export interface BackTestView extends BackTest {
  /** moment looked back from */
  readonly at: string;
}

/** Looks back at the shop's own decisions: did they turn out as predicted, and what would fixed rules have cost. */
export class ShowBackTestUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async execute(caller: Caller, query: BackTestQuery): Promise<BackTestView> {
    const at = this.clock.now();
    const { componentType, releasedFrom = '', releasedBefore = '9999' } = query;
    if (query.releasedBefore !== undefined && releasedBefore <= releasedFrom)
      throw invalidInput('/releasedBefore', 'order', 'Give a moment after releasedFrom.');
    const { jobs, assessed, currency } = await this.work.read(caller.shopId, async (tx) => {
      const released = await tx.learningHistory.releasedJobs(at);
      const asked = released.filter(
        ({ releasedAt }) => releasedAt >= releasedFrom && releasedAt < releasedBefore,
      );
      const repairs = await tx.learningHistory.assessedRepairs(
        asked.map(({ jobId }) => jobId),
        true,
      );
      return {
        jobs: asked,
        assessed: repairs.filter(
          ({ question }) => componentType === undefined || question.componentType === componentType,
        ),
        currency: (await settingsOf(tx)).currency,
      };
    });
    return { at, ...backTest(jobs, assessed, { until: at, currency }) };
  }
}
