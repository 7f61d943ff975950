import type { ListQuery, Recorded, RecordStore } from '../ports/record-store.port.js';
import {
  historyKinds,
  historyLimits,
  mostRevisedRecords,
  type HistoryEntry,
  type HistoryEntryOf,
  type HistoryKind,
  type HistoryKinds,
} from './history-entry.js';

/** What one kind of record becomes in the history. */
export interface Telling<K extends HistoryKind, R> {
  readonly kind: K;
  readonly happenedAt: (record: R) => string | null;
  readonly jobId: (record: R) => string | null;
  readonly view: (record: R) => HistoryKinds[K];
  /** looks up what the views need, once for all records and their other revisions */
  readonly lookUp?: (all: readonly R[]) => Promise<void>;
}

interface Sortable {
  readonly entry: HistoryEntry;
  readonly record: Recorded<object, object>;
  readonly people: readonly string[];
}

/** Collects the records of one history as of a moment, never more of a kind than its limit. */
export class HistoryShelf {
  private readonly told: Sortable[] = [];
  private readonly kindsCut: HistoryKind[] = [];
  private revisionsLeft = mostRevisedRecords;
  areRevisionsCut = false;

  constructor(
    private readonly asOf: string | undefined,
    private readonly isEveryRevisionWanted: boolean,
  ) {}

  /** The latest records by the order of their list; stores that list the latest first. */
  async latest<I extends object, C extends object>(
    kind: HistoryKind,
    store: RecordStore<I, C>,
    where: NonNullable<ListQuery<I, C>['where']>,
  ): Promise<readonly Recorded<I, C>[]> {
    const page = await store.list({ where, limit: historyLimits[kind], asOf: this.asOf });
    if (page.next !== undefined) this.kindsCut.push(kind);
    return page.items;
  }

  /** All records that belong to something already told of; the latest of them where they are too many. */
  async latestOf<I extends object, C extends object>(
    kind: HistoryKind,
    store: RecordStore<I, C>,
    where: NonNullable<ListQuery<I, C>['where']>,
    happenedAt: (record: Recorded<I, C>) => string,
  ): Promise<readonly Recorded<I, C>[]> {
    const found = await store.all(where, this.asOf);
    if (found.length <= historyLimits[kind]) return found;
    this.kindsCut.push(kind);
    return [...found]
      .sort((a, b) => happenedAt(b).localeCompare(happenedAt(a)) || b.id.localeCompare(a.id))
      .slice(0, historyLimits[kind]);
  }

  async othersOf<I extends object, C extends object>(
    store: RecordStore<I, C>,
    record: Recorded<I, C>,
  ): Promise<readonly Recorded<I, C>[]> {
    if (!this.isEveryRevisionWanted) return [];
    if (record.revision === 1 && record.replacedAt === null) return [];
    if (this.revisionsLeft === 0) {
      this.areRevisionsCut = true;
      return [];
    }
    this.revisionsLeft -= 1;
    return (await store.history(record.id)).filter(({ revision }) => revision !== record.revision);
  }

  async tell<K extends HistoryKind, I extends object, C extends object>(
    store: RecordStore<I, C>,
    records: readonly Recorded<I, C>[],
    telling: Telling<K, Recorded<I, C>>,
  ): Promise<void> {
    const found: { record: Recorded<I, C>; others: readonly Recorded<I, C>[] }[] = [];
    for (const record of records) found.push({ record, others: await this.othersOf(store, record) });
    await telling.lookUp?.(found.flatMap(({ record, others }) => [record, ...others]));
    for (const { record, others } of found) {
      const entry: HistoryEntryOf<K> = {
        kind: telling.kind,
        happenedAt: telling.happenedAt(record),
        jobId: telling.jobId(record),
        record: telling.view(record),
        otherRevisions: others.map(telling.view),
      };
      // A member of the union by its own kind, which the compiler cannot follow for a kind that is still open.
      this.told.push({
        entry: entry as unknown as HistoryEntry,
        record,
        people: [record, ...others].flatMap(peopleIn),
      });
    }
  }

  /** Entries by when they happened; what has no moment stands first. */
  entries(): readonly HistoryEntry[] {
    return this.told.sort(byMoment).map(({ entry }) => entry);
  }

  get cut(): readonly { readonly kind: HistoryKind; readonly kept: number }[] {
    return this.kindsCut.map((kind) => ({ kind, kept: historyLimits[kind] }));
  }

  /** Everybody named in what was told. */
  peopleNamed(): readonly string[] {
    return [...new Set(this.told.flatMap(({ people }) => people))].sort();
  }
}

function byMoment(one: Sortable, other: Sortable): number {
  return (
    (one.entry.happenedAt ?? '').localeCompare(other.entry.happenedAt ?? '') ||
    historyKinds.indexOf(one.entry.kind) - historyKinds.indexOf(other.entry.kind) ||
    one.record.firstRecordedAt.localeCompare(other.record.firstRecordedAt) ||
    one.record.id.localeCompare(other.record.id)
  );
}

/** Members of records that name a user of the shop. */
const personMembers = [
  'readBy',
  'assignedTo',
  'diagnosedBy',
  'technicianId',
  'measuredBy',
  'testedBy',
  'releasedBy',
  'decidedBy',
] as const;

export function peopleIn({ recordedBy, content }: Recorded<object, object>): readonly string[] {
  const members = content as Partial<Record<(typeof personMembers)[number], string | null>>;
  return [recordedBy, ...personMembers.flatMap((member) => members[member] ?? [])];
}
