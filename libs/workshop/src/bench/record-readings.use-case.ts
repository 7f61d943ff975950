import { DomainError, type Fault } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { Stamp } from '../ports/record-store.port.js';
import { sameContent } from '../ports/same-content.js';
import type { Reading } from '../ports/records/bench.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { stampOf } from '../recording/stamp.js';
import type { ReadingEntry } from './entered-reading.js';
import { enteredOf } from './entered-of.js';
import { judgeAndStore } from './judging/judge-and-store.js';
import { againWhenJudgedMeanwhile, JudgedMeanwhile } from './judging/judged-meanwhile.js';
import type { ReadingRecord } from './judging/bench-case.js';
import { groundOf, inspectionInTurn } from './judging/gather-bench-case.js';
import { viewsOf, type ReadingView } from './reading-view.js';
import { ReadingSituation } from './reading-situation.js';

export interface NewReading {
  readonly id?: string | undefined;
  readonly entry: ReadingEntry;
}

interface GivenReading {
  readonly id: string;
  readonly entry: ReadingEntry;
}

export interface RecordedReadings {
  readonly readings: readonly ReadingView[];
  /** false where every reading had been sent before */
  readonly created: boolean;
}

const mostFaults = 100;

/**
 * Records readings of one inspection, all or none, and judges the inspection anew. A reading sent again under its id is
 * the first one; equal values at equal times under other ids are separate readings, because repeats are data.
 */
export class RecordReadingsUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  /** @param pointerOf  JSON Pointer of a reading in the request, by its place in the list */
  execute(
    caller: Caller,
    command: { readonly inspectionId: string; readonly readings: readonly NewReading[] },
    pointerOf: (index: number) => string,
  ): Promise<RecordedReadings> {
    const stamp = stampOf(this.clock, caller);
    const given = command.readings.map(({ id, entry }) => ({ id: id ?? this.ids.next(), entry }));
    refuseTwice(given, pointerOf);
    return againWhenJudgedMeanwhile(() =>
      this.work.run(caller.shopId, (tx) => this.record(tx, command.inspectionId, given, pointerOf, stamp)),
    );
  }

  private async record(
    tx: ShopTransaction,
    inspectionId: string,
    given: readonly GivenReading[],
    pointerOf: (index: number) => string,
    stamp: Stamp,
  ): Promise<RecordedReadings> {
    const inspection = await inspectionInTurn(tx, inspectionId);
    const ground = await groundOf(tx, inspection);
    const known = await alreadyThere(tx, inspectionId, given, pointerOf);
    const fresh = given
      .map((reading, index) => ({ ...reading, pointer: pointerOf(index) }))
      .filter(({ id }) => !known.has(id));
    if (fresh.length > 0) {
      const situation = await ReadingSituation.of(
        tx,
        this.ids,
        ground,
        fresh.map(({ entry }) => entry),
      );
      const contents = readAll(situation, fresh, stamp.at);
      await situation.writeNewParts(tx, stamp);
      await write(tx, inspection.id, contents, stamp);
      await judgeAndStore(tx, this.ids, ground, { ...stamp, reason: 'reading recorded' });
      await announce(tx, inspection.id, contents.length, stamp);
    }
    const readings = await viewsOf(
      tx,
      ground,
      given.map(({ id }) => id),
    );
    return { readings, created: fresh.length > 0 };
  }
}

/** Which of the readings had been sent before; the same id with other content is refused. */
async function alreadyThere(
  tx: ShopTransaction,
  inspectionId: string,
  given: readonly GivenReading[],
  pointerOf: (index: number) => string,
): Promise<ReadonlySet<string>> {
  const found = new Map(
    (await tx.readings.findMany(given.map(({ id }) => id))).map((record) => [record.id, record]),
  );
  for (const [index, { id, entry }] of given.entries()) {
    const now = found.get(id);
    if (now === undefined) continue;
    const first: ReadingRecord = now.revision === 1 ? now : ((await tx.readings.history(id))[0] ?? now);
    const same =
      first.identity.inspectionId === inspectionId && sameContent(enteredOf(first.content, entry), entry);
    if (!same) {
      throw new DomainError(
        'record.idTaken',
        'Another reading is already recorded under this id. Choose a new id, or correct the first one.',
        [{ pointer: `${pointerOf(index)}/id`, rule: 'unique', detail: 'taken by other content' }],
      );
    }
  }
  return new Set(found.keys());
}

interface Fresh extends GivenReading {
  readonly pointer: string;
}

/** Reads every entry and reports what is wrong with all of them at once; nothing is written before all are good. */
function readAll(
  situation: ReadingSituation,
  fresh: readonly Fresh[],
  now: string,
): readonly { readonly id: string; readonly content: Reading }[] {
  const contents: { id: string; content: Reading }[] = [];
  const faults: Fault[] = [];
  let first: DomainError | undefined;
  for (const { id, entry, pointer } of fresh) {
    try {
      contents.push({ id, content: situation.readingOf(entry, now, pointer) });
    } catch (error) {
      if (!(error instanceof DomainError)) throw error;
      first ??= error;
      faults.push(...error.faults);
    }
  }
  if (first === undefined) return contents;
  if (fresh.length === 1) throw first;
  const bad = fresh.length - contents.length;
  throw new DomainError(
    first.code,
    `Nothing was recorded: ${String(bad)} of ${String(fresh.length)} readings cannot be taken. The first: ${first.message}`,
    faults.slice(0, mostFaults),
  );
}

function refuseTwice(given: readonly { readonly id: string }[], pointerOf: (index: number) => string): void {
  const seen = new Set<string>();
  for (const [index, { id }] of given.entries()) {
    if (seen.has(id)) {
      throw new DomainError('input.invalid', 'Two readings of the set have the same id.', [
        { pointer: `${pointerOf(index)}/id`, rule: 'unique', detail: 'named before in this set' },
      ]);
    }
    seen.add(id);
  }
}

/** The same readings sent twice at once meet here: whoever comes second begins again and finds the first. */
async function write(
  tx: ShopTransaction,
  inspectionId: string,
  contents: readonly { readonly id: string; readonly content: Reading }[],
  stamp: Stamp,
): Promise<void> {
  const identity = { inspectionId };
  const [only, ...more] = contents;
  if (only !== undefined && more.length === 0) {
    const outcome = await tx.readings.add(only.id, identity, only.content, stamp);
    if (outcome !== 'added') throw new JudgedMeanwhile();
    return;
  }
  const records = contents.map(({ id, content }) => ({ id, identity, content }));
  await tx.readings.addMany(records, stamp).catch((error: unknown) => {
    throw error instanceof DomainError && error.code === 'record.idTaken' ? new JudgedMeanwhile() : error;
  });
}

async function announce(
  tx: ShopTransaction,
  inspectionId: string,
  count: number,
  stamp: Stamp,
): Promise<void> {
  await tx.announce({
    type: 'endfloat.inspection.read.v1',
    subjectId: inspectionId,
    at: stamp.at,
    payload: { readings: count },
  });
}
