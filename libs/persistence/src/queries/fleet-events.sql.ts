import type { FleetEventKind } from '@endfloat/workshop/ports';
import { among, current, recordsOf, scopeValues, type Scope, type Statement } from './fleet-facts.sql.js';

interface EventsQuery extends Scope {
  readonly of: FleetEventKind;
  readonly componentType?: string | undefined;
  readonly symptom?: string | undefined;
  readonly until: string;
}

/** Work of a job on a kind of part; $5 is the kind. */
const workedOn = (job: string): string => `EXISTS (
    SELECT FROM work_line l JOIN work_line_revision w ON w.shop_id = l.shop_id AND w.id = l.id AND ${current('w')}
    WHERE l.shop_id = $1 AND l.job_id = ${job} AND w.component_type = $5 AND w.state <> 'dropped')`;

const isAboutSymptom = `($6::text IS NULL OR r.document->'symptoms'->>$6 = 'present')`;

/** Events of one kind until $4, on a kind of part ($5) and with a symptom ($6) where those are asked. */
export function buildFleetEventsSql(shopId: string, query: EventsQuery): Statement {
  const { of, componentType, symptom, until } = query;
  return {
    text: texts[of],
    values: [...scopeValues(shopId, query), until, componentType ?? null, symptom ?? null],
  };
}

const texts: Readonly<Record<FleetEventKind, string>> = {
  replacements: `
SELECT i.vehicle_id, r.removed_at AS at, r.document->>'supplier' AS supplier, r.condition
FROM ${recordsOf('fitted_part', 'vehicle_id')}
WHERE r.removed_at <= $4 AND ($5::text IS NULL OR r.component_type = $5) AND $6::text IS NULL
ORDER BY i.vehicle_id, r.removed_at`,
  complaints: `
SELECT i.vehicle_id, r.received_at AS at, NULL::text AS supplier, NULL::text AS condition
FROM ${recordsOf('complaint', 'vehicle_id')}
WHERE r.received_at <= $4 AND ${isAboutSymptom}
  AND ($5::text IS NULL OR r.document->'components' ? $5 OR ${workedOn('r.job_id')})
ORDER BY i.vehicle_id, r.received_at`,
  // A complaint that is a comeback of two jobs came back once.
  comebacks: `
SELECT i.vehicle_id, r.received_at AS at, NULL::text AS supplier, NULL::text AS condition
FROM ${recordsOf('complaint', 'vehicle_id')}
WHERE r.received_at <= $4 AND ${isAboutSymptom} AND EXISTS (
  SELECT FROM comeback c JOIN comeback_revision b ON b.shop_id = c.shop_id AND b.id = c.id AND ${current('b')}
  WHERE c.shop_id = $1 AND c.complaint_id = i.id AND b.state = 'confirmed'
    AND ($5::text IS NULL OR ${workedOn('c.job_id')}))
ORDER BY i.vehicle_id, r.received_at`,
};

/**
 * Parts of a kind ($5) fitted until $4, each with its inspections: worn where a verdict as found was outside a limit that
 * is more than advisory, good where all such verdicts were inside.
 */
export function buildFleetPartsSql(
  shopId: string,
  query: Scope & { readonly componentType: string; readonly until: string },
): Statement {
  return {
    text: `
WITH part AS (
  SELECT i.id, i.vehicle_id, r.position, r.condition, r.document->>'supplier' AS supplier,
    r.fitted_at, r.fitted_km, CASE WHEN r.removed_at <= $4 THEN r.removed_at END AS removed_at,
    CASE WHEN r.removed_at <= $4 THEN r.removed_km END AS removed_km
  FROM ${recordsOf('fitted_part', 'vehicle_id')}
  WHERE r.component_type = $5 AND (r.fitted_at IS NULL OR r.fitted_at <= $4)
), judged AS (
  SELECT q.fitted_part_id, s.started_at, bool_or(w.outcome = 'outside') AS is_worn
  FROM verdict v
  JOIN verdict_revision w ON w.shop_id = v.shop_id AND w.id = v.id AND ${current('w')}
  JOIN inspection_revision s ON s.shop_id = v.shop_id AND s.id = v.inspection_id AND ${current('s')}
  JOIN reading g ON g.shop_id = v.shop_id AND g.inspection_id = v.inspection_id
  JOIN reading_revision q ON q.shop_id = g.shop_id AND q.id = g.id AND ${current('q')}
    AND q.check_id = v.check_id AND q.phase = v.phase
  WHERE v.shop_id = $1 AND v.phase = 'asFound' AND w.outcome IN ('inside', 'outside') AND s.started_at <= $4
    AND w.document->>'severity' IS DISTINCT FROM 'advisory' AND NOT (w.document->>'provisional')::boolean
    AND q.fitted_part_id IN (SELECT id FROM part)
  GROUP BY q.fitted_part_id, s.started_at
), inspected AS (
  SELECT fitted_part_id, json_agg(json_build_object('at', started_at, 'isWorn', is_worn) ORDER BY started_at) AS list
  FROM judged GROUP BY fitted_part_id
)
SELECT p.*, COALESCE(d.list, '[]'::json) AS inspections
FROM part p LEFT JOIN inspected d ON d.fitted_part_id = p.id
ORDER BY p.id`,
    values: [...scopeValues(shopId, query), query.until, query.componentType],
  };
}

/** What is open on each vehicle: findings by their latest verdict, comebacks and repeated complaints between $4 and $5. */
export function buildOpenMattersSql(
  shopId: string,
  query: Scope & { readonly since: string; readonly until: string },
): Statement {
  return {
    text: `
WITH verdict_now AS (
  SELECT DISTINCT ON (n.vehicle_id, v.check_id, v.limit_id) n.vehicle_id, w.outcome, w.document->>'severity' AS severity
  FROM verdict v
  JOIN verdict_revision w ON w.shop_id = v.shop_id AND w.id = v.id AND ${current('w')}
  JOIN inspection n ON n.shop_id = v.shop_id AND n.id = v.inspection_id
  JOIN inspection_revision s ON s.shop_id = n.shop_id AND s.id = n.id AND ${current('s')}
  WHERE v.shop_id = $1 AND w.outcome IN ('inside', 'outside') AND s.started_at <= $5 AND ${among('n.vehicle_id')}
  ORDER BY n.vehicle_id, v.check_id, v.limit_id, s.started_at DESC, (v.phase = 'asLeft') DESC, w.recorded_at DESC
), finding AS (
  SELECT vehicle_id, count(*) FILTER (WHERE severity = 'dangerous') AS dangerous,
    count(*) FILTER (WHERE severity = 'major') AS major,
    count(*) FILTER (WHERE severity IS DISTINCT FROM 'dangerous' AND severity IS DISTINCT FROM 'major') AS other
  FROM verdict_now WHERE outcome = 'outside' GROUP BY vehicle_id
), heard AS (
  SELECT i.id, i.vehicle_id, r.document FROM ${recordsOf('complaint', 'vehicle_id')}
  WHERE r.received_at > $4 AND r.received_at <= $5
), returned AS (
  SELECT h.vehicle_id, c.job_id, count(*) AS times FROM heard h
  JOIN comeback c ON c.shop_id = $1 AND c.complaint_id = h.id
  JOIN comeback_revision b ON b.shop_id = c.shop_id AND b.id = c.id AND ${current('b')} AND b.state = 'confirmed'
  GROUP BY h.vehicle_id, c.job_id
), repeated AS (
  SELECT vehicle_id, count(*) AS symptoms FROM (
    SELECT h.vehicle_id FROM heard h, jsonb_each_text(h.document->'symptoms') AS e
    WHERE e.value = 'present' GROUP BY h.vehicle_id, e.key HAVING count(*) > 1) AS twice
  GROUP BY vehicle_id
)
SELECT i.id AS vehicle_id, COALESCE(f.dangerous, 0)::int AS dangerous, COALESCE(f.major, 0)::int AS major,
  COALESCE(f.other, 0)::int AS other, COALESCE(c.total, 0)::int AS comebacks, COALESCE(c.most, 0)::int AS most,
  COALESCE(p.symptoms, 0)::int AS symptoms
FROM vehicle i
LEFT JOIN finding f ON f.vehicle_id = i.id
LEFT JOIN (SELECT vehicle_id, sum(times) AS total, max(times) AS most FROM returned GROUP BY vehicle_id) c ON c.vehicle_id = i.id
LEFT JOIN repeated p ON p.vehicle_id = i.id
WHERE i.shop_id = $1 AND ${among('i.id')} AND (f.vehicle_id IS NOT NULL OR c.vehicle_id IS NOT NULL OR p.vehicle_id IS NOT NULL)
ORDER BY i.id`,
    values: [...scopeValues(shopId, query), query.since, query.until],
  };
}
