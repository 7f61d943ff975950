/** What a ranking sorts by. */
export interface RankedByValue {
  readonly id: string;
  readonly minutes: number;
  readonly valuePerMinute: number;
}

/** Values that differ in the last digits only are the same on every machine. */
const rounded = (value: number): number => Number(value.toPrecision(12));

/** Highest value per minute first; ties by fewer minutes, then by id. */
export function compareByValue(a: RankedByValue, b: RankedByValue): number {
  return (
    rounded(b.valuePerMinute) - rounded(a.valuePerMinute) ||
    a.minutes - b.minutes ||
    (a.id < b.id ? -1 : a.id > b.id ? 1 : 0)
  );
}
