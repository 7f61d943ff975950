/** Too little data for the estimate: `needed` of what `of` names, `got` of them were given. */
export interface InsufficientData {
  readonly kind: 'insufficientData';
  readonly of: string;
  readonly needed: number;
  readonly got: number;
}

/** An iteration that ended before its criterion was met; no estimate is given. */
export interface NotConverged {
  readonly kind: 'notConverged';
  readonly iterations: number;
  readonly reason: string;
}

/** How an iteration ended that did meet its criterion. */
export interface Convergence {
  readonly iterations: number;
  /** What the last step would still have gained, in the units of the criterion. */
  readonly remaining: number;
}

/** The outcome of too little data. */
export function insufficientData(of: string, needed: number, got: number): InsufficientData {
  return { kind: 'insufficientData', of, needed, got };
}
