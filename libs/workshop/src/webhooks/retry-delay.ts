/**
 * Seconds from one failed attempt to the next, as the Standard Webhooks recommend: ten attempts in a little over three
 * days.
 */
export const retrySeconds = [5, 300, 1800, 7200, 18_000, 36_000, 50_400, 72_000, 86_400] as const;

const longestWish = 86_400;
const mostJitter = 0.2;

/**
 * Seconds until a delivery is tried again.
 *
 * @param attempts attempts that failed, from 1
 * @param chance number from 0 up to, not including, 1: it only makes the wait longer, by a fifth at most, so that
 *   receivers that come back are not met by everybody at once
 * @param wish seconds the receiver asked for; null where it did not. Never shortens the wait, and counts up to a day
 * @returns undefined where it is not tried again
 * @throws RangeError for a chance outside its range or a count below 1
 * @source Standard Webhooks 1.0.0, "Deliverability and reliability"; the jitter is a judgement
 * @example retryDelay(2, 0.5, null) // => 330
 */
export function retryDelay(attempts: number, chance: number, wish: number | null): number | undefined {
  if (!Number.isInteger(attempts) || attempts < 1) throw new RangeError('attempts are counted from 1');
  if (!(chance >= 0 && chance < 1)) throw new RangeError('chance is at least 0 and less than 1');
  const planned = retrySeconds[attempts - 1];
  if (planned === undefined) return undefined;
  const wished = wish === null ? 0 : Math.min(Math.max(0, wish), longestWish);
  return Math.max(planned * (1 + mostJitter * chance), wished);
}
