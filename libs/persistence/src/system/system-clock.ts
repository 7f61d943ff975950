import { Clock } from '@endfloat/workshop/ports';

/** The machine's clock. */
export class SystemClock extends Clock {
  now(): string {
    return new Date().toISOString();
  }
}
