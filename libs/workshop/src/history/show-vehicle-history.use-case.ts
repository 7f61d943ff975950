import type { Clock } from '../ports/clock.port.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { visibleVehicle } from '../recording/vehicle-visibility.js';
import type { HistoryOfVehicle } from './history-entry.js';
import { HistoryShelf, peopleIn } from './history-shelf.js';
import { tellOfBench } from './tell-of-bench.js';
import { tellOfComplaints } from './tell-of-complaints.js';
import { tellOfJobs } from './tell-of-jobs.js';
import { tellOfVehicle, type HistoryQuestion } from './tell-of-vehicle.js';

export interface VehicleHistoryQuery {
  readonly vehicleId: string;
  readonly asOf?: string | undefined;
  /** every other revision of every record beside it */
  readonly isEveryRevisionWanted: boolean;
}

/**
 * Everything about one vehicle as it was known at a moment, by when it happened: who measured what, with which
 * instrument and its calibration on that day, under which edition of which limit, what was decided, done and signed.
 * Read in one transaction, so that no part of it is newer than another.
 */
export class ShowVehicleHistoryUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(caller: Caller, query: VehicleHistoryQuery): Promise<HistoryOfVehicle> {
    const { vehicleId, asOf, isEveryRevisionWanted } = query;
    const now = this.clock.now();
    return this.work.read(caller.shopId, async (tx) => {
      const record = await visibleVehicle(tx, caller, vehicleId, now, asOf);
      const shelf = new HistoryShelf(asOf, isEveryRevisionWanted);
      const vehicle = { record, otherRevisions: await shelf.othersOf(tx.vehicles, record) };
      const question: HistoryQuestion = { caller, vehicleId, asOf };
      await tellOfVehicle(tx, shelf, question);
      const complaints = await tellOfComplaints(tx, shelf, question);
      const inspections = await tellOfBench(tx, shelf, question);
      await tellOfJobs(tx, shelf, question, { complaints, inspections });
      await tellOfDecisions(tx, shelf, question);
      const people = [...new Set([...shelf.peopleNamed(), ...peopleIn(record)])].sort();
      return {
        asOf: asOf ?? now,
        vehicle,
        entries: shelf.entries(),
        people: caller.customerId === undefined ? await namesOf(tx, people, asOf) : [],
        cut: shelf.cut,
        areRevisionsCut: shelf.areRevisionsCut,
      };
    });
  }
}

async function tellOfDecisions(
  tx: ShopTransaction,
  shelf: HistoryShelf,
  { caller, vehicleId }: HistoryQuestion,
): Promise<void> {
  const assessments = await shelf.latest('assessment', tx.assessments, { vehicleId });
  const jobOf = new Map(assessments.map(({ id, identity }) => [id, identity.jobId]));
  await shelf.tell(tx.assessments, assessments, {
    kind: 'assessment',
    happenedAt: ({ firstRecordedAt }) => firstRecordedAt,
    jobId: ({ identity }) => identity.jobId,
    view: (record) => ({ record, isWithReasons: caller.customerId === undefined }),
  });
  const decisions = await shelf.latest('decision', tx.decisions, { assessmentId: [...jobOf.keys()] });
  await shelf.tell(tx.decisions, decisions, {
    kind: 'decision',
    happenedAt: ({ content }) => content.decidedAt,
    jobId: ({ identity }) => jobOf.get(identity.assessmentId) ?? null,
    view: (record) => record,
  });
}

async function namesOf(
  tx: ShopTransaction,
  ids: readonly string[],
  asOf: string | undefined,
): Promise<HistoryOfVehicle['people']> {
  const users = await tx.users.findMany(ids, asOf);
  return users.map(({ id, content }) => ({ userId: id, displayName: content.displayName }));
}
