import { proofPoints } from '@endfloat/catalogue';
import { DomainError, invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { Recorded } from '../ports/record-store.port.js';
import type { OfJob, ProofPoint } from '../ports/records/jobs.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { addRecord, type AddedRecord } from '../recording/add-record.js';
import { refuseFuture } from '../recording/happened-at.js';
import { referencedRecord, requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';
import { courseOf, isUnderWay, jobState } from './job-state.js';
import { missingProof, wantedProof, type MissingProof } from './required-proof.js';

export type ProofPointRecord = Recorded<OfJob, ProofPoint>;

/** Records one point of the proof of a repair. A point tried again is a new record; the latest counts. */
export class RecordProofPointUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: { readonly id?: string | undefined; readonly jobId: string; readonly point: ProofPoint },
  ): Promise<AddedRecord<OfJob, ProofPoint>> {
    const stamp = stampOf(this.clock, caller);
    const { point, jobId } = command;
    refuseFuture(point.testedAt, stamp.at, '/testedAt');
    if (!proofPoints.some(({ id }) => id === point.point)) {
      throw invalidInput(
        '/point',
        'proofPoint',
        `"${point.point}" is no point of the proof. GET /v1/proof-points lists them.`,
      );
    }
    return this.work.run(caller.shopId, async (tx) => {
      await requiredRecord(tx.jobs, 'job', jobId);
      await referencedRecord(tx.users, 'user', point.testedBy, '/testedBy');
      const id = command.id ?? this.ids.next();
      const state = jobState(await courseOf(tx, jobId));
      if (!isUnderWay(state) && (await tx.proofPoints.find(id)) === undefined) {
        throw new DomainError(
          'record.wrongState',
          `The job is ${state}; its proof is complete. A later look belongs to a new job.`,
        );
      }
      return addRecord(tx.proofPoints, 'proof point', { id, identity: { jobId }, content: point }, stamp);
    });
  }
}

export interface ProofView {
  readonly points: readonly ProofPointRecord[];
  /** points this job wants before release */
  readonly wanted: readonly string[];
  readonly missing: readonly MissingProof[];
}

/** The proof of a job: what was tested, and what a release still wants. */
export class ShowProofUseCase {
  constructor(private readonly work: UnitOfWork) {}

  execute(caller: Caller, jobId: string, asOf?: string): Promise<ProofView> {
    return this.work.read(caller.shopId, async (tx) => {
      await requiredRecord(tx.jobs, 'job', jobId, asOf);
      return proofOf(tx, jobId, asOf);
    });
  }
}

export async function proofOf(tx: ShopTransaction, jobId: string, asOf?: string): Promise<ProofView> {
  const points = await tx.proofPoints.all({ jobId }, asOf);
  const complaints = await tx.complaints.all({ jobId }, asOf);
  const lines = await tx.workLines.all({ jobId }, asOf);
  const symptomsPresent = [
    ...new Set(
      complaints.flatMap(({ content }) =>
        Object.entries(content.symptoms).flatMap(([id, answer]) => (answer === 'present' ? [id] : [])),
      ),
    ),
  ];
  const workDone = lines.filter(({ content }) => content.state === 'done').map(({ content }) => content);
  const latest = new Map(points.map(({ content }) => [content.point, content]));
  return {
    points,
    wanted: wantedProof({ symptomsPresent, workDone }).map(({ id }) => id),
    missing: missingProof({ symptomsPresent, workDone, points: [...latest.values()] }),
  };
}
