import { dayNumber } from '../time/day-number.js';

/** What is done about an old part that a supplier wants back for its deposit. */
export const coreStepKinds = ['returned', 'inspected', 'accepted', 'refused', 'credited'] as const;
/** A kind of `coreStepKinds`. */
export type CoreStepKind = (typeof coreStepKinds)[number];

/** Where a core stands. `expired`: its day has passed and it was not sent back. */
export const coreStates = [
  'owed',
  'returned',
  'inspected',
  'accepted',
  'refused',
  'credited',
  'expired',
] as const;
/** A state of `coreStates`. */
export type CoreState = (typeof coreStates)[number];

/** One step, on a local day. */
export interface CoreStep {
  readonly kind: CoreStepKind;
  readonly on: string;
}

/** What may follow a state. A core that is sent back late may still be accepted: suppliers differ. */
const followers: Readonly<Record<CoreState, readonly CoreStepKind[]>> = {
  owed: ['returned'],
  expired: ['returned'],
  returned: ['inspected', 'accepted', 'refused'],
  inspected: ['accepted', 'refused'],
  accepted: ['credited'],
  refused: ['returned'],
  credited: [],
};

/** Where a core stands on a day, and what may come next. */
export interface CoreStanding {
  readonly state: CoreState;
  readonly since: string;
  readonly next: readonly CoreStepKind[];
  /** days to its last day; negative once it has passed; null without one, or once it was sent back */
  readonly daysLeft: number | null;
}

/**
 * Where a core stands on a day. The latest step decides; the steps are taken in the order given.
 *
 * @param core   the local day it has been owed since, and the last day to send it back (null: none)
 * @param steps  in the order in which they happened; none: `owed` or `expired`
 * @param today  local day
 * @returns state with what may follow; `expired` only while it was not sent back and the last day has passed
 * @throws RangeError on a day that is not one
 * @source common practice, no source; the states are those of the deposit: owed, returned, inspected, accepted or refused,
 *   credited, expired
 * @example coreStandingOn({ owedSince: '2026-01-01', returnBy: '2026-01-31' }, [], '2026-02-01').state // => 'expired'
 */
export function coreStandingOn(
  core: { readonly owedSince: string; readonly returnBy: string | null },
  steps: readonly CoreStep[],
  today: string,
): CoreStanding {
  for (const day of [core.owedSince, today, core.returnBy, ...steps.map(({ on }) => on)])
    if (day !== null) dayNumber(day);
  const last = steps.at(-1);
  if (last !== undefined)
    return { state: last.kind, since: last.on, next: followers[last.kind], daysLeft: null };
  if (core.returnBy === null)
    return { state: 'owed', since: core.owedSince, next: followers.owed, daysLeft: null };
  const daysLeft = dayNumber(core.returnBy) - dayNumber(today);
  return daysLeft < 0
    ? { state: 'expired', since: core.returnBy, next: followers.expired, daysLeft }
    : { state: 'owed', since: core.owedSince, next: followers.owed, daysLeft };
}
