/** What is done about a claim on a supplier. */
export const claimStepKinds = ['sent', 'accepted', 'refused', 'settled', 'withdrawn'] as const;
/** A kind of `claimStepKinds`. */
export type ClaimStepKind = (typeof claimStepKinds)[number];

/** Where a claim stands. */
export const claimStates = ['open', ...claimStepKinds] as const;
/** A state of `claimStates`. */
export type ClaimState = (typeof claimStates)[number];

const followers: Readonly<Record<ClaimState, readonly ClaimStepKind[]>> = {
  open: ['sent', 'withdrawn'],
  sent: ['accepted', 'refused', 'withdrawn'],
  accepted: ['settled'],
  refused: ['sent', 'withdrawn'],
  settled: [],
  withdrawn: [],
};

/** Where a claim stands, and what may come next. */
export interface ClaimStanding {
  readonly state: ClaimState;
  readonly next: readonly ClaimStepKind[];
  /** nothing has been decided for good yet */
  readonly isOpen: boolean;
}

/**
 * Where a claim stands after its steps: the last one decides, their order is not checked. A refused claim may be sent
 * again, with better evidence.
 *
 * @param steps  in the order in which they happened; none: `open`
 * @returns state and what may follow
 * @source common practice, no source
 * @example claimStandingAfter(['sent', 'accepted']).next // => ['settled']
 */
export function claimStandingAfter(steps: readonly ClaimStepKind[]): ClaimStanding {
  const state = steps.at(-1) ?? 'open';
  return { state, next: followers[state], isOpen: state !== 'settled' && state !== 'withdrawn' };
}
