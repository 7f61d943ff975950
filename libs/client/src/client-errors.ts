import type * as Schemas from './document/schemas.js';

/** The interface refused: what is wrong, where, and what to do stands in `problem` (RFC 9457). */
export class ProblemError extends Error {
  override readonly name = 'ProblemError';

  constructor(
    readonly problem: Schemas.Problem,
    /** seconds after which to ask again, where the answer names them */
    readonly retryAfterSeconds: number | null,
  ) {
    super(
      [
        `${problem.title} (${String(problem.status)} ${problem.code}): ${problem.detail ?? problem.instance}`,
        ...(problem.errors ?? []).map(({ pointer, detail }) => `${pointer}: ${detail}`),
      ].join('\n'),
    );
  }

  get status(): number {
    return this.problem.status;
  }

  /** Exact reason; stable. */
  get code(): string {
    return this.problem.code;
  }

  /** Name of the type: the end of its address, e.g. `version-mismatch`. */
  get type(): string {
    return this.problem.type.split('/').at(-1) ?? '';
  }

  /** What is wrong, member by member. */
  get faults(): readonly Schemas.ProblemFault[] {
    return this.problem.errors ?? [];
  }
}

/** The answer is none of the interface's, for example that of a proxy in between. */
export class UnexpectedAnswerError extends Error {
  override readonly name = 'UnexpectedAnswerError';

  constructor(
    readonly status: number,
    /** the beginning of the body */
    readonly text: string,
  ) {
    super(`The answer with status ${String(status)} is none of the interface: ${text}`);
  }
}
