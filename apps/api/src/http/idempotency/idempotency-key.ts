import { HttpProblem } from '../problems/http-problem.js';
import { withRules, type RouteRules } from '../requests/route-rules.js';

/** Pattern of the header field in the document: visible ASCII, as it is or as a string of structured fields. */
export const keyPattern = '^[\\u0021-\\u007E]{1,255}$';
const bare = /^[\u0021\u0023-\u007E][\u0021-\u007E]{0,254}$/;
/** A string of structured fields (RFC 9651 section 3.3.3) without spaces. */
const quoted = /^"((?:[\u0021\u0023-\u005B\u005D-\u007E]|\\["\\]){1,255})"$/;

/**
 * Reads Idempotency-Key: 1 to 255 visible ASCII characters, either bare or as a string of structured fields, as the
 * IETF draft has it; `abc` and `"abc"` are the same key.
 *
 * @throws HttpProblem `invalid-parameter`
 */
export function readIdempotencyKey(header: string | readonly string[]): string {
  if (typeof header === 'string') {
    if (bare.test(header)) return header;
    const inner = quoted.exec(header)?.[1];
    if (inner !== undefined) return inner.replace(/\\(["\\])/g, '$1');
  }
  throw new HttpProblem('invalid-parameter', {
    faults: [
      {
        pointer: '/Idempotency-Key',
        rule: 'pattern',
        detail: 'must be one key of 1 to 255 visible ASCII characters, without spaces',
      },
    ],
  });
}

/** The route creates something that sending twice would make twice: a key is needed where the body brings no id. */
export const NeedsIdempotencyKey = (): MethodDecorator => withRules({ needsIdempotencyKey: true });

/** Whether a route gives the first answer again to a request with a key: every POST whose body is read as a whole. */
export function takesKey(method: string, rules: Partial<RouteRules> | undefined): boolean {
  return method === 'POST' && rules?.consumes === undefined && rules?.access !== 'public';
}
