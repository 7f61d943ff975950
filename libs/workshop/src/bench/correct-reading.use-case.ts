import { doesNotFit, type ReadingEntry } from './entered-reading.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { Stamp } from '../ports/record-store.port.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { notFound } from '../errors/domain.errors.js';
import { correctRecord, type ExpectedRevision } from '../recording/correct-record.js';
import { requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';
import { groundOf, inspectionInTurn } from './judging/gather-bench-case.js';
import { judgeAndStore } from './judging/judge-and-store.js';
import { againWhenJudgedMeanwhile } from './judging/judged-meanwhile.js';
import { ReadingSituation } from './reading-situation.js';
import { viewsOf, type ReadingView } from './reading-view.js';

export interface CorrectReadingCommand {
  readonly id: string;
  readonly expected: ExpectedRevision;
  readonly entry: ReadingEntry;
  /** the person has looked again and stands by a value that looked unlikely */
  readonly valueConfirmed: boolean;
  readonly reason: string;
}

/** Corrects a reading, or confirms a value that looked unlikely; both stay visible, and the verdicts follow. */
export class CorrectReadingUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(caller: Caller, command: CorrectReadingCommand): Promise<ReadingView> {
    const stamp = stampOf(this.clock, caller, command.reason);
    return againWhenJudgedMeanwhile(() =>
      this.work.run(caller.shopId, (tx) => this.correct(tx, command, stamp)),
    );
  }

  private async correct(
    tx: ShopTransaction,
    command: CorrectReadingCommand,
    stamp: Stamp,
  ): Promise<ReadingView> {
    const { entry } = command;
    const before = await requiredRecord(tx.readings, 'reading', command.id);
    const inspection = await inspectionInTurn(tx, before.identity.inspectionId);
    if (entry.checkId !== before.content.checkId) {
      throw doesNotFit(
        `This reading was taken for the check "${before.content.checkId}". Enter what was read for another check as a new reading.`,
        { pointer: '/checkId', rule: 'unchanged', detail: before.content.checkId },
      );
    }
    const ground = await groundOf(tx, inspection);
    const situation = await ReadingSituation.of(tx, this.ids, ground, [entry], before.content.measuredBy);
    const read = situation.readingOf(entry, stamp.at, '');
    const content = { ...read, valueConfirmed: read.valueConfirmed || command.valueConfirmed };
    await situation.writeNewParts(tx, { at: stamp.at, by: stamp.by });
    await correctRecord(
      tx.readings,
      'reading',
      { id: command.id, expected: command.expected, content },
      stamp,
    );
    await judgeAndStore(tx, this.ids, ground, {
      ...stamp,
      reason: `reading corrected: ${command.reason}`,
    });
    await tx.announce({
      type: 'endfloat.reading.corrected.v1',
      subjectId: command.id,
      at: stamp.at,
      payload: { inspectionId: inspection.id },
    });
    const [view] = await viewsOf(tx, ground, [command.id]);
    if (view === undefined) throw notFound('reading');
    return view;
  }
}
