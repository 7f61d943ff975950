/**
 * Every expected refusal of the workshop, as a stable code. The HTTP layer maps each code to a problem type in one
 * exhaustive table; texts are made there.
 */
export const errorCodes = [
  'record.notFound',
  'record.idTaken',
  'record.changedMeanwhile',
  'record.unknownReference',
  'record.wrongState',
  'input.invalid',
  'unit.mismatch',
  'currency.mismatch',
  'part.alreadyFitted',
  'stock.notEnough',
  'sheet.invalid',
  'reading.doesNotFitCheck',
  'reading.asFoundAfterWork',
  'work.reasonNeeded',
  'work.notConsented',
  'work.stopNotForSwitch',
  'consent.otherVersion',
  'release.proofIncomplete',
  'release.dangerousFinding',
  'release.alreadyReleased',
  'comeback.notReleasedBefore',
  'assessment.notPossible',
  'decision.optionRemoved',
  'request.running',
  'request.keyReused',
] as const;
export type ErrorCode = (typeof errorCodes)[number];

/** One thing that is wrong, with the place in the request where that can be said. */
export interface Fault {
  /** JSON Pointer into the body of the request */
  readonly pointer: string;
  readonly rule: string;
  readonly detail: string;
}

/** A refusal that the caller can understand and act on. Anything else that is thrown is a bug. */
export class DomainError extends Error {
  constructor(
    readonly code: ErrorCode,
    message: string,
    readonly faults: readonly Fault[] = [],
  ) {
    super(message);
    this.name = 'DomainError';
  }
}

/** The record in the path is not there for this caller. */
export function notFound(what: string): DomainError {
  return new DomainError('record.notFound', `There is no such ${what}, or it is not yours to see.`);
}

/** A reference inside a body points at nothing of this shop. */
export function unknownReference(pointer: string, what: string): DomainError {
  return new DomainError(
    'record.unknownReference',
    `The ${what} named at ${pointer} does not exist in this shop.`,
    [{ pointer, rule: 'reference', detail: `no such ${what}` }],
  );
}

/** A body whose values fit their schema and still break a rule. */
export function invalidInput(pointer: string, rule: string, detail: string): DomainError {
  return new DomainError('input.invalid', detail, [{ pointer, rule, detail }]);
}
