import { invalidInput, notFound } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { ListPage, ListPosition } from '../ports/record-store.port.js';
import type { Inspection, InspectionIdentity } from '../ports/records/bench.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { addRecord, type AddedRecord } from '../recording/add-record.js';
import { correctRecord, type ExpectedRevision } from '../recording/correct-record.js';
import { refuseFuture } from '../recording/happened-at.js';
import { referencedRecord, requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';
import {
  mayKnowVehicle,
  referencedVehicle,
  vehiclesOf,
  visibleVehicle,
} from '../recording/vehicle-visibility.js';
import { checkProgress, type CheckProgress } from './check-progress.js';
import { checkOf } from './entered-reading.js';
import { counts } from './judging/bench-case.js';
import {
  groundOf,
  inspectionInTurn,
  sheetOf,
  worksOf,
  type InspectionRecord,
} from './judging/gather-bench-case.js';
import { judgeAndStore } from './judging/judge-and-store.js';
import { refuseForeignHands, rolesOfPeople } from './who-may-measure.js';

export interface RecordInspectionCommand {
  readonly id?: string | undefined;
  readonly vehicleId: string;
  readonly jobId: string | null;
  readonly checkSheetId: string;
  readonly inspection: Inspection;
}

/** Begins an inspection: a run of one version of a check sheet on a vehicle. */
export class RecordInspectionUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: RecordInspectionCommand,
  ): Promise<AddedRecord<InspectionIdentity, Inspection>> {
    const stamp = stampOf(this.clock, caller);
    const { vehicleId, jobId, checkSheetId, inspection } = command;
    refuseFuture(inspection.startedAt, stamp.at, '/startedAt');
    return this.work.run(caller.shopId, async (tx) => {
      await referencedVehicle(tx, caller, vehicleId, stamp.at);
      if (jobId !== null) {
        const job = await referencedRecord(tx.jobs, 'job', jobId, '/jobId');
        if (job.identity.vehicleId !== vehicleId)
          throw invalidInput('/jobId', 'sameVehicle', 'This job is about another vehicle.');
      }
      await referencedRecord(tx.checkSheets, 'check sheet', checkSheetId, '/checkSheetId');
      const record = {
        id: command.id ?? this.ids.next(),
        identity: { vehicleId, jobId, checkSheetId },
        content: inspection,
      };
      await refuseUnknown(tx, record.identity, inspection, null);
      return addRecord(tx.inspections, 'inspection', record, stamp);
    });
  }
}

/** Corrects what is said about an inspection, e.g. that as found was never taken or a check is left out; judges it anew. */
export class CorrectInspectionUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: {
      readonly id: string;
      readonly expected: ExpectedRevision;
      readonly inspection: Inspection;
      readonly reason: string;
    },
  ): Promise<InspectionRecord> {
    const stamp = stampOf(this.clock, caller, command.reason);
    refuseFuture(command.inspection.startedAt, stamp.at, '/startedAt');
    return this.work.run(caller.shopId, async (tx) => {
      const before = await inspectionInTurn(tx, command.id);
      await refuseUnknown(tx, before.identity, command.inspection, before.content.technicianId);
      const change = { id: command.id, expected: command.expected, content: command.inspection };
      const record = await correctRecord(tx.inspections, 'inspection', change, stamp);
      await judgeAndStore(tx, this.ids, await groundOf(tx, record), {
        ...stamp,
        reason: `inspection corrected: ${command.reason}`,
      });
      return record;
    });
  }
}

async function refuseUnknown(
  tx: ShopTransaction,
  identity: InspectionIdentity,
  inspection: Inspection,
  namedBefore: string | null,
): Promise<void> {
  if (inspection.technicianId !== null && inspection.technicianId !== namedBefore)
    refuseForeignHands(
      await rolesOfPeople(tx, [inspection.technicianId]),
      inspection.technicianId,
      '/technicianId',
    );
  const sheet = await referencedRecord(tx.checkSheets, 'check sheet', identity.checkSheetId, '/checkSheetId');
  for (const member of ['asFoundNotTaken', 'notDone'] as const) {
    inspection[member].forEach(({ checkId }, index) =>
      checkOf(sheet.content.definition, checkId, `/${member}/${String(index)}`),
    );
  }
}

export interface InspectionProgress {
  readonly inspection: InspectionRecord;
  readonly sheet: {
    readonly id: string;
    readonly edition: number;
    readonly title: string;
    readonly precedence: string;
  };
  readonly checks: readonly CheckProgress[];
}

export class ShowInspectionUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    query: { readonly id: string; readonly asOf?: string | undefined },
  ): Promise<InspectionRecord> {
    return this.work.read(caller.shopId, (tx) => visibleInspection(tx, caller, this.clock.now(), query));
  }

  /** Every revision, oldest first. */
  revisions(caller: Caller, id: string): Promise<readonly InspectionRecord[]> {
    return this.work.read(caller.shopId, async (tx) => {
      await visibleInspection(tx, caller, this.clock.now(), { id });
      return tx.inspections.history(id);
    });
  }

  /** Where every check stands, now or as it was known at a moment. */
  progress(
    caller: Caller,
    query: { readonly id: string; readonly asOf?: string | undefined },
  ): Promise<InspectionProgress> {
    return this.work.read(caller.shopId, async (tx) => {
      const inspection = await visibleInspection(tx, caller, this.clock.now(), query);
      return progressOf(tx, inspection, query.asOf);
    });
  }

  list(
    caller: Caller,
    query: {
      readonly vehicleId?: string | undefined;
      readonly jobId?: string | undefined;
      readonly asOf?: string | undefined;
      readonly after?: ListPosition | undefined;
      readonly limit: number;
    },
  ): Promise<ListPage<InspectionIdentity, Inspection>> {
    const { vehicleId, jobId, ...page } = query;
    const now = this.clock.now();
    return this.work.read(caller.shopId, async (tx) => {
      if (vehicleId !== undefined) await visibleVehicle(tx, caller, vehicleId, now);
      const own = caller.customerId === undefined ? undefined : await vehiclesOf(tx, caller.customerId, now);
      return tx.inspections.list({ where: { vehicleId: vehicleId ?? own, jobId }, ...page });
    });
  }
}

/** The inspection in the path; one of somebody else's vehicle is answered like one that does not exist. */
export async function visibleInspection(
  tx: ShopTransaction,
  caller: Caller,
  now: string,
  { id, asOf }: { readonly id: string; readonly asOf?: string | undefined },
): Promise<InspectionRecord> {
  const inspection = await requiredRecord(tx.inspections, 'inspection', id, asOf);
  if (!(await mayKnowVehicle(tx, caller, inspection.identity.vehicleId, now))) throw notFound('inspection');
  return inspection;
}

export async function progressOf(
  tx: ShopTransaction,
  inspection: InspectionRecord,
  asOf?: string,
): Promise<InspectionProgress> {
  const sheet = await sheetOf(tx, inspection);
  const { notDone, asFoundNotTaken } = inspection.content;
  const checks = checkProgress({
    sheet,
    readings: (await tx.readings.all({ inspectionId: inspection.id }, asOf)).filter(counts),
    verdicts: await tx.verdicts.all({ inspectionId: inspection.id }, asOf),
    works: await worksOf(tx, inspection.identity.jobId, asOf),
    notDone,
    asFoundNotTaken,
  });
  const { id, edition, title, precedence } = sheet;
  return { inspection, sheet: { id, edition, title, precedence }, checks };
}
