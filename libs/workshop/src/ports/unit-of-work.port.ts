import type { RecordStore } from './record-store.port.js';
import type { ApiKeyStore, LearnedTablesStore, PersonalRecordStore, ShopStore } from './plain-stores.port.js';
import type { AuditTrail } from './audit.port.js';
import type { EventFeed } from './event-feed.port.js';
import type { StoredAnswerStore } from './stored-answers.port.js';
import type { WebhookDeliveryStore, WebhookSecretStore } from './webhooks.port.js';
import type * as webhooks from './records/webhooks.records.js';
import type { FleetHistoryQueries } from './fleet-history.port.js';
import type { SettledJobStore } from './settled-jobs.port.js';
import type { LearningHistoryQueries } from './learning-history.port.js';
import type * as shop from './records/shop.records.js';
import type * as vehicles from './records/vehicles.records.js';
import type * as bench from './records/bench.records.js';
import type * as jobs from './records/jobs.records.js';
import type * as decide from './records/decide.records.js';
import type * as planning from './records/planning.records.js';
import type * as stock from './records/stock.records.js';
import type { StockQueries } from './stock-queries.port.js';

/** Everything one transaction of one shop can reach. Reads see the writes of the same transaction. */
export interface ShopTransaction {
  readonly shopId: string;

  readonly shops: ShopStore;
  readonly apiKeys: ApiKeyStore;
  readonly personal: PersonalRecordStore;
  readonly fleetHistory: FleetHistoryQueries;
  readonly settledJobs: SettledJobStore;
  readonly learnedTables: LearnedTablesStore;
  readonly learningHistory: LearningHistoryQueries;

  readonly settings: RecordStore<shop.NoReferences, shop.ShopSettings>;
  readonly users: RecordStore<shop.NoReferences, shop.ShopUser>;
  readonly customers: RecordStore<shop.NoReferences, shop.Customer>;

  readonly vehicles: RecordStore<shop.NoReferences, vehicles.Vehicle>;
  readonly ownerships: RecordStore<vehicles.OfVehicle, vehicles.VehicleOwnership>;
  readonly odometerSegments: RecordStore<vehicles.OfVehicle, vehicles.OdometerSegment>;
  readonly odometerEntries: RecordStore<vehicles.OfVehicle, vehicles.OdometerEntry>;
  readonly fittedParts: RecordStore<vehicles.OfVehicle, vehicles.FittedPart>;

  readonly componentTypes: RecordStore<bench.ByCode, bench.ShopComponentType>;
  readonly instruments: RecordStore<shop.NoReferences, bench.Instrument>;
  readonly calibrations: RecordStore<bench.OfInstrument, bench.Calibration>;
  readonly gaugeStudies: RecordStore<shop.NoReferences, bench.GaugeStudy>;
  readonly shopLimits: RecordStore<shop.NoReferences, bench.ShopLimit>;
  readonly checkSheets: RecordStore<bench.CheckSheetIdentity, bench.CheckSheetContent>;
  readonly inspections: RecordStore<bench.InspectionIdentity, bench.Inspection>;
  readonly readings: RecordStore<bench.OfInspection, bench.Reading>;
  readonly verdicts: RecordStore<bench.VerdictIdentity, bench.Verdict>;

  readonly jobs: RecordStore<vehicles.OfVehicle, jobs.Job>;
  readonly jobEvents: RecordStore<jobs.OfJob, jobs.JobEvent>;
  readonly complaints: RecordStore<vehicles.OfVehicle, jobs.Complaint>;
  readonly workLines: RecordStore<jobs.OfJob, jobs.WorkLine>;
  readonly estimates: RecordStore<jobs.EstimateIdentity, jobs.Estimate>;
  readonly consents: RecordStore<jobs.ConsentIdentity, jobs.Consent>;
  readonly proofPoints: RecordStore<jobs.OfJob, jobs.ProofPoint>;
  readonly releases: RecordStore<jobs.OfJob, jobs.Release>;
  readonly unsafeHandovers: RecordStore<jobs.OfJob, jobs.UnsafeHandover>;
  readonly comebacks: RecordStore<jobs.ComebackIdentity, jobs.Comeback>;

  readonly assessments: RecordStore<decide.AssessmentIdentity, decide.Assessment>;
  readonly decisions: RecordStore<decide.OfAssessment, decide.Decision>;
  readonly offers: RecordStore<shop.NoReferences, decide.Offer>;
  readonly deliveries: RecordStore<decide.OfOffer, decide.Delivery>;

  readonly servicePlanItems: RecordStore<shop.NoReferences, planning.ServicePlanItem>;
  readonly serviceRecords: RecordStore<planning.ServiceRecordIdentity, planning.ServiceRecord>;

  readonly parts: RecordStore<shop.NoReferences, stock.Part>;
  readonly stockMoves: RecordStore<stock.StockMoveIdentity, stock.StockMove>;
  readonly cores: RecordStore<stock.CoreIdentity, stock.Core>;
  readonly warrantyClaims: RecordStore<stock.WarrantyClaimIdentity, stock.WarrantyClaim>;
  readonly arrivalInspections: RecordStore<stock.ArrivalInspectionIdentity, stock.ArrivalInspection>;
  readonly stock: StockQueries;

  readonly webhookEndpoints: RecordStore<shop.NoReferences, webhooks.WebhookEndpoint>;
  readonly webhookSecrets: WebhookSecretStore;
  readonly webhookDeliveries: WebhookDeliveryStore;
  readonly storedAnswers: StoredAnswerStore;
  readonly events: EventFeed;
  readonly auditTrail: AuditTrail;

  /**
   * Waits until no other transaction holds the turn of this record, and holds it to the end of this one. For rules over
   * several rows that no constraint can keep: what is read after it, nobody else who takes the turn changes meanwhile.
   */
  takeTurn(id: string): Promise<void>;
  /** Tells whoever follows the shop what happened; seen only if this transaction commits. */
  announce(event: ShopEvent): Promise<void>;
}

export interface ShopEvent {
  /** dotted and versioned, e.g. endfloat.job.released.v1 */
  readonly type: string;
  readonly subjectId: string;
  readonly at: string;
  readonly payload: Readonly<Record<string, unknown>>;
}

/**
 * Opens a transaction on exactly one connection with the shop set, hands out the stores, commits when `work`
 * resolves and rolls back when it throws. A transaction lost to a serialization failure or deadlock is run again as
 * a whole, at most three times; `work` must therefore have no effect outside the transaction.
 */
export abstract class UnitOfWork {
  abstract run<T>(shopId: string, work: (tx: ShopTransaction) => Promise<T>): Promise<T>;
  /** The same, read only. */
  abstract read<T>(shopId: string, work: (tx: ShopTransaction) => Promise<T>): Promise<T>;
}
