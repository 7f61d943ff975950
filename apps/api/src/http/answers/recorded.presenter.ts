import type { RecordedResponse, WarningResponse } from '@endfloat/contracts';
import type { Recorded, Warning } from '@endfloat/workshop';
import { warningText } from './warning-texts.js';

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
export function presentWarning({ code, pointer, values }: Warning): WarningResponse {
  return { code, pointer, detail: warningText(code, values) };
}
