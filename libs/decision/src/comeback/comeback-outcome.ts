import type { RepairContext } from './comeback-predictor.js';

/** How a released repair went, as far as its watch window has run. */
export type WatchOutcome =
  /** the same complaint came back inside the window */
  | { readonly kind: 'comeback' }
  /** the window has elapsed without it */
  | { readonly kind: 'held' }
  /** the window is running, or the vehicle was not seen since: nothing until this share of the window */
  | { readonly kind: 'running'; readonly shareOfWindow: number };

/** One released repair that may teach the comeback model. */
export interface ComebackOutcome {
  readonly context: RepairContext;
  /** Wear left in as share of the criterion and its standard uncertainty; null where it was not measured or is gone. */
  readonly wear: { readonly share: number; readonly standardUncertainty: number } | null;
  readonly outcome: WatchOutcome;
}
