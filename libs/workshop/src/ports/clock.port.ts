/** The time. Injected, so that history can be made under a clock of its own and tests know what time it is. */
export abstract class Clock {
  /** RFC 3339 instant in UTC with milliseconds, e.g. 2031-05-04T09:30:00.000Z */
  abstract now(): string;
}
