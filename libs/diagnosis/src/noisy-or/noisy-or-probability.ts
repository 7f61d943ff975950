/**
 * Probability that a finding shows when several causes may be present: each present cause fails to produce it
 * independently, and the leak stands for everything that is not on the list.
 *
 * @param leak  probability that the finding shows with no listed cause present
 * @param strengths  probability that the cause alone would produce it, one for each cause present
 * @returns 1 - (1 - leak) x product of (1 - strength); the leak for no cause
 * @throws RangeError on a value outside 0 to 1
 * @source Pearl (1988), Probabilistic Reasoning in Intelligent Systems, section 4.3.2
 * @oracle fever table of Russell & Norvig, Artificial Intelligence: a Modern Approach
 * @example noisyOrProbability(0, [0.5, 0.5]) // => 0.75
 */
export function noisyOrProbability(leak: number, strengths: readonly number[]): number {
  let fails = 1 - leak;
  for (const value of [leak, ...strengths]) {
    if (!(value >= 0 && value <= 1)) throw new RangeError('leak and strengths must lie between 0 and 1');
  }
  for (const strength of strengths) fails *= 1 - strength;
  return 1 - fails;
}
