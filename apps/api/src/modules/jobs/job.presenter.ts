import type { JobContent, JobEventContent, JobEventResponse, JobResponse } from '@endfloat/contracts';
import type { Job, JobEvent, JobEventRecord, JobView } from '@endfloat/workshop';
import { presentRecorded } from '../../http/answers/recorded.presenter.js';

export function toJob({ openedAt, assignedTo, diagnosedBy, causeId, note }: JobContent): Job {
  return { openedAt, assignedTo, diagnosedBy, causeId, note };
}

export function toJobEvent({ kind, happenedAt, note }: JobEventContent): JobEvent {
  return { kind, happenedAt, note };
}

export function presentJob({ record, state, events, complaintIds, inspectionIds }: JobView): JobResponse {
  return {
    ...presentRecorded(record),
    ...toJob(record.content),
    vehicleId: record.identity.vehicleId,
    state,
    events: events.map(toJobEvent),
    complaintIds: [...complaintIds],
    inspectionIds: [...inspectionIds],
  };
}

export function presentJobEvent(record: JobEventRecord): JobEventResponse {
  return { ...presentRecorded(record), ...toJobEvent(record.content), jobId: record.identity.jobId };
}
