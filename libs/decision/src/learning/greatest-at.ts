/**
 * Where a function of one variable is greatest, for one that rises and then falls.
 *
 * @param value  the function
 * @param low    lower end
 * @param high   upper end
 * @returns place within a ten-thousandth of the range
 * @source golden section search: Kiefer (1953), Proc. Amer. Math. Soc. 4:502-506
 */
export function greatestAt(value: (x: number) => number, low: number, high: number): number {
  const ratio = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [low, high];
  let x = b - ratio * (b - a);
  let y = a + ratio * (b - a);
  let [atX, atY] = [value(x), value(y)];
  while (b - a > 1e-4 * (high - low)) {
    if (atX >= atY) {
      b = y;
      [y, atY] = [x, atX];
      x = b - ratio * (b - a);
      atX = value(x);
    } else {
      a = x;
      [x, atX] = [y, atY];
      y = a + ratio * (b - a);
      atY = value(y);
    }
  }
  return (a + b) / 2;
}

/** Search in several variables, one after the other, a few rounds. */
export function greatestBySteps(
  value: (at: readonly number[]) => number,
  start: readonly number[],
  reach: readonly number[],
  rounds: number,
): readonly number[] {
  let at = [...start];
  for (let round = 0; round < rounds; round += 1) {
    at.forEach((centre, k) => {
      const width = reach[k]! / (1 + round);
      const best = greatestAt((x) => value(at.with(k, x)), centre - width, centre + width);
      if (value(at.with(k, best)) > value(at)) at = at.with(k, best);
    });
  }
  return at;
}
