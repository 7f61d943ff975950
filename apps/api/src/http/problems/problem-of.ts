import { DomainError } from '@endfloat/workshop';
import { JsonFault } from '../requests/strict-json.js';
import { isDatabaseAway } from './database-away.js';
import { errorProblems } from './error-problems.js';
import { HttpProblem } from './http-problem.js';
import { problemTypes, type ProblemName } from './problem-types.js';

/** What the server framework and Node's parser refuse, by their codes. */
const frameworkCodes: Readonly<Record<string, ProblemName>> = {
  FST_ERR_BAD_URL: 'invalid-parameter',
  FST_ERR_MAX_PARAM_LENGTH: 'uri-too-long',
  FST_ERR_CTP_BODY_TOO_LARGE: 'too-large',
  FST_ERR_CTP_INVALID_MEDIA_TYPE: 'unsupported-media-type',
  FST_ERR_CTP_INVALID_CONTENT_LENGTH: 'malformed-request',
  FST_ERR_CTP_EMPTY_JSON_BODY: 'malformed-json',
  FST_ERR_HANDLER_TIMEOUT: 'unavailable',
  FST_UNDER_PRESSURE: 'overloaded',
  COMPUTING_FULL: 'overloaded',
  COMPUTING_TIMED_OUT: 'overloaded',
  COMPUTING_CLOSED: 'shutting-down',
  HPE_HEADER_OVERFLOW: 'headers-too-large',
  ERR_HTTP_REQUEST_TIMEOUT: 'request-timeout',
};

const retrySoon = { 'retry-after': '2' };

/**
 * The problem as a reading request is told it: what breaks a rule there is a parameter, since there is no body.
 */
export function problemOfRead(problem: HttpProblem): HttpProblem {
  const { type, details } = problem;
  if (problemTypes[type].status !== 422) return problem;
  return new HttpProblem('invalid-parameter', { code: type, ...details });
}

/** Turns whatever was thrown into the one problem the caller is told. What nobody expected becomes `internal`. */
export function problemOf(error: unknown): HttpProblem {
  if (error instanceof HttpProblem) return error;
  if (error instanceof DomainError) {
    const { code, message, faults } = error;
    const type = errorProblems[code];
    return new HttpProblem(type, {
      code,
      detail: message,
      faults: [...faults],
      ...(type === 'idempotency-in-progress' ? { headers: { 'retry-after': '1' } } : {}),
    });
  }
  if (error instanceof JsonFault) return new HttpProblem('malformed-json', { code: error.code });
  if (isDatabaseAway(error)) return new HttpProblem('unavailable', { headers: retrySoon });
  const type = frameworkCodes[codeOf(error)];
  if (type === undefined) return new HttpProblem('internal');
  return new HttpProblem(type, isPassing(type) ? { headers: retrySoon } : {});
}

/** What may be over in a moment. */
const isPassing = (type: ProblemName): boolean =>
  type === 'unavailable' || type === 'overloaded' || type === 'shutting-down';

function codeOf(error: unknown): string {
  return typeof error === 'object' && error !== null && 'code' in error ? String(error.code) : '';
}
