import { Clock, Fingerprint, IdSource } from '@endfloat/workshop';
import { hashOf } from './people.js';
import type { SeededRandom } from './seeded-random.js';

/** The clock under which history is made: it stands where the story stands, so recorded times are those of the story. */
export class HistoryClock extends Clock {
  constructor(private instant: string) {
    super();
  }

  now(): string {
    return this.instant;
  }

  moveTo(instant: string): void {
    if (instant < this.instant)
      throw new RangeError(`history goes forward: ${instant} lies before ${this.instant}`);
    this.instant = instant;
  }

  /** Moves on by minutes and answers where it then stands. */
  after(minutes: number): string {
    this.instant = new Date(Date.parse(this.instant) + minutes * 60_000).toISOString();
    return this.instant;
  }
}

/** UUIDs of version 7 whose time is that of the story and whose rest follows from the seed. */
export class SeededIds extends IdSource {
  constructor(
    private readonly random: SeededRandom,
    private readonly clock: Clock,
  ) {
    super();
  }

  next(): string {
    const time = Date.parse(this.clock.now()).toString(16).padStart(12, '0');
    const digits = (count: number): string =>
      Array.from({ length: count }, () => Math.floor(this.random.next() * 16).toString(16)).join('');
    const variant = '89ab'[Math.floor(this.random.next() * 4)] ?? '8';
    return `${time.slice(0, 8)}-${time.slice(8)}-7${digits(3)}-${variant}${digits(3)}-${digits(12)}`;
  }
}

/** SHA-256 as everywhere else in Endfloat, so that what the demo assessed can be compared and replayed. */
export class HashFingerprint extends Fingerprint {
  of(text: string): string {
    return hashOf(text);
  }
}
