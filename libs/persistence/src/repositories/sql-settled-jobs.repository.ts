import type {
  AgeTally,
  CostDimension,
  CostTally,
  MixTally,
  RateDimension,
  RateQuestion,
  RateTally,
  SettledJobReads,
  SettledJobRow,
  SettledJobStore,
} from '@endfloat/workshop/ports';
import type { ShopConnection } from '../connection/shop-connection.js';
import {
  buildMixTallySql,
  buildRateTallySql,
  buildRateTotalSql,
  mixTallyOf,
  tallyOf,
  type MixRow,
  type Statement,
  type TallyRow,
} from '../queries/comeback-rates.query.js';
import {
  buildAgeTallySql,
  buildComebackTimesSql,
  buildCostTallySql,
  buildEventPlacesSql,
  buildSettledJobListSql,
} from '../queries/comeback-courses.query.js';

/** Columns of a settled job with their types, by member. */
const columns = {
  jobId: 'uuid',
  vehicleId: 'uuid',
  customerId: 'uuid',
  releasedAt: 'timestamptz',
  closesAt: 'timestamptz',
  closedBy: 'text',
  isRepeat: 'boolean',
  comebackAt: 'timestamptz',
  anyComebackAt: 'timestamptz',
  firstSeenAt: 'timestamptz',
  seenAfterClosingAt: 'timestamptz',
  lastSeenAt: 'timestamptz',
  diagnosedBy: 'uuid',
  ageYears: 'integer',
  mix: 'text',
  fittedBy: 'uuid[]',
  symptoms: 'text[]',
  symptomFamilies: 'text[]',
  actions: 'text[]',
  components: 'text[]',
  partConditions: 'text[]',
  suppliers: 'text[]',
  countsAgainst: 'text[]',
  unattributed: 'boolean',
  comebacks: 'integer',
  cost: 'numeric',
  costGaps: 'integer',
  repeats: 'jsonb',
} as const satisfies Record<keyof SettledJobRow, string>;

const snake = (member: string): string => member.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
const members = Object.keys(columns) as (keyof SettledJobRow)[];

export class SqlSettledJobStore implements SettledJobStore {
  constructor(private readonly connection: ShopConnection) {}

  private async rows<Row extends object>({ text, values }: Statement): Promise<readonly Row[]> {
    return (await this.connection.sql.query<Row>(text, [...values])).rows;
  }

  private get shopId(): string {
    return this.connection.shopId;
  }

  async tally(question: RateQuestion, by: RateDimension): Promise<readonly RateTally[]> {
    return (await this.rows<TallyRow>(buildRateTallySql(this.shopId, question, by))).map(tallyOf);
  }

  async total(question: RateQuestion): Promise<RateTally> {
    const [row] = await this.rows<TallyRow>(buildRateTotalSql(this.shopId, question));
    return tallyOf(row!);
  }

  async tallyByMix(question: RateQuestion, by: RateDimension): Promise<readonly MixTally[]> {
    return (await this.rows<MixRow>(buildMixTallySql(this.shopId, question, by))).map(mixTallyOf);
  }

  async ages(question: RateQuestion): Promise<readonly AgeTally[]> {
    type Row = { readonly day: number | null; readonly comebacks: number; readonly last_seen: number };
    return (await this.rows<Row>(buildAgeTallySql(this.shopId, question))).map((row) => ({
      day: row.day,
      comebacks: row.comebacks,
      lastSeen: row.last_seen,
    }));
  }

  async eventPlaces(question: RateQuestion, most: number): ReturnType<SettledJobReads['eventPlaces']> {
    type Row = { readonly place: number; readonly job_id: string; readonly released_at: string };
    const rows = await this.rows<Row>(buildEventPlacesSql(this.shopId, question, most));
    return rows
      .map((row) => ({ place: row.place, jobId: row.job_id, releasedAt: row.released_at }))
      .reverse();
  }

  async comebackTimes(question: RateQuestion, most: number): Promise<readonly string[]> {
    type Row = { readonly received_at: string };
    const rows = await this.rows<Row>(buildComebackTimesSql(this.shopId, question, most));
    return rows.map((row) => row.received_at).reverse();
  }

  async costs(question: RateQuestion, by: CostDimension): Promise<readonly CostTally[]> {
    return this.rows<CostTally>(buildCostTallySql(this.shopId, question, by));
  }

  async list(
    question: RateQuestion,
    page: Parameters<SettledJobReads['list']>[1],
  ): ReturnType<SettledJobReads['list']> {
    const found = await this.rows<Record<string, unknown>>(
      buildSettledJobListSql(this.shopId, question, page),
    );
    const items = found.slice(0, page.limit).map(rowOf);
    const last = items.at(-1);
    return found.length > page.limit && last !== undefined
      ? { items, next: { sortValue: last.releasedAt, id: last.jobId } }
      : { items };
  }

  async unsettled(version: number, most: number): Promise<number> {
    const [row] = await this.rows<{ readonly count: number }>({
      text: `SELECT count(*)::int AS count FROM (
        SELECT vehicle_id FROM settled_job_change WHERE shop_id = $1
        UNION SELECT vehicle_id FROM settled_job WHERE shop_id = $1 AND (method_version < $2 OR method_version > $2)
        LIMIT $3) AS waiting`,
      values: [this.shopId, version, most],
    });
    return row?.count ?? 0;
  }

  async count(): Promise<number> {
    const [row] = await this.rows<{ readonly count: number }>({
      text: 'SELECT count(*)::int AS count FROM settled_job WHERE shop_id = $1',
      values: [this.shopId],
    });
    return row?.count ?? 0;
  }

  async takeUnsettled(most: number): Promise<readonly string[]> {
    const rows = await this.rows<{ readonly vehicle_id: string }>({
      text: 'SELECT vehicle_id FROM endfloat_take_settled_job_changes($1)',
      values: [most],
    });
    return rows.map((row) => row.vehicle_id);
  }

  async markOtherMethod(version: number): Promise<number> {
    const { rowCount } = await this.connection.sql.query(
      `INSERT INTO settled_job_change (shop_id, vehicle_id)
       SELECT DISTINCT shop_id, vehicle_id FROM settled_job
       WHERE shop_id = $1 AND (method_version < $2 OR method_version > $2)`,
      [this.shopId, version],
    );
    return rowCount ?? 0;
  }

  async markAll(): Promise<void> {
    await this.connection.sql.query(
      `INSERT INTO settled_job_change (shop_id, vehicle_id) SELECT DISTINCT shop_id, vehicle_id FROM job WHERE shop_id = $1`,
      [this.shopId],
    );
  }

  async add(rows: readonly SettledJobRow[], version: number): Promise<void> {
    if (rows.length === 0) return;
    const typed = members.map((member) => `${snake(member)} ${columns[member]}`).join(', ');
    const names = members.map(snake).join(', ');
    // One parameter for all rows: lists of lists cannot be unnested, documents can.
    const documents = rows.map((row) =>
      Object.fromEntries(members.map((member) => [snake(member), row[member] as unknown])),
    );
    await this.connection.sql.query(
      `INSERT INTO settled_job (shop_id, method_version, ${names})
       SELECT $1, $2, ${names} FROM jsonb_to_recordset($3::jsonb) AS given(${typed})`,
      [this.shopId, version, JSON.stringify(documents)],
    );
  }

  async settledProposals(ground: string): Promise<{ readonly confirmed: number; readonly refused: number }> {
    const rows = await this.rows<{ readonly state: string; readonly count: number }>({
      text: `SELECT state, count(*)::int AS count FROM comeback_revision
        WHERE shop_id = $1 AND document->>'ground' = $2 AND replaced_at IS NULL AND state <> 'proposed' GROUP BY state`,
      values: [this.shopId, ground],
    });
    const of = (state: string): number => rows.find((row) => row.state === state)?.count ?? 0;
    return { confirmed: of('confirmed'), refused: of('refused') };
  }
}

function rowOf(row: Readonly<Record<string, unknown>>): SettledJobRow {
  return Object.fromEntries(
    members.map((member) => [member, row[snake(member)]]),
  ) as unknown as SettledJobRow;
}
