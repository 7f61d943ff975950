import type { Money } from '@endfloat/metrology';
import type { OptionAction } from './option-actions.js';
import type { GuardCode, PricingProblemCode, ReasonCode } from './reason-codes.js';

/** A number for people: decimal text with its unit; '1' for a pure number. */
export interface ReportedValue {
  readonly value: string;
  readonly unit: string;
}

/** A stable code, the values that go into its words, and the records behind it. */
export interface Reason {
  readonly code: ReasonCode;
  readonly optionId: string | null;
  readonly values: Readonly<Record<string, ReportedValue>>;
  readonly evidence: readonly string[];
}

/** A hard limit that bears on an option (null: on all). */
export interface GuardFinding {
  readonly code: GuardCode;
  readonly optionId: string | null;
  readonly evidence: readonly string[];
}

/** 5 % and 95 % points. */
export interface MoneyInterval {
  readonly lower: Money;
  readonly upper: Money;
}

/** 5 % and 95 % points of a share. */
export interface ShareInterval {
  readonly lower: number;
  readonly upper: number;
}

/** Components of an expected cost; they add up to it. */
export interface CostComponents {
  readonly parts: Money;
  readonly labour: Money;
  readonly downtime: Money;
  readonly coreDepositAtRisk: Money;
  /** handling, second downtime, and the repair that then becomes necessary, times their chance */
  readonly comeback: Money;
  /** complaints and repairs after the watch window, up to the planning distance */
  readonly wearToCome: Money;
}

/** One option with its cost in the end. */
export interface PricedOption {
  readonly kind: 'priced';
  readonly optionId: string;
  readonly action: OptionAction;
  /** The cheapest of its offers in the end; null where the option takes no part. */
  readonly offerId: string | null;
  /** False where a guard removes it; its cost is shown all the same. */
  readonly isAdmissible: boolean;
  readonly removedBy: readonly GuardCode[];
  readonly expectedCost: Money;
  readonly components: CostComponents;
  /** Doubt about the parameters: 90 % interval of the expected cost. */
  readonly expectedCostInterval: MoneyInterval;
  /** Chance that this option has the least expected cost of the admissible ones; null where it is not admissible. */
  readonly probabilityOfBeingCheapest: number | null;
  /** Spread of outcomes, apart from the doubt: what single vehicles will cost around the expected cost. */
  readonly outcomes: {
    readonly standardDeviation: Money;
    readonly withoutComeback: Money;
    readonly withComeback: Money;
  };
  readonly comeback: { readonly probability: number; readonly interval: ShareInterval };
  /** Mean days from order to arrival; null where no part is ordered. */
  readonly leadTimeDays: number | null;
  readonly wear: {
    /** Mean wear just after the work, in the characteristic's size. */
    readonly startSize: ReportedValue;
    readonly meanRate: ReportedValue;
    /** Chance that wear reaches the criterion before the planning distance, nothing more being done. */
    readonly probabilityOfReachingCriterion: number;
  };
  /** Other offers of the same option, dearer in the end, and those that cannot be priced. */
  readonly otherOffers: readonly OtherOffer[];
}

/** An offer that was not taken. */
export type OtherOffer =
  | { readonly kind: 'priced'; readonly offerId: string; readonly expectedCost: Money }
  | {
      readonly kind: 'cannotBePriced';
      readonly offerId: string;
      readonly problems: readonly PricingProblem[];
    };

/** What is missing or wrong, and where. */
export interface PricingProblem {
  readonly code: PricingProblemCode;
  /** Offer id or name of the member; null where it is the option itself. */
  readonly at: string | null;
}

/** An option without cost, and why. */
export interface UnpricedOption {
  readonly kind: 'cannotBePriced';
  readonly optionId: string;
  readonly action: OptionAction;
  readonly removedBy: readonly GuardCode[];
  readonly problems: readonly PricingProblem[];
}

/** Cost, or why there is none. */
export type OptionAssessment = PricedOption | UnpricedOption;

/** What to do. */
export type Recommendation =
  | { readonly kind: 'recommended'; readonly optionId: string; readonly consentNeeded: boolean }
  /** The first named is cheapest by a hair; a person may take any of them. */
  | { readonly kind: 'closeCall'; readonly optionIds: readonly string[]; readonly consentNeeded: boolean }
  /** Offer further readings first; `optionId` is what would be done without them. */
  | { readonly kind: 'measureFirst'; readonly optionId: string; readonly readings: number }
  | { readonly kind: 'none'; readonly why: 'noOptions' | 'nothingPriced' | 'nothingAdmissible' };

/** What a flip point is a value of. */
export const flipQuantities = [
  'wearNow',
  'price',
  'leadTime',
  'downtimeCost',
  'comebackProbability',
] as const;

/** A quantity of `flipQuantities`. */
export type FlipQuantity = (typeof flipQuantities)[number];

/** The value of one input at which another option becomes the cheapest admissible one, all else as it is. */
export type FlipPoint = {
  readonly quantity: FlipQuantity;
  /** The option whose price, lead time or comeback probability is meant; null for the others. */
  readonly optionId: string | null;
  readonly now: ReportedValue;
} & (
  | { readonly kind: 'flipsAt'; readonly at: ReportedValue; readonly toOptionId: string }
  | { readonly kind: 'noFlipWithin'; readonly lower: ReportedValue; readonly upper: ReportedValue }
);

/** Whether one more set of readings pays. */
export type ValueOfFurtherReadings =
  | {
      readonly kind: 'worthIt' | 'notWorthIt';
      readonly expectedGain: Money;
      readonly cost: Money;
      readonly readings: number;
    }
  | {
      readonly kind: 'cannotBeSaid';
      readonly why: 'notAvailable' | 'labourRateMissing' | 'fewerThanTwoOptions';
    };

/** Distance until wear reaches the criterion, nothing being done; null where that lies beyond the plan. */
export interface DistanceToCriterion {
  /** 5 % point, median, 95 % point */
  readonly lower: ReportedValue | null;
  readonly median: ReportedValue | null;
  readonly upper: ReportedValue | null;
  /** the plan, up to which it was looked for */
  readonly within: ReportedValue;
}

/** When the part now fitted is to be looked at again, if it stays and nothing is complained of before. */
export type NextLook =
  /** at this planned visit the part is expected to be renewed; order it ahead */
  | { readonly kind: 'renewAtVisit'; readonly distance: ReportedValue }
  /** measure again when this distance has been driven */
  | {
      readonly kind: 'recheckAt';
      readonly distance: ReportedValue;
      readonly why: 'chanceOfCriterion' | 'readingWorthItsCost';
      /** chance that wear has reached the criterion by then */
      readonly probability: number;
    }
  | { readonly kind: 'notWithinPlan' };

/** Result of `assessRepairOrReplace`. */
export interface Assessment {
  readonly modelVersion: string;
  readonly tablesVersion: string;
  readonly tablesHash: string;
  readonly seed: number;
  readonly draws: number;
  /** Cheapest first, removed ones among them; then those without a cost, by id. */
  readonly options: readonly OptionAssessment[];
  readonly recommendation: Recommendation;
  readonly guards: readonly GuardFinding[];
  readonly flipPoints: readonly FlipPoint[];
  readonly furtherReadings: ValueOfFurtherReadings;
  readonly reasons: readonly Reason[];
  /** What is believed about the part now fitted. */
  readonly belief: {
    readonly wearNow: {
      readonly mean: ReportedValue;
      readonly lower: ReportedValue;
      readonly upper: ReportedValue;
    };
    readonly probabilityBeyondCriterion: number;
    readonly ratePerThousandKm: ReportedValue;
    readonly distanceToCriterion: DistanceToCriterion;
  };
  /** null where nothing is priced, so that no advice can weigh costs */
  readonly nextLook: NextLook | null;
}
