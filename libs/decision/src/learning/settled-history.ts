import type { ComebackOutcome } from '../comeback/comeback-outcome.js';
import type { RenewingAction } from '../terms/option-actions.js';

/** As-found readings of one inspection: mean as share of the criterion, and its standard uncertainty in the same shares. */
export interface WearPoint {
  readonly kmSinceFitted: number;
  readonly share: number;
  readonly standardUncertainty: number;
}

/** One part from the day it was fitted (or first seen) to its removal, or to the last time the vehicle was seen. */
export interface SettledPart {
  /** how it came; null: it was found on the vehicle */
  readonly action: RenewingAction | null;
  /** distance watched, from 0 at the fitting or the first sight */
  readonly watchedKm: number;
  readonly inspections: readonly WearPoint[];
  /** validly judged functional criterion */
  readonly criterion: readonly { readonly kmSinceFitted: number; readonly isPositive: boolean }[];
  /** complaints the part may be to blame for; comebacks of a repair are not counted again */
  readonly complaintsKm: readonly number[];
}

/** One delivery: what was promised, what it took. */
export interface SettledDelivery {
  readonly supplierId: string;
  readonly promisedDays: number;
  readonly actualDays: number;
}

/** Everything tables are learned from. Who is counted is decided outside; nothing is learned from what is not in here. */
export interface SettledHistory {
  readonly parts: readonly SettledPart[];
  readonly repairs: readonly ComebackOutcome[];
  readonly deliveries: readonly SettledDelivery[];
}
