import type { ComplaintContent, ComplaintResponse, ComplaintSummary } from '@endfloat/contracts';
import type { ComplaintEntry, ComplaintRecord, ComplaintView } from '@endfloat/workshop';
import { presentRecorded } from '../../http/answers/recorded.presenter.js';
import { presentComeback } from '../comebacks/comeback.presenter.js';

export function toComplaintEntry(request: ComplaintContent): ComplaintEntry {
  const { jobId, receivedAt, words, symptoms, conditions, troubleCodes, reproduced } = request;
  const { stopScrewMovedByOthers, reportedByDriver, components, beganAfterRepair, distanceKm } = request;
  return {
    jobId,
    receivedAt,
    words,
    symptoms,
    conditions,
    troubleCodes: troubleCodes.map(({ scheme, code }) => ({ scheme, code })),
    reproduced,
    stopScrewMovedByOthers,
    reportedByDriver,
    components,
    beganAfterRepair,
    distanceKm,
  };
}

export function presentComplaintSummary(record: ComplaintRecord, words: string | null): ComplaintSummary {
  const { jobId, receivedAt, symptoms, conditions, troubleCodes, reproduced } = record.content;
  const { stopScrewMovedByOthers, reportedByDriver, components, beganAfterRepair, distanceKm } =
    record.content;
  return {
    ...presentRecorded(record),
    vehicleId: record.identity.vehicleId,
    jobId,
    receivedAt,
    words,
    symptoms,
    conditions,
    troubleCodes: troubleCodes.map(({ scheme, code }) => ({ scheme, code })),
    reproduced,
    stopScrewMovedByOthers,
    reportedByDriver,
    components: [...components],
    beganAfterRepair,
    distanceKm,
  };
}

export function presentComplaint({ record, words, comebacks }: ComplaintView): ComplaintResponse {
  return { ...presentComplaintSummary(record, words), comebacks: comebacks.map(presentComeback) };
}
