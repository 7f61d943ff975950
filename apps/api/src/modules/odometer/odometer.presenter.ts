import type {
  OdometerEntryResponse,
  OdometerProposalResponse,
  OdometerSegmentResponse,
  OdometerShownDto,
} from '@endfloat/contracts';
import type { OdometerEntryRecord, OdometerSegmentRecord, OdometerShown } from '@endfloat/workshop';
import type { OdometerProposal } from '@endfloat/wear';
import { presentRecorded, presentWarning } from '../../http/answers/recorded.presenter.js';

export function toOdometerShown(request: OdometerShownDto): OdometerShown {
  const { shown, unit, readAt, readBy = null, note = null } = request;
  return { shown, unit, readAt, readBy, note };
}

export function presentOdometerEntry(record: OdometerEntryRecord): OdometerEntryResponse {
  const { shown, unit, readAt, readBy, note, distanceKm, operatingHours, reliable, warnings } =
    record.content;
  return {
    ...presentRecorded(record),
    vehicleId: record.identity.vehicleId,
    shown,
    unit,
    readAt,
    readBy,
    note,
    distanceKm,
    operatingHours,
    reliable,
    warnings: warnings.map((warning) => ({
      ...presentWarning(warning),
      proposals: warning.proposals.map(presentProposal),
    })),
  };
}

function presentProposal({ kind, ...values }: OdometerProposal): OdometerProposalResponse {
  return { proposal: kind, values };
}

export function presentOdometerSegment(record: OdometerSegmentRecord): OdometerSegmentResponse {
  const { cause, startedAt, offsetKm, factor, rawAtStart, unit, digits, note } = record.content;
  return {
    ...presentRecorded(record),
    vehicleId: record.identity.vehicleId,
    cause,
    startedAt,
    offsetKm,
    factor,
    rawAtStart,
    unit,
    digits,
    note,
  };
}
