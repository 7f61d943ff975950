/** A two-sided interval; both ends belong to it. */
export interface Interval {
  readonly lower: number;
  readonly upper: number;
}
