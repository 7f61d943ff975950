/** Every problem type of the interface: its name is part of the address of its page, its status is fixed. */
export const problemTypes = {
  'malformed-json': { status: 400, title: 'The body cannot be read as JSON.' },
  'malformed-request': { status: 400, title: 'The request cannot be read as HTTP.' },
  'invalid-parameter': { status: 400, title: 'A path, query or header parameter is not valid.' },
  'invalid-cursor': { status: 400, title: 'The cursor does not belong to this list.' },
  'idempotency-key-missing': { status: 400, title: 'This request needs an Idempotency-Key.' },
  'missing-credential': { status: 401, title: 'This request needs a credential.' },
  'invalid-token': { status: 401, title: 'The credential is not valid.' },
  'insufficient-scope': { status: 403, title: 'The credential does not allow this.' },
  'not-found': { status: 404, title: 'There is nothing here for this caller.' },
  'method-not-allowed': { status: 405, title: 'The path does not know this method.' },
  'not-acceptable': { status: 406, title: 'None of the accepted media types can be given.' },
  'request-timeout': { status: 408, title: 'The request did not arrive in time.' },
  'already-exists': { status: 409, title: 'The id is taken by something else.' },
  'state-conflict': { status: 409, title: 'The record is not in a state that allows this.' },
  'slot-taken': { status: 409, title: 'Somebody else was first.' },
  'idempotency-in-progress': { status: 409, title: 'A request with this Idempotency-Key is still running.' },
  'version-mismatch': { status: 412, title: 'The record has changed since it was read.' },
  'too-large': { status: 413, title: 'The body is too large.' },
  'uri-too-long': { status: 414, title: 'The address is too long.' },
  'expectation-failed': { status: 417, title: 'What the request expects of the server cannot be met.' },
  'unsupported-media-type': { status: 415, title: 'The body is of a type that is not read here.' },
  'invalid-body': { status: 422, title: 'The body breaks a rule.' },
  'unknown-reference': { status: 422, title: 'The body names something that does not exist.' },
  'reading-implausible': { status: 422, title: 'The reading is far outside what is plausible.' },
  'unit-mismatch': { status: 422, title: 'The unit does not fit the quantity.' },
  'currency-mismatch': { status: 422, title: 'The currencies do not fit together.' },
  'idempotency-key-reused': { status: 422, title: 'The Idempotency-Key was used for another request.' },
  'precondition-required': { status: 428, title: 'This request needs If-Match.' },
  'rate-limited': { status: 429, title: 'There were too many requests.' },
  'headers-too-large': { status: 431, title: 'The header fields are too large.' },
  internal: { status: 500, title: 'Something went wrong on our side.' },
  unavailable: { status: 503, title: 'A service this request needs cannot be reached.' },
  overloaded: { status: 503, title: 'There is more to do than can be done.' },
  'shutting-down': { status: 503, title: 'This process is ending.' },
} as const satisfies Record<string, { status: number; title: string }>;

export type ProblemName = keyof typeof problemTypes;

/** Address of the page of a type, resolved against the service. */
export function problemAddress(name: ProblemName): string {
  return `/problems/${name}`;
}
