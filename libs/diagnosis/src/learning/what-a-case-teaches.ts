import type { ClosedCase, WindowStanding } from './closed-case.js';

/** Why a case teaches nothing, now or ever. */
export const notTaughtReasons = [
  'causeNotEstablished',
  'windowRunning',
  'notSeenSince',
  'comebackNotDecided',
  'comebackWithoutAnotherCause',
  'countedWithOriginal',
  'unknownCause',
  'repeatedCase',
] as const;
export type NotTaughtReason = (typeof notTaughtReasons)[number];

export type Teaching =
  | { readonly kind: 'teaches'; readonly causeId: string; readonly becauseOfComeback: boolean }
  | { readonly kind: 'teachesNothing'; readonly reason: NotTaughtReason };

const nothing = (reason: NotTaughtReason): Teaching => ({ kind: 'teachesNothing', reason });

function byWindow(window: WindowStanding, causeId: string, becauseOfComeback: boolean): Teaching {
  if (window === 'running') return nothing('windowRunning');
  if (window === 'notSeenSince') return nothing('notSeenSince');
  return { kind: 'teaches', causeId, becauseOfComeback };
}

/**
 * Which cause a closed job teaches. A confirmed cause teaches once its window has elapsed without a comeback. A confirmed
 * comeback that establishes another cause teaches that cause, with the symptoms and checks of the original job; one that
 * establishes none, or the same cause again, teaches nothing. "Cause not established" never teaches.
 *
 * @param closed  the case
 * @returns the cause it teaches, or why it teaches nothing
 */
export function whatACaseTeaches(closed: ClosedCase): Teaching {
  if (closed.comebackOf !== null) return nothing('countedWithOriginal');
  const { comeback, confirmedCauseId } = closed;
  if (comeback.kind === 'proposed') return nothing('comebackNotDecided');
  if (comeback.kind === 'confirmed') {
    const other = comeback.establishedCauseId;
    if (other === null || other === confirmedCauseId) return nothing('comebackWithoutAnotherCause');
    return byWindow(comeback.window, other, true);
  }
  if (confirmedCauseId === null) return nothing('causeNotEstablished');
  return byWindow(closed.window, confirmedCauseId, false);
}
