import { DomainError, notFound } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { Stamp } from '../ports/record-store.port.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { correctRecord, type ExpectedRevision } from '../recording/correct-record.js';
import { requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';
import { counts } from './judging/bench-case.js';
import { groundOf, inspectionInTurn } from './judging/gather-bench-case.js';
import { judgeAndStore } from './judging/judge-and-store.js';
import { againWhenJudgedMeanwhile } from './judging/judged-meanwhile.js';
import { viewsOf, type ReadingView } from './reading-view.js';

export interface WithdrawReadingCommand {
  readonly id: string;
  readonly expected: ExpectedRevision;
  readonly reason: string;
}

/**
 * Takes a reading back that was taken on the wrong van or part, or should not be there at all: a revision says so, with
 * the reason. The history still shows it; verdicts are made anew without it, and no trend, assessment or next check uses
 * it. A correction of the reading brings it back.
 */
export class WithdrawReadingUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(caller: Caller, command: WithdrawReadingCommand): Promise<ReadingView> {
    const stamp = stampOf(this.clock, caller, command.reason);
    return againWhenJudgedMeanwhile(() =>
      this.work.run(caller.shopId, (tx) => this.withdraw(tx, command, stamp)),
    );
  }

  private async withdraw(
    tx: ShopTransaction,
    { id, expected, reason }: WithdrawReadingCommand,
    stamp: Stamp,
  ): Promise<ReadingView> {
    const first = await requiredRecord(tx.readings, 'reading', id);
    const inspection = await inspectionInTurn(tx, first.identity.inspectionId);
    const before = await requiredRecord(tx.readings, 'reading', id);
    const content = { ...before.content, isWithdrawn: true };
    if (!counts(before))
      throw new DomainError(
        'record.wrongState',
        'This reading is withdrawn already. Correct it to bring it back.',
      );
    await correctRecord(tx.readings, 'reading', { id, expected, content }, stamp);
    const ground = await groundOf(tx, inspection);
    await judgeAndStore(tx, this.ids, ground, { ...stamp, reason: `reading withdrawn: ${reason}` });
    await tx.announce({
      type: 'endfloat.reading.withdrawn.v1',
      subjectId: id,
      at: stamp.at,
      payload: { inspectionId: inspection.id },
    });
    const [view] = await viewsOf(tx, ground, [id]);
    if (view === undefined) throw notFound('reading');
    return view;
  }
}
