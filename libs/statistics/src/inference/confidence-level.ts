/** Refuses a level of confidence or coverage that is not strictly between 0 and 1. */
export function requireLevel(name: string, level: number): void {
  if (!(level > 0 && level < 1)) {
    throw new RangeError(`${name} must lie strictly between 0 and 1, got ${level}`);
  }
}

/** Probability below the upper limit of a two-sided interval, (1 + level) / 2, after checking the level. */
export function upperProbability(level: number): number {
  requireLevel('confidence', level);
  return 0.5 + level / 2;
}

/** Probability left out on each side of a two-sided interval, (1 − level) / 2, after checking the level. */
export function tailProbability(level: number): number {
  requireLevel('confidence', level);
  return (1 - level) / 2;
}
