/** Chance that is the same every time: a 32-bit generator (mulberry32) with a few shapes on top. */
export class SeededRandom {
  private state: number;

  constructor(seed: number) {
    this.state = seed >>> 0;
  }

  /** uniform in [0, 1) */
  next(): number {
    this.state = (this.state + 0x6d2b79f5) >>> 0;
    let t = this.state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  }

  between(low: number, high: number): number {
    return low + (high - low) * this.next();
  }

  whole(low: number, high: number): number {
    return Math.floor(this.between(low, high + 1));
  }

  happens(probability: number): boolean {
    return this.next() < probability;
  }

  pick<T>(values: readonly T[]): T {
    const value = values[Math.floor(this.next() * values.length)];
    if (value === undefined) throw new RangeError('nothing to pick from');
    return value;
  }

  /** normal, by the sum of twelve uniforms: good enough for invented readings */
  normal(mean: number, deviation: number): number {
    let sum = -6;
    for (let i = 0; i < 12; i += 1) sum += this.next();
    return mean + deviation * sum;
  }
}
