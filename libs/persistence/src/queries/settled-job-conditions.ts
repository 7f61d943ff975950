import type { JobOutcomeFilter, RateDimension, RateQuestion } from '@endfloat/workshop/ports';
import { ageBandYears } from '@endfloat/workshop/ports';

/** Values of a statement in their order; `add` answers the placeholder. */
export class StatementValues {
  readonly list: unknown[] = [];

  add(value: unknown, type: string): string {
    this.list.push(value);
    return `$${String(this.list.length)}::${type}`;
  }
}

interface DimensionSql {
  /** the value as text, null where there is none */
  readonly value: string;
  readonly join: string;
  /** whether a job has this value, without joining once a value */
  readonly has: (value: string) => string;
  readonly hasNone: string;
}

const listed = (column: string, type: 'text' | 'uuid'): DimensionSql => ({
  value: type === 'text' ? 'd.value' : 'd.value::text',
  join: `LEFT JOIN LATERAL unnest(s.${column}) AS d(value) ON true`,
  has: (value) => `${value}${type === 'uuid' ? '::uuid' : ''} = ANY(s.${column})`,
  hasNone: `cardinality(s.${column}) = 0`,
});

const single = (expression: string, join = ''): DimensionSql => ({
  value: expression,
  join,
  has: (value) => `${expression} = ${value}`,
  hasNone: `${expression} IS NULL`,
});

const fleetJoin = `LEFT JOIN customer_revision f ON f.shop_id = s.shop_id AND f.id = s.customer_id
  AND f.replaced_at IS NULL AND f.kind = 'fleetOperator'`;

/** How a dimension is written in SQL over `settled_job s`; `zone` is the placeholder of the time zone of the shop. */
export function dimensionSql(by: RateDimension, zone: string): DimensionSql {
  switch (by) {
    case 'symptom':
      return listed('symptoms', 'text');
    case 'symptomFamily':
      return listed('symptom_families', 'text');
    case 'action':
      return listed('actions', 'text');
    case 'partCondition':
      return listed('part_conditions', 'text');
    case 'supplier':
      return listed('suppliers', 'text');
    case 'component':
      return listed('components', 'text');
    case 'fittedBy':
      return listed('fitted_by', 'uuid');
    case 'customer':
      return single('s.customer_id::text');
    case 'fleet':
      return single('f.id::text', fleetJoin);
    case 'diagnosedBy':
      return single('s.diagnosed_by::text');
    case 'vehicleAge':
      return single(`(s.age_years / ${String(ageBandYears)} * ${String(ageBandYears)})::text`);
    case 'month':
      return single(`to_char(s.released_at AT TIME ZONE ${zone}, 'YYYY-MM')`);
    case 'quarter':
      return single(`to_char(s.released_at AT TIME ZONE ${zone}, 'YYYY-"Q"Q')`);
    case 'year':
      return single(`to_char(s.released_at AT TIME ZONE ${zone}, 'YYYY')`);
  }
}

/** What a job counts as at the moment of the question, each as a condition. */
export interface OutcomeSql {
  readonly event: string;
  readonly atRisk: string;
  readonly pending: string;
  readonly notSeenSince: string;
  readonly notAttributed: string;
  readonly elapsed: string;
  readonly cameBack: string;
}

/** `against` answers the placeholder of a process; it is asked for only where a condition needs it. */
export function outcomeSql(at: string, against: (() => string) | undefined): OutcomeSql {
  const cameBack = `COALESCE(s.comeback_at <= ${at}, false)`;
  const elapsed = `s.closes_at <= ${at}`;
  const known = `(${cameBack} OR COALESCE(s.first_seen_at <= ${at}, false))`;
  const attributed = (): string => (against === undefined ? 'true' : `${against()} = ANY(s.counts_against)`);
  const unsettled = (): string =>
    against === undefined ? 'false' : `(${cameBack} AND s.unattributed AND NOT ${attributed()})`;
  return {
    cameBack,
    elapsed,
    pending: `NOT ${elapsed}`,
    notSeenSince: `(${elapsed} AND NOT ${known})`,
    get event() {
      return `(${cameBack} AND ${attributed()})`;
    },
    get notAttributed() {
      return `(${elapsed} AND ${unsettled()})`;
    },
    get atRisk() {
      return `(${elapsed} AND ${known} AND NOT ${unsettled()})`;
    },
  };
}

export function outcomeCondition(outcome: JobOutcomeFilter, sql: OutcomeSql): string {
  switch (outcome) {
    case 'comeback':
      return `(${sql.atRisk} AND ${sql.event})`;
    case 'noComeback':
      return `(${sql.atRisk} AND NOT ${sql.event})`;
    case 'pending':
      return sql.pending;
    case 'notSeenSince':
      return sql.notSeenSince;
    case 'notAttributed':
      return sql.notAttributed;
  }
}

export interface QuestionSql {
  readonly at: string;
  readonly zone: string;
  /** joins and conditions that leave the jobs of the question */
  readonly from: string;
  readonly where: string;
  readonly outcome: OutcomeSql;
}

/** `settled_job s` narrowed to the jobs of a question; `by` adds the join of a dimension that is grouped by. */
export function questionSql(
  shopId: string,
  question: RateQuestion,
  values: StatementValues,
  options: { readonly by?: RateDimension; readonly period?: 'ofRelease' | 'none' } = {},
): QuestionSql {
  const shop = values.add(shopId, 'uuid');
  const at = values.add(question.at, 'timestamptz');
  const needsZone = [options.by, question.group?.by].some(
    (by) => by === 'month' || by === 'quarter' || by === 'year',
  );
  const zone = needsZone ? values.add(question.timeZone, 'text') : '';
  const conditions = [`s.shop_id = ${shop}`, `s.released_at <= ${at}`, 'NOT s.is_repeat'];
  const also = (value: unknown, type: string, condition: (placeholder: string) => string): void => {
    if (value !== undefined) conditions.push(condition(values.add(value, type)));
  };
  if (options.period !== 'none') {
    also(question.from, 'timestamptz', (from) => `s.released_at >= ${from}`);
    also(question.until, 'timestamptz', (until) => `s.released_at < ${until}`);
  }
  also(question.customerId, 'uuid', (id) => `s.customer_id = ${id}`);
  also(question.vehicleIds, 'uuid[]', (ids) => `s.vehicle_id = ANY(${ids})`);
  also(question.symptom, 'text', (id) => `${id} = ANY(s.symptoms)`);
  also(question.component, 'text', (id) => `${id} = ANY(s.components)`);
  also(question.action, 'text', (id) => `${id} = ANY(s.actions)`);
  const joins = options.by === undefined ? '' : dimensionSql(options.by, zone).join;
  let filterJoin = '';
  if (question.group !== undefined) {
    const group = dimensionSql(question.group.by, zone);
    const { value } = question.group;
    conditions.push(value === null ? group.hasNone : group.has(values.add(value, 'text')));
    if (question.group.by === 'fleet' && options.by !== 'fleet') filterJoin = fleetJoin;
  }
  // A value that no part of the statement uses would be refused, so it is added when it is first asked for.
  let placeholder: string | undefined;
  const { against } = question;
  const process = against === undefined ? undefined : () => (placeholder ??= values.add(against, 'text'));
  return {
    at,
    zone,
    from: `settled_job s ${filterJoin} ${joins}`,
    where: conditions.join(' AND '),
    outcome: outcomeSql(at, process),
  };
}
