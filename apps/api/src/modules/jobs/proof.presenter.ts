import type {
  ProofPointContent,
  ProofPointResponse,
  ProofResponse,
  ReleaseResponse,
  UnrepairedHandoverResponse,
} from '@endfloat/contracts';
import type {
  ProofPoint,
  ProofPointRecord,
  ProofView,
  ReleaseRecord,
  UnsafeHandoverRecord,
} from '@endfloat/workshop';
import { presentRecorded } from '../../http/answers/recorded.presenter.js';

export function toProofPoint({
  point,
  outcome,
  testedAt,
  testedBy,
  notTestedBecause,
  recheckOn,
  note,
}: ProofPointContent): ProofPoint {
  return { point, outcome, testedAt, testedBy, notTestedBecause, recheckOn, note };
}

export function presentProofPoint(record: ProofPointRecord): ProofPointResponse {
  return { ...presentRecorded(record), ...toProofPoint(record.content), jobId: record.identity.jobId };
}

export function presentProof({ points, wanted, missing }: ProofView): ProofResponse {
  return {
    points: points.map(presentProofPoint),
    wanted: [...wanted],
    missing: missing.map(({ point, title, why }) => ({ point, title, why })),
  };
}

export function presentRelease(record: ReleaseRecord): ReleaseResponse {
  const { releasedAt, releasedBy, statement, windowDays, windowKm, distanceKm } = record.content;
  return {
    ...presentRecorded(record),
    jobId: record.identity.jobId,
    releasedAt,
    releasedBy,
    statement,
    windowDays,
    windowKm,
    distanceKm,
  };
}

export function presentUnrepairedHandover(record: UnsafeHandoverRecord): UnrepairedHandoverResponse {
  const { handedOverAt, dangerousFindings, warningGiven } = record.content;
  return {
    ...presentRecorded(record),
    jobId: record.identity.jobId,
    handedOverAt,
    dangerousFindings: [...dangerousFindings],
    warningGiven,
  };
}
