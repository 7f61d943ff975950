import { compute } from '../computing/computations.js';
import { notFound } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { Computing } from '../ports/computing.port.js';
import type { Fingerprint } from '../ports/fingerprint.port.js';
import type { ListPage, ListPosition } from '../ports/record-store.port.js';
import type { Assessment, AssessmentIdentity } from '../ports/records/decide.records.js';
import type { Caller } from '../ports/roles.js';
import { sameContent } from '../ports/same-content.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { requiredRecord } from '../recording/required-record.js';
import { mayKnowVehicle, vehiclesOf, visibleVehicle } from '../recording/vehicle-visibility.js';
import type { AssessmentRecord } from './assess.use-case.js';

/** An assessment the caller may know of; somebody else's is answered like one that does not exist. */
export async function visibleAssessment(
  tx: ShopTransaction,
  caller: Caller,
  id: string,
  now: string,
  asOf?: string,
): Promise<AssessmentRecord> {
  const record = await requiredRecord(tx.assessments, 'assessment', id, asOf);
  if (!(await mayKnowVehicle(tx, caller, record.identity.vehicleId, now))) throw notFound('assessment');
  return record;
}

export class ShowAssessmentsUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    query: {
      readonly vehicleId?: string | undefined;
      readonly jobId?: string | undefined;
      readonly asOf?: string | undefined;
      readonly after?: ListPosition | undefined;
      readonly limit: number;
    },
  ): Promise<ListPage<AssessmentIdentity, Assessment>> {
    const { vehicleId, jobId, ...page } = query;
    const now = this.clock.now();
    return this.work.read(caller.shopId, async (tx) => {
      if (vehicleId !== undefined) await visibleVehicle(tx, caller, vehicleId, now);
      const own = caller.customerId === undefined ? undefined : await vehiclesOf(tx, caller.customerId, now);
      return tx.assessments.list({ where: { vehicleId: vehicleId ?? own, jobId }, ...page });
    });
  }

  /** One assessment, as it was made; not known before it was. */
  one(caller: Caller, id: string, asOf?: string): Promise<AssessmentRecord> {
    return this.work.read(caller.shopId, (tx) => visibleAssessment(tx, caller, id, this.clock.now(), asOf));
  }
}

/** Whether an assessment run again gives every digit it gave then. */
export interface ReplayOutcome {
  readonly record: AssessmentRecord;
  readonly replayed: Assessment['result'];
  readonly isEqual: boolean;
  /** SHA-256 of the stored input as it is now, and whether it is still the one of then */
  readonly inputHash: string;
  readonly isInputUnchanged: boolean;
}

/** Runs a stored assessment again from its canonical input; nothing is recorded. */
export class ReplayAssessmentUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly fingerprint: Fingerprint,
    private readonly computing: Computing,
  ) {}

  async execute(caller: Caller, id: string): Promise<ReplayOutcome> {
    const now = this.clock.now();
    const record = await this.work.read(caller.shopId, (tx) => visibleAssessment(tx, caller, id, now));
    const { input, result, inputHash: hashThen } = record.content;
    const replayed = await compute(this.computing, 'replayAssessment', input);
    const inputHash = this.fingerprint.of(input);
    return {
      record,
      replayed,
      isEqual: sameContent(replayed, result),
      inputHash,
      isInputUnchanged: inputHash === hashThen,
    };
  }
}
