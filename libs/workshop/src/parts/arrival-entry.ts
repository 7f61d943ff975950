import type { PartCondition } from '@endfloat/catalogue';
import type { ReadingEntry } from '../bench/entered-reading.js';

/** What a person enters about a part that has arrived; the readings are judged by the sheet. */
export interface ArrivalEntry {
  readonly inspectedAt: string;
  readonly serial: string | null;
  readonly condition: PartCondition;
  readonly readings: readonly ReadingEntry[];
  readonly note: string | null;
}
