import type { RateDimension, RateQuestion, RateTally, MixTally } from '@endfloat/workshop/ports';
import { dimensionSql, questionSql, StatementValues, type QuestionSql } from './settled-job-conditions.js';

export interface Statement {
  readonly text: string;
  readonly values: readonly unknown[];
}

const counts = ({ outcome, at }: QuestionSql): string => `
  count(*) FILTER (WHERE ${outcome.atRisk} AND ${outcome.event})::int AS events,
  count(*) FILTER (WHERE ${outcome.atRisk})::int AS at_risk,
  count(*) FILTER (WHERE ${outcome.pending})::int AS pending,
  count(*) FILTER (WHERE ${outcome.pending} AND ${outcome.event})::int AS pending_comebacks,
  count(*) FILTER (WHERE ${outcome.notSeenSince})::int AS not_seen_since,
  count(*) FILTER (WHERE ${outcome.atRisk} AND NOT ${outcome.cameBack}
    AND NOT COALESCE(s.seen_after_closing_at <= ${at}, false))::int AS seen_only_inside_window,
  count(*) FILTER (WHERE ${outcome.notAttributed})::int AS not_attributed,
  COALESCE(sum(s.comebacks) FILTER (WHERE ${outcome.event}), 0)::int AS comebacks,
  COALESCE(sum(s.cost) FILTER (WHERE ${outcome.event}), 0) AS cost,
  COALESCE(sum(s.cost_gaps) FILTER (WHERE ${outcome.event}), 0)::int AS cost_gaps`;

/** Counts and money by the values of one dimension, in one pass over the jobs of the question. */
export function buildRateTallySql(shopId: string, question: RateQuestion, by: RateDimension): Statement {
  const values = new StatementValues();
  const sql = questionSql(shopId, question, values, { by });
  const { value } = dimensionSql(by, sql.zone);
  return {
    text: `SELECT ${value} AS value,${counts(sql)}
FROM ${sql.from}
WHERE ${sql.where}
GROUP BY 1 ORDER BY (${value}) COLLATE "C" NULLS LAST`,
    values: values.list,
  };
}

export function buildRateTotalSql(shopId: string, question: RateQuestion): Statement {
  const values = new StatementValues();
  const sql = questionSql(shopId, question, values);
  return {
    text: `SELECT NULL::text AS value,${counts(sql)}\nFROM ${sql.from}\nWHERE ${sql.where}`,
    values: values.list,
  };
}

/** Events and jobs by value and kind of job, and the kinds as a whole, seen by one snapshot. */
export function buildMixTallySql(shopId: string, question: RateQuestion, by: RateDimension): Statement {
  const values = new StatementValues();
  const sql = questionSql(shopId, question, values, { by });
  const { value, join } = dimensionSql(by, sql.zone);
  const { atRisk, event } = sql.outcome;
  const figures = `count(*) FILTER (WHERE ${event})::int AS events, count(*)::int AS at_risk`;
  const plain = sql.from.replace(join, question.group?.by === 'fleet' && by === 'fleet' ? join : '');
  return {
    text: `SELECT false AS whole, ${value} AS value, s.mix, ${figures}
FROM ${sql.from} WHERE ${sql.where} AND ${atRisk} GROUP BY 2, 3
UNION ALL
SELECT true, NULL, s.mix, ${figures}
FROM ${plain} WHERE ${sql.where} AND ${atRisk} GROUP BY 3`,
    values: values.list,
  };
}

export interface TallyRow {
  readonly value: string | null;
  readonly events: number;
  readonly at_risk: number;
  readonly pending: number;
  readonly pending_comebacks: number;
  readonly not_seen_since: number;
  readonly seen_only_inside_window: number;
  readonly not_attributed: number;
  readonly comebacks: number;
  readonly cost: string;
  readonly cost_gaps: number;
}

export function tallyOf(row: TallyRow): RateTally {
  return {
    value: row.value,
    events: row.events,
    atRisk: row.at_risk,
    pending: row.pending,
    pendingComebacks: row.pending_comebacks,
    notSeenSince: row.not_seen_since,
    seenOnlyInsideWindow: row.seen_only_inside_window,
    notAttributed: row.not_attributed,
    comebacks: row.comebacks,
    cost: row.cost,
    costGaps: row.cost_gaps,
  };
}

export interface MixRow {
  readonly whole: boolean;
  readonly value: string | null;
  readonly mix: string;
  readonly events: number;
  readonly at_risk: number;
}

export const mixTallyOf = ({ whole, value, mix, events, at_risk }: MixRow): MixTally => ({
  value: whole ? undefined : value,
  mix,
  events,
  atRisk: at_risk,
});
