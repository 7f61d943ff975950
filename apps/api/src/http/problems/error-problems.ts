import type { ErrorCode } from '@endfloat/workshop';
import type { ProblemName } from './problem-types.js';

/** Problem type of every refusal of the workshop. A code without a line here does not compile. */
export const errorProblems = {
  'record.notFound': 'not-found',
  'record.idTaken': 'already-exists',
  'record.changedMeanwhile': 'version-mismatch',
  'record.unknownReference': 'unknown-reference',
  'record.wrongState': 'state-conflict',
  'input.invalid': 'invalid-body',
  'unit.mismatch': 'unit-mismatch',
  'currency.mismatch': 'currency-mismatch',
  'part.alreadyFitted': 'state-conflict',
  'stock.notEnough': 'state-conflict',
  'sheet.invalid': 'invalid-body',
  'reading.doesNotFitCheck': 'invalid-body',
  'reading.asFoundAfterWork': 'state-conflict',
  'work.reasonNeeded': 'invalid-body',
  'work.notConsented': 'state-conflict',
  'work.stopNotForSwitch': 'invalid-body',
  'consent.otherVersion': 'state-conflict',
  'release.proofIncomplete': 'state-conflict',
  'release.dangerousFinding': 'state-conflict',
  'release.alreadyReleased': 'state-conflict',
  'comeback.notReleasedBefore': 'state-conflict',
  'assessment.notPossible': 'state-conflict',
  'decision.optionRemoved': 'state-conflict',
  'request.running': 'idempotency-in-progress',
  'request.keyReused': 'idempotency-key-reused',
} as const satisfies Record<ErrorCode, ProblemName>;
