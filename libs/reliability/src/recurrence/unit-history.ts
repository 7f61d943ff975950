/** When one vehicle (or part position) was watched, and when something recurred; ages in one unit, days or km. */
export interface UnitHistory {
  /** stretches in which a recurrence would have been seen: open at the start (but for age 0), closed at the end */
  readonly spans: readonly { readonly from: number; readonly until: number }[];
  readonly eventAges: readonly number[];
}
