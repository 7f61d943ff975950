/** One point of the proof road test. A point not driven is "not tested", never "passed". */
export interface RoadTestPoint {
  readonly id: string;
  readonly title: string;
  readonly whatToDo: string;
  readonly passWhen: string;
  /** what the point shows to work */
  readonly proves: string;
  /** complaints whose job stays open until this point has passed */
  readonly mandatoryFor: readonly string[];
  /** left out on vehicles without the equipment; the reason is recorded */
  readonly whereFitted: boolean;
}
