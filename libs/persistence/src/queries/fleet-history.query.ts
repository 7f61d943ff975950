import type {
  FleetDistance,
  FleetEvent,
  FleetHistoryQueries,
  FleetPart,
  FleetVehicle,
  FleetVisit,
  LastDone,
  ObservedSpan,
  OpenMatters,
  YearOfWork,
} from '@endfloat/workshop/ports';
import type { ShopConnection } from '../connection/shop-connection.js';
import { buildFleetEventsSql, buildFleetPartsSql, buildOpenMattersSql } from './fleet-events.sql.js';
import {
  buildContactsSql,
  buildDistancesSql,
  buildFleetVehiclesSql,
  type Statement,
} from './fleet-facts.sql.js';
import {
  buildLastDoneSql,
  buildLastFittedSql,
  buildLastServicesSql,
  buildVisitsSql,
  buildYearsOfWorkSql,
} from './fleet-work.sql.js';

type Query<K extends keyof FleetHistoryQueries> = Parameters<FleetHistoryQueries[K]>[0];

interface VehicleRow {
  readonly vehicle_id: string;
  readonly known_since: Date;
  readonly document: Pick<
    FleetVehicle,
    'label' | 'application' | 'firstUsedOn' | 'retiredOn' | 'expectedKmPerYear' | 'plate'
  > & { readonly observedSpans: readonly ObservedSpan[] };
  readonly owners: readonly { readonly customerId: string; readonly fromAt: string }[] | null;
}

interface PartRow {
  readonly id: string;
  readonly vehicle_id: string;
  readonly position: string;
  readonly condition: FleetPart['condition'];
  readonly supplier: string | null;
  readonly fitted_at: Date | null;
  readonly fitted_km: string | null;
  readonly removed_at: Date | null;
  readonly removed_km: string | null;
  readonly inspections: readonly { readonly at: string; readonly isWorn: boolean }[];
}

/** Kind of part, action, item of the plan, milliseconds, km. */
type DoneRow = readonly [string | null, LastDone['action'], string | null, number, string | null];

/** PostgreSQL writes instants in JSON with the offset of the session; here they are all in UTC. */
const instant = (at: string | Date): string => new Date(at).toISOString();
const instantOrNull = (at: string | Date | null): string | null => (at === null ? null : instant(at));

/** Milliseconds and km in turn. */
function pointsOf(text: string): readonly FleetDistance[] {
  const numbers = text.split(' ');
  const points: FleetDistance[] = [];
  for (let place = 0; place + 1 < numbers.length; place += 2)
    points.push({ at: Number(numbers[place]), km: Number(numbers[place + 1]) });
  return points;
}

export class SqlFleetHistoryQueries implements FleetHistoryQueries {
  constructor(private readonly connection: ShopConnection) {}

  async vehicles(query: Query<'vehicles'>): Promise<readonly FleetVehicle[]> {
    const rows = await this.rows<VehicleRow>(buildFleetVehiclesSql(this.connection.shopId, query));
    return rows.map(({ vehicle_id, known_since, document, owners }) => ({
      vehicleId: vehicle_id,
      label: document.label,
      plate: document.plate,
      application: document.application,
      firstUsedOn: document.firstUsedOn,
      retiredOn: document.retiredOn,
      expectedKmPerYear: document.expectedKmPerYear,
      observedSpans: document.observedSpans,
      knownSince: instant(known_since),
      owners: (owners ?? []).map(({ customerId, fromAt }) => ({ customerId, fromAt: instant(fromAt) })),
    }));
  }

  async contacts(query: Query<'contacts'>): Promise<ReadonlyMap<string, readonly string[]>> {
    const rows = await this.rows<{ vehicle_id: string; moments: readonly string[] }>(
      buildContactsSql(this.connection.shopId, query),
    );
    return new Map(rows.map(({ vehicle_id, moments }) => [vehicle_id, moments.map(instant)]));
  }

  async distances(query: Query<'distances'>): Promise<ReadonlyMap<string, readonly FleetDistance[]>> {
    const rows = await this.rows<{ vehicle_id: string; points: string }>(
      buildDistancesSql(this.connection.shopId, query),
    );
    return new Map(rows.map(({ vehicle_id, points }) => [vehicle_id, pointsOf(points)]));
  }

  async events(query: Query<'events'>): Promise<readonly FleetEvent[]> {
    const rows = await this.rows<{
      vehicle_id: string;
      at: Date;
      supplier: string | null;
      condition: FleetEvent['condition'];
    }>(buildFleetEventsSql(this.connection.shopId, query));
    return rows.map(({ vehicle_id, at, supplier, condition }) => ({
      vehicleId: vehicle_id,
      at: instant(at),
      supplier,
      condition,
    }));
  }

  async parts(query: Query<'parts'>): Promise<readonly FleetPart[]> {
    const rows = await this.rows<PartRow>(buildFleetPartsSql(this.connection.shopId, query));
    return rows.map((row) => ({
      partId: row.id,
      vehicleId: row.vehicle_id,
      position: row.position,
      condition: row.condition,
      supplier: row.supplier,
      fittedAt: instantOrNull(row.fitted_at),
      fittedKm: row.fitted_km,
      removedAt: instantOrNull(row.removed_at),
      removedKm: row.removed_km,
      inspections: row.inspections.map(({ at, isWorn }) => ({ at: instant(at), isWorn })),
    }));
  }

  async lastDone(query: Query<'lastDone'>): Promise<readonly LastDone[]> {
    const { shopId } = this.connection;
    const done: LastDone[] = [];
    for (const statement of [
      buildLastDoneSql(shopId, query),
      buildLastFittedSql(shopId, query),
      buildLastServicesSql(shopId, query),
    ]) {
      const rows = await this.rows<{ vehicle_id: string; list: readonly DoneRow[] }>(statement);
      for (const { vehicle_id: vehicleId, list } of rows)
        for (const [componentType, action, planItemId, doneAt, distanceKm] of list)
          done.push({
            vehicleId,
            componentType,
            action,
            planItemId,
            doneAt: new Date(doneAt).toISOString(),
            distanceKm,
          });
    }
    return done;
  }

  async yearsOfWork(query: Query<'yearsOfWork'>): Promise<readonly YearOfWork[]> {
    const rows = await this.rows<{
      vehicle_id: string;
      year: number;
      currency: string | null;
      lines: number;
      minutes: number;
      unmeasured: number;
      amount: string;
      unpriced: number;
    }>(buildYearsOfWorkSql(this.connection.shopId, query));
    return rows.map((row) => ({
      vehicleId: row.vehicle_id,
      year: row.year,
      currency: row.currency,
      lines: row.lines,
      minutes: row.minutes,
      linesWithoutMinutes: row.unmeasured,
      partsAmount: row.amount,
      partsWithoutPrice: row.unpriced,
    }));
  }

  async visits(query: Query<'visits'>): Promise<readonly FleetVisit[]> {
    const rows = await this.rows<{
      vehicle_id: string;
      job_id: string;
      opened_at: Date;
      left_at: Date | null;
      events: FleetVisit['events'];
    }>(buildVisitsSql(this.connection.shopId, query));
    return rows.map((row) => ({
      vehicleId: row.vehicle_id,
      jobId: row.job_id,
      openedAt: instant(row.opened_at),
      leftAt: instantOrNull(row.left_at),
      events: row.events.map(({ kind, at }) => ({ kind, at: instant(at) })),
    }));
  }

  async openMatters(query: Query<'openMatters'>): Promise<readonly OpenMatters[]> {
    const rows = await this.rows<
      Record<'dangerous' | 'major' | 'other' | 'comebacks' | 'most' | 'symptoms', number> & {
        vehicle_id: string;
      }
    >(buildOpenMattersSql(this.connection.shopId, query));
    return rows.map((row) => ({
      vehicleId: row.vehicle_id,
      dangerousFindings: row.dangerous,
      majorFindings: row.major,
      otherFindings: row.other,
      comebacks: row.comebacks,
      repeatedSymptoms: row.symptoms,
      mostComebacksOfJob: row.most,
    }));
  }

  private async rows<Row extends object>({ text, values }: Statement): Promise<readonly Row[]> {
    return (await this.connection.sql.query<Row>(text, values)).rows;
  }
}
