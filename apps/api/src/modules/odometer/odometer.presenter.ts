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

/** A segment is offered as the body that begins it; a rollover is reckoned from what was before it. */
function presentProposal({ kind, ...values }: OdometerProposal): OdometerProposalResponse {
  if (!('segment' in values)) return { proposal: kind, values };
  const { cause, startedAt, rawAtStart, unit, digits, offsetKm } = values.segment;
  const distanceKm = cause === 'rollover' ? null : offsetKm;
  return {
    proposal: kind,
    values: { cause, startedAt, shown: rawAtStart, unit, digits, distanceKm, note: null },
  };
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
