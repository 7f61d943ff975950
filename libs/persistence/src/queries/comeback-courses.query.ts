import type {
  CostDimension,
  JobOutcomeFilter,
  RateQuestion,
  SettledJobPosition,
} from '@endfloat/workshop/ports';
import type { Statement } from './comeback-rates.query.js';
import { outcomeCondition, questionSql, StatementValues } from './settled-job-conditions.js';

/** Jobs by day since release, of their first comeback or else of the last sighting up to the moment of the question. */
export function buildAgeTallySql(shopId: string, question: RateQuestion): Statement {
  const values = new StatementValues();
  const sql = questionSql(shopId, question, values);
  const dayOf = (instant: string) =>
    `greatest(1, ceil(extract(epoch FROM ${instant} - s.released_at) / 86400))::int`;
  return {
    text: `SELECT CASE WHEN back THEN ${dayOf('s.any_comeback_at')}
    WHEN s.first_seen_at <= ${sql.at} THEN ${dayOf(`least(s.last_seen_at, ${sql.at})`)} END AS day,
  count(*) FILTER (WHERE back)::int AS comebacks, count(*) FILTER (WHERE NOT back)::int AS last_seen
FROM ${sql.from}, LATERAL (SELECT COALESCE(s.any_comeback_at <= ${sql.at}, false) AS back) AS b
WHERE ${sql.where} GROUP BY 1 ORDER BY 1 NULLS LAST`,
    values: values.list,
  };
}

export function buildEventPlacesSql(shopId: string, question: RateQuestion, most: number): Statement {
  const values = new StatementValues();
  const sql = questionSql(shopId, question, values);
  return {
    text: `SELECT place::int, job_id, released_at FROM (
  SELECT row_number() OVER (ORDER BY s.released_at, s.job_id) AS place, s.job_id, s.released_at, ${sql.outcome.event} AS event
  FROM ${sql.from} WHERE ${sql.where} AND ${sql.outcome.atRisk}) AS numbered
WHERE event ORDER BY place DESC LIMIT ${values.add(most, 'int')}`,
    values: values.list,
  };
}

export function buildComebackTimesSql(shopId: string, question: RateQuestion, most: number): Statement {
  const values = new StatementValues();
  const sql = questionSql(shopId, question, values);
  return {
    text: `SELECT (r->>'receivedAt')::timestamptz AS received_at
FROM ${sql.from}, LATERAL jsonb_array_elements(s.repeats) AS r
WHERE ${sql.where} AND ${sql.outcome.event} AND (r->>'receivedAt')::timestamptz <= ${sql.at}
GROUP BY r->>'complaintId', 1 ORDER BY 1 DESC LIMIT ${values.add(most, 'int')}`,
    values: values.list,
  };
}

/** The period is that of the complaint here. */
export function buildCostTallySql(shopId: string, question: RateQuestion, by: CostDimension): Statement {
  const values = new StatementValues();
  const sql = questionSql(shopId, question, values, { period: 'none' });
  const received = `(r->>'receivedAt')::timestamptz`;
  const formats = { month: 'YYYY-MM', quarter: 'YYYY-"Q"Q', year: 'YYYY' } as const;
  const value =
    by === 'attribution'
      ? `r->>'attribution'`
      : `to_char(${received} AT TIME ZONE ${values.add(question.timeZone, 'text')}, '${formats[by]}')`;
  const conditions = [sql.where, 's.comebacks > 0', `${received} <= ${sql.at}`];
  if (question.from !== undefined)
    conditions.push(`${received} >= ${values.add(question.from, 'timestamptz')}`);
  if (question.until !== undefined)
    conditions.push(`${received} < ${values.add(question.until, 'timestamptz')}`);
  const sum = (member: string): string => `sum((r->>'${member}')::numeric) AS ${member}`;
  return {
    text: `SELECT ${value} AS value, count(DISTINCT r->>'comebackId')::int AS comebacks,
  ${['labour', 'parts', 'handling', 'total'].map(sum).join(', ')}, sum((r->>'gaps')::int)::int AS gaps
FROM ${sql.from}, LATERAL jsonb_array_elements(s.repeats) AS r
WHERE ${conditions.join(' AND ')}
GROUP BY 1 ORDER BY (${value}) COLLATE "C" NULLS LAST`,
    values: values.list,
  };
}

/** The jobs behind a rate, the latest release first. */
export function buildSettledJobListSql(
  shopId: string,
  question: RateQuestion,
  page: {
    readonly outcome?: JobOutcomeFilter | undefined;
    readonly after?: SettledJobPosition | undefined;
    readonly limit: number;
  },
): Statement {
  const values = new StatementValues();
  const sql = questionSql(shopId, question, values);
  const conditions = [sql.where];
  if (page.outcome !== undefined) conditions.push(outcomeCondition(page.outcome, sql.outcome));
  if (page.after !== undefined) {
    const { sortValue, id } = page.after;
    conditions.push(
      `(s.released_at, s.job_id) < (${values.add(sortValue, 'timestamptz')}, ${values.add(id, 'uuid')})`,
    );
  }
  return {
    text: `SELECT s.* FROM ${sql.from} WHERE ${conditions.join(' AND ')}
ORDER BY s.released_at DESC, s.job_id DESC LIMIT ${values.add(page.limit + 1, 'int')}`,
    values: values.list,
  };
}
