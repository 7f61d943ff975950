import type { Clock } from '../ports/clock.port.js';
import type { Stamp } from '../ports/record-store.port.js';
import type { Caller } from '../ports/roles.js';

/** Now, by this caller, and why where that is asked for. */
export function stampOf(clock: Clock, caller: Caller, reason?: string): Stamp {
  return { at: clock.now(), by: caller.userId, ...(reason === undefined ? {} : { reason }) };
}
