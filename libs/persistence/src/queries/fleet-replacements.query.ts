import type { FleetHistoryQueries, VehicleHistory } from '@endfloat/workshop/ports';
import type { ShopConnection } from '../connection/shop-connection.js';

type ReplacementsQuery = Parameters<FleetHistoryQueries['replacements']>[0];

/**
 * Ages in days (since first use) at which a part of one kind was removed, and the spans in which that would have been
 * seen, per vehicle. Vehicles without a first-use date are left out: their ages are not known.
 */
export function buildFleetReplacementsSql(
  shopId: string,
  query: ReplacementsQuery,
): { text: string; values: unknown[] } {
  return {
    text: `
WITH known_vehicle AS (
  SELECT v.id, (r.document->>'firstUsedOn')::date AS first_used_on, 
    -- no spans: seen since the vehicle was recorded
    CASE WHEN jsonb_array_length(r.document->'observedSpans') = 0
      THEN jsonb_build_array(jsonb_build_object('from', v.recorded_at, 'until', NULL))
      ELSE r.document->'observedSpans' END AS spans
  FROM vehicle v
  JOIN vehicle_revision r ON r.shop_id = v.shop_id AND r.id = v.id
  WHERE v.shop_id = $1 AND r.recorded_at <= $4 AND (r.replaced_at IS NULL OR r.replaced_at > $4)
    AND r.document->>'firstUsedOn' IS NOT NULL
    AND ($5::uuid IS NULL OR $5::uuid = (
      SELECT o.customer_id FROM vehicle_ownership w
      JOIN vehicle_ownership_revision o ON o.shop_id = w.shop_id AND o.id = w.id
      WHERE w.shop_id = v.shop_id AND w.vehicle_id = v.id AND o.from_at <= $3
        AND o.recorded_at <= $4 AND (o.replaced_at IS NULL OR o.replaced_at > $4)
      ORDER BY o.from_at DESC, w.id DESC LIMIT 1))
), removal AS (
  SELECT p.vehicle_id, r.removed_at
  FROM fitted_part p
  JOIN fitted_part_revision r ON r.shop_id = p.shop_id AND r.id = p.id
  WHERE p.shop_id = $1 AND r.component_type = $2 AND r.removed_at <= $3
    AND r.recorded_at <= $4 AND (r.replaced_at IS NULL OR r.replaced_at > $4)
)
SELECT k.id AS vehicle_id,
  COALESCE((
    SELECT json_agg(json_build_object(
      'from', greatest(0, extract(epoch FROM (s->>'from')::timestamptz - k.first_used_on::timestamp AT TIME ZONE 'UTC') / 86400.0),
      'until', extract(epoch FROM least(COALESCE((s->>'until')::timestamptz, $3::timestamptz), $3::timestamptz) - k.first_used_on::timestamp AT TIME ZONE 'UTC') / 86400.0))
    FROM jsonb_array_elements(k.spans) AS s), '[]'::json) AS spans,
  COALESCE((
    SELECT json_agg(extract(epoch FROM m.removed_at - k.first_used_on::timestamp AT TIME ZONE 'UTC') / 86400.0 ORDER BY m.removed_at)
    FROM removal m WHERE m.vehicle_id = k.id), '[]'::json) AS event_ages
FROM known_vehicle k
ORDER BY k.id`,
    values: [
      shopId,
      query.componentType,
      query.until,
      query.asOf ?? '9999-12-31T00:00:00Z',
      query.customerId ?? null,
    ],
  };
}

interface Row {
  readonly vehicle_id: string;
  readonly spans: readonly { readonly from: number; readonly until: number }[];
  readonly event_ages: readonly number[];
}

export class SqlFleetHistoryQueries implements FleetHistoryQueries {
  constructor(private readonly connection: ShopConnection) {}

  async replacements(query: ReplacementsQuery): Promise<readonly VehicleHistory[]> {
    const { text, values } = buildFleetReplacementsSql(this.connection.shopId, query);
    const { rows } = await this.connection.sql.query<Row>(text, values);
    return rows
      .map((row) => ({
        vehicleId: row.vehicle_id,
        spans: row.spans.filter((span) => span.until >= span.from),
        eventAges: row.event_ages,
      }))
      .filter((history) => history.spans.length > 0);
  }
}
