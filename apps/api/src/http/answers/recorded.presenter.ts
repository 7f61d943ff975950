import { renderText, type Recorded, type Warning } from '@endfloat/workshop';
import type { RecordedResponse, WarningResponse } from '@endfloat/contracts';

/** The members every record answers with beside its content. */
export function presentRecorded(record: Recorded<object, object>): RecordedResponse {
  return {
    id: record.id,
    version: record.revision,
    recordedAt: record.recordedAt,
    recordedBy: record.recordedBy,
    reason: record.reason,
    replacedAt: record.replacedAt,
  };
}

/** A warning in words; the text is made from its code and values here, never stored. */
export function presentWarning(warning: Warning): WarningResponse {
  return {
    code: warning.code,
    pointer: warning.pointer,
    detail: renderText(`warning.${warning.code}`, warning.values),
  };
}
