import type { VehicleHistoryResponse } from '@endfloat/contracts';
import type { CsvColumn } from '../../http/index.js';

/** One revision of one record as a line of the file. */
export interface HistoryLine {
  readonly kind: string;
  readonly happenedAt: string | null;
  readonly jobId: string | null;
  /** whether this is what was known at the moment asked about, or another revision beside it */
  readonly isAsKnown: boolean;
  readonly record: Readonly<Record<string, unknown>>;
  readonly recordedByName: string | null;
}

const membersOfLine = ['id', 'version', 'recordedAt', 'recordedBy', 'reason', 'replacedAt'] as const;

/** Every revision told, in the order of the history: the vehicle first, other revisions after the one as known. */
export function historyLines(history: VehicleHistoryResponse): readonly HistoryLine[] {
  const names = new Map(history.people.map(({ userId, displayName }) => [userId, displayName]));
  const lineOf = (
    place: Pick<HistoryLine, 'kind' | 'happenedAt' | 'jobId'>,
    record: object,
    isAsKnown: boolean,
  ): HistoryLine => {
    const members = record as Readonly<Record<string, unknown>>;
    const by = members['recordedBy'];
    return {
      ...place,
      isAsKnown,
      record: members,
      recordedByName: typeof by === 'string' ? (names.get(by) ?? null) : null,
    };
  };
  const linesOf = (
    place: Pick<HistoryLine, 'kind' | 'happenedAt' | 'jobId'>,
    record: object,
    others: readonly object[],
  ): HistoryLine[] => [lineOf(place, record, true), ...others.map((other) => lineOf(place, other, false))];
  const { vehicle, entries } = history;
  return [
    ...linesOf({ kind: 'vehicle', happenedAt: null, jobId: null }, vehicle.record, vehicle.otherRevisions),
    ...entries.flatMap(({ kind, happenedAt, jobId, record, otherRevisions }) =>
      linesOf({ kind, happenedAt, jobId }, record, otherRevisions),
    ),
  ];
}

const textOf = (value: unknown): string | null => (typeof value === 'string' ? value : null);

/** What the columns do not say, as JSON. */
function contentOf({ record }: HistoryLine): string {
  const said = new Set<string>(membersOfLine);
  return JSON.stringify(Object.fromEntries(Object.entries(record).filter(([member]) => !said.has(member))));
}

export const historyColumns: readonly CsvColumn<HistoryLine>[] = [
  { name: 'kind', value: ({ kind }) => kind },
  { name: 'happenedAt', value: ({ happenedAt }) => happenedAt },
  { name: 'isAsKnown', value: ({ isAsKnown }) => isAsKnown },
  { name: 'recordId', value: ({ record }) => textOf(record['id']) },
  {
    name: 'version',
    value: ({ record }) => (typeof record['version'] === 'number' ? record['version'] : null),
  },
  { name: 'recordedAt', value: ({ record }) => textOf(record['recordedAt']) },
  { name: 'recordedBy', value: ({ record }) => textOf(record['recordedBy']) },
  { name: 'recordedByName', value: ({ recordedByName }) => recordedByName },
  { name: 'reason', value: ({ record }) => textOf(record['reason']) },
  { name: 'replacedAt', value: ({ record }) => textOf(record['replacedAt']) },
  { name: 'jobId', value: ({ jobId }) => jobId },
  { name: 'content', value: contentOf },
];
