import type {
  AssessedRepair,
  FoundCheck,
  LearningHistoryQueries,
  ReleasedJobHistory,
} from '@endfloat/workshop/ports';
import type { ShopConnection } from '../connection/shop-connection.js';

interface Statement {
  readonly text: string;
  readonly values: unknown[];
}

const instant = (column: string): string =>
  `to_char(${column} AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"')`;

/**
 * What was recorded last of everything that can teach, and how many watch windows have run out of days; cheap, and equal
 * as long as nothing was added, corrected or came to its end.
 */
export function buildMarkSql(shopId: string, now: string): Statement {
  const tables = [
    'job_revision',
    'release_revision',
    'complaint_revision',
    'comeback_revision',
    'work_line_revision',
    'odometer_entry_revision',
    'verdict_revision',
    'decision_revision',
    'delivery_revision',
  ];
  const parts = tables.map((table) => `(SELECT max(recorded_at) FROM ${table} WHERE shop_id = $1)`);
  const ended = `(SELECT count(*) FROM release_revision WHERE shop_id = $1 AND replaced_at IS NULL
    AND released_at + make_interval(hours => 24 * window_days) <= $2)`;
  return { text: `SELECT md5(ROW(${parts.join(', ')}, ${ended})::text) AS mark`, values: [shopId, now] };
}

/** Released jobs with cause, window, sightings after the release, symptoms, comebacks and the work done. */
export function buildReleasedJobsSql(shopId: string, until: string): Statement {
  return {
    text: `
WITH released AS MATERIALIZED (
  SELECT j.id, j.vehicle_id, jr.document->>'causeId' AS cause_id,
    rr.released_at, rr.window_days, rr.window_km, rr.distance_km
  FROM release r
  JOIN release_revision rr ON rr.shop_id = r.shop_id AND rr.id = r.id AND rr.replaced_at IS NULL
  JOIN job j ON j.shop_id = r.shop_id AND j.id = r.job_id
  JOIN job_revision jr ON jr.shop_id = j.shop_id AND jr.id = j.id AND jr.replaced_at IS NULL
  WHERE r.shop_id = $1 AND rr.released_at <= $2
), seen AS (
  SELECT l.id, json_agg(json_build_object('seenAt', ${instant('s.seen_at')}, 'km', s.km) ORDER BY s.seen_at) AS sightings
  FROM released l
  CROSS JOIN LATERAL (
    SELECT er.read_at AS seen_at, CASE WHEN er.reliable THEN trim_scale(er.distance_km)::text END AS km
    FROM odometer_entry e
    JOIN odometer_entry_revision er ON er.shop_id = e.shop_id AND er.id = e.id AND er.replaced_at IS NULL
    WHERE e.shop_id = $1 AND e.vehicle_id = l.vehicle_id AND er.read_at > l.released_at AND er.read_at <= $2
    UNION ALL
    SELECT max(jr.opened_at), NULL
    FROM job j JOIN job_revision jr ON jr.shop_id = j.shop_id AND jr.id = j.id AND jr.replaced_at IS NULL
    WHERE j.shop_id = $1 AND j.vehicle_id = l.vehicle_id AND jr.opened_at > l.released_at AND jr.opened_at <= $2
    HAVING max(jr.opened_at) IS NOT NULL
  ) s
  GROUP BY l.id
), asked AS (
  SELECT cr.job_id AS id, json_agg(cr.document->'symptoms' ORDER BY cr.received_at, c.id) AS symptoms
  FROM complaint c
  JOIN complaint_revision cr ON cr.shop_id = c.shop_id AND cr.id = c.id AND cr.replaced_at IS NULL
  WHERE c.shop_id = $1 AND cr.job_id IS NOT NULL
  GROUP BY cr.job_id
), link AS (
  SELECT b.job_id, br.state, br.attribution, cr.job_id AS repeat_job_id, b.id
  FROM comeback b
  JOIN comeback_revision br ON br.shop_id = b.shop_id AND br.id = b.id AND br.replaced_at IS NULL
  JOIN complaint_revision cr ON cr.shop_id = b.shop_id AND cr.id = b.complaint_id AND cr.replaced_at IS NULL
  WHERE b.shop_id = $1
), came AS (
  SELECT job_id AS id, json_agg(json_build_object(
    'state', state, 'attribution', attribution, 'repeatJobId', repeat_job_id) ORDER BY id) AS comebacks
  FROM link GROUP BY job_id
), repeats AS (
  SELECT repeat_job_id AS id, json_agg(job_id ORDER BY job_id) AS comeback_of
  FROM link
  WHERE state = 'confirmed' AND attribution IS DISTINCT FROM 'newUnrelatedFault' AND repeat_job_id IS NOT NULL
  GROUP BY repeat_job_id
), worked AS (
  SELECT w.job_id AS id, json_agg(json_build_object('action', wr.action, 'componentType', wr.component_type,
    'position', wr.position, 'condition', wr.document->'part'->>'condition') ORDER BY wr.done_at, w.id) AS repairs
  FROM work_line w
  JOIN work_line_revision wr ON wr.shop_id = w.shop_id AND wr.id = w.id AND wr.replaced_at IS NULL
  WHERE w.shop_id = $1 AND wr.state = 'done'
  GROUP BY w.job_id
)
SELECT l.id AS job_id, l.vehicle_id, l.cause_id, ${instant('l.released_at')} AS released_at, l.window_days,
  trim_scale(l.window_km)::text AS window_km, trim_scale(l.distance_km)::text AS released_km,
  COALESCE(seen.sightings, '[]'::json) AS sightings, COALESCE(asked.symptoms, '[]'::json) AS symptoms,
  COALESCE(came.comebacks, '[]'::json) AS comebacks, COALESCE(repeats.comeback_of, '[]'::json) AS comeback_of,
  COALESCE(worked.repairs, '[]'::json) AS repairs
FROM released l
LEFT JOIN seen USING (id) LEFT JOIN asked USING (id) LEFT JOIN came USING (id)
LEFT JOIN repeats USING (id) LEFT JOIN worked USING (id)
ORDER BY l.released_at, l.id`,
    values: [shopId, until],
  };
}

/** As-found verdicts of jobs, check by check, with the time of the first reading that stands. */
export function buildFoundChecksSql(shopId: string, jobIds: readonly string[]): Statement {
  return {
    text: `
WITH visit AS MATERIALIZED (
  SELECT id, job_id, check_sheet_id FROM inspection WHERE shop_id = $1 AND job_id = ANY($2::uuid[])
), read AS (
  SELECT v.id, rr.check_id, min(rr.taken_at) AS first_taken_at
  FROM visit v
  JOIN reading r ON r.shop_id = $1 AND r.inspection_id = v.id
  JOIN reading_revision rr ON rr.shop_id = r.shop_id AND rr.id = r.id AND rr.replaced_at IS NULL
  WHERE rr.phase = 'asFound'
  GROUP BY v.id, rr.check_id
)
SELECT v.job_id, v.id AS inspection_id, v.check_sheet_id, d.check_id,
  ${instant('min(read.first_taken_at)')} AS first_taken_at,
  json_agg(dr.document || jsonb_build_object('outcome', dr.outcome) ORDER BY d.limit_id) AS verdicts
FROM visit v
JOIN verdict d ON d.shop_id = $1 AND d.inspection_id = v.id AND d.phase = 'asFound'
JOIN verdict_revision dr ON dr.shop_id = d.shop_id AND dr.id = d.id AND dr.replaced_at IS NULL
LEFT JOIN read ON read.id = v.id AND read.check_id = d.check_id
GROUP BY v.job_id, v.id, v.check_sheet_id, d.check_id
ORDER BY v.job_id, min(read.first_taken_at), v.id, d.check_id`,
    values: [shopId, jobIds],
  };
}

/** The last assessment of each component of a job recorded before its release, and the last choice recorded by then. */
export function buildAssessedRepairsSql(
  shopId: string,
  jobIds: readonly string[],
  withOptions: boolean,
): Statement {
  return {
    text: `
SELECT DISTINCT ON (a.job_id, ar.document->'question'->>'componentType', ar.document->'question'->>'position')
  a.id AS assessment_id, a.job_id, ar.model_version, ${instant('a.recorded_at')} AS recorded_at,
  ar.document->'question' AS question,
  (ar.document->>'input')::jsonb->'characteristic' AS characteristic,
  (ar.document->>'input')::jsonb->'evidence' AS evidence,
  ar.document->'result'->'recommendation' AS recommendation,
  CASE WHEN $3::boolean THEN ar.document->'result'->'options' ELSE '[]'::jsonb END AS options,
  (SELECT dr.chosen FROM decision d
   JOIN decision_revision dr ON dr.shop_id = d.shop_id AND dr.id = d.id AND dr.replaced_at IS NULL
   WHERE d.shop_id = a.shop_id AND d.assessment_id = a.id AND d.recorded_at <= r.recorded_at
   ORDER BY dr.decided_at DESC, d.recorded_at DESC, d.id DESC LIMIT 1) AS chosen
FROM assessment a
JOIN assessment_revision ar ON ar.shop_id = a.shop_id AND ar.id = a.id AND ar.replaced_at IS NULL
JOIN release r ON r.shop_id = a.shop_id AND r.job_id = a.job_id
WHERE a.shop_id = $1 AND a.job_id = ANY($2::uuid[]) AND a.recorded_at <= r.recorded_at
ORDER BY a.job_id, ar.document->'question'->>'componentType', ar.document->'question'->>'position',
  a.recorded_at DESC, a.id DESC`,
    values: [shopId, jobIds, withOptions],
  };
}

/** Rows come with column names; members of the port are the same in camelCase. */
function camelCased<T>(row: Readonly<Record<string, unknown>>): T {
  return Object.fromEntries(
    Object.entries(row).map(([name, value]) => [
      name.replace(/_([a-z])/g, (_, letter: string) => letter.toUpperCase()),
      value,
    ]),
  ) as T;
}

export class SqlLearningHistoryQueries implements LearningHistoryQueries {
  constructor(private readonly connection: ShopConnection) {}

  async mark(now: string): Promise<string> {
    const [row] = await this.rows<{ mark: string }>(buildMarkSql(this.connection.shopId, now));
    return row!.mark;
  }

  releasedJobs(until: string): Promise<readonly ReleasedJobHistory[]> {
    return this.rows(buildReleasedJobsSql(this.connection.shopId, until));
  }

  async foundChecks(jobIds: readonly string[]): Promise<readonly FoundCheck[]> {
    if (jobIds.length === 0) return [];
    return this.rows(buildFoundChecksSql(this.connection.shopId, jobIds));
  }

  async assessedRepairs(jobIds: readonly string[], withOptions: boolean): Promise<readonly AssessedRepair[]> {
    if (jobIds.length === 0) return [];
    return this.rows(buildAssessedRepairsSql(this.connection.shopId, jobIds, withOptions));
  }

  private async rows<T>({ text, values }: Statement): Promise<readonly T[]> {
    const { rows } = await this.connection.sql.query<Record<string, unknown>>(text, values);
    return rows.map((row) => camelCased<T>(row));
  }
}
