import { ageBandYears } from '../ports/settled-jobs.port.js';
import type {
  AgeTally,
  CostDimension,
  CostTally,
  JobOutcomeFilter,
  MixTally,
  RateDimension,
  RateQuestion,
  RateTally,
  SettledJobPosition,
  SettledJobReads,
  SettledJobRow,
  SettledRepeat,
} from '../ports/settled-jobs.port.js';
import { localDay } from '../bench/local-day.js';
import { exactSum } from './job-facts.js';
import { isBy, outcomeOf, tallyOf } from './outcome-of-row.js';

/**
 * What rates ask, answered step by step over rows in memory: for questions as of an earlier moment, and to hold the
 * statements of the projection against.
 */
export class RowsInMemory implements SettledJobReads {
  /** `fleets`: customers that operate fleets */
  constructor(
    private readonly rows: readonly SettledJobRow[],
    private readonly fleets: ReadonlySet<string>,
  ) {}

  tally(question: RateQuestion, by: RateDimension): Promise<readonly RateTally[]> {
    const groups = this.grouped(question, by);
    return Promise.resolve(groups.map(([value, rows]) => tallyOf(value, rows, question)));
  }

  total(question: RateQuestion): Promise<RateTally> {
    return Promise.resolve(tallyOf(null, this.asked(question), question));
  }

  tallyByMix(question: RateQuestion, by: RateDimension): Promise<readonly MixTally[]> {
    const atRisk = (rows: readonly SettledJobRow[]) =>
      rows.filter((row) => ['comeback', 'noComeback'].includes(outcomeOf(row, question).outcome));
    const mixes = (value: string | null | undefined, rows: readonly SettledJobRow[]): MixTally[] =>
      groupsOf(atRisk(rows), ({ mix }) => [mix]).map(([mix, jobs]) => ({
        value,
        mix: mix ?? '',
        events: jobs.filter((row) => outcomeOf(row, question).event).length,
        atRisk: jobs.length,
      }));
    const ofValues = this.grouped(question, by).flatMap(([value, rows]) => mixes(value, rows));
    return Promise.resolve([...ofValues, ...mixes(undefined, this.asked(question))]);
  }

  ages(question: RateQuestion): Promise<readonly AgeTally[]> {
    const at = Date.parse(question.at);
    const dayOf = (row: SettledJobRow): number | null => {
      const day = (instant: number): number =>
        Math.max(1, Math.ceil((instant - Date.parse(row.releasedAt)) / 86_400_000));
      if (isBy(row.anyComebackAt, question.at)) return day(Date.parse(row.anyComebackAt!));
      return isBy(row.firstSeenAt, question.at) ? day(Math.min(Date.parse(row.lastSeenAt!), at)) : null;
    };
    const tallies = new Map<number | null, { comebacks: number; lastSeen: number }>();
    for (const row of this.asked(question)) {
      const day = dayOf(row);
      const tally = tallies.get(day) ?? { comebacks: 0, lastSeen: 0 };
      if (isBy(row.anyComebackAt, question.at)) tally.comebacks += 1;
      else tally.lastSeen += 1;
      tallies.set(day, tally);
    }
    const sorted = [...tallies].sort(([a], [b]) => (a ?? Infinity) - (b ?? Infinity));
    return Promise.resolve(sorted.map(([day, tally]) => ({ day, ...tally })));
  }

  eventPlaces(question: RateQuestion, most: number): ReturnType<SettledJobReads['eventPlaces']> {
    const places = this.asked(question)
      .filter((row) => ['comeback', 'noComeback'].includes(outcomeOf(row, question).outcome))
      .sort(byRelease)
      .map((row, index) => ({ row, place: index + 1 }))
      .filter(({ row }) => outcomeOf(row, question).event)
      .slice(-most);
    return Promise.resolve(
      places.map(({ row, place }) => ({ place, jobId: row.jobId, releasedAt: row.releasedAt })),
    );
  }

  comebackTimes(question: RateQuestion, most: number): Promise<readonly string[]> {
    const repeats = this.asked(question)
      .filter((row) => outcomeOf(row, question).event)
      .flatMap((row) => row.repeats)
      .filter(({ receivedAt }) => isBy(receivedAt, question.at));
    const times = new Map(repeats.map(({ complaintId, receivedAt }) => [complaintId, receivedAt]));
    const sorted = [...times.values()].sort((a, b) => Date.parse(a) - Date.parse(b));
    return Promise.resolve(sorted.slice(-most).map((time) => new Date(time).toISOString()));
  }

  costs(question: RateQuestion, by: CostDimension): Promise<readonly CostTally[]> {
    const { from, until, ...rest } = question;
    const repeats = this.asked(rest)
      .flatMap((row) => row.repeats)
      .filter(
        ({ receivedAt }) =>
          isBy(receivedAt, question.at) &&
          (from === undefined || isBy(from, receivedAt)) &&
          (until === undefined || !isBy(until, receivedAt)),
      );
    const keyOf = (repeat: SettledRepeat): string | null =>
      by === 'attribution' ? repeat.attribution : periodOf(repeat.receivedAt, by, question.timeZone);
    const sum = (rows: readonly SettledRepeat[], member: 'labour' | 'parts' | 'handling' | 'total'): string =>
      rows.reduce((total, row) => exactSum(total, row[member]), '0');
    return Promise.resolve(
      groupsOf(repeats, (repeat) => [keyOf(repeat)]).map(([value, rows]) => ({
        value,
        comebacks: new Set(rows.map(({ comebackId }) => comebackId)).size,
        labour: sum(rows, 'labour'),
        parts: sum(rows, 'parts'),
        handling: sum(rows, 'handling'),
        total: sum(rows, 'total'),
        gaps: rows.reduce((total, { gaps }) => total + gaps, 0),
      })),
    );
  }

  list(
    question: RateQuestion,
    page: {
      readonly outcome?: JobOutcomeFilter | undefined;
      readonly after?: SettledJobPosition | undefined;
      readonly limit: number;
    },
  ): ReturnType<SettledJobReads['list']> {
    const { outcome, after, limit } = page;
    const position = after === undefined ? undefined : { releasedAt: after.sortValue, jobId: after.id };
    const rows = this.asked(question)
      .filter((row) => outcome === undefined || outcomeOf(row, question).outcome === outcome)
      .sort((a, b) => byRelease(b, a))
      .filter((row) => position === undefined || byRelease(row, position) < 0);
    const items = rows.slice(0, limit);
    const last = items.at(-1);
    return Promise.resolve(
      rows.length > limit && last !== undefined
        ? { items, next: { sortValue: last.releasedAt, id: last.jobId } }
        : { items },
    );
  }

  private grouped(question: RateQuestion, by: RateDimension): [string | null, SettledJobRow[]][] {
    return groupsOf(this.asked(question), (row) => this.valuesOf(row, by, question.timeZone));
  }

  private valuesOf(row: SettledJobRow, by: RateDimension, timeZone: string): readonly (string | null)[] {
    const values = this.plainValuesOf(row, by, timeZone);
    return values.length === 0 ? [null] : values;
  }

  private plainValuesOf(row: SettledJobRow, by: RateDimension, timeZone: string): readonly (string | null)[] {
    if (by === 'month' || by === 'quarter' || by === 'year') return [periodOf(row.releasedAt, by, timeZone)];
    if (by === 'fleet')
      return [row.customerId !== null && this.fleets.has(row.customerId) ? row.customerId : null];
    return plainValues[by](row);
  }

  private asked(question: RateQuestion): SettledJobRow[] {
    const { at, from, until, group } = question;
    const wanted = (value: string | undefined, values: readonly (string | null)[]): boolean =>
      value === undefined || values.includes(value);
    return this.rows
      .filter((row) => !row.isRepeat && isBy(row.releasedAt, at))
      .filter((row) => from === undefined || isBy(from, row.releasedAt))
      .filter((row) => until === undefined || !isBy(until, row.releasedAt))
      .filter((row) => question.vehicleIds?.includes(row.vehicleId) ?? true)
      .filter((row) => wanted(question.customerId, [row.customerId]))
      .filter((row) => wanted(question.symptom, row.symptoms))
      .filter((row) => wanted(question.component, row.components))
      .filter((row) => wanted(question.action, row.actions))
      .filter(
        (row) => group === undefined || this.valuesOf(row, group.by, question.timeZone).includes(group.value),
      );
  }
}

const plainValues: Readonly<
  Record<
    Exclude<RateDimension, 'month' | 'quarter' | 'year' | 'fleet'>,
    (row: SettledJobRow) => readonly (string | null)[]
  >
> = {
  symptom: ({ symptoms }) => symptoms,
  symptomFamily: ({ symptomFamilies }) => symptomFamilies,
  action: ({ actions }) => actions,
  partCondition: ({ partConditions }) => partConditions,
  supplier: ({ suppliers }) => suppliers,
  component: ({ components }) => components,
  fittedBy: ({ fittedBy }) => fittedBy,
  customer: ({ customerId }) => [customerId],
  diagnosedBy: ({ diagnosedBy }) => [diagnosedBy],
  vehicleAge: ({ ageYears }) => [
    ageYears === null ? null : String(Math.floor(ageYears / ageBandYears) * ageBandYears),
  ],
};

const byRelease = (
  a: Pick<SettledJobRow, 'releasedAt' | 'jobId'>,
  b: Pick<SettledJobRow, 'releasedAt' | 'jobId'>,
): number =>
  Date.parse(a.releasedAt) - Date.parse(b.releasedAt) || (a.jobId < b.jobId ? -1 : a.jobId > b.jobId ? 1 : 0);

function groupsOf<T>(
  items: readonly T[],
  valuesOf: (item: T) => readonly (string | null)[],
): [string | null, T[]][] {
  const groups = new Map<string | null, T[]>();
  for (const item of items)
    for (const value of valuesOf(item)) groups.set(value, [...(groups.get(value) ?? []), item]);
  return [...groups].sort(([a], [b]) => (a === null ? 1 : b === null ? -1 : a < b ? -1 : 1));
}

function periodOf(at: string, by: 'month' | 'quarter' | 'year', timeZone: string): string {
  const [year = '', month = ''] = localDay(at, timeZone).split('-');
  if (by === 'year') return year;
  return by === 'month' ? `${year}-${month}` : `${year}-Q${String(Math.ceil(Number(month) / 3))}`;
}
