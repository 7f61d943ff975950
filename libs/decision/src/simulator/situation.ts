import type { OptionAction, RenewingAction } from '../terms/option-actions.js';

/** Why a complaint was made; nobody in the workshop sees it. `fitting` is a fault left by the renewal before. */
export type ComplaintCause = 'other' | 'worn' | 'fitting';

/** As-found readings of one inspection, mm. */
export interface SimulatedInspection {
  /** distance since the part was fitted */
  readonly kmSinceFitted: number;
  readonly values: readonly number[];
}

/** What a workshop sees when it must decide. */
export interface Situation {
  readonly occasion: 'complaint' | 'serviceVisit';
  readonly position: number;
  readonly remainingKm: number;
  readonly serviceIntervalKm: number;
  /** of this complaint so far */
  readonly comebacks: number;
  /** those of them that came after adjusting, the part now fitted being the same */
  readonly comebacksOfAdjusting: number;
  /** of the part now fitted, oldest first, the present one last; further sets are inspections of their own */
  readonly inspections: readonly SimulatedInspection[];
  readonly isCriterionPositive: boolean;
  /** distance since the part was fitted, or since the van came in */
  readonly partKm: number;
  /** the renewal that came back, where its giver bears the part */
  readonly underWarranty: RenewingAction | null;
  readonly furtherSetTaken: boolean;
  /** fresh complaints about the part now fitted, distances since it was fitted, the present one left out */
  readonly earlierComplaintsKm: readonly number[];
}

/** The truth behind a situation. */
export interface Truth {
  readonly wear: number;
  readonly rate: number;
  readonly cause: ComplaintCause | null;
}

/** What is done, with the chance that the policy gives it to come back; null where it says none. */
export type Choice =
  | {
      readonly kind: 'act';
      readonly action: OptionAction;
      readonly predicted: number | null;
      /** 90 % interval of the distance until wear reaches the criterion; null is beyond the plan */
      readonly distance?: { readonly lowerKm: number | null; readonly upperKm: number | null };
    }
  | { readonly kind: 'measure' };

/** Decides for one van; may remember what it saw. */
export interface Decider {
  decide(situation: Situation, truth: Truth): Choice;
}
