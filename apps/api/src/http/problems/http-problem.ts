import type { ProblemFault } from '@endfloat/contracts';
import type { ProblemName } from './problem-types.js';

export interface ProblemDetails {
  /** Exact reason within the type; the name of the type unless told. */
  readonly code?: string;
  readonly detail?: string;
  readonly faults?: readonly ProblemFault[];
  /** Header fields that go with the answer, such as Retry-After. */
  readonly headers?: Readonly<Record<string, string>>;
}

/** A refusal of the HTTP shell itself. Everything else that is thrown is turned into one by `problemOf`. */
export class HttpProblem extends Error {
  constructor(
    readonly type: ProblemName,
    readonly details: ProblemDetails = {},
  ) {
    super(details.detail ?? type);
    this.name = 'HttpProblem';
  }
}
