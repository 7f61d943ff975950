/** So many requests in so many seconds. */
export interface RatePolicy {
  readonly name: string;
  readonly requests: number;
  readonly seconds: number;
}

/** Where a key stands after one more request. */
export interface RateStanding {
  readonly isAdmitted: boolean;
  readonly remaining: number;
  /** Seconds until the window begins anew. */
  readonly reset: number;
}

const mostKeys = 50_000;

/** Counts requests per key in windows that begin with a key's first request; in the memory of this process. */
export class RateLimiter {
  private readonly windows = new Map<string, { count: number; endsAt: number }>();

  /** @param now  monotonic milliseconds */
  constructor(
    readonly policy: RatePolicy,
    private readonly now: () => number = () => performance.now(),
  ) {}

  /** Counts one request. */
  take(key: string): RateStanding {
    const { requests } = this.policy;
    const window = this.windowOf(key);
    if (window.count < requests) window.count += 1;
    else return { isAdmitted: false, remaining: 0, reset: this.secondsTo(window.endsAt) };
    return { isAdmitted: true, remaining: requests - window.count, reset: this.secondsTo(window.endsAt) };
  }

  /** Whether the key has used up its window; counts nothing. */
  isSpent(key: string): boolean {
    const window = this.windows.get(key);
    return window !== undefined && window.endsAt > this.now() && window.count >= this.policy.requests;
  }

  private windowOf(key: string): { count: number; endsAt: number } {
    const now = this.now();
    const known = this.windows.get(key);
    if (known !== undefined && known.endsAt > now) return known;
    this.windows.delete(key);
    if (this.windows.size >= mostKeys) this.makeRoom(now);
    const begun = { count: 0, endsAt: now + this.policy.seconds * 1000 };
    this.windows.set(key, begun);
    return begun;
  }

  /** Windows all last equally long, so the oldest stand first. */
  private makeRoom(now: number): void {
    for (const [key, { endsAt }] of this.windows) {
      if (endsAt > now && this.windows.size < mostKeys) return;
      this.windows.delete(key);
    }
  }

  private secondsTo(endsAt: number): number {
    return Math.max(1, Math.ceil((endsAt - this.now()) / 1000));
  }
}
