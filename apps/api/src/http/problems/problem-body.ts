import type { Problem } from '@endfloat/contracts';
import type { HttpProblem } from './http-problem.js';
import { problemAddress, problemTypes } from './problem-types.js';

export const problemMediaType = 'application/problem+json';

/** The body of a refusal. An internal error tells nothing but where to find it in the log. */
export function problemBody(problem: HttpProblem, instance: string, traceId: string): Problem {
  const { type, details } = problem;
  const { status, title } = problemTypes[type];
  const { code = type, detail, faults = [] } = details;
  return {
    type: problemAddress(type),
    title,
    status,
    code,
    ...(detail === undefined || status === 500 ? {} : { detail: printable(detail.slice(0, 1000)) }),
    instance: instance.slice(0, 2048),
    traceId,
    ...(faults.length === 0 ? {} : { errors: faults.slice(0, 100).map(withinLimits) }),
  };
}

function withinLimits({ pointer, rule, detail }: { pointer: string; rule: string; detail: string }) {
  return {
    pointer: printable(pointer.slice(0, 512)),
    rule: rule.slice(0, 64),
    detail: printable(detail.slice(0, 2000)),
  };
}

/** A refusal may quote a name that was sent; what no text of ours may hold is not sent back. */
function printable(text: string): string {
  return text.replace(/[\u0000-\u001F\u007F-\u009F\u2028\u2029\uD800-\uDFFF]/gu, '\uFFFD');
}
