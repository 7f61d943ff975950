import { among, recordsOf, scopeValues, type Scope, type Statement } from './fleet-facts.sql.js';

/** The rows of a statement gathered into one list a vehicle. */
const listed = (rows: string): string => `
SELECT vehicle_id, json_agg(json_build_array(component_type, action, plan_item_id,
  (extract(epoch FROM done_at) * 1000)::bigint, distance_km::text)) AS list
FROM (${rows}) AS done GROUP BY vehicle_id`;

/** When work of each kind was last done on each kind of part of each vehicle. */
export function buildLastDoneSql(shopId: string, query: Scope): Statement {
  const rows = `
SELECT j.vehicle_id, r.component_type, r.action, NULL::uuid AS plan_item_id, max(r.done_at) AS done_at,
  NULL::numeric AS distance_km
FROM ${recordsOf('work_line', '')} JOIN job j ON j.shop_id = i.shop_id AND j.id = i.job_id
WHERE r.state = 'done' AND r.done_at IS NOT NULL AND ${among('j.vehicle_id')}
GROUP BY 1, 2, 3`;
  return { text: listed(rows), values: scopeValues(shopId, query) };
}

/** When a part of each kind was last fitted to each vehicle. */
export function buildLastFittedSql(shopId: string, query: Scope): Statement {
  const rows = `
SELECT DISTINCT ON (i.vehicle_id, r.component_type)
  i.vehicle_id, r.component_type, NULL::text AS action, NULL::uuid AS plan_item_id, r.fitted_at AS done_at,
  r.fitted_km AS distance_km
FROM ${recordsOf('fitted_part', 'vehicle_id')}
WHERE r.fitted_at IS NOT NULL
ORDER BY 1, 2, r.fitted_at DESC`;
  return { text: listed(rows), values: scopeValues(shopId, query) };
}

/** When each item of the plan was last recorded as done. */
export function buildLastServicesSql(shopId: string, query: Scope): Statement {
  const rows = `
SELECT DISTINCT ON (i.vehicle_id, i.plan_item_id)
  i.vehicle_id, NULL::text AS component_type, NULL::text AS action, i.plan_item_id, r.done_at, r.distance_km
FROM ${recordsOf('service_record', 'vehicle_id')}
ORDER BY 1, 4, r.done_at DESC`;
  return { text: listed(rows), values: scopeValues(shopId, query) };
}

/** Work done after $4 and until $5, by vehicle, year and currency of the parts. */
export function buildYearsOfWorkSql(
  shopId: string,
  query: Scope & { readonly from: string; readonly until: string },
): Statement {
  return {
    text: `
SELECT j.vehicle_id, extract(year FROM r.done_at AT TIME ZONE 'UTC')::int AS year,
  r.document->'part'->'price'->>'currency' AS currency, count(*)::int AS lines,
  COALESCE(sum(r.minutes), 0)::float8 AS minutes, count(*) FILTER (WHERE r.minutes IS NULL)::int AS unmeasured,
  COALESCE(sum((r.document->'part'->'price'->>'amount')::numeric), 0)::text AS amount,
  count(*) FILTER (WHERE jsonb_typeof(r.document->'part') = 'object'
    AND jsonb_typeof(r.document->'part'->'price') IS DISTINCT FROM 'object')::int AS unpriced
FROM ${recordsOf('work_line', '')} JOIN job j ON j.shop_id = i.shop_id AND j.id = i.job_id
WHERE r.state = 'done' AND r.done_at > $4 AND r.done_at <= $5 AND ${among('j.vehicle_id')}
GROUP BY 1, 2, 3 ORDER BY 1, 2, 3 NULLS FIRST`,
    values: [...scopeValues(shopId, query), query.from, query.until],
  };
}

/** Visits that reach into the time from $4 to $5. */
export function buildVisitsSql(
  shopId: string,
  query: Scope & { readonly from: string; readonly until: string },
): Statement {
  return {
    text: `
WITH visit AS (
  SELECT i.id, i.vehicle_id, r.opened_at FROM ${recordsOf('job', 'vehicle_id')} WHERE r.opened_at < $5
), left_at AS (
  SELECT job_id, min(at) AS at FROM (
    SELECT i.job_id, r.released_at AS at FROM ${recordsOf('release', '')}
    UNION ALL SELECT i.job_id, r.handed_over_at FROM ${recordsOf('unsafe_handover', '')}
    UNION ALL SELECT i.job_id, r.happened_at FROM ${recordsOf('job_event', '')} WHERE r.kind = 'closed'
  ) AS ends GROUP BY job_id
), event AS (
  SELECT i.job_id, json_agg(json_build_object('kind', r.kind, 'at', r.happened_at) ORDER BY r.happened_at, i.id) AS list
  FROM ${recordsOf('job_event', '')} WHERE i.job_id IN (SELECT id FROM visit) GROUP BY i.job_id
)
SELECT v.vehicle_id, v.id AS job_id, v.opened_at, l.at AS left_at, COALESCE(e.list, '[]'::json) AS events
FROM visit v LEFT JOIN left_at l ON l.job_id = v.id LEFT JOIN event e ON e.job_id = v.id
WHERE l.at IS NULL OR l.at > $4
ORDER BY v.vehicle_id, v.opened_at, v.id`,
    values: [...scopeValues(shopId, query), query.from, query.until],
  };
}
