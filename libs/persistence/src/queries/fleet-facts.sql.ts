/** A statement with its values, for one shop. */
export interface Statement {
  readonly text: string;
  readonly values: unknown[];
}

export interface Scope {
  readonly only?: readonly string[] | undefined;
  readonly asOf?: string | undefined;
}

/** The first three values of every statement here: the shop, the moment of knowledge, the vehicles (null: all). */
export const scopeValues = (shopId: string, { only, asOf }: Scope): unknown[] => [
  shopId,
  asOf ?? '9999-12-31T00:00:00Z',
  only === undefined ? null : [...only],
];

/** The revision of an alias that was current at $2. */
export const current = (alias: string): string =>
  `${alias}.recorded_at <= $2 AND (${alias}.replaced_at IS NULL OR ${alias}.replaced_at > $2)`;

/** Whether a column names one of the vehicles asked for. */
export const among = (column: string): string => `($3::uuid[] IS NULL OR ${column} = ANY($3::uuid[]))`;

/** Current revisions of one kind of record; `identity` are the columns taken from its table beside shop and id. */
export const recordsOf = (table: string, identity: string): string =>
  `${table} i JOIN ${table}_revision r ON r.shop_id = i.shop_id AND r.id = i.id AND ${current('r')} AND i.shop_id = $1${
    identity === '' ? '' : ` AND ${among(`i.${identity}`)}`
  }`;

/** Vehicles with their owners in order; $4 is the customer who owned them at some time, or null. */
export function buildFleetVehiclesSql(
  shopId: string,
  query: Scope & { readonly customerId?: string | undefined },
): Statement {
  return {
    text: `
WITH owner AS (
  SELECT i.vehicle_id, json_agg(json_build_object('customerId', r.customer_id, 'fromAt', r.from_at)
    ORDER BY r.from_at, i.id) AS owners, bool_or(r.customer_id = $4::uuid) AS is_asked
  FROM ${recordsOf('vehicle_ownership', 'vehicle_id')}
  GROUP BY i.vehicle_id
)
SELECT i.id AS vehicle_id, i.recorded_at AS known_since, r.document, o.owners
FROM ${recordsOf('vehicle', 'id')}
LEFT JOIN owner o ON o.vehicle_id = i.id
WHERE $4::uuid IS NULL OR o.is_asked
ORDER BY i.id`,
    values: [...scopeValues(shopId, query), query.customerId ?? null],
  };
}

/** Moments at which somebody of the shop met a vehicle. */
export function buildContactsSql(shopId: string, query: Scope): Statement {
  const part = (table: string, column: string): string =>
    `SELECT i.vehicle_id, r.${column} AS at FROM ${recordsOf(table, 'vehicle_id')}`;
  return {
    text: `
SELECT vehicle_id, json_agg(at ORDER BY at) AS moments FROM (
  ${part('odometer_entry', 'read_at')}
  UNION ${part('job', 'opened_at')}
  UNION ${part('complaint', 'received_at')}
  UNION ${part('inspection', 'started_at')}
) AS met GROUP BY vehicle_id`,
    values: scopeValues(shopId, query),
  };
}

/** Reliable distances of each vehicle: milliseconds and km in turn, as text that is quick to write and to read. */
export function buildDistancesSql(shopId: string, query: Scope): Statement {
  return {
    text: `
SELECT i.vehicle_id, string_agg((extract(epoch FROM r.read_at) * 1000)::bigint || ' ' || r.distance_km::float8, ' '
    ORDER BY r.read_at, r.distance_km, i.id) AS points
FROM ${recordsOf('odometer_entry', 'vehicle_id')}
WHERE r.reliable AND r.distance_km IS NOT NULL
GROUP BY i.vehicle_id`,
    values: scopeValues(shopId, query),
  };
}
