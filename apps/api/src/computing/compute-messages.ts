import { DomainError, type ErrorCode, type Fault } from '@endfloat/workshop';

/** What is sent to a thread. */
export interface ComputeTask {
  readonly name: string;
  readonly parts: readonly unknown[];
}

/** What was thrown, as data: classes do not travel between threads. */
export interface ThrownAsData {
  readonly name: string;
  readonly message: string;
  readonly stack: string | undefined;
  readonly refusal: { readonly code: ErrorCode; readonly faults: readonly Fault[] } | null;
}

/** What comes back. */
export type ComputeAnswer =
  /** everything is loaded; from now on it is computing that takes time */
  | { readonly kind: 'ready' }
  | { readonly kind: 'computed'; readonly value: unknown }
  | { readonly kind: 'thrown'; readonly thrown: ThrownAsData };

export function thrownAsData(error: unknown): ThrownAsData {
  const { name, message, stack } = error instanceof Error ? error : new Error(String(error));
  const refusal = error instanceof DomainError ? { code: error.code, faults: error.faults } : null;
  return { name, message, stack, refusal };
}

/** The error again, of the class it had where that matters to whoever catches it. */
export function thrownAgain({ name, message, stack, refusal }: ThrownAsData): Error {
  if (refusal !== null) return new DomainError(refusal.code, message, refusal.faults);
  const error =
    name === 'RangeError'
      ? new RangeError(message)
      : name === 'SyntaxError'
        ? new SyntaxError(message)
        : new Error(message);
  if (stack !== undefined) error.stack = stack;
  return error;
}
