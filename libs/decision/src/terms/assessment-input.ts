import type { Money, VerdictOutcome } from '@endfloat/metrology';
import type { LearnedTables } from '../tables/learned-tables.js';
import type { OptionAction } from './option-actions.js';
import type { OptionTerms } from './option-terms.js';

/** Why the decision is asked for: a complaint is to be cured, or wear was met at a planned visit. */
export const assessmentOccasions = ['complaint', 'serviceVisit'] as const;

/** An occasion of `assessmentOccasions`. */
export type AssessmentOccasion = (typeof assessmentOccasions)[number];

/** Which way a characteristic goes as it wears. */
export const wearDirections = ['up', 'down'] as const;

/** A direction of `wearDirections`. */
export type WearDirection = (typeof wearDirections)[number];

/** The characteristic that wears; all sizes in `unit`. */
export interface WearingCharacteristic {
  readonly characteristicId: string;
  readonly unit: string;
  readonly direction: WearDirection;
  /** Size of a part without wear: 0 for a clearance, the full thickness for a lining. */
  readonly unwornSize: number;
  /** Size at which the component stops doing its work, e.g. the play that operates the switch. */
  readonly criterionSize: number;
}

/** An earlier inspection of the part that is fitted now: mean of its as-found readings. */
export interface EarlierInspection {
  /** distance from it to the present one, 0 or more; 0 is another set of readings on the same occasion */
  readonly kmBefore: number;
  readonly value: number;
  readonly standardUncertainty: number;
}

/**
 * Wear of the part that is fitted now, from the as-found readings.
 *
 * With `earlier` (empty where the present inspection is the first) wear and rate are believed together from the whole
 * history, and a `wearRate` sent along is told as a reason only; without it the rate is the `wearRate`'s.
 */
export type WearNow =
  | {
      readonly kind: 'measured';
      readonly value: number;
      readonly standardUncertainty: number;
      readonly count: number;
      /** Verdict against the wear limit. */
      readonly verdict: VerdictOutcome | 'notJudged';
      readonly earlier?: readonly EarlierInspection[];
      readonly evidence: readonly string[];
    }
  | { readonly kind: 'contradictory'; readonly evidence: readonly string[] }
  | { readonly kind: 'notMeasured' };

/** Mean wear rate of the part that is fitted now, unit per 1000 km, wear counted positive in either direction. */
export type WearRate =
  | {
      readonly kind: 'estimated';
      readonly perThousandKm: number;
      readonly standardError: number;
      readonly points: number;
      readonly evidence: readonly string[];
    }
  | { readonly kind: 'insufficientData'; readonly needed: number; readonly got: number };

/** The yes/no behaviour that outranks any number. */
export type FunctionalCriterion =
  | {
      readonly kind: 'positive' | 'negative';
      /** Validly judged; a negative taken before the switch was in its window is provisional and not valid. */
      readonly isValid: boolean;
      readonly evidence: readonly string[];
    }
  | { readonly kind: 'notDone' };

/** A dangerous finding, and the actions that remove it. */
export interface SafetyFinding {
  readonly findingId: string;
  readonly curedBy: readonly OptionAction[];
  readonly evidence: readonly string[];
}

/** What is known of this part and this complaint; ids are opaque and come back with the reasons. */
export interface AssessmentEvidence {
  readonly wearNow: WearNow;
  readonly wearRate: WearRate;
  readonly functionalCriterion: FunctionalCriterion;
  readonly earlierComebacks: { readonly count: number; readonly evidence: readonly string[] };
  readonly safetyFindings: readonly SafetyFinding[];
}

/** Prices of the shop and of this customer; null is unknown, never zero. */
export interface AssessmentRates {
  readonly labourPerHour: Money | null;
  readonly downtimePerDay: Money | null;
  readonly comebackHandling: Money | null;
  /** A later complaint, before anything is repaired: diagnosis and the days it takes. */
  readonly laterComplaint: { readonly labourHours: number; readonly downtimeDays: number };
}

/** One more set of readings, if it can be had. */
export type FurtherReadings =
  | {
      readonly kind: 'available';
      readonly count: number;
      /** Uncertainty of the mean of the new set without what it has in common with the first (instrument bias). */
      readonly standardUncertainty: number;
      readonly labourHours: number;
      /** True once they were offered and declined, or taken: then they no longer hold up a replacement. */
      readonly wereOffered: boolean;
    }
  | { readonly kind: 'notAvailable' };

/** What the customer has said so far. */
export interface ConsentTerms {
  readonly declinedActions: readonly OptionAction[];
  /** Amount for parts and labour not to be exceeded without a new consent; null where none was agreed. */
  readonly ceiling: Money | null;
  readonly evidence: readonly string[];
}

/** Everything an assessment depends on. Equal inputs give equal answers. */
export interface AssessmentInput {
  readonly characteristic: WearingCharacteristic;
  readonly occasion: AssessmentOccasion;
  readonly currency: string;
  /** Distance the owner still wants to drive; 0 looks at the present repair only. */
  readonly planningDistanceKm: number;
  /** Distance after which a repair without comeback counts as held. */
  readonly watchWindowKm: number;
  /** Distance between planned visits; null where there are none. */
  readonly serviceIntervalKm: number | null;
  /** False where the vehicle stands still until the part has come. */
  readonly isUsableWhileWaiting: boolean;
  readonly evidence: AssessmentEvidence;
  readonly rates: AssessmentRates;
  readonly options: readonly OptionTerms[];
  readonly furtherReadings: FurtherReadings;
  readonly consent: ConsentTerms;
  readonly tables: LearnedTables;
  /** Whole number from 0 to 4294967295; the draws behind the intervals start from it. */
  readonly seed: number;
}
