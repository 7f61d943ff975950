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
    ...(detail === undefined || status === 500 ? {} : { detail: detail.slice(0, 1000) }),
    instance: instance.slice(0, 2048),
    traceId,
    ...(faults.length === 0 ? {} : { errors: faults.slice(0, 100).map(withinLimits) }),
  };
}

function withinLimits({ pointer, rule, detail }: { pointer: string; rule: string; detail: string }) {
  return { pointer: pointer.slice(0, 512), rule: rule.slice(0, 64), detail: detail.slice(0, 2000) };
}
