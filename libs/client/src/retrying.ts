import type { HttpAnswer } from './http-exchange.js';

export interface RetryRules {
  /** attempts altogether; 1 sends once */
  readonly attempts: number;
  /** longest wait between two attempts; where the answer asks for a longer one, it is handed to the caller */
  readonly longestWaitMs: number;
}

const usualRetryRules: RetryRules = { attempts: 4, longestWaitMs: 30_000 };

/**
 * Rules with what is not given filled in: 4 attempts, 30 s.
 * @throws RangeError where attempts is no whole number from 1, or the wait is negative or no number
 */
export function retryRules(given: Partial<RetryRules> = {}): RetryRules {
  const rules = { ...usualRetryRules, ...given };
  if (!Number.isInteger(rules.attempts) || rules.attempts < 1)
    throw new RangeError(`attempts must be a whole number from 1, not ${String(rules.attempts)}`);
  if (!(rules.longestWaitMs >= 0))
    throw new RangeError(`longestWaitMs must be 0 or more, not ${String(rules.longestWaitMs)}`);
  return rules;
}

/** Seconds of a Retry-After field (RFC 9110 section 10.2.3: seconds or a date); null where there is none. */
export function retryAfterSeconds(answer: HttpAnswer, nowMs: number): number | null {
  const field = answer.headers.get('retry-after');
  if (field === null) return null;
  if (/^\d+$/.test(field)) return Number(field);
  const at = Date.parse(field);
  return Number.isNaN(at) ? null : Math.max(0, (at - nowMs) / 1000);
}

/**
 * Whether the same request may be sent again after this answer. 429 and 503 say that it had no effect, or that it is
 * not known; 409 with Retry-After says that the request with the same key is still being worked on.
 */
export function asksToWait(answer: HttpAnswer): boolean {
  if (answer.status === 409) return answer.headers.get('retry-after') !== null;
  return answer.status === 429 || answer.status === 503;
}

/** Doubling from a quarter of a second, for an answer that names no time and for no answer at all. */
export function usualWaitMs(attempt: number): number {
  return 250 * 2 ** (attempt - 1);
}
