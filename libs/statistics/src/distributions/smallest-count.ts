/**
 * Smallest whole number k in [0, most] whose distribution function reaches the probability, by doubling steps from a
 * guess and then halving. A relative slack of 1e-14 keeps an exactly met probability from slipping one step up.
 */
export function smallestCount(
  probability: number,
  guess: number,
  most: number,
  cdf: (k: number) => number,
): number {
  const reached = (k: number): boolean => cdf(k) >= probability * (1 - 1e-14);
  let upper = Math.min(most, Math.max(0, Math.floor(guess)));
  let lower = -1;
  if (reached(upper)) {
    for (let step = 1; upper - step >= 0; step *= 2) {
      if (!reached(upper - step)) {
        lower = upper - step;
        break;
      }
      upper -= step;
    }
  } else {
    lower = upper;
    for (let step = 1; ; step *= 2) {
      upper = Math.min(most, lower + step);
      if (upper === most || reached(upper)) break;
      lower = upper;
    }
  }
  while (upper - lower > 1) {
    const middle = Math.floor((lower + upper) / 2);
    if (reached(middle)) upper = middle;
    else lower = middle;
  }
  return upper;
}
