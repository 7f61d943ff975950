import { invalidInput } from '../errors/domain.errors.js';

/** How far a client's clock may be ahead of ours before what it says is taken for a mistake. */
const toleratedAheadMs = 5 * 60 * 1000;

/** Refuses a fact that is said to have happened in the future. */
export function refuseFuture(happenedAt: string, now: string, pointer: string): void {
  if (Date.parse(happenedAt) - Date.parse(now) > toleratedAheadMs) {
    throw invalidInput(
      pointer,
      'notInFuture',
      'This moment lies in the future. Check the date and the offset from UTC.',
    );
  }
}
