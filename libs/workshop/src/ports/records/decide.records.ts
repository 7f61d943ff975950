import type { PartCondition } from '@endfloat/catalogue';
import {
  optionActions,
  type Assessment as AssessmentResult,
  type AssessmentOccasion,
} from '@endfloat/decision';
import type { OptionAction } from '@endfloat/decision';
import type { Money } from '@endfloat/metrology';
import type { PriceBreak } from '@endfloat/stock';

export interface AssessmentIdentity {
  readonly vehicleId: string;
  readonly jobId: string | null;
  readonly fittedPartId: string | null;
}

/** One way to deal with the component that a person wants considered, with its tariff; null: the shop's usual one. */
export interface OptionWish {
  readonly action: OptionAction;
  /** decimal text */
  readonly labourHours: string | null;
  /** days the van is away because of the work itself, decimal text */
  readonly workshopDays: string | null;
}

/** What a person asked, as entered; null: as the shop's settings and tables say. */
export interface AssessmentQuestion {
  readonly vehicleId: string;
  readonly jobId: string | null;
  readonly componentType: string;
  readonly position: string;
  readonly occasion: AssessmentOccasion | null;
  /** which wearing characteristic; null: the one that has worn most */
  readonly characteristicId: string | null;
  /** size of a part without wear and at which it no longer does its work, decimal text in the canonical unit */
  readonly unwornSize: string | null;
  readonly criterionSize: string | null;
  readonly options: readonly OptionWish[] | null;
  readonly declinedActions: readonly OptionAction[];
  /** further readings were offered and nobody wanted them */
  readonly furtherReadingsDeclined: boolean;
  readonly labourPerHour: Money | null;
  readonly downtimePerDay: Money | null;
  readonly comebackHandling: Money | null;
  readonly planningDistanceKm: string | null;
  readonly serviceIntervalKm: string | null;
  readonly isUsableWhileWaiting: boolean | null;
  /** chance that the supplier refuses the old part, 0 to 1, decimal text */
  readonly coreLossChance: string | null;
}

/** Kinds of record that a reason may rest on; `given`: sent along with a preview. */
export const evidenceKinds = ['reading', 'verdict', 'job', 'comeback', 'consent', 'given'] as const;
export type EvidenceKind = (typeof evidenceKinds)[number];

export const offerOmissions = ['expired'] as const;
export type OfferOmission = (typeof offerOmissions)[number];

/** Why readings of the wear say nothing in an assessment. */
export const wearOmissions = ['noReadings', 'uncertaintyUnknown', 'awaitingConfirmation'] as const;
export type WearOmission = (typeof wearOmissions)[number];

/** What was looked at and does not stand in the input itself. */
export interface AssessmentSources {
  readonly offersLeftOut: readonly { readonly offerId: string; readonly why: OfferOmission }[];
  readonly wearLeftOut: WearOmission | null;
  /** open dangerous findings on other components: verdict ids; they have to be put right whatever is decided */
  readonly otherDangerousFindings: readonly string[];
  /** instruments that were not in calibration when a reading of the input was taken; absent: nobody looked */
  readonly overdueInstrumentIds?: readonly string[];
  /** readings behind the wear, points behind its rate, deliveries behind the lead times */
  readonly observations: {
    readonly readings: number;
    readonly wearPoints: number;
    readonly deliveries: number;
  };
}

/** Which tables a preview takes: those of before anything was learned, or those the shop decides by. */
export const previewTables = ['judgement', 'ofShop'] as const;
export type PreviewTables = (typeof previewTables)[number];

/** Why checks cannot be weighed against money. */
export const moneyUnknownReasons = [
  'noJob',
  'noInspection',
  'sheetFeedsNoTables',
  'contradictoryEvidence',
  'allChecksDone',
] as const;
export type MoneyUnknownReason = (typeof moneyUnknownReasons)[number];

/** Whether one more check is worth its cost before anything is repaired. */
export type FurtherCheck =
  | {
      readonly kind: 'worthIt' | 'notWorthIt';
      /** row of the diagnosis tables to do now */
      readonly diagnosticCheckId: string;
      readonly chain: readonly string[];
      readonly minutes: number;
      readonly expectedSaving: Money;
      readonly cost: Money;
      readonly net: Money;
      readonly isOpeningMove: boolean;
      readonly inspectionId: string;
      readonly tablesVersion: string;
      readonly tablesHash: string;
    }
  | { readonly kind: 'cannotBeSaid'; readonly why: MoneyUnknownReason };

/** What to do ahead of the next complaint. */
export const adviceKinds = [
  'dangerFirst',
  'measureFirst',
  'leaveUntilRecheck',
  'recheckAtNextVisit',
  'recheckSoon',
  'replaceAtNextVisit',
  'renewNow',
  'notEnoughKnown',
] as const;
export type AdviceKind = (typeof adviceKinds)[number];

/** Whether the part's own readings show how it wears, or what is known of such parts had to do. */
export const adviceBases = ['ownTrend', 'suchParts'] as const;
export type AdviceBasis = (typeof adviceBases)[number];

export interface PreventiveAdvice {
  readonly kind: AdviceKind;
  /** null where it rests on no forecast of the wear; absent: recorded before there was a second basis */
  readonly basis?: AdviceBasis | null;
  /** further km until then; null where it has no distance */
  readonly withinKm: number | null;
  /** chance of having reached the criterion by then; for a renewal, of being beyond it now */
  readonly chance: number | null;
  /** the option that renews the part; null where it stays in */
  readonly optionId: string | null;
  /** inspections needed to say more; null where enough is known */
  readonly needed: number | null;
  /** inspections it rests on */
  readonly got: number;
}

/** Question, canonical input text with its hash, and the result: enough to replay it anywhere. */
export interface Assessment {
  readonly modelVersion: string;
  /** SHA-256 of `input`, hexadecimal */
  readonly inputHash: string;
  readonly question: AssessmentQuestion;
  /** canonical text, members sorted by name */
  readonly input: string;
  readonly result: AssessmentResult;
  readonly sources: AssessmentSources;
  /** null in assessments of before it was told */
  readonly furtherCheck: FurtherCheck | null;
  /** null in assessments of before it was given, and where nothing is recommended */
  readonly advice: PreventiveAdvice | null;
}

export interface OfAssessment {
  readonly assessmentId: string;
}

/** What may be chosen: an option of the assessment, or to give the van back unrepaired and not for the road. */
export const decisionChoices = [...optionActions, 'handOverUnrepaired'] as const;
export type DecisionChoice = (typeof decisionChoices)[number];

export interface Decision {
  readonly chosen: DecisionChoice;
  readonly decidedAt: string;
  readonly decidedBy: string;
  /** required when it differs from the recommendation */
  readonly reason: string | null;
}

/** What a supplier asks for a part in one condition. */
export interface Offer {
  readonly componentType: string;
  readonly condition: PartCondition;
  readonly supplier: string;
  readonly partNumber: string | null;
  /** null: not quoted, never free */
  readonly price: Money | null;
  readonly coreDeposit: Money | null;
  /** 0: it is on the shelf; null: nothing was promised */
  readonly promisedLeadDays: number | null;
  readonly warrantyMonths: number | null;
  /** km of warranty on the part; ends with its months or its km, whichever comes first */
  readonly warrantyKm?: string | null;
  /** last day it holds */
  readonly validUntil: string | null;
  /** the number of the shop's list that is offered */
  readonly partId?: string | null;
  /** price of a piece from a number of pieces on, in the currency of the price */
  readonly priceBreaks?: readonly PriceBreak[] | null;
  /** days after arrival within which the old part has to be back */
  readonly coreReturnDays?: number | null;
}

export interface OfOffer {
  readonly offerId: string;
}
export interface Delivery {
  readonly orderedOn: string;
  readonly promisedOn: string | null;
  readonly arrivedOn: string | null;
  /** pieces; absent or null: one */
  readonly quantity?: number | null;
}
