// Written from the interface document; change the routes, then: node .config/write-client.mjs

export type AccelerationTest = {
  /** which case this is */
  readonly kind: 'tested';
  /** Curvature over its standard error; positive: faster and faster. */
  readonly z: number;
  /** P(z at least this large) at a steady rate. */
  readonly pAccelerating: number;
  /** Two-sided p-value. */
  readonly pTwoSided: number;
  /** Whether a steady rate is too hopeful (p below 0.05). */
  readonly isAccelerating: boolean;
};

export type AcceptanceNotFound = {
  /** the search ended before its criterion was met */
  readonly kind: 'notConverged';
};

export type AcceptanceNotReachable = {
  /** no acceptance limit has this risk */
  readonly kind: 'notReachable';
  /** Least consumer risk there is. */
  readonly leastConsumerRisk: number;
  /** Greatest consumer risk there is. */
  readonly greatestConsumerRisk: number;
};

export type AccuracyClassOfSpan = {
  /** which case this is */
  readonly kind: 'accuracyClassOfSpan';
  /** Class: per cent of the span. */
  readonly accuracyClass: string;
  /** Span of the scale. */
  readonly span: AnyQuantity;
};

export type ActionCounts = {
  /** What was done. */
  readonly action: OptionAction;
  /** Came back inside the window, confirmed by a person. */
  readonly comebacks: number;
  /** Window elapsed without comeback, van seen afterwards. */
  readonly held: number;
  /** Window running or van not seen since: counted as far as it was watched. */
  readonly running: number;
};

export type Adjustability = 'no' | 'byProcedureOnly' | 'yes';

export type AdviceBasis = 'ownTrend' | 'suchParts';

/** Values may be added; accept unknown ones in answers. */
export type AdviceKind = 'dangerFirst' | 'measureFirst' | 'leaveUntilRecheck' | 'recheckAtNextVisit' | 'recheckSoon' | 'replaceAtNextVisit' | 'renewNow' | 'notEnoughKnown' | (string & {});

export type AgeReplacementRequest = {
  /** Unit of the ages. */
  readonly unit?: AnyUnit;
  /** How long the part lasts. */
  readonly life: WeibullLife | UniformLife;
  /** Cost of a planned replacement, in any one currency. */
  readonly plannedCost: number;
  /** Cost of a failure with its replacement, in the same currency. */
  readonly failureCost: number;
  /** Ages whose cost rate is asked for. */
  readonly atAges?: readonly number[];
};

export type AgeReplacementResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** Unit of the ages. */
  readonly unit: AnyUnit;
  /** The age, or that there is none. */
  readonly result: OptimalAge | RunToFailure | CalculationNotConverged;
  /** Cost rates of the ages asked for. */
  readonly costRates: readonly CostRateAtAge[];
};

export type AllAlike = {
  /** not one success, or not one failure, in any group */
  readonly kind: 'allAlike';
  /** Common share. */
  readonly proportion: number;
};

export type AllChecksDone = {
  /** which case this is */
  readonly kind: 'done';
  /** In words. */
  readonly detail: string;
};

export type AllOrNothing = {
  /** every group is all successes or none */
  readonly kind: 'allOrNothing';
  /** Common share. */
  readonly proportion: number;
};

export type AllTied = {
  /** no two points differ in both */
  readonly kind: 'allTied';
  /** Points. */
  readonly observations: number;
};

export type AlwaysCheaper = {
  /** cheaper whatever its comeback probability */
  readonly kind: 'alwaysCheaper';
};

export type AlwaysEqual = {
  /** both cost the same, and a comeback costs nothing */
  readonly kind: 'alwaysEqual';
};

export type AnyQuantity = {
  /** Exact number as decimal text. */
  readonly value: string;
  /** Code of the unit (UCUM). */
  readonly unit: AnyUnit;
};

export type AnyUnit = 'um' | 'mm' | 'cm' | 'm' | 'km' | '[in_i]' | '[mil_i]' | '[ft_i]' | '[mi_i]' | 'Pa' | 'kPa' | 'MPa' | 'mbar' | 'bar' | '[psi]' | 'kgf/cm2' | '[in_i\'Hg]' | '[in_i\'Hg_32degF]' | '[in_i\'Hg_60degF]' | 'mm[Hg]' | '[in_i\'H2O]' | 'mm[H2O]' | 'g' | 'kg' | 't' | '[lb_av]' | 'N' | 'kN' | 'kgf' | '[lbf_av]' | 'N.m' | 'kgf.m' | '[lbf_av].[ft_i]' | '[lbf_av].[in_i]' | 'mOhm' | 'Ohm' | 'kOhm' | 'MOhm' | 'mV' | 'V' | 'mA' | 'A' | 'mA.h' | 'A.h' | '/min' | '{rev}/min' | 'deg' | '\'' | '1' | '%' | '[ppm]' | 'Cel' | '[degF]' | 'K' | 'mL' | 'L' | '[gal_us]' | '[gal_br]' | 'L/(100.km)' | 'km/L' | '[mi_i]/[gal_us]' | '[mi_i]/[gal_br]' | 'm/s' | 'km/h' | '[mi_i]/h' | 'ms' | 's' | 'min' | 'h' | 'd';

export type ApiKeyList = {
  /** All keys of the shop, revoked ones too. */
  readonly items: readonly ApiKeyResponse[];
};

export type ApiKeyResponse = {
  /** Whom the key speaks for. */
  readonly userId: string;
  /** What it is for. */
  readonly name: string;
  /** What the key may do at most; the roles of its user bound it further. */
  readonly roles: readonly ShopRole[];
  /** When the key ends by itself; null: when it is revoked. */
  readonly expiresAt: string | null;
  /** The key only reads: GET and HEAD. */
  readonly readOnly: boolean;
  /** The key whose place this one takes; null: none. */
  readonly replaces: string | null;
  /** When it was last used, to within a minute; null: it was not. */
  readonly lastUsedAt: string | null;
  /** Id of the key. */
  readonly id: string;
  /** When it was made. */
  readonly recordedAt: string;
  /** When it was revoked; null: it was not. */
  readonly revokedAt: string | null;
};

export type AppliedBound = {
  /** The edge, after table, formula and correction. */
  readonly at: ComputedQuantity;
  /** The edge itself is permitted. */
  readonly isInclusive: boolean;
};

export type AppliedBounds = {
  /** Lower edge. */
  readonly lower: AppliedBound | null;
  /** Upper edge. */
  readonly upper: AppliedBound | null;
};

export type ArrivalInspectionPage = {
  /** The items, in the order of the list. */
  readonly items: readonly ArrivalInspectionResponse[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type ArrivalInspectionResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** When it was looked at. */
  readonly inspectedAt: string;
  /** As what it was bought. */
  readonly condition: PartCondition;
  /** Serial of the piece. */
  readonly serial: string | null;
  /** Anything else worth knowing. */
  readonly note: string | null;
  /** The part. */
  readonly partId: string;
  /** The version of the check sheet it follows. */
  readonly checkSheetId: string;
  /** The receipt it came in by. */
  readonly stockMoveId: string | null;
  /** What was read, in the order given. */
  readonly readings: readonly ArrivalReadingResponse[];
  /** Verdicts by the rules and limits of the sheet. */
  readonly verdicts: readonly ArrivalVerdictResponse[];
  /** Checks of the sheet that can be done on the part alone and were not. */
  readonly checksOpen: readonly string[];
};

export type ArrivalInspectionRevisions = {
  /** Every revision, oldest first. */
  readonly items: readonly ArrivalInspectionResponse[];
};

export type ArrivalReadingEntry = {
  /** Check of the sheet. */
  readonly checkId: string;
  /** One of several like places of one part, e.g. cylinder-1 or left; null where there is one. */
  readonly place: string | null;
  /** The result, as the check asks for it. */
  readonly result: NumberResult | BladePairResult | YesNoResult | GradeResult;
  /** Instrument; null: its doubt is unknown. */
  readonly instrumentId: string | null;
  /** Person who measured; the caller where absent. */
  readonly measuredBy?: string;
  /** When it was taken. */
  readonly takenAt: string;
  /** Conditions as met, e.g. engineState: hotIdling, airConditioning: off. */
  readonly conditions: { readonly [name: string]: string };
  /** Remark. */
  readonly note: string | null;
};

export type ArrivalReadingResponse = {
  /** Check of the sheet. */
  readonly checkId: string;
  /** One of several like places of one part, e.g. cylinder-1 or left; null where there is one. */
  readonly place: string | null;
  /** The result, as the check asks for it. */
  readonly result: NumberResult | BladePairResult | YesNoResult | GradeResult;
  /** Instrument; null: its doubt is unknown. */
  readonly instrumentId: string | null;
  /** Person who measured; the caller where absent. */
  readonly measuredBy?: string;
  /** When it was taken. */
  readonly takenAt: string;
  /** Conditions as met, e.g. engineState: hotIdling, airConditioning: off. */
  readonly conditions: { readonly [name: string]: string };
  /** Remark. */
  readonly note: string | null;
  /** False: the value is unlikely and was not confirmed. */
  readonly valueConfirmed: boolean;
  /** What looked odd. */
  readonly warnings: readonly WarningResponse[];
};

export type ArrivalSheet = {
  /** The version of the check sheet. */
  readonly checkSheetId: string;
  /** Code of the sheet. */
  readonly code: string;
  /** Its version. */
  readonly sheetVersion: number;
  /** Title. */
  readonly title: string;
  /** What comes before this sheet. */
  readonly precedence: string;
  /** The checks that look at the part itself, in order, with instrument and cautions; what needs a vehicle is left out. */
  readonly checks: readonly Check[];
};

export type ArrivalSheetList = {
  /** The latest version of each sheet. */
  readonly items: readonly ArrivalSheet[];
};

export type ArrivalVerdictResponse = {
  /** The limit in the edition that was used. */
  readonly limit: UsedLimit;
  /** What they say. */
  readonly outcome: VerdictOutcome;
  /** judged: with the doubt counted in; faceValue: bare numbers compared, because the doubt is not known. */
  readonly basis: VerdictKind;
  /** Probability that the true value meets the limit; null where the rule is none of probability. */
  readonly probabilityInside: number | null;
  /** How bad it is to be outside. */
  readonly severity: Severity;
  /** Why nothing was judged; null where it was. */
  readonly reason: NotJudgedReason | null;
  /** What is missing or in the way. */
  readonly details: readonly string[];
  /** Mean of the readings, canonical unit. */
  readonly value: ComputedQuantity | null;
  /** Standard uncertainty of the mean, in its unit. */
  readonly standardUncertainty: number | null;
  /** Effective degrees of freedom; null: as good as known, or none. */
  readonly effectiveDegreesOfFreedom: number | null;
  /** What the doubt is made of. */
  readonly contributions: readonly UncertaintyContribution[];
  /** Gauge study the repeatability was taken from; null: the default of the kind of part, the repeats alone, or no number. */
  readonly gaugeStudyId: string | null;
  /** What is missing for the doubt to be known: instrument, resolution, setUp, repeatability. */
  readonly missing: readonly string[];
  /** Readings it rests on. */
  readonly count: number;
  /** Edges compared with. */
  readonly bounds: AppliedBounds | null;
  /** Outcome against the advisory criterion, where the limit has one. */
  readonly advisory: VerdictOutcome | null;
  /** Readings still needed to decide. */
  readonly furtherReadings: NoFurtherReadings | FurtherReadingsNeeded | NoNumberSettles;
  /** Conditions the limit names that nobody stated. */
  readonly unstatedConditions: readonly string[];
  /** What a pair of blades says. */
  readonly grade: BladePairGrade | null;
  /** Class of the number. */
  readonly readingClass: ReadingClass | null;
  /** Method. */
  readonly method: string | null;
  /** The verdict in words. */
  readonly words: readonly string[];
  /** The check. */
  readonly checkId: string;
  /** Judged before what it waits for was passed: it is repeated later. */
  readonly provisional: boolean;
  /** Check whose functional answer outranks this number. */
  readonly outrankedBy: string | null;
};

export type ArrivalWear = {
  /** Size measured before fitting. */
  readonly value: string;
  /** Its standard uncertainty. */
  readonly standardUncertainty: string;
};

export type AssessRequest = {
  /** Id chosen by the client. */
  readonly id?: string;
  /** The vehicle. */
  readonly vehicleId: string;
  /** The job it is asked for; null: none. */
  readonly jobId: string | null;
  /** Kind of part. */
  readonly componentType: string;
  /** Where on the vehicle, as the kind of part names its places. */
  readonly position: string;
  /** Why it is asked; absent: a complaint where the job has one, else a service visit. */
  readonly occasion?: AssessmentOccasion;
  /** Which wearing characteristic; absent: the one that has worn most. */
  readonly characteristicId?: string;
  /** Size without wear, in the canonical unit; absent: zero where it is a clearance. */
  readonly unwornSize?: string;
  /** Size at which the part no longer does its work, in the canonical unit; absent: its wear limit. */
  readonly criterionSize?: string;
  /** Options to consider with their tariffs; absent: all of them. */
  readonly options?: readonly OptionWish[];
  /** What the customer has said no to. */
  readonly declinedActions?: readonly OptionAction[];
  /** Further readings were offered and nobody wanted them. */
  readonly furtherReadingsDeclined?: boolean;
  /** Price of an hour of labour, in the shop's currency; absent: its setting. */
  readonly labourPerHour?: Money;
  /** Cost of a day off the road; absent: the customer's, else the shop's. */
  readonly downtimePerDay?: Money;
  /** What any comeback costs to handle; absent: the shop's setting. */
  readonly comebackHandling?: Money;
  /** Distance the owner still wants, in km; absent: the customer's, else the shop's. */
  readonly planningDistanceKm?: string;
  /** Distance between planned visits, in km; absent: there are none. */
  readonly serviceIntervalKm?: string;
  /** Whether the vehicle can be used until the part has come; absent: it stands still. */
  readonly isUsableWhileWaiting?: boolean;
  /** Chance that the supplier refuses the old part and keeps the deposit, 0 to 1; absent: 0.1. */
  readonly coreLossChance?: string;
};

export type AssessmentAnswer = {
  /** Version of the model; another version may answer otherwise. */
  readonly modelVersion: string;
  /** Version of the learned tables. */
  readonly tablesVersion: string;
  /** SHA-256 of the learned tables. */
  readonly tablesHash: string;
  /** SHA-256 of the canonical input. */
  readonly inputHash: string;
  /** Start of the draws behind intervals. */
  readonly seed: number;
  /** How many draws. */
  readonly draws: number;
  /** What to do. */
  readonly recommendation: Recommended | CloseCall | MeasureFirst | NoRecommendation;
  /** Every option, cheapest first; then those that cannot be priced. */
  readonly options: readonly (PricedOption | UnpricedOption)[];
  /** Hard limits that bear on it. */
  readonly guards: readonly Guard[];
  /** Reasons, the deciding ones first. */
  readonly reasons: readonly AssessmentReason[];
  /** Where the answer would flip. */
  readonly flipPoints: readonly (FlipsAt | NoFlip)[];
  /** Whether one more set of readings is worth its cost. */
  readonly furtherReadings: ReadingsWorthIt | ReadingsNotWorthIt | ReadingsValueUnknown;
  /** Whether one more check is worth its cost before anything is repaired; null: not told, as in a preview. */
  readonly furtherCheck: FurtherCheckWorthIt | FurtherCheckNotWorthIt | FurtherCheckUnknown | null;
  /** What to do ahead of the next complaint; null: nothing is recommended, or not told yet. */
  readonly advice: PreventiveAdvice | null;
  /** What is believed about the part fitted now. */
  readonly belief: PartBelief;
  /** Observations behind the answer. */
  readonly observations: ObservationCounts;
  /** Why readings of the wear say nothing here; null: they do. */
  readonly wearLeftOut: WearOmission | null;
  /** Offers that were not considered. */
  readonly offersLeftOut: readonly OfferLeftOut[];
  /** Verdicts of open dangerous findings on other components. They block the release whatever is decided here. */
  readonly otherDangerousFindings: readonly string[];
  /** Instruments that were not in calibration on the day a reading of the answer was taken: the answer rests on them all the same. */
  readonly overdueInstrumentIds: readonly string[];
  /** Caution that goes with the answer. */
  readonly caution: string;
};

export type AssessmentEntry = {
  /** When it happened; null: before the shop knew the vehicle. */
  readonly happenedAt: string | null;
  /** The job it belongs to; null: none. */
  readonly jobId: string | null;
  /** which case this is */
  readonly kind: 'assessment';
  /** What was recommended. */
  readonly record: AssessmentInHistory;
  /** With `corrections=all`: the other revisions of the record, oldest first, later ones than the moment asked about as well. Empty otherwise. */
  readonly otherRevisions: readonly AssessmentInHistory[];
};

export type AssessmentInHistory = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** Version of the model; another version may answer otherwise. */
  readonly modelVersion: string;
  /** SHA-256 of the canonical input. */
  readonly inputHash: string;
  /** What to do. */
  readonly recommendation: Recommended | CloseCall | MeasureFirst | NoRecommendation;
  /** The vehicle. */
  readonly vehicleId: string;
  /** The part fitted then; null: nobody had recorded one. */
  readonly fittedPartId: string | null;
  /** Kind of part. */
  readonly componentType: string;
  /** Where on the vehicle. */
  readonly position: string;
  /** Reasons, the deciding ones first. Null for a customer's user: they speak of the shop's money. */
  readonly reasons: readonly AssessmentReason[] | null;
};

export type AssessmentOccasion = 'complaint' | 'serviceVisit';

export type AssessmentPage = {
  /** The items, in the order of the list. */
  readonly items: readonly AssessmentResponse[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type AssessmentReason = {
  /** Stable code. */
  readonly code: ReasonCode;
  /** The option that is meant. */
  readonly optionId: string | null;
  /** The figures in it. */
  readonly values: readonly NamedValue[];
  /** Records it rests on. */
  readonly evidence: readonly EvidenceLink[];
  /** The same in words. */
  readonly detail: string;
};

export type AssessmentResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** Version of the model; another version may answer otherwise. */
  readonly modelVersion: string;
  /** Version of the learned tables. */
  readonly tablesVersion: string;
  /** SHA-256 of the learned tables. */
  readonly tablesHash: string;
  /** SHA-256 of the canonical input. */
  readonly inputHash: string;
  /** Start of the draws behind intervals. */
  readonly seed: number;
  /** How many draws. */
  readonly draws: number;
  /** What to do. */
  readonly recommendation: Recommended | CloseCall | MeasureFirst | NoRecommendation;
  /** Every option, cheapest first; then those that cannot be priced. */
  readonly options: readonly (PricedOption | UnpricedOption)[];
  /** Hard limits that bear on it. */
  readonly guards: readonly Guard[];
  /** Reasons, the deciding ones first. */
  readonly reasons: readonly AssessmentReason[];
  /** Where the answer would flip. */
  readonly flipPoints: readonly (FlipsAt | NoFlip)[];
  /** Whether one more set of readings is worth its cost. */
  readonly furtherReadings: ReadingsWorthIt | ReadingsNotWorthIt | ReadingsValueUnknown;
  /** Whether one more check is worth its cost before anything is repaired; null: not told, as in a preview. */
  readonly furtherCheck: FurtherCheckWorthIt | FurtherCheckNotWorthIt | FurtherCheckUnknown | null;
  /** What to do ahead of the next complaint; null: nothing is recommended, or not told yet. */
  readonly advice: PreventiveAdvice | null;
  /** What is believed about the part fitted now. */
  readonly belief: PartBelief;
  /** Observations behind the answer. */
  readonly observations: ObservationCounts;
  /** Why readings of the wear say nothing here; null: they do. */
  readonly wearLeftOut: WearOmission | null;
  /** Offers that were not considered. */
  readonly offersLeftOut: readonly OfferLeftOut[];
  /** Verdicts of open dangerous findings on other components. They block the release whatever is decided here. */
  readonly otherDangerousFindings: readonly string[];
  /** Instruments that were not in calibration on the day a reading of the answer was taken: the answer rests on them all the same. */
  readonly overdueInstrumentIds: readonly string[];
  /** Caution that goes with the answer. */
  readonly caution: string;
  /** The vehicle. */
  readonly vehicleId: string;
  /** The job it was asked for. */
  readonly jobId: string | null;
  /** The part fitted then; null: nobody had recorded one. */
  readonly fittedPartId: string | null;
  /** Kind of part. */
  readonly componentType: string;
  /** Where on the vehicle. */
  readonly position: string;
};

export type AssessmentSummary = {
  /** The assessment. */
  readonly id: string;
  /** When it was made. */
  readonly recordedAt: string;
  /** The vehicle. */
  readonly vehicleId: string;
  /** The job it was asked for. */
  readonly jobId: string | null;
  /** Kind of part. */
  readonly componentType: string;
  /** Where on the vehicle. */
  readonly position: string;
  /** What to do. */
  readonly recommendation: Recommended | CloseCall | MeasureFirst | NoRecommendation;
  /** Options that were weighed. */
  readonly options: readonly SummaryOption[];
  /** Hard limits that bear on it. */
  readonly guards: readonly Guard[];
  /** Reasons that name no amount. */
  readonly reasons: readonly AssessmentReason[];
  /** What to do ahead of the next complaint. */
  readonly advice: PreventiveAdvice | null;
  /** What is believed about the part fitted now. */
  readonly belief: PartBelief;
  /** What comes before any answer about safety. */
  readonly caution: string;
};

export type AssessmentSummaryPage = {
  /** The items, in the order of the list. */
  readonly items: readonly AssessmentSummary[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type Attention = {
  /** Why the vehicle needs attention, the most pressing first. */
  readonly reason: AttentionReason;
  /** How many things lie behind it. */
  readonly count: number;
};

/** Values may be added; accept unknown ones in answers. */
export type AttentionReason = 'dangerousFinding' | 'repeatedComeback' | 'majorFinding' | 'overdueService' | 'comeback' | 'repeatedComplaint' | 'otherFinding' | 'serviceDueSoon' | (string & {});

/** Values may be added; accept unknown ones in answers. */
export type AuditAction = 'recorded' | 'corrected' | 'keyMade' | 'keyRevoked' | 'personalDataErased' | 'secretMade' | (string & {});

export type AuditEntryPage = {
  /** The items, in the order of the list. */
  readonly items: readonly AuditEntryResponse[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type AuditEntryResponse = {
  /** Kind of record. */
  readonly kind: string;
  /** The record. */
  readonly recordId: string;
  /** Number of the revision that was made. */
  readonly version: number;
  /** What was done. */
  readonly action: AuditAction;
  /** When it was recorded. */
  readonly at: string;
  /** User who did it; 00000000-0000-7000-8000-000000000000 is the service itself. Null: not kept. */
  readonly by: string | null;
  /** Why; null where nobody was asked. */
  readonly reason: string | null;
};

export type AverageAndRangeStudy = {
  /** What varies how much. */
  readonly variation: GaugeVariation;
  /** which case this is */
  readonly kind: 'averageAndRange';
  /** Mean range of the repeats, in the unit. */
  readonly meanRange: number;
  /** Range of the appraisers’ means, in the unit. */
  readonly appraiserRange: number;
  /** Range of the objects’ means, in the unit. */
  readonly objectRange: number;
};

export type BLife = {
  /** Estimate. */
  readonly estimate: number;
  /** Lower limit, Wald, on the logarithm. */
  readonly lower: number;
  /** Upper limit. */
  readonly upper: number;
  /** Share of the parts whose life has ended by then. */
  readonly share: number;
};

export type BackTestResponse = {
  /** Moment looked back from. */
  readonly at: string;
  /** Decisions whose window elapsed, or that came back. */
  readonly settled: number;
  /** Of these, confirmed comebacks. */
  readonly comebacks: number;
  /** Decisions left out, pending ones among them. */
  readonly omitted: readonly OmittedDecisions[];
  /** Brier score of the predicted comebacks. */
  readonly brier: BrierScore | TooFewDecisions;
  /** Predicted against observed comebacks by class. */
  readonly reliability: ReliabilityTable | TooFewDecisions;
  /** Mean expected cost of what was chosen; null without a decision. */
  readonly chosenMeanExpectedCost: Money | null;
  /** Mean of what it came to: with its comeback where it came back, without where it held. */
  readonly chosenMeanRealisedCost: Money | null;
  /** What each fixed rule would have cost. */
  readonly rules: readonly RuleCosts[];
  /** How it is reckoned and what it cannot say. */
  readonly method: readonly string[];
};

export type BaseStockRequest = {
  /** Mean demand over the lead time, pieces. */
  readonly leadTimeDemand: number;
  /** Service aimed at. */
  readonly target: number;
  /** Which service is meant. */
  readonly measure: ServiceMeasure;
};

export type BaseStockResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** The level, or that there is none. */
  readonly result: FoundBaseStock | UnattainableService;
};

export type BayesPosteriorRequest = {
  /** Probability of the condition before. */
  readonly prior: number;
  /** P(positive) where it is there. */
  readonly sensitivity: number;
  /** P(positive) where it is not. */
  readonly falsePositiveRate: number;
  /** Whether the result was positive. */
  readonly isPositive: boolean;
};

export type BayesPosteriorResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** The posterior, or why there is none. */
  readonly result: EstimatedPosterior | ImpossibleResult;
};

export type BeginOdometerSegmentRequest = {
  /** Id chosen by the client. */
  readonly id?: string;
  /** Why a new stretch begins. */
  readonly cause: OdometerSegmentCause;
  /** When. */
  readonly startedAt: string;
  /** Digits as displayed, with a point before tenths. */
  readonly shown: string;
  /** Unit of the display (UCUM). */
  readonly unit: OdometerUnit;
  /** Digits of the display. */
  readonly digits: number | null;
  /** Distance of the vehicle at the change where known better than from the last entry, in km. */
  readonly distanceKm: string | null;
  /** Remark. */
  readonly note: string | null;
};

export type BelowMinimum = {
  /** too few jobs to be compared: no finding and no rank */
  readonly kind: 'belowMinimum';
  /** Jobs needed, a setting of the shop. */
  readonly needed: number;
  /** Jobs there are. */
  readonly got: number;
};

export type BetaBinomial = {
  /** which case this is */
  readonly kind: 'betaBinomial';
  /** First parameter of the common beta distribution. */
  readonly alpha: number;
  /** Second parameter. */
  readonly beta: number;
  /** Its mean. */
  readonly mean: number;
  /** Correlation of two trials of one group. */
  readonly correlation: number;
  /** Logarithm of the likelihood, without the binomial coefficients. */
  readonly logLikelihood: number;
  /** Two-sided confidence level of the limits. */
  readonly level: number;
  /** Each group, in the order given. */
  readonly groups: readonly ShrunkenGroup[];
};

export type BetweenUnits = {
  /** Variance of the intercepts between units. */
  readonly level: number;
  /** Covariance of intercepts and slopes. */
  readonly cross: number;
  /** Variance of the slopes. */
  readonly slope: number;
};

export type BetweenVariation = 'full' | 'oneDirection' | 'none';

export type BinomialCount = {
  /** Successes. */
  readonly successes: number;
  /** Trials. */
  readonly trials: number;
};

/** Values may be added; accept unknown ones in answers. */
export type BladePairGrade = 'pass' | 'tooSmall' | 'tooLarge' | 'undecided' | 'contradictory' | (string & {});

export type BladePairResult = {
  /** which case this is */
  readonly kind: 'bladePair';
  /** Largest blade at which the switch is still closed; null where none. */
  readonly largestClosed: string | null;
  /** Smallest blade at which it is open; null where none. */
  readonly smallestOpen: string | null;
  /** Code of the unit as read (UCUM); never guessed. */
  readonly unit: UnitCode;
};

export type BladeSet = {
  /** which case this is */
  readonly kind: 'bladeSet';
  /** Blades of the set. */
  readonly blades: readonly AnyQuantity[];
  /** Each blade is within plus or minus this of its marking. */
  readonly permissibleError: AnyQuantity;
};

export type BorrowedStrength = 'fleet' | 'statedModel' | 'none';

export type BreakEvenAt = {
  /** which case this is */
  readonly kind: 'at';
  /** Comeback probability at which both cost the same. */
  readonly probabilityOfComeback: number;
};

export type BreakEvenQuestion = {
  /** Option whose comeback probability is varied. */
  readonly optionId: string;
  /** Option it is compared with. */
  readonly againstOptionId: string;
};

export type BreakEvenUnpriced = {
  /** one of the two has no cost */
  readonly kind: 'cannotBePriced';
};

export type BrierScore = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Mean squared difference of predicted chance and outcome; 0 is perfect. */
  readonly score: number;
  /** Share that came back. */
  readonly baseRate: number;
  /** Score of always saying the base rate. */
  readonly referenceScore: number;
  /** Above 0: better than the base rate; null where all came back, or none. */
  readonly skill: number | null;
  /** Decisions. */
  readonly decisions: number;
};

export type BudgetComponent = {
  /** Where the doubt comes from. */
  readonly name: string;
  /** Standard uncertainty of the input. */
  readonly standardUncertainty: number;
  /** Degrees of freedom; infinite where null or left out. */
  readonly degreesOfFreedom?: number | null;
  /** Change of the result per change of the input. */
  readonly sensitivity?: number;
};

export type BudgetShare = {
  /** Where the doubt comes from. */
  readonly name: string;
  /** Contribution to the result, in the unit. */
  readonly standardUncertainty: number;
  /** Share of the variance. */
  readonly share: number;
};

export type CalculatedOutcome = 'inside' | 'outside' | 'undecided';

export type CalculationLimits = {
  /** Lower limit. */
  readonly lower: number;
  /** Upper limit. */
  readonly upper: number;
};

export type CalculationList = {
  /** Whether every case of every calculation was reproduced at this request. */
  readonly areAllReproduced: boolean;
  /** The calculations. */
  readonly items: readonly CalculationListItem[];
};

export type CalculationListItem = {
  /** Last part of its address. */
  readonly id: string;
  /** Where to send data. */
  readonly address: string;
  /** The question it answers. */
  readonly title: string;
  /** Method, variant and source of the formula. */
  readonly method: CalculationMethod;
  /** Published cases, run again at this request. */
  readonly cases: readonly PublishedCase[];
};

export type CalculationMethod = {
  /** Name of the method. */
  readonly name: string;
  /** Which of the usual variants is computed, for a check by hand. */
  readonly variant: string;
  /** Where the formula stands. */
  readonly source: string;
};

export type CalculationNeedsMore = {
  /** which case this is */
  readonly kind: 'insufficientData';
  /** What there is too little of. */
  readonly of: string;
  /** How many are needed. */
  readonly needed: number;
  /** How many there are. */
  readonly got: number;
};

export type CalculationNotConverged = {
  /** which case this is */
  readonly kind: 'notConverged';
  /** Steps that were taken. */
  readonly iterations: number;
  /** Why it ended. */
  readonly reason: string;
};

export type CalibrationList = {
  /** State of the calibration. */
  readonly standing: CalibrationStanding;
  /** Calibrations, latest first. */
  readonly items: readonly CalibrationResponse[];
};

export type CalibrationResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** Day it was calibrated. */
  readonly calibratedOn: string;
  /** Day the next one is due; null: no interval is set. */
  readonly dueOn: string | null;
  /** The instrument was found good, or was made good. */
  readonly passed: boolean;
  /** Number of the certificate. */
  readonly certificate: string | null;
  /** Remark. */
  readonly note: string | null;
  /** The instrument. */
  readonly instrumentId: string;
};

export type CalibrationStanding = {
  /** Whether the calibration holds; failed: the last one was not passed. */
  readonly kind: CalibrationStandingKind;
  /** Day the next one is due. */
  readonly dueOn: string | null;
  /** Days left; negative once overdue. */
  readonly daysLeft: number | null;
};

/** Values may be added; accept unknown ones in answers. */
export type CalibrationStandingKind = 'inCalibration' | 'due' | 'overdue' | 'neverCalibrated' | 'noInterval' | 'failed' | (string & {});

export type CaseFigure = {
  /** Name of the figure. */
  readonly name: string;
  /** What it should be. */
  readonly expected: number;
  /** What it came to at this request. */
  readonly computed: number;
  /** How far the two may lie apart. */
  readonly allowed: number;
  /** Whether they lie no farther apart. */
  readonly isReproduced: boolean;
};

export type CaseProvenance = 'published' | 'computed' | 'memory' | 'byHand';

export type Cause = {
  /** Id of the cause. */
  readonly id: string;
  /** In words. */
  readonly name: string;
  /** For the customer. */
  readonly forCustomer: string;
  /** What a part for it costs, as a class. */
  readonly partsCostClass: PartsCostClass;
  /** Whatever the list does not name. */
  readonly openRemainder: boolean;
};

export type CauseList = {
  /** Causes. */
  readonly items: readonly Cause[];
};

export type Caution = {
  /** Id of the caution. */
  readonly id: string;
  /** What can hurt. */
  readonly hazard: Hazard;
  /** The warning. */
  readonly text: string;
  /** What supports it. */
  readonly source: Evidence;
};

export type Challenger = {
  /** What it costs to get. */
  readonly price: Money;
  /** Its years in order. */
  readonly years: readonly ChallengerYear[];
};

export type ChallengerYear = {
  /** What running it costs in that year, in the currency of the price. */
  readonly running: string;
  /** What selling it brings at the end of that year. */
  readonly resale: string;
};

export type Chance = {
  /** Chance that this van needs one in the lead time. */
  readonly chance: number;
};

export type ChancesDemand = {
  /** which case this is */
  readonly kind: 'chances';
  /** One a van. */
  readonly vans: readonly Chance[];
};

export type Characteristic = {
  /** Id of the characteristic. */
  readonly id: string;
  /** In words. */
  readonly name: string;
  /** Shape of a result. */
  readonly resultKind: ResultKind;
  /** What the number is a value of; null where the result is no number. */
  readonly quantityKind: QuantityKind | null;
  /** Unit in which values are compared. */
  readonly canonicalUnit: UnitCode | null;
  /** Which way it moves with wear. */
  readonly wearDirection: WearDirection;
  /** What a series of readings shows. */
  readonly trend: TrendKind;
  /** A reading outside is stored and stays unjudged until somebody confirms it. */
  readonly plausible: PlausibleRange | null;
  /** What it cannot fall below. */
  readonly lowestPossible: AnyQuantity | null;
  /** Doubt to assume for one reading until the shop has measured its own. */
  readonly doubt: DefaultDoubt | null;
  /** Readings of one inspection that are averaged. */
  readonly readingsAdvised: number;
};

export type CharacteristicWear = {
  /** Id of the characteristic. */
  readonly characteristic: string;
  /** Its name. */
  readonly name: string;
  /** The parts of the kind in the shop, whose strength is lent; null where there is no point to lend it to. */
  readonly fleet: FleetWear | null;
  /** One series a place of the part. */
  readonly series: readonly WearSeries[];
};

export type ChartChoice = 'askedFor' | 'eventsAreMany' | 'eventsAreRare';

export type ChartKind = 'count' | 'proportion' | 'rate' | 'eventsBetween' | 'timeBetween';

export type ChartPeriodName = 'month' | 'quarter' | 'year';

export type ChartPlace = {
  /** Lower limit. */
  readonly lower: number;
  /** Upper limit. */
  readonly upper: number;
  /** Value charted. */
  readonly value: number;
  /** What is pointed out here. */
  readonly signals: readonly ChartSignal[];
};

export type ChartSignal = 'aboveUpperLimit' | 'belowLowerLimit' | 'runAboveCentre' | 'runBelowCentre';

export type CheapestLevel = {
  /** Pieces. */
  readonly level: number;
  /** Expected cost over the lead time, in the currency of the costs. */
  readonly expectedCost: number;
  /** under / (under + over). */
  readonly criticalRatio: number;
};

export type Check = {
  /** Id, unique in the sheet. */
  readonly id: string;
  /** In words. */
  readonly title: string;
  /** Part of the job. */
  readonly section: CheckSection;
  /** What to do, in short steps. */
  readonly steps: readonly string[];
  /** The question a yes/no check answers. */
  readonly question: string | null;
  /** Kind of part. */
  readonly componentTypeId: string;
  /** What is measured. */
  readonly characteristicId: string;
  /** The characteristic in full. On whole sheets only. */
  readonly characteristic?: Characteristic;
  /** Shape of a result. */
  readonly resultKind: ResultKind;
  /** Units a number may be entered in; empty where there is no number. */
  readonly units: readonly UnitCode[];
  /** Row of the diagnosis tables it feeds. */
  readonly diagnosticCheckId: string | null;
  /** Safe, cheap and done anyway, before any ranking. */
  readonly openingMove: boolean;
  /** Not judged before these are passed. */
  readonly prerequisites: readonly string[];
  /** Better done after these. */
  readonly advisedAfter: readonly string[];
  /** To be read again after this item was adjusted. */
  readonly alsoRemeasure: readonly string[];
  /** State the vehicle must be in. */
  readonly requiredStates: readonly RequiredState[];
  /** Instrument it takes. */
  readonly instrumentKind: InstrumentKind;
  /** Minutes it takes. */
  readonly minutes: number;
  /** Warnings for this step. */
  readonly cautions: readonly Caution[];
  /** Limits of the sheet, with origin, citation and comparator. */
  readonly limits: readonly Limit[];
  /** Whether the item may be adjusted; a protected one needs a reason. */
  readonly adjustable: Adjustability;
  /** What a result outside means. */
  readonly outsideMeans: string;
  /** What to do then. */
  readonly whatToDo: string;
  /** Causes it looks for. */
  readonly targetCauses: readonly string[];
  /** Set where the answer decides without a number. */
  readonly functional: FunctionalCriterion | null;
  /** Left out where the vehicle has no such item. */
  readonly whereFitted: boolean;
};

export type CheckDigit = {
  /** which case this is */
  readonly kind: 'checkDigit';
  /** Sum of weighted values. */
  readonly sum: number;
  /** Digit that belongs in position 9. */
  readonly digit: string;
  /** Whether it is there. */
  readonly matches: boolean;
};

export type CheckProgress = {
  /** The check. */
  readonly checkId: string;
  /** In words. */
  readonly title: string;
  /** Where it stands: as left where it was read after work, else as found. */
  readonly state: CheckState;
  /** Checks that have to be passed before this one is judged. */
  readonly openPrerequisites: readonly string[];
  /** Check whose functional answer outranks the numbers of this one. */
  readonly outrankedBy: string | null;
  /** To be read as left: it, or what comes before it, was worked on since. */
  readonly asLeftDue: boolean;
  /** Why as found was never taken. */
  readonly asFoundNotTaken: string | null;
  /** Why it was left out. */
  readonly notDone: string | null;
  /** What was read, by phase and position. */
  readonly phases: readonly PhaseProgress[];
};

export type CheckRemark = {
  /** The check. */
  readonly checkId: string;
  /** Why. */
  readonly reason: string;
};

/** Values may be added; accept unknown ones in answers. */
export type CheckSection = 'intake' | 'opening' | 'search' | 'housing' | 'final' | 'proof' | (string & {});

export type CheckSheetPage = {
  /** The items, in the order of the list. */
  readonly items: readonly CheckSheetSummary[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type CheckSheetResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** Id of the sheet, the same in all versions. */
  readonly code: string;
  /** Version of the sheet; never changed once recorded. */
  readonly sheetVersion: number;
  /** In words. */
  readonly title: string;
  /** Kinds of part it looks at. */
  readonly componentTypeIds: readonly string[];
  /** Number of checks. */
  readonly checkCount: number;
  /** Minutes of all checks together. */
  readonly minutes: number;
  /** Checks in their order. */
  readonly checks: readonly Check[];
  /** Points that prove a job done by this sheet. */
  readonly proofPointIds: readonly string[];
  /** What comes before the sheet. */
  readonly precedence: string;
};

export type CheckSheetSummary = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** Id of the sheet, the same in all versions. */
  readonly code: string;
  /** Version of the sheet; never changed once recorded. */
  readonly sheetVersion: number;
  /** In words. */
  readonly title: string;
  /** Kinds of part it looks at. */
  readonly componentTypeIds: readonly string[];
  /** Number of checks. */
  readonly checkCount: number;
  /** Minutes of all checks together. */
  readonly minutes: number;
};

/** Values may be added; accept unknown ones in answers. */
export type CheckState = 'open' | 'passed' | 'failed' | 'undecided' | 'provisional' | 'recorded' | 'notDone' | (string & {});

export type CheckWorth = {
  /** Row of the diagnosis tables to do now. */
  readonly diagnosticCheckId: string;
  /** Checks of the sheet that answer it. */
  readonly checkIds: readonly string[];
  /** A safe and quick opening move: done first, whatever it saves. */
  readonly isOpeningMove: boolean;
  /** What belongs together, in the order to do it; the last is what it is done for. */
  readonly chain: readonly string[];
  /** Minutes of all of it. */
  readonly minutes: number;
  /** What knowing the results saves on average. */
  readonly expectedSaving: Money;
  /** What the minutes cost. */
  readonly cost: Money;
  /** Saving less cost; negative: not worth doing for the money alone. */
  readonly net: Money;
  /** Whether it saves more than it costs. */
  readonly isWorthIt: boolean;
  /** In words. */
  readonly detail: string;
};

export type CheckedLine = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Slope, unit per km. */
  readonly slope: number;
  /** Its standard error, unit per km. */
  readonly slopeStandardError: number;
  /** Height at fitting, in the unit. */
  readonly intercept: number;
};

export type ChecksByMoney = {
  /** which case this is */
  readonly kind: 'ranked';
  /** Cause whose cure costs least on average if nothing more is checked. */
  readonly bestCureNow: string;
  /** What that costs on average, wrong cures and coming back included. */
  readonly expectedCostNow: Money;
  /** Two or three checks: open opening moves, then those that save most per minute. */
  readonly checks: readonly CheckWorth[];
  /** Method. */
  readonly method: string;
};

export type ChecksByMoneyUnknown = {
  /** which case this is */
  readonly kind: 'cannotBeSaid';
  /** Why, as a stable code. */
  readonly why: string;
  /** In words. */
  readonly detail: string;
};

export type ChiSquareTrendTest = {
  /** which case this is */
  readonly kind: 'tested';
  /** The statistic. */
  readonly chiSquare: number;
  /** Its degrees of freedom. */
  readonly degreesOfFreedom: number;
  /** Small where events come ever faster. */
  readonly lowerTail: number;
  /** Small where events come ever slower. */
  readonly upperTail: number;
  /** Two-sided p-value. */
  readonly pValue: number;
};

export type ChosenEndpointState = 'active' | 'paused';

export type ClaimState = 'open' | 'sent' | 'accepted' | 'refused' | 'settled' | 'withdrawn';

export type ClaimStepKind = 'sent' | 'accepted' | 'refused' | 'settled' | 'withdrawn';

export type CloseCall = {
  /** which case this is */
  readonly kind: 'closeCall';
  /** Options too close to tell apart, cheapest first. */
  readonly optionIds: readonly string[];
  /** Whether the customer has still to consent to the amount. */
  readonly consentNeeded: boolean;
  /** The same in words. */
  readonly detail: string;
};

export type CloserFamily = 'weibull' | 'lognormal';

export type CloudEvent = {
  /** Version of CloudEvents. */
  readonly specversion: '1.0';
  /** Id of the event; the same in the feed and in every webhook that tells of it. */
  readonly id: string;
  /** The shop in which it happened. */
  readonly source: string;
  /** What happened; types may be added, accept those you do not know. */
  readonly type: string;
  /** The record it happened to. */
  readonly subject: string;
  /** When it was recorded. */
  readonly time: string;
  /** Media type of the data. */
  readonly datacontenttype: 'application/json';
  /** Name of the schema of the data. */
  readonly dataschema: string;
  /** Ids and codes, no personal data; the schema of each type stands under `webhooks`. */
  readonly data: { readonly [name: string]: unknown };
};

export type CombinedUncertainty = {
  /** Combined standard uncertainty, in the unit. */
  readonly standardUncertainty: number;
  /** Effective degrees of freedom; null: infinite. */
  readonly effectiveDegreesOfFreedom: number | null;
  /** Expanded uncertainty, in the unit. */
  readonly expanded: number;
  /** Coverage factor. */
  readonly coverageFactor: number;
  /** Degrees of freedom of that factor; null: infinite. */
  readonly coverageDegreesOfFreedom: number | null;
  /** Two-sided confidence level of the limits. */
  readonly level: number;
  /** The contributions in the order given. */
  readonly contributions: readonly BudgetShare[];
};

export type ComebackAttribution = 'noRootCauseFound' | 'wrongRootCause' | 'workmanship' | 'partDefective' | 'partWrong' | 'writeUpPoor' | 'intermittentNotReproduced' | 'recommendedWorkDeclined' | 'newUnrelatedFault' | 'operatingFuelTampering';

export type ComebackChance = {
  /** Chance of a comeback inside the watch window. */
  readonly probability: number;
  /** How sure that is. */
  readonly interval: Interval;
};

export type ComebackChartKind = 'proportion' | 'rate' | 'eventsBetween' | 'timeBetween';

export type ComebackChartPlace = {
  /** Period, or moment of the release or complaint that ends a gap. */
  readonly label: string;
  /** Value charted, in the unit of the chart. */
  readonly value: number;
  /** Lower limit. */
  readonly lower: number;
  /** Upper limit. */
  readonly upper: number;
  /** What is pointed out here. */
  readonly signals: readonly ChartSignal[];
  /** Jobs of the period whose outcome is known. */
  readonly jobs: number | null;
  /** Of those, come back. */
  readonly events: number | null;
  /** Windows still running: the place can still change. */
  readonly pending: number | null;
};

export type ComebackChartResponse = {
  /** Windows as they stood at this moment. */
  readonly at: string;
  /** As known at this moment; null: as known now. */
  readonly asOf: string | null;
  /** Comebacks that were counted. */
  readonly against: ComebacksAgainst;
  /** Currency of the shop, of all amounts. */
  readonly currency: Currency;
  /** Vehicles whose latest records are not in these numbers yet; 0 unless very much was recorded at once. */
  readonly unsettledVehicles: number;
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** The chart. */
  readonly chart: ComebackChartKind;
  /** Why this chart. */
  readonly choice: ChartChoice;
  /** Periods of release. */
  readonly period: ChartPeriodName;
  /** The chart, or why there is none. */
  readonly result: EstimatedComebackChart | NoComebackChart | CalculationNeedsMore;
};

export type ComebackChartUnit = 'share' | 'perJob' | 'jobs' | 'days';

export type ComebackCoefficient = {
  /** Stable name. */
  readonly name: string;
  /** Mean before anything was counted; judgement. */
  readonly startingMean: number;
  /** Its standard deviation. */
  readonly startingDeviation: number;
  /** Mean now. */
  readonly mean: number;
  /** Standard deviation now. */
  readonly deviation: number;
};

export type ComebackComparedGroup = {
  /** Value of the dimension; null: jobs without one. */
  readonly value: string | null;
  /** What it is called, where there is a name for it. */
  readonly label: string | null;
  /** As counted. */
  readonly rate: EstimatedRate | RateNeedsMore;
  /** Comebacks that jobs of the same mix had in the whole shop. */
  readonly expected: number;
  /** The same as a rate. */
  readonly expectedRate: number | null;
  /** The comparison, or that there are too few jobs for one. */
  readonly result: ComebackComparedResult | BelowMinimum;
  /** Where the jobs behind it are listed. */
  readonly jobs: string;
};

export type ComebackComparedResult = {
  /** which case this is */
  readonly kind: 'compared';
  /** Null where the mix leads to expect no comeback at all. */
  readonly ratio: ExpectedRatio | null;
  /** Funnel limits around the expected rate, inner and outer. */
  readonly funnel: readonly FunnelBand[];
  /** Where the rate lies in the funnel. */
  readonly finding: FunnelFinding;
  /** What to go by where numbers are small. */
  readonly shrunken: ShrunkenRate;
  /** Rank by the shrunken rate; 1 is the lowest, equal ones share a rank. */
  readonly rank: number;
};

export type ComebackComparisonResponse = {
  /** Windows as they stood at this moment. */
  readonly at: string;
  /** As known at this moment; null: as known now. */
  readonly asOf: string | null;
  /** Comebacks that were counted. */
  readonly against: ComebacksAgainst;
  /** Currency of the shop, of all amounts. */
  readonly currency: Currency;
  /** Vehicles whose latest records are not in these numbers yet; 0 unless very much was recorded at once. */
  readonly unsettledVehicles: number;
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** What is compared. */
  readonly by: RateDimension;
  /** All jobs of the question, each once. */
  readonly overall: EstimatedRate | RateNeedsMore;
  /** Kinds of job in the mix. */
  readonly strata: number;
  /** Jobs under which nothing is compared or ranked: a setting of the shop. */
  readonly minimumJobs: number;
  /** Jobs that the expectation is worth in a shrunken rate. */
  readonly priorJobs: number;
  /** Where that number comes from. */
  readonly priorFrom: PriorSource;
  /** By value, not by rank; those without a value last. */
  readonly groups: readonly ComebackComparedGroup[];
  /** Groups with the fewest jobs that are not shown. */
  readonly groupsLeftOut: number;
};

export type ComebackConsequence = 'handlingOnly' | 'handlingPlusFollowUpRepair';

export type ComebackCost = {
  /** Minutes of the repeat at the shop's full rate. */
  readonly labour: Money;
  /** Parts used in the repeat. */
  readonly parts: Money;
  /** Taking in, apologising, looking again. */
  readonly handling: Money;
  /** All three. */
  readonly total: Money;
  /** Lines without minutes or price, or in another currency: left out. */
  readonly gaps: number;
};

export type ComebackCostRow = {
  /** Cause class or period; null: not attributed yet, or the total. */
  readonly value: string | null;
  /** Comebacks. */
  readonly comebacks: number;
  /** Minutes of the repeat at the shop's full rate. */
  readonly labour: Money;
  /** Parts used in the repeat. */
  readonly parts: Money;
  /** Taking in, apologising, looking again. */
  readonly handling: Money;
  /** All three. */
  readonly total: Money;
  /** Lines without minutes or price, or in another currency: left out. */
  readonly gaps: number;
};

export type ComebackCostsResponse = {
  /** Windows as they stood at this moment. */
  readonly at: string;
  /** As known at this moment; null: as known now. */
  readonly asOf: string | null;
  /** Comebacks that were counted. */
  readonly against: ComebacksAgainst;
  /** Currency of the shop, of all amounts. */
  readonly currency: Currency;
  /** Vehicles whose latest records are not in these numbers yet; 0 unless very much was recorded at once. */
  readonly unsettledVehicles: number;
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** What it is told by. */
  readonly by: CostDimension;
  /** By value, those without one last. */
  readonly rows: readonly ComebackCostRow[];
  /** All of them. */
  readonly total: ComebackCostRow;
};

export type ComebackCurvePoint = {
  /** Days since release, counted up. */
  readonly days: number;
  /** Jobs still observed and not come back, just before. */
  readonly atRisk: number;
  /** Jobs that came back on that day. */
  readonly comebacks: number;
  /** Share not come back by then. */
  readonly notComeBack: number;
  /** Greenwood's standard error; null at 0. */
  readonly standardError: number | null;
  /** Lower limit; null where there is none. */
  readonly lower: number | null;
  /** Upper limit; null where there is none. */
  readonly upper: number | null;
};

export type ComebackCurveResponse = {
  /** Windows as they stood at this moment. */
  readonly at: string;
  /** As known at this moment; null: as known now. */
  readonly asOf: string | null;
  /** Comebacks that were counted. */
  readonly against: ComebacksAgainst;
  /** Currency of the shop, of all amounts. */
  readonly currency: Currency;
  /** Vehicles whose latest records are not in these numbers yet; 0 unless very much was recorded at once. */
  readonly unsettledVehicles: number;
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Time from release to the first comeback, inside its window or not. */
  readonly curve: EstimatedComebackCurve | NoComebackCurve | CalculationNeedsMore;
  /** Jobs whose vehicle was never seen again: left out, they say nothing. */
  readonly neverSeen: number;
};

export type ComebackDetailResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** The later complaint. */
  readonly complaintId: string;
  /** The earlier released job. */
  readonly jobId: string;
  /** Proposed by rule, confirmed or refused by a person. */
  readonly state: ComebackState;
  /** What a confirmed comeback is put down to; null: not attributed yet. */
  readonly attribution: ComebackAttribution | null;
  /** Why it is proposed. */
  readonly reasons: readonly ComebackReasonResponse[];
  /** How alike, 0 to 1: an order of likelihood, not a probability. */
  readonly likeness: number;
  /** Probability when it was proposed, learned from the shop's own confirmed and refused proposals; null where a person linked it. */
  readonly probability: ProposalProbability | null;
  /** Whole days from the release to the complaint. */
  readonly daysSinceRelease: number;
  /** Distance from the release to the complaint, in km; null where it cannot be relied on. */
  readonly kmSinceRelease: string | null;
  /** Whether the complaint came inside the job's watch window. */
  readonly insideWindow: boolean;
  /** Remark. */
  readonly note: string | null;
  /** First jobs of the chain that it counts for; none while it does not count. */
  readonly originalJobIds: readonly string[];
  /** Job that took the complaint in; null: none yet. */
  readonly repeatJobId: string | null;
  /** Cost at the full door rate; null where it does not count (not confirmed, outside the window) and for users of a customer. */
  readonly cost: ComebackCost | null;
};

export type ComebackEntry = {
  /** When it happened; null: before the shop knew the vehicle. */
  readonly happenedAt: string | null;
  /** The job it belongs to; null: none. */
  readonly jobId: string | null;
  /** which case this is */
  readonly kind: 'comeback';
  /** A complaint was tied to an earlier job: `jobId` is the earlier one. */
  readonly record: ComebackResponse;
  /** With `corrections=all`: the other revisions of the record, oldest first, later ones than the moment asked about as well. Empty otherwise. */
  readonly otherRevisions: readonly ComebackResponse[];
};

export type ComebackGroup = {
  /** Windows still running: neither success nor comeback. */
  readonly pending: number;
  /** Of those, come back already. */
  readonly pendingComebacks: number;
  /** Window elapsed, vehicle never seen since: in neither number of the rate. */
  readonly notSeenSince: number;
  /** At risk, and last seen while the window ran: the rest of it is taken on trust. */
  readonly seenOnlyInsideWindow: number;
  /** Came back, but not attributed yet: in neither number of a rate of one process. */
  readonly notAttributed: number;
  /** Comebacks of these jobs, those of comebacks included and windows still running too. */
  readonly comebacks: number;
  /** Value of the dimension; null: jobs without one. */
  readonly value: string | null;
  /** What it is called, where there is a name for it. */
  readonly label: string | null;
  /** Jobs that came back, of those whose window has elapsed and whose outcome is known. */
  readonly rate: EstimatedRate | RateNeedsMore;
  /** What these comebacks cost the shop at the full door rate; null for users of a customer. */
  readonly cost: Money | null;
  /** Lines without minutes or price, or in another currency: left out of the cost. */
  readonly costGaps: number;
  /** Where the jobs behind it are listed. */
  readonly jobs: string;
};

export type ComebackJob = {
  /** The job. */
  readonly jobId: string;
  /** Its vehicle. */
  readonly vehicleId: string;
  /** When it was released. */
  readonly releasedAt: string;
  /** When its window closes: by days, or by the sighting that showed the distance. */
  readonly closesAt: string;
  /** What closes it. */
  readonly closedBy: WindowClosing;
  /** What it counts as. */
  readonly outcome: JobOutcome;
  /** First comeback inside the window. */
  readonly comebackAt: string | null;
  /** When the vehicle was last seen after the release. */
  readonly lastSeenAt: string | null;
  /** Comebacks that count for it, those of comebacks included. */
  readonly comebacks: number;
  /** Those comebacks. */
  readonly comebackIds: readonly string[];
  /** What they cost the shop; null for users of a customer. */
  readonly cost: Money | null;
  /** Kind of job that a fair comparison takes as like. */
  readonly mix: string;
};

export type ComebackJobPage = {
  /** The items, in the order of the list. */
  readonly items: readonly ComebackJob[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type ComebackPage = {
  /** The items, in the order of the list. */
  readonly items: readonly ComebackResponse[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type ComebackRatesResponse = {
  /** Windows as they stood at this moment. */
  readonly at: string;
  /** As known at this moment; null: as known now. */
  readonly asOf: string | null;
  /** Comebacks that were counted. */
  readonly against: ComebacksAgainst;
  /** Currency of the shop, of all amounts. */
  readonly currency: Currency;
  /** Vehicles whose latest records are not in these numbers yet; 0 unless very much was recorded at once. */
  readonly unsettledVehicles: number;
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** What it is told by; null: all jobs together. */
  readonly by: RateDimension | null;
  /** By value, those without one last. */
  readonly groups: readonly ComebackGroup[];
  /** Groups with the fewest jobs that are not shown. */
  readonly groupsLeftOut: number;
};

export type ComebackReasonResponse = {
  /** Stable code of the reason. */
  readonly code: string;
  /** What it rests on. */
  readonly values: { readonly [name: string]: string };
  /** The reason in words. */
  readonly detail: string;
};

export type ComebackResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** The later complaint. */
  readonly complaintId: string;
  /** The earlier released job. */
  readonly jobId: string;
  /** Proposed by rule, confirmed or refused by a person. */
  readonly state: ComebackState;
  /** What a confirmed comeback is put down to; null: not attributed yet. */
  readonly attribution: ComebackAttribution | null;
  /** Why it is proposed. */
  readonly reasons: readonly ComebackReasonResponse[];
  /** How alike, 0 to 1: an order of likelihood, not a probability. */
  readonly likeness: number;
  /** Probability when it was proposed, learned from the shop's own confirmed and refused proposals; null where a person linked it. */
  readonly probability: ProposalProbability | null;
  /** Whole days from the release to the complaint. */
  readonly daysSinceRelease: number;
  /** Distance from the release to the complaint, in km; null where it cannot be relied on. */
  readonly kmSinceRelease: string | null;
  /** Whether the complaint came inside the job's watch window. */
  readonly insideWindow: boolean;
  /** Remark. */
  readonly note: string | null;
};

export type ComebackRevisionsResponse = {
  /** Every word on it, the oldest first. */
  readonly items: readonly ComebackResponse[];
};

export type ComebackState = 'proposed' | 'confirmed' | 'refused';

export type ComebacksAgainst = 'anybody' | 'diagnosis' | 'fitting' | 'supplier' | 'parts' | 'intake' | 'nobody';

export type ComparedGroup = 'first' | 'second' | 'both';

export type ComplaintEntry = {
  /** When it happened; null: before the shop knew the vehicle. */
  readonly happenedAt: string | null;
  /** The job it belongs to; null: none. */
  readonly jobId: string | null;
  /** which case this is */
  readonly kind: 'complaint';
  /** A complaint; `words` are null where the caller may not read them or they were erased. */
  readonly record: ComplaintSummary;
  /** With `corrections=all`: the other revisions of the record, oldest first, later ones than the moment asked about as well. Empty otherwise. */
  readonly otherRevisions: readonly ComplaintSummary[];
};

export type ComplaintPage = {
  /** The items, in the order of the list. */
  readonly items: readonly ComplaintSummary[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type ComplaintResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** The job it is dealt with in; null until it is. */
  readonly jobId: string | null;
  /** When the customer said it. */
  readonly receivedAt: string;
  /** The customer's own words, unedited. Personal data. */
  readonly words: string | null;
  /** Symptoms by id: present or absent. One that is not in here was not asked; a cause is never coded here. */
  readonly symptoms: { readonly [name: string]: SymptomAnswer };
  /** Circumstances by field of GET /v1/operating-conditions. */
  readonly conditions: { readonly [name: string]: string };
  /** Stored trouble codes. */
  readonly troubleCodes: readonly TroubleCode[];
  /** Whether the fault was reproduced; null: not tried yet. */
  readonly reproduced: boolean | null;
  /** Whether somebody has moved the stop screw before; null: not known. */
  readonly stopScrewMovedByOthers: boolean | null;
  /** Whether it is a driver's defect report. */
  readonly reportedByDriver: boolean;
  /** Kinds of part it points to, as the desk was told. */
  readonly components: readonly string[];
  /** Whether the customer says that it began after a repair. */
  readonly beganAfterRepair: boolean;
  /** Distance of the vehicle then, in km, where it can be relied on. */
  readonly distanceKm: string | null;
  /** The vehicle. */
  readonly vehicleId: string;
  /** Earlier jobs it may be a comeback of: proposed by rule, confirmed or refused by a person. */
  readonly comebacks: readonly ComebackResponse[];
};

export type ComplaintSummary = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** The job it is dealt with in; null until it is. */
  readonly jobId: string | null;
  /** When the customer said it. */
  readonly receivedAt: string;
  /** The customer's own words, unedited. Personal data. */
  readonly words: string | null;
  /** Symptoms by id: present or absent. One that is not in here was not asked; a cause is never coded here. */
  readonly symptoms: { readonly [name: string]: SymptomAnswer };
  /** Circumstances by field of GET /v1/operating-conditions. */
  readonly conditions: { readonly [name: string]: string };
  /** Stored trouble codes. */
  readonly troubleCodes: readonly TroubleCode[];
  /** Whether the fault was reproduced; null: not tried yet. */
  readonly reproduced: boolean | null;
  /** Whether somebody has moved the stop screw before; null: not known. */
  readonly stopScrewMovedByOthers: boolean | null;
  /** Whether it is a driver's defect report. */
  readonly reportedByDriver: boolean;
  /** Kinds of part it points to, as the desk was told. */
  readonly components: readonly string[];
  /** Whether the customer says that it began after a repair. */
  readonly beganAfterRepair: boolean;
  /** Distance of the vehicle then, in km, where it can be relied on. */
  readonly distanceKm: string | null;
  /** The vehicle. */
  readonly vehicleId: string;
};

export type ComponentLives = {
  /** What the parts tell. */
  readonly counts: LifeCounts;
  /** Greatest age at which a part was seen. */
  readonly greatestAge: number;
  /** Share of parts still going, by age. */
  readonly curve: EstimatedSurvivors | NoLifeEnded | IntervalsWithLateEntry | CalculationNeedsMore | CalculationNotConverged;
  /** Weibull distribution. */
  readonly weibull: FittedLives | NoBestLife | CalculationNeedsMore | CalculationNotConverged;
  /** Lognormal distribution. */
  readonly lognormal: FittedLives | NoBestLife | CalculationNeedsMore | CalculationNotConverged;
  /** The family with the lower criterion; null where not both were estimated. */
  readonly closer: CloserFamily | null;
};

export type ComponentLivesResponse = {
  /** What the parts tell. */
  readonly counts: LifeCounts;
  /** Greatest age at which a part was seen. */
  readonly greatestAge: number;
  /** Share of parts still going, by age. */
  readonly curve: EstimatedSurvivors | NoLifeEnded | IntervalsWithLateEntry | CalculationNeedsMore | CalculationNotConverged;
  /** Weibull distribution. */
  readonly weibull: FittedLives | NoBestLife | CalculationNeedsMore | CalculationNotConverged;
  /** Lognormal distribution. */
  readonly lognormal: FittedLives | NoBestLife | CalculationNeedsMore | CalculationNotConverged;
  /** The family with the lower criterion; null where not both were estimated. */
  readonly closer: CloserFamily | null;
  /** What ends a life: the part comes off (`replaced`, the usual), or it reaches its limit, known to lie between two inspections (`worn`). */
  readonly ends: LifeEnd;
  /** Whether lives are counted in days (the usual) or in km. */
  readonly scale: LifeScale;
  /** What looks odd about the observation. */
  readonly oddities: readonly WatchOddity[];
  /** How it was computed. */
  readonly method: CalculationMethod;
};

export type ComponentTypeList = {
  /** Shipped ones first. */
  readonly items: readonly ComponentTypeResponse[];
};

export type ComponentTypeOrigin = 'shipped' | 'shop';

export type ComponentTypeResponse = {
  /** Id of the kind of part. */
  readonly code: string;
  /** Shipped, or added by the shop. */
  readonly origin: ComponentTypeOrigin;
  /** Id of the record; null for a shipped one. */
  readonly recordId: string | null;
  /** When the shop added it; null for a shipped one. */
  readonly recordedAt: string | null;
  /** In words. */
  readonly name: string;
  /** Edition of the definition. */
  readonly edition: number;
  /** Places on a vehicle. */
  readonly positions: readonly string[];
  /** What can be measured on it. */
  readonly characteristics: readonly Characteristic[];
};

export type ComputedQuantity = {
  /** Number as decimal text, at most 24 significant digits. */
  readonly value: string;
  /** Code of the unit (UCUM). */
  readonly unit: UnitCode;
};

/** Values may be added; accept unknown ones in answers. */
export type ConditionKind = 'choice' | 'quantity' | 'flag' | 'text' | (string & {});

export type ConformanceProbability = {
  /** which case this is */
  readonly kind: 'probability';
  /** Probability that the limits are met. */
  readonly inside: number;
  /** Distribution of the value. */
  readonly method: string;
  /** The verdict. */
  readonly outcome: CalculatedOutcome;
};

export type ConformanceRequest = {
  /** Unit of every value. */
  readonly unit?: AnyUnit;
  /** Measured value. */
  readonly value: number;
  /** Its standard uncertainty. */
  readonly standardUncertainty: number;
  /** Degrees of freedom; infinite where null or left out. */
  readonly degreesOfFreedom?: number | null;
  /** Limits that are to be met. */
  readonly permitted: OpenLimits;
  /** Values that can be at all; any where left out. */
  readonly possible?: OpenLimits;
  /** What was known of the value beforehand. */
  readonly prior?: NormalPrior | null;
  /** Inside at this probability or more. */
  readonly insideFrom?: number;
  /** Outside at this probability or less. */
  readonly outsideTo?: number;
  /** Width of a guard band, where zones are asked for. */
  readonly guardBand?: number;
};

export type ConformanceResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** Unit of every value. */
  readonly unit: AnyUnit;
  /** The probability, or why there is none. */
  readonly result: ConformanceProbability | ContradictsBound;
  /** Guard-band zones; null where not asked for. */
  readonly zones: GuardBandZones | null;
};

export type ConsentAnswer = 'given' | 'refused';

export type ConsentEntry = {
  /** When it happened; null: before the shop knew the vehicle. */
  readonly happenedAt: string | null;
  /** The job it belongs to; null: none. */
  readonly jobId: string | null;
  /** which case this is */
  readonly kind: 'consent';
  /** An answer to one version of an estimate. */
  readonly record: ConsentResponse;
  /** With `corrections=all`: the other revisions of the record, oldest first, later ones than the moment asked about as well. Empty otherwise. */
  readonly otherRevisions: readonly ConsentResponse[];
};

export type ConsentResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** The version of the estimate it answers. */
  readonly estimateId: string;
  /** The answer. */
  readonly answer: ConsentAnswer;
  /** When. */
  readonly answeredAt: string;
  /** How. */
  readonly way: ConsentWay;
  /** Recommended work the customer declined, so that it can be said again. */
  readonly declinedWork: string | null;
  /** The job. */
  readonly jobId: string;
};

export type ConsentWay = 'inWriting' | 'inPerson' | 'byTelephone' | 'byMessage';

export type Contact = {
  /** Name of the person or firm. */
  readonly name: string;
  /** Telephone number as given. */
  readonly telephone?: string;
  /** Address for messages. */
  readonly email?: string;
  /** Postal address. */
  readonly address?: string;
};

export type ContradictsBound = {
  /** the value lies where no value can be */
  readonly kind: 'contradictsPhysicalBound';
  /** Probability of a possible value. */
  readonly possibleProbability: number;
};

export type ContributionPercent = {
  /** Repeatability, % of the variance. */
  readonly repeatability: number;
  /** Reproducibility, % of the variance. */
  readonly reproducibility: number;
  /** Gauge, % of the variance. */
  readonly gauge: number;
  /** Objects, % of the variance. */
  readonly objects: number;
};

export type ControlChartRequest = {
  /** What is charted. */
  readonly data: Counts | Proportions | Rates | EventsBetween | TimesBetween;
  /** Centre known beforehand; estimated where left out. */
  readonly centre?: number;
  /** How many first places the centre is estimated from; all where left out. */
  readonly baseline?: number;
  /** Places in a row on one side of the centre that are a signal. */
  readonly runLength?: number;
};

export type ControlChartResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** The chart, or why there is none. */
  readonly result: EstimatedChart | NoChartVariation | CalculationNeedsMore;
};

export type ConvertedQuantity = {
  /** Exact or correctly rounded decimal number. */
  readonly value: string;
  /** Its unit. */
  readonly unit: AnyUnit;
};

export type CorePage = {
  /** The items, in the order of the list. */
  readonly items: readonly CoreResponse[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type CoreResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** Who wants it back. */
  readonly supplier: string;
  /** Kind of part. */
  readonly componentType: string;
  /** Day since which it is owed. */
  readonly owedSince: string;
  /** Last day to send it back; null: none was named. */
  readonly returnBy: string | null;
  /** Deposit that is paid back for it. */
  readonly deposit: Money | null;
  /** Serial of the old part. */
  readonly serial: string | null;
  /** Anything else worth knowing. */
  readonly note: string | null;
  /** Number of the shop’s list it belongs to. */
  readonly partId: string | null;
  /** The job it came off on. */
  readonly jobId: string | null;
  /** The receipt that made it owed. */
  readonly stockMoveId: string | null;
  /** Where it stands today. `expired`: its day has passed and it was not sent back. */
  readonly state: CoreState;
  /** Since when. */
  readonly since: string;
  /** Days to its last day, negative once it has passed; null without one, or once it was sent back. */
  readonly daysLeft: number | null;
  /** What may come next. */
  readonly next: readonly CoreStepKind[];
  /** What was done, in order. */
  readonly steps: readonly CoreStep[];
  /** What looked odd about the last step. */
  readonly warnings: readonly WarningResponse[];
};

export type CoreRevisions = {
  /** Every revision, oldest first. */
  readonly items: readonly CoreResponse[];
};

export type CoreState = 'owed' | 'returned' | 'inspected' | 'accepted' | 'refused' | 'credited' | 'expired';

export type CoreStep = {
  /** What was done. */
  readonly kind: CoreStepKind;
  /** On which day. */
  readonly on: string;
  /** Why it was refused, or why it went back before the road test. */
  readonly reason: string | null;
  /** What was credited. */
  readonly amount: Money | null;
};

export type CoreStepKind = 'returned' | 'inspected' | 'accepted' | 'refused' | 'credited';

export type CorrectArrivalInspectionRequest = {
  /** When it was looked at. */
  readonly inspectedAt: string;
  /** As what it was bought. */
  readonly condition: PartCondition;
  /** Serial of the piece. */
  readonly serial: string | null;
  /** Anything else worth knowing. */
  readonly note: string | null;
  /** What was read. */
  readonly readings: readonly ArrivalReadingEntry[];
  /** Why the record is corrected; kept with the correction. */
  readonly reason: string;
};

export type CorrectComplaintRequest = {
  /** The job it is dealt with in; null until it is. */
  readonly jobId: string | null;
  /** When the customer said it. */
  readonly receivedAt: string;
  /** The customer's own words, unedited. Personal data. */
  readonly words: string | null;
  /** Symptoms by id: present or absent. One that is not in here was not asked; a cause is never coded here. */
  readonly symptoms: { readonly [name: string]: SymptomAnswer };
  /** Circumstances by field of GET /v1/operating-conditions. */
  readonly conditions: { readonly [name: string]: string };
  /** Stored trouble codes. */
  readonly troubleCodes: readonly TroubleCode[];
  /** Whether the fault was reproduced; null: not tried yet. */
  readonly reproduced: boolean | null;
  /** Whether somebody has moved the stop screw before; null: not known. */
  readonly stopScrewMovedByOthers: boolean | null;
  /** Whether it is a driver's defect report. */
  readonly reportedByDriver: boolean;
  /** Kinds of part it points to, as the desk was told. */
  readonly components: readonly string[];
  /** Whether the customer says that it began after a repair. */
  readonly beganAfterRepair: boolean;
  /** Distance of the vehicle then, in km, where it can be relied on. */
  readonly distanceKm: string | null;
  /** Why the record is corrected; kept with the correction. */
  readonly reason: string;
};

export type CorrectCoreRequest = {
  /** Who wants it back. */
  readonly supplier: string;
  /** Kind of part. */
  readonly componentType: string;
  /** Day since which it is owed. */
  readonly owedSince: string;
  /** Last day to send it back; null: none was named. */
  readonly returnBy: string | null;
  /** Deposit that is paid back for it. */
  readonly deposit: Money | null;
  /** Serial of the old part. */
  readonly serial: string | null;
  /** Anything else worth knowing. */
  readonly note: string | null;
  /** Why the record is corrected; kept with the correction. */
  readonly reason: string;
};

export type CorrectCustomerRequest = {
  /** A person, or an operator of a fleet. */
  readonly kind: CustomerKind;
  /** What a day off the road costs this customer, in the shop's currency; null: the shop's setting. */
  readonly downtimeCostPerDay: string | null;
  /** Distance this owner plans to keep a van for, in km; null: the shop's setting. */
  readonly planningDistanceKm: string | null;
  /** How to reach the customer. */
  readonly contact: Contact;
  /** Why the record is corrected; kept with the correction. */
  readonly reason: string;
};

export type CorrectDecisionRequest = {
  /** The option chosen, or `handOverUnrepaired`: the van goes back unrepaired and not for the road. An option that a guard removed cannot be chosen. */
  readonly chosen: DecisionChoice;
  /** When it was decided. */
  readonly decidedAt: string;
  /** Who decided. */
  readonly decidedBy: string;
  /** Why this was chosen; required when it differs from the recommendation. */
  readonly choiceReason: string | null;
  /** Why the record is corrected; kept with the correction. */
  readonly reason: string;
};

export type CorrectDeliveryRequest = {
  /** Day it was ordered. */
  readonly orderedOn: string;
  /** Day it was promised for; null: none was named. */
  readonly promisedOn: string | null;
  /** Day it arrived; null: not yet. */
  readonly arrivedOn: string | null;
  /** Pieces ordered; null: one. */
  readonly quantity?: number | null;
  /** Why the record is corrected; kept with the correction. */
  readonly reason: string;
};

export type CorrectFirst = {
  /** which case this is */
  readonly kind: 'correctFirst';
  /** Findings to put right and check again. */
  readonly findings: readonly Check[];
  /** Checks that wait for that. */
  readonly waiting: readonly string[];
  /** In words. */
  readonly detail: string;
};

export type CorrectFittedPartRequest = {
  /** Kind of part. */
  readonly componentType: string;
  /** Where on the vehicle, as the kind of part names its places. */
  readonly position: string;
  /** Condition when fitted; `original`: on the vehicle when the shop first saw it. */
  readonly condition: FittedCondition;
  /** When it was fitted; null: before the shop knew the vehicle. */
  readonly fittedAt: string | null;
  /** Distance of the vehicle then, in km. */
  readonly fittedKm: string | null;
  /** When it was removed; null: it is fitted. */
  readonly removedAt: string | null;
  /** Distance of the vehicle then, in km. */
  readonly removedKm: string | null;
  /** Serial number. */
  readonly serial: string | null;
  /** Batch it came from. */
  readonly batch: string | null;
  /** Who supplied it. */
  readonly supplier: string | null;
  /** Number printed on it. */
  readonly partNumber: string | null;
  /** Why it was removed. */
  readonly removalReason: string | null;
  /** Why the record is corrected; kept with the correction. */
  readonly reason: string;
};

export type CorrectGaugeStudyRequest = {
  /** What was measured. */
  readonly characteristic: string;
  /** Kind of instrument it was measured with. */
  readonly instrumentKind: InstrumentKind;
  /** Day of the study. */
  readonly studiedOn: string;
  /** How it is laid out and worked. */
  readonly design: GaugeDesign;
  /** p-value above which the interaction of a crossed study is pooled; null: 0.25, or no crossed study. */
  readonly poolingLevel: number | null;
  /** Unit of the readings. */
  readonly unit: AnyUnit;
  /** Every reading, any order. */
  readonly measurements: readonly GaugeMeasurement[];
  /** False: it is kept and no longer used for the doubt about readings. */
  readonly inUse: boolean;
  /** Remark. */
  readonly note: string | null;
  /** Why the record is corrected; kept with the correction. */
  readonly reason: string;
};

export type CorrectInspectionRequest = {
  /** When it was begun. */
  readonly startedAt: string;
  /** Technician. */
  readonly technicianId: string | null;
  /** Checks whose state before any work nobody can know any more. */
  readonly asFoundNotTaken: readonly CheckRemark[];
  /** Checks left out on purpose: not fitted, not possible today. */
  readonly notDone: readonly CheckRemark[];
  /** Remark. */
  readonly note: string | null;
  /** Why the record is corrected; kept with the correction. */
  readonly reason: string;
};

export type CorrectInstrumentRequest = {
  /** What is known about its error; unknown: its readings are compared at face value only. */
  readonly errorModel: MaximumPermissibleError | PercentOfReadingPlusDigits | AccuracyClassOfSpan | BladeSet | ExpandedUncertainty | UnknownError;
  /** Smallest step that can be read; null: not known. */
  readonly resolution: AnyQuantity | null;
  /** What it is. */
  readonly kind: InstrumentKind;
  /** Name in the shop. */
  readonly name: string;
  /** Serial number. */
  readonly serial: string | null;
  /** Day it was taken out of use. */
  readonly retiredOn: string | null;
  /** Why the record is corrected; kept with the correction. */
  readonly reason: string;
};

export type CorrectJobRequest = {
  /** When the visit began. */
  readonly openedAt: string;
  /** User it is assigned to; null: nobody yet. */
  readonly assignedTo: string | null;
  /** Technician who diagnosed; who fitted stands on the work line. */
  readonly diagnosedBy: string | null;
  /** Cause established by a check and by the cure, by id of GET /v1/causes; null: not established. */
  readonly causeId: string | null;
  /** Remark. */
  readonly note: string | null;
  /** Why the record is corrected; kept with the correction. */
  readonly reason: string;
};

export type CorrectLimitRequest = {
  /** The whole limit as it should be. */
  readonly limit: { readonly [name: string]: unknown };
  /** Why the record is corrected; kept with the correction. */
  readonly reason: string;
};

export type CorrectOdometerEntryRequest = {
  /** Digits as displayed, with a point before tenths. */
  readonly shown: string;
  /** Unit of the display (UCUM). */
  readonly unit: OdometerUnit;
  /** When it was read. */
  readonly readAt: string;
  /** Who read it, where that is known. */
  readonly readBy?: string | null;
  /** Remark. */
  readonly note?: string | null;
  /** How a person settles a contradiction: whether this entry may be relied on. Absent: by the rules. */
  readonly reliable?: boolean | null;
  /** Why the record is corrected; kept with the correction. */
  readonly reason: string;
};

export type CorrectOfferRequest = {
  /** Kind of part offered. */
  readonly componentType: string;
  /** Condition, as it must be declared. `repairedOwnPart`: what is needed to repair the part of the vehicle itself, such as bushes. */
  readonly condition: PartCondition;
  /** Who offers it. */
  readonly supplier: string;
  /** Number of the part. */
  readonly partNumber: string | null;
  /** Price; null: not quoted, which is never taken for free. */
  readonly price: Money | null;
  /** Deposit held until the old part is accepted, in the currency of the price; null: none. */
  readonly coreDeposit: Money | null;
  /** Days from order to arrival as promised; 0: it is on the shelf; null: nothing was promised. */
  readonly promisedLeadDays: number | null;
  /** Months of warranty on the part; null: none. */
  readonly warrantyMonths: number | null;
  /** Last day it holds; null: until further notice. */
  readonly validUntil: string | null;
  /** Number of the shop’s list that is offered; null: it goes by the number of the part. */
  readonly partId?: string | null;
  /** Price of a piece from a number of pieces on; null: one price for any number. */
  readonly priceBreaks?: readonly PriceBreak[] | null;
  /** Kilometres of warranty on the part; null: not bound by distance. */
  readonly warrantyKm?: string | null;
  /** Days after arrival within which the old part has to be back; null: none were named. */
  readonly coreReturnDays?: number | null;
  /** Why the record is corrected; kept with the correction. */
  readonly reason: string;
};

export type CorrectPartRequest = {
  /** Kind of part. */
  readonly componentType: string;
  /** Number under which it is ordered; once for a kind of part. */
  readonly partNumber: string;
  /** What it is, in words. */
  readonly title: string;
  /** Applications it fits, in the words that the vehicles of the shop carry; empty: it fits every vehicle with such a part. */
  readonly applications: readonly string[];
  /** The part that took its place; null: none. */
  readonly supersededById: string | null;
  /** Parts that fit the same; said of one of two it holds for both. */
  readonly interchangesWith: readonly string[];
  /** What else is ordered with it, such as a gasket. */
  readonly alsoOrder: readonly string[];
  /** Anything else worth knowing. */
  readonly note: string | null;
  /** Why the record is corrected; kept with the correction. */
  readonly reason: string;
};

export type CorrectReadingRequest = {
  /** Check of the sheet. */
  readonly checkId: string;
  /** As found: before anything was adjusted. As left: after. */
  readonly phase: ReadingPhase;
  /** Where on the vehicle; null where this kind of part has one place only. */
  readonly position: string | null;
  /** One of several like places of one part, e.g. cylinder-1 or left; null where there is one. */
  readonly place: string | null;
  /** The result, as the check asks for it. */
  readonly result: NumberResult | BladePairResult | YesNoResult | GradeResult;
  /** Instrument; null: its doubt is unknown. */
  readonly instrumentId: string | null;
  /** Person who measured; the caller where absent. */
  readonly measuredBy?: string;
  /** When it was taken. */
  readonly takenAt: string;
  /** Conditions as met, e.g. engineState: hotIdling, airConditioning: off. */
  readonly conditions: { readonly [name: string]: string };
  /** Remark. */
  readonly note: string | null;
  /** Somebody has looked again and stands by a value that looked unlikely. */
  readonly valueConfirmed: boolean;
  /** Why the record is corrected; kept with the correction. */
  readonly reason: string;
};

export type CorrectServicePlanItemRequest = {
  /** What is to be done. */
  readonly name: string;
  /** Kind of part it is done to; null: the vehicle as a whole. A part newly fitted counts as done. */
  readonly componentType: string | null;
  /** Work on such a part that counts as done. */
  readonly actions: readonly WorkAction[];
  /** Days after which it is due again; null: by distance only. */
  readonly everyDays: number | null;
  /** Distance in km after which it is due again; null: by days only. */
  readonly everyKm: string | null;
  /** The one vehicle it is for; null: several. */
  readonly vehicleId: string | null;
  /** Vehicles with this application, the shop's own word; null: all, or the one named. */
  readonly application: string | null;
  /** Whether it is still done; false: it is kept and never due. */
  readonly inUse: boolean;
  /** Why the record is corrected; kept with the correction. */
  readonly reason: string;
};

export type CorrectServiceRequest = {
  /** When it was done. */
  readonly doneAt: string;
  /** Distance in km then; null: told from the odometer entries before and after, where there are some. */
  readonly distanceKm: string | null;
  /** Note. */
  readonly note: string | null;
  /** Why the record is corrected; kept with the correction. */
  readonly reason: string;
};

export type CorrectVehicleRequest = {
  /** Vehicle identification or chassis number as read; null when none is legible. Oddities warn and never refuse. */
  readonly chassisNumber: string | null;
  /** Registration plate as read. */
  readonly plate: string | null;
  /** What the shop calls it. */
  readonly label: string | null;
  /** Day of first use: it decides which limits apply. */
  readonly firstUsedOn: string | null;
  /** Which housing, switch window and so on apply: the shop's own word. A limit of another application is a wrong limit. */
  readonly application: string | null;
  /** What limits ask for, e.g. jurisdiction, category, grossMass, steeringType. */
  readonly attributes: { readonly [name: string]: string };
  /** Distance a year the owner expects, in km. */
  readonly expectedKmPerYear: string | null;
  /** Stretches of time in which the shop would have seen what happened to the vehicle; empty: since it was recorded. */
  readonly observedSpans: readonly ObservedSpan[];
  /** Day it left the road for good. */
  readonly retiredOn: string | null;
  /** Why the record is corrected; kept with the correction. */
  readonly reason: string;
};

export type CorrectWarrantyClaimRequest = {
  /** On whom it is claimed. */
  readonly supplier: string;
  /** Which promise: part and labour are different ones, with different givers and limits. */
  readonly giver: WarrantyGiver;
  /** Day it is claimed. */
  readonly claimedOn: string;
  /** Day the fault showed. */
  readonly foundOn: string;
  /** Months of the promise; null: not bound by time. */
  readonly months: number | null;
  /** Kilometres of the promise; null: not bound by distance. */
  readonly km: string | null;
  /** What is claimed. */
  readonly amount: Money | null;
  /** What is wrong with it. */
  readonly description: string;
  /** Why the record is corrected; kept with the correction. */
  readonly reason: string;
};

export type CorrectWorkLineRequest = {
  /** What is done. */
  readonly action: WorkAction;
  /** Kind of part it is done to. */
  readonly componentType: string;
  /** Where on the vehicle. */
  readonly position: string;
  /** Planned, done or dropped. */
  readonly state: WorkLineState;
  /** Who does or did it. */
  readonly technicianId: string | null;
  /** When it was done. */
  readonly doneAt: string | null;
  /** Minutes worked. */
  readonly minutes: number | null;
  /** Description for the customer. */
  readonly description: string | null;
  /** An adjustment: from what. */
  readonly from: string | null;
  /** An adjustment: to what. */
  readonly to: string | null;
  /** What a protected item, such as the plate stop, is touched for. It is never used to set the switch or the idle: those two are refused. */
  readonly protectedPurpose: ProtectedPurpose | null;
  /** Why a protected item is touched. */
  readonly protectedReason: string | null;
  /** The part that went in. */
  readonly part: PartUsed | null;
  /** Why the record is corrected; kept with the correction. */
  readonly reason: string;
};

export type CostAim = {
  /** which case this is */
  readonly kind: 'costs';
  /** What a piece too many costs over the lead time. */
  readonly over: number;
  /** What a piece too few costs, in the same currency. */
  readonly under: number;
};

export type CostComponents = {
  /** The part. */
  readonly parts: Money;
  /** Labour. */
  readonly labour: Money;
  /** Days off the road: in the workshop, and waiting for the part. */
  readonly downtime: Money;
  /** Deposit times the chance of losing it. */
  readonly coreDepositAtRisk: Money;
  /** Chance of a comeback times handling, second downtime and the repair that then becomes necessary. */
  readonly comeback: Money;
  /** Complaints and repairs after the watch window, up to the planning distance. */
  readonly wearToCome: Money;
};

export type CostCore = {
  /** Deposit. */
  readonly deposit: Money;
  /** Chance of losing it, 0 to 1. */
  readonly probabilityOfLosing: string;
};

export type CostDifference = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Mean of rule less chosen; above zero the rule would have been dearer. */
  readonly mean: Money;
  /** Its standard error. */
  readonly standardError: Money;
  /** 5 % point. */
  readonly lower: Money;
  /** 95 % point. */
  readonly upper: Money;
  /** Pairs. */
  readonly decisions: number;
};

export type CostDimension = 'attribution' | 'month' | 'quarter' | 'year';

export type CostOfLevel = {
  /** Level, pieces. */
  readonly level: number;
  /** Its expected cost. */
  readonly expectedCost: number;
};

export type CostOption = {
  /** Id of the option. */
  readonly optionId: string;
  /** Parts. */
  readonly parts: Money;
  /** Hours of labour. */
  readonly labourHours: string;
  /** Days off the road. */
  readonly downtimeDays: string;
  /** Chance of a comeback, 0 to 1. */
  readonly probabilityOfComeback: string;
  /** What a comeback leads to. */
  readonly comebackConsequence: ComebackConsequence;
  /** Refundable deposit; null: none. */
  readonly core: CostCore | null;
};

export type CostPerKm = {
  /** which case this is */
  readonly kind: 'known';
  /** Cost of a km, in the currency of the answer. */
  readonly amountPerKm: number;
  /** Km driven between the readings used. */
  readonly km: number;
  /** Days of the time that lie between the readings used. */
  readonly coveredDays: number;
};

export type CostRateAtAge = {
  /** Age, in the unit. */
  readonly age: number;
  /** Cost per unit of age when replaced then. */
  readonly costRate: number;
};

export type CostRates = {
  /** An hour of labour. */
  readonly labourPerHour: Money;
  /** A day off the road. */
  readonly downtimePerDay: Money;
  /** Handling of a comeback. */
  readonly comebackHandling: Money;
  /** The repair that becomes necessary after a comeback, downtime included. */
  readonly followUpRepair: Money;
};

/** Values may be added; accept unknown ones in answers. */
export type CostRefusal = 'currenciesDiffer' | 'negativeAmount' | 'notDecimal' | 'probabilityOutOfRange' | (string & {});

export type CostSums = {
  /** Labour: minutes of work done at the present rate. */
  readonly labour: Money;
  /** Parts that went in, at the price recorded. */
  readonly parts: Money;
  /** Days in the workshop at what a day off the road costs the owner. */
  readonly downtimeCost: Money;
  /** All of it. */
  readonly total: Money;
  /** Days in the workshop by reason. */
  readonly downtime: Downtime;
  /** Cost of a km, or why it is not known. */
  readonly perKm: CostPerKm | DistanceNotKnown;
};

export type CostTerms = {
  /** Beginning of the time. */
  readonly from: string;
  /** End of the time. */
  readonly until: string;
  /** Labour rate an hour that was used. */
  readonly labourRatePerHour: Money;
  /** How it was computed. */
  readonly method: string;
};

export type CostedOption = {
  /** Id of the option. */
  readonly optionId: string;
  /** Parts and labour. */
  readonly partsAndLabour: Money;
  /** Days off the road. */
  readonly downtime: Money;
  /** Deposit times the chance of losing it. */
  readonly coreDepositAtRisk: Money;
  /** What a comeback would cost. */
  readonly costIfComeback: Money;
  /** That times its chance. */
  readonly expectedComeback: Money;
  /** Sum. */
  readonly expectedTotal: Money;
};

export type CountedChance = {
  /** Chance that is reckoned with. */
  readonly chance: number;
  /** Times it happened. */
  readonly events: number;
  /** Times it could have happened. */
  readonly of: number;
};

export type Counts = {
  /** which case this is */
  readonly kind: 'counts';
  /** Events of each place, over equal opportunity (c chart). */
  readonly counts: readonly number[];
};

export type CreateApiKeyRequest = {
  /** Whom the key speaks for. */
  readonly userId: string;
  /** What it is for. */
  readonly name: string;
  /** What the key may do at most; the roles of its user bound it further. */
  readonly roles: readonly ShopRole[];
  /** When the key ends by itself; null: when it is revoked. */
  readonly expiresAt: string | null;
  /** The key only reads: GET and HEAD. False unless told. */
  readonly readOnly?: boolean;
};

export type CrossedGaugeStudy = {
  /** What varies how much. */
  readonly variation: GaugeVariation;
  /** which case this is */
  readonly kind: 'crossed';
  /** Table of the analysis of variance. */
  readonly sources: CrossedSources;
  /** Test of the interaction; null where there is nothing to test by. */
  readonly interactionTest: InteractionTest | null;
  /** Whether the interaction was pooled into repeatability. */
  readonly isInteractionPooled: boolean;
};

export type CrossedSources = {
  /** Between objects. */
  readonly objects: VarianceSource;
  /** Between appraisers. */
  readonly appraisers: VarianceSource;
  /** Interaction of the two. */
  readonly interaction: VarianceSource;
  /** Repeats. */
  readonly error: VarianceSource;
};

/** Values may be added; accept unknown ones in answers. */
export type Currency = 'AED' | 'AFN' | 'ALL' | 'AMD' | 'AOA' | 'ARS' | 'AUD' | 'AWG' | 'AZN' | 'BAM' | 'BBD' | 'BDT' | 'BGN' | 'BHD' | 'BIF' | 'BMD' | 'BND' | 'BOB' | 'BRL' | 'BSD' | 'BTN' | 'BWP' | 'BYN' | 'BZD' | 'CAD' | 'CDF' | 'CHF' | 'CLF' | 'CLP' | 'CNY' | 'COP' | 'CRC' | 'CUP' | 'CVE' | 'CZK' | 'DJF' | 'DKK' | 'DOP' | 'DZD' | 'EGP' | 'ERN' | 'ETB' | 'EUR' | 'FJD' | 'FKP' | 'GBP' | 'GEL' | 'GHS' | 'GIP' | 'GMD' | 'GNF' | 'GTQ' | 'GYD' | 'HKD' | 'HNL' | 'HTG' | 'HUF' | 'IDR' | 'ILS' | 'INR' | 'IQD' | 'IRR' | 'ISK' | 'JMD' | 'JOD' | 'JPY' | 'KES' | 'KGS' | 'KHR' | 'KMF' | 'KPW' | 'KRW' | 'KWD' | 'KYD' | 'KZT' | 'LAK' | 'LBP' | 'LKR' | 'LRD' | 'LSL' | 'LYD' | 'MAD' | 'MDL' | 'MGA' | 'MKD' | 'MMK' | 'MNT' | 'MOP' | 'MRU' | 'MUR' | 'MVR' | 'MWK' | 'MXN' | 'MYR' | 'MZN' | 'NAD' | 'NGN' | 'NIO' | 'NOK' | 'NPR' | 'NZD' | 'OMR' | 'PAB' | 'PEN' | 'PGK' | 'PHP' | 'PKR' | 'PLN' | 'PYG' | 'QAR' | 'RON' | 'RSD' | 'RUB' | 'RWF' | 'SAR' | 'SBD' | 'SCR' | 'SDG' | 'SEK' | 'SGD' | 'SHP' | 'SLE' | 'SOS' | 'SRD' | 'SSP' | 'STN' | 'SVC' | 'SYP' | 'SZL' | 'THB' | 'TJS' | 'TMT' | 'TND' | 'TOP' | 'TRY' | 'TTD' | 'TWD' | 'TZS' | 'UAH' | 'UGX' | 'USD' | 'UYI' | 'UYU' | 'UYW' | 'UZS' | 'VED' | 'VES' | 'VND' | 'VUV' | 'WST' | 'XAF' | 'XCD' | 'XCG' | 'XOF' | 'XPF' | 'YER' | 'ZAR' | 'ZMW' | 'ZWG' | (string & {});

export type CurveLimitForm = 'plain' | 'log' | 'logLog';

export type CustomerKind = 'person' | 'fleetOperator';

export type CustomerPage = {
  /** The items, in the order of the list. */
  readonly items: readonly CustomerResponse[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type CustomerResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** A person, or an operator of a fleet. */
  readonly kind: CustomerKind;
  /** What a day off the road costs this customer, in the shop's currency; null: the shop's setting. */
  readonly downtimeCostPerDay: string | null;
  /** Distance this owner plans to keep a van for, in km; null: the shop's setting. */
  readonly planningDistanceKm: string | null;
  /** How to reach the customer; null once it was erased. */
  readonly contact: Contact | null;
  /** When the personal data was erased; null: it was not. */
  readonly erasedAt: string | null;
};

export type DaysAhead = {
  /** which case this is */
  readonly kind: 'days';
  /** Days from today. */
  readonly days: number;
};

export type DecisionChoice = 'leave' | 'adjust' | 'reBush' | 'fitUsed' | 'fitRemanufactured' | 'fitNew' | 'handOverUnrepaired';

export type DecisionEntry = {
  /** When it happened; null: before the shop knew the vehicle. */
  readonly happenedAt: string | null;
  /** The job it belongs to; null: none. */
  readonly jobId: string | null;
  /** which case this is */
  readonly kind: 'decision';
  /** What was chosen, and why. */
  readonly record: DecisionResponse;
  /** With `corrections=all`: the other revisions of the record, oldest first, later ones than the moment asked about as well. Empty otherwise. */
  readonly otherRevisions: readonly DecisionResponse[];
};

export type DecisionObservations = {
  /** Fitted parts, the ones recorded last. */
  readonly parts: number;
  /** Inspections of them. */
  readonly inspections: number;
  /** Complaints they may be to blame for, comebacks not among them. */
  readonly complaints: number;
  /** Released repairs. */
  readonly repairs: number;
  /** Deliveries with a promise. */
  readonly deliveries: number;
  /** Km watched over all parts. */
  readonly watchedKm: number;
};

export type DecisionPage = {
  /** The items, in the order of the list. */
  readonly items: readonly DecisionResponse[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type DecisionResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** The option chosen, or `handOverUnrepaired`: the van goes back unrepaired and not for the road. An option that a guard removed cannot be chosen. */
  readonly chosen: DecisionChoice;
  /** When it was decided. */
  readonly decidedAt: string;
  /** Who decided. */
  readonly decidedBy: string;
  /** Why this was chosen; required when it differs from the recommendation. */
  readonly choiceReason: string | null;
  /** The assessment it answers. */
  readonly assessmentId: string;
};

export type DecisionRevisions = {
  /** Every revision, oldest first. */
  readonly items: readonly DecisionResponse[];
};

export type DecisionWearDirection = 'up' | 'down';

export type DefaultDoubt = {
  /** Standard deviation of one reading; averages out with repeats. */
  readonly repeatability: AnyQuantity | null;
  /** Degrees of freedom behind it. */
  readonly repeatabilityDegreesOfFreedom: number | null;
  /** Standard uncertainty of mounting and angle; does not average out. Null: not known. */
  readonly setUp: AnyQuantity | null;
  /** What supports these figures. */
  readonly evidence: Evidence;
};

export type Delivered = {
  /** Days promised; null: none. */
  readonly promisedDays: string | null;
  /** Days it took. */
  readonly actualDays: string;
};

export type DeliveryPage = {
  /** The items, in the order of the list. */
  readonly items: readonly DeliveryResponse[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type DeliveryResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** Day it was ordered. */
  readonly orderedOn: string;
  /** Day it was promised for; null: none was named. */
  readonly promisedOn: string | null;
  /** Day it arrived; null: not yet. */
  readonly arrivedOn: string | null;
  /** Pieces ordered; null: one. */
  readonly quantity?: number | null;
  /** The offer it was ordered on. */
  readonly offerId: string;
};

export type DeliveryRevisions = {
  /** Every revision, oldest first. */
  readonly items: readonly DeliveryResponse[];
};

export type DemandMethod = 'chancesOfVans' | 'pastUse';

export type DemandPoint = {
  /** Pieces. */
  readonly pieces: number;
  /** Chance of exactly so many. */
  readonly chance: number;
};

export type DemandSummary = {
  /** Mean number of pieces. */
  readonly mean: number;
  /** Standard deviation, pieces. */
  readonly standardDeviation: number;
  /** Median, pieces. */
  readonly median: number;
  /** Lower end of the interval, pieces. */
  readonly lower: number;
  /** Upper end of the interval, pieces. */
  readonly upper: number;
  /** Confidence of the equal-tailed interval. */
  readonly confidence: number;
};

export type DistanceAhead = {
  /** which case this is */
  readonly kind: 'distance';
  /** Further km of each van. */
  readonly km: number;
};

export type DistanceNotKnown = {
  /** which case this is */
  readonly kind: 'insufficientData';
  /** What there is too little of. */
  readonly of: string;
  /** How many are needed. */
  readonly needed: number;
  /** How many there are. */
  readonly got: number;
};

export type DistanceToLimit = {
  /** Median distance from now to the limit, km; null: farther than 10 million. */
  readonly median: number | null;
  /** Lower end of the interval, km. */
  readonly lower: number;
  /** Upper end, km; null: farther than 10 million. */
  readonly upper: number | null;
  /** Two-sided level of the interval. */
  readonly level: number;
};

export type Downtime = {
  /** Days in the workshop; overlapping visits count once. */
  readonly days: number;
  /** Visits. */
  readonly visits: number;
  /** Days in work. */
  readonly inWork: number;
  /** Days waiting for consent. */
  readonly waitingForConsent: number;
  /** Days waiting for a part. */
  readonly waitingForPart: number;
  /** Days waiting for a bay. */
  readonly waitingForBay: number;
  /** Days between the end of the work and the release. */
  readonly waitingForRelease: number;
};

export type DueBasis = 'lastDone' | 'firstUse' | 'none';

export type DueCounts = {
  /** Past its day or its distance. */
  readonly overdue: number;
  /** Due within the days or the distance asked for. */
  readonly dueSoon: number;
  /** Due later. */
  readonly later: number;
  /** Nobody knows. */
  readonly unknown: number;
};

export type DueServicePage = {
  /** The items, in the order of the list. */
  readonly items: readonly DueServiceResponse[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
  /** Over all vehicles asked for, whatever the standing. */
  readonly counts: DueCounts;
  /** Vehicles in use for which the plan has an item. */
  readonly vehicles: number;
};

export type DueServiceResponse = {
  /** The vehicle. */
  readonly vehicleId: string;
  /** What the shop calls it. */
  readonly label: string | null;
  /** Plate. */
  readonly plate: string | null;
  /** Item of the plan. */
  readonly planItemId: string;
  /** What is to be done. */
  readonly name: string;
  /** How it stands. */
  readonly standing: DueStanding;
  /** From what it is counted: when it was last done, first use of the vehicle, or nothing that is known. */
  readonly basis: DueBasis;
  /** When it was last done; null: never, as far as anybody knows. */
  readonly lastDoneAt: string | null;
  /** Distance then, km. */
  readonly lastDoneKm: number | null;
  /** Day on which it is due by date. */
  readonly dueOn: string | null;
  /** Distance at which it is due, km. */
  readonly dueKm: number | null;
  /** Days left by date, below 0 when past. */
  readonly daysLeft: number | null;
  /** Km left, below 0 when past; from the expected present distance. */
  readonly kmLeft: number | null;
  /** Day on which the first of the two is expected to be reached. */
  readonly expectedOn: string | null;
  /** Which of the two is reached first. */
  readonly reachedFirst: ReachedFirst | null;
  /** It has a distance that cannot be counted: the date alone stands. */
  readonly isDistanceUnknown: boolean;
  /** Last reliable reading of the odometer, km. */
  readonly readKm: number | null;
  /** When that was read. */
  readonly readAt: string | null;
};

/** Values may be added; accept unknown ones in answers. */
export type DueStanding = 'overdue' | 'dueSoon' | 'later' | 'unknown' | (string & {});

export type EconomicLifeRequest = {
  /** What it costs to get, or what selling it now would bring. */
  readonly price: number;
  /** Equal periods in order. */
  readonly periods: readonly HoldingPeriod[];
  /** Interest per period; no discounting where left out. */
  readonly discountRate?: number;
  /** Cost per period of what would take its place; price is then what selling it now would bring. */
  readonly challengerCost?: number;
};

export type EconomicLifeResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** The economic life, or why there is none. */
  readonly result: MinimumInside | LowestAtLastPeriod | CalculationNeedsMore;
  /** What a challenger means for it; null where none was given. */
  readonly challenger: ReplaceNow | KeepForPeriods | KeepThroughout | CalculationNeedsMore | null;
};

export type EraseCustomerRequest = {
  /** Why the personal data is erased, e.g. the wish of the person. Kept. */
  readonly reason: string;
};

export type ErasureResponse = {
  /** How many pieces of personal data were erased. */
  readonly erased: number;
  /** When. */
  readonly erasedAt: string;
};

export type EstimateEntry = {
  /** When it happened; null: before the shop knew the vehicle. */
  readonly happenedAt: string | null;
  /** The job it belongs to; null: none. */
  readonly jobId: string | null;
  /** which case this is */
  readonly kind: 'estimate';
  /** A version of an estimate. */
  readonly record: EstimateResponse;
  /** With `corrections=all`: the other revisions of the record, oldest first, later ones than the moment asked about as well. Empty otherwise. */
  readonly otherRevisions: readonly EstimateResponse[];
};

export type EstimateLineEntry = {
  /** The work line it prices; null for an amount of another kind, such as the diagnosis. */
  readonly workLineId: string | null;
  /** Description for the customer. */
  readonly description: string;
  /** Parts, in the shop's currency. */
  readonly partsAmount: string;
  /** Labour in hours. */
  readonly labourHours: string;
  /** Condition of the parts, declared to the customer. */
  readonly partCondition: PartCondition | null;
};

export type EstimateLineResponse = {
  /** The work line it prices; null for an amount of another kind, such as the diagnosis. */
  readonly workLineId: string | null;
  /** Description for the customer. */
  readonly description: string;
  /** Parts, in the shop's currency. */
  readonly partsAmount: string;
  /** Labour in hours. */
  readonly labourHours: string;
  /** Condition of the parts, declared to the customer. */
  readonly partCondition: PartCondition | null;
  /** Labour at the shop's rate. */
  readonly labourAmount: string;
};

export type EstimateResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** The job. */
  readonly jobId: string;
  /** Version of the estimate, from 1. Consent belongs to one version. */
  readonly estimateVersion: number;
  /** ISO 4217 code of all amounts. */
  readonly currency: string;
  /** Lines. */
  readonly lines: readonly EstimateLineResponse[];
  /** Sum of all lines. */
  readonly totalAmount: string;
  /** Amount not to be exceeded without new consent. */
  readonly ceilingAmount: string;
};

export type EstimatedAcceptance = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Accept measured values up to this, in the unit. */
  readonly acceptanceLimit: number;
  /** Risks with that limit. */
  readonly risk: GlobalRisk;
};

export type EstimatedCauses = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Probability of each cause after the findings. */
  readonly marginals: readonly number[];
  /** Logarithm of the probability of the findings. */
  readonly logEvidence: number;
  /** The likeliest combination. */
  readonly mostProbable: MostProbableCauses;
  /** Probability that none of the causes holds. */
  readonly noneProbability: number;
};

export type EstimatedChart = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Kind of chart. */
  readonly chart: ChartKind;
  /** Centre line. */
  readonly centre: number;
  /** Line whose sides are compared for runs. */
  readonly runLine: number;
  /** The places with their limits. */
  readonly places: readonly ChartPlace[];
};

export type EstimatedComebackChart = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Unit of the values. */
  readonly unit: ComebackChartUnit;
  /** Centre line. */
  readonly centre: number;
  /** Line whose sides are compared for runs. */
  readonly runLine: number;
  /** In the order of time. */
  readonly places: readonly ComebackChartPlace[];
};

export type EstimatedComebackCurve = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Jobs observed. */
  readonly jobs: number;
  /** Of those, come back. */
  readonly comebacks: number;
  /** Level of the limits, two-sided and pointwise. */
  readonly level: number;
  /** Form of the limits. */
  readonly limitForm: string;
  /** The curve says nothing beyond this day. */
  readonly lastDay: number;
  /** The curve fell to 0 before the last day. */
  readonly exhaustedEarly: boolean;
  /** At the days of comebacks. */
  readonly points: readonly ComebackCurvePoint[];
};

export type EstimatedExpectationRatio = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Events that were seen. */
  readonly observed: number;
  /** Events that were to be expected. */
  readonly expected: number;
  /** Observed over expected. */
  readonly ratio: number;
  /** Its exact limits. */
  readonly interval: CalculationLimits;
  /** Whether 1 lies inside the limits. */
  readonly finding: ExpectationFinding;
  /** Two-sided confidence level of the limits. */
  readonly level: number;
};

export type EstimatedForecast = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Plain, or corrected for bias. */
  readonly method: IntermittentMethod;
  /** Demand per period, pieces. */
  readonly perPeriod: number;
  /** Smoothed size of a demand, pieces. */
  readonly size: number;
  /** Smoothed interval between demands, periods. */
  readonly interval: number;
  /** Periods with demand. */
  readonly demands: number;
};

export type EstimatedInverse = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Where the line reaches the height, in the unit of x. */
  readonly x: number;
  /** Fieller's interval. */
  readonly interval: CalculationLimits;
  /** (t x standard error / slope)^2; from 1 on nothing is answered. */
  readonly g: number;
};

export type EstimatedLifeFit = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Distribution that was fitted. */
  readonly family: LifeFamily;
  /** Location of the logarithm of the life. */
  readonly mu: number;
  /** Scale of the logarithm of the life. */
  readonly sigma: number;
  /** Logarithm of the likelihood. */
  readonly logLikelihood: number;
  /** Akaike's criterion; compares families on the same data. */
  readonly akaike: number;
  /** Units, by weight. */
  readonly units: number;
  /** Lives with a finite upper end, by weight. */
  readonly events: number;
  /** Mean life, in the unit. */
  readonly mean: number;
  /** Standard deviation of lives, in the unit. */
  readonly standardDeviation: number;
  /** Characteristic life (Weibull), mean (exponential) or median (lognormal), in the unit. */
  readonly scale: WaldEstimate;
  /** Weibull shape; null for a lognormal. */
  readonly shape: WeibullShape | null;
  /** Life by which each share has failed, in the unit. */
  readonly lives: readonly LifeOfShare[];
  /** Share failed by each age. */
  readonly failedBy: readonly FailedByAge[];
};

export type EstimatedLine = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Form of the line. */
  readonly model: LineModel;
  /** Where the scatter comes from. */
  readonly scatter: ScatterSource;
  /** Slope. */
  readonly slope: number;
  /** Intercept, in the unit of y. */
  readonly intercept: number;
  /** Standard error of the slope. */
  readonly slopeStandardError: number;
  /** Standard error of the intercept. */
  readonly interceptStandardError: number;
  /** Residual standard deviation (of unit weight). */
  readonly residualStandardDeviation: number;
  /** Degrees of freedom; null where the scatter is known. */
  readonly degreesOfFreedom: number | null;
  /** Coefficient of determination; null where it has no meaning. */
  readonly rSquared: number | null;
  /** Two-sided confidence level of the limits. */
  readonly level: number;
  /** Interval of the slope. */
  readonly slopeInterval: SlopeInterval;
  /** Predictions asked for. */
  readonly predictions: readonly LinePrediction[];
  /** Heights asked for. */
  readonly reached: readonly ReachedHeight[];
};

export type EstimatedMannKendall = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Points. */
  readonly observations: number;
  /** Pairs that rise less pairs that fall. */
  readonly score: number;
  /** Its variance without a trend, ties counted. */
  readonly variance: number;
  /** Score over its standard deviation, with continuity correction. */
  readonly z: number;
  /** Score over the number of pairs. */
  readonly tauA: number;
  /** The same, corrected for ties. */
  readonly tauB: number;
  /** How the p-values were made. */
  readonly method: MannKendallMethod;
  /** P(score at least this large) without a trend. */
  readonly pUpward: number;
  /** P(score at most this large) without a trend. */
  readonly pDownward: number;
  /** Two-sided p-value. */
  readonly pTwoSided: number;
};

export type EstimatedMeanFunction = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Event ages, rising, in the unit. */
  readonly ages: readonly number[];
  /** Units at risk at each age. */
  readonly atRisk: readonly number[];
  /** Events (or their sizes) at each age. */
  readonly events: readonly number[];
  /** Mean events per unit by each age. */
  readonly mean: readonly number[];
  /** Robust standard errors of the mean. */
  readonly standardErrors: readonly (number | null)[];
  /** Lower limits of the mean. */
  readonly lower: readonly (number | null)[];
  /** Upper limits of the mean. */
  readonly upper: readonly (number | null)[];
  /** Form of the limits: plain, or on the logarithm. */
  readonly limitForm: RecurrenceLimitForm;
  /** Two-sided confidence level of the limits. */
  readonly level: number;
  /** First age observed, in the unit. */
  readonly firstAge: number;
  /** Last age observed, in the unit. */
  readonly lastAge: number;
  /** Ages between at which nobody was observed. */
  readonly gaps: readonly UnobservedAges[];
  /** Units observed. */
  readonly units: number;
  /** The curve at the ages asked for. */
  readonly at: readonly MeanAtAge[];
};

export type EstimatedMixedLine = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Two-sided confidence level of the limits. */
  readonly level: number;
  /** Points. */
  readonly observations: number;
  /** How the units differ. */
  readonly betweenVariation: BetweenVariation;
  /** Criterion of restricted maximum likelihood at its minimum. */
  readonly remlCriterion: number;
  /** Variance about each line. */
  readonly residualVariance: number;
  /** The mean line. */
  readonly mean: LineOfUnit;
  /** How lines differ from unit to unit. */
  readonly between: BetweenUnits;
  /** The line of each unit, drawn towards the mean. */
  readonly unitLines: readonly LineOfUnit[];
};

export type EstimatedPosterior = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Probability of the condition after the result. */
  readonly probability: number;
  /** Probability of the result beforehand. */
  readonly evidence: number;
};

export type EstimatedProportion = {
  /** Lower limit. */
  readonly lower: number;
  /** Upper limit. */
  readonly upper: number;
  /** which case this is */
  readonly kind: 'estimated';
  /** Which interval. */
  readonly method: ProportionIntervalMethod;
  /** Successes over trials. */
  readonly proportion: number;
  /** Two-sided confidence level. */
  readonly confidence: number;
};

export type EstimatedProportionDifference = {
  /** Lower limit. */
  readonly lower: number;
  /** Upper limit. */
  readonly upper: number;
  /** which case this is */
  readonly kind: 'estimated';
  /** First share minus second. */
  readonly difference: number;
  /** Two-sided confidence level. */
  readonly confidence: number;
};

export type EstimatedRate = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Events divided by those at risk. */
  readonly value: number;
  /** How many events were seen. */
  readonly events: number;
  /** How many could have had one. */
  readonly atRisk: number;
  /** How sure the rate is. */
  readonly interval: Interval;
};

export type EstimatedRecurrence = {
  /** Vehicles observed. */
  readonly vehicles: number;
  /** Days observed, all vehicles together. */
  readonly observedDays: number;
  /** Replacements outside the observation of their vehicle: left out, since others like them went unseen. */
  readonly unobservedEvents: number;
  /** which case this is */
  readonly kind: 'estimated';
  /** Method. */
  readonly method: string;
  /** Source of the method. */
  readonly source: string;
  /** Two-sided, pointwise level of the limits. */
  readonly level: number;
  /** Replacements counted. */
  readonly events: number;
  /** Points at the ages of replacements. */
  readonly points: readonly RecurrencePoint[];
};

export type EstimatedSummary = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Mean, in the unit. */
  readonly mean: number;
  /** Variance, in the square of the unit; null for a single value. */
  readonly variance: number | null;
  /** Standard deviation, in the unit; null for a single value. */
  readonly standardDeviation: number | null;
  /** Standard error of the mean; null for a single value. */
  readonly standardError: number | null;
  /** Student's interval of the mean; null for a single value. */
  readonly meanInterval: CalculationLimits | null;
  /** Two-sided confidence level of the limits. */
  readonly level: number;
  /** Least value. */
  readonly least: number;
  /** Median. */
  readonly median: number;
  /** Greatest value. */
  readonly greatest: number;
  /** Quantiles asked for. */
  readonly quantiles: readonly SampleQuantile[];
};

export type EstimatedSurvival = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Event ages, rising, in the unit. */
  readonly ages: readonly number[];
  /** Units at risk just before each age. */
  readonly atRisk: readonly number[];
  /** Events at each age. */
  readonly events: readonly number[];
  /** Share surviving from each age on. */
  readonly survival: readonly number[];
  /** Greenwood's standard error of the share; null where the share is 0. */
  readonly standardErrors: readonly (number | null)[];
  /** Lower limits of the share. */
  readonly lower: readonly (number | null)[];
  /** Upper limits of the share. */
  readonly upper: readonly (number | null)[];
  /** Form of the limits: plain, on the logarithm, or on the logarithm of the logarithm. */
  readonly limitForm: CurveLimitForm;
  /** Two-sided confidence level of the limits. */
  readonly level: number;
  /** The curve says nothing beyond this age, in the unit. */
  readonly lastAge: number;
  /** Units observed, by weight. */
  readonly units: number;
  /** The curve fell to 0 while older units were still to come: late entry left too few. */
  readonly exhaustedEarly: boolean;
  /** The curve at the ages asked for. */
  readonly at: readonly SurvivalAtAge[];
  /** Ages of the shares asked for. */
  readonly quantiles: readonly SurvivalQuantile[];
};

export type EstimatedSurvivors = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Method. */
  readonly method: string;
  /** Two-sided level of the limits. */
  readonly level: number;
  /** The curve, ages rising. */
  readonly points: readonly SurvivorPoint[];
};

export type EstimatedTheilSen = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Points. */
  readonly observations: number;
  /** Pairs with different x. */
  readonly pairs: number;
  /** Median of the pair slopes. */
  readonly slope: number;
  /** median(y) - slope x median(x). */
  readonly intercept: number;
  /** Interval of the slope; null where so few pairs reach no such level. */
  readonly interval: CalculationLimits | null;
  /** Two-sided confidence level of the limits. */
  readonly level: number;
};

export type EstimatedTurnbull = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Lower ends of the intervals that hold failures, in the unit. */
  readonly lowerAges: readonly number[];
  /** Upper ends; null for the last survivors. */
  readonly upperAges: readonly (number | null)[];
  /** Share that fails in each interval. */
  readonly masses: readonly number[];
  /** Share surviving from the upper end on. */
  readonly survival: readonly number[];
  /** Standard error of the share; null where there is none. */
  readonly standardErrors: readonly (number | null)[];
  /** Lower limits of the share. */
  readonly lower: readonly (number | null)[];
  /** Upper limits of the share. */
  readonly upper: readonly (number | null)[];
  /** Form of the limits: plain, on the logarithm, or on the logarithm of the logarithm. */
  readonly limitForm: CurveLimitForm;
  /** Two-sided confidence level of the limits. */
  readonly level: number;
  /** Units observed, by weight. */
  readonly units: number;
  /** Logarithm of the likelihood. */
  readonly logLikelihood: number;
  /** Steps of the search. */
  readonly iterations: number;
};

export type EstimatedWear = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Whose strength it rests on beside the part's own readings. */
  readonly borrowed: BorrowedStrength;
  /** Distance since fitting at present, km. */
  readonly nowKm: number;
  /** Level at present. */
  readonly level: WearLevel;
  /** Rate of wear with its interval. */
  readonly rate: WearRate;
  /** Distance left to the limit. */
  readonly distanceToLimit: DistanceToLimit;
  /** Probability that the limit is reached already. */
  readonly reachedNow: number;
  /** Whether wear gets faster. */
  readonly acceleration: AccelerationTest | CalculationNeedsMore;
  /** Distance between first and last point, km. */
  readonly observedKm: number;
  /** The median lies farther beyond the last point than the points lie apart. */
  readonly isBeyondData: boolean;
  /** Bias of each instrument where more than one was used. */
  readonly instruments: readonly InstrumentBias[];
  /** What a person would check beside it. */
  readonly handChecks: WearHandChecks;
};

export type EstimatedWeibayes = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Characteristic life, in the unit. */
  readonly characteristicLife: number;
  /** Lower limit, in the unit. */
  readonly lower: number;
  /** Upper limit, in the unit. */
  readonly upper: number;
  /** Events, by weight. */
  readonly events: number;
  /** Shape that was taken as known. */
  readonly shape: number;
  /** Two-sided confidence level of the limits. */
  readonly level: number;
};

export type EstimatesResponse = {
  /** Versions, newest first. */
  readonly estimates: readonly EstimateResponse[];
  /** Answers, newest first. */
  readonly consents: readonly ConsentResponse[];
};

export type EvaluateReadingRequest = {
  /** Id of a limit that holds in this shop; or give `limit`. */
  readonly limitId?: string;
  /** A whole limit; or give `limitId`. */
  readonly limit?: { readonly [name: string]: unknown };
  /** Repeats of one result. */
  readonly readings: readonly (NumberResult | BladePairResult | YesNoResult | GradeResult)[];
  /** An instrument of the shop. */
  readonly instrumentId?: string;
  /** What is known of an instrument. */
  readonly instrument?: InstrumentProperties;
  /** Standard uncertainty of mounting; what the kind of part says where absent, unknown where null. */
  readonly setUp?: AnyQuantity | null;
  /** Standard deviation of one reading; as above. */
  readonly repeatability?: AnyQuantity | null;
  /** What is known of vehicle and test, e.g. jurisdiction: uk, grossMass: 3500 kg. */
  readonly context?: { readonly [name: string]: string };
};

export type EvaluationResponse = {
  /** The limit that was used. */
  readonly limit: Limit;
  /** What the readings say. */
  readonly judgement: Judgement;
};

export type EventCount = {
  /** Events. */
  readonly events: number;
  /** Opportunity, in any one measure. */
  readonly exposure: number;
};

export type EventStretchResponse = {
  /** What happened, in the order in which it became true. */
  readonly events: readonly CloudEvent[];
  /** Send it as `after` to go on from here, also when there was nothing new. */
  readonly after: string;
  /** More is there already. */
  readonly hasMore: boolean;
};

export type EventsAtAgeZero = {
  /** which case this is */
  readonly kind: 'zeroAgeEvents';
  /** Events at age 0, whose logarithm has no bound. */
  readonly count: number;
};

export type EventsBetween = {
  /** which case this is */
  readonly kind: 'eventsBetween';
  /** Good ones between one bad one and the next (g chart). */
  readonly gaps: readonly number[];
};

export type Evidence = {
  /** What supports it. */
  readonly tag: EvidenceTag;
  /** Source of a published or remembered statement; null for the others. */
  readonly citation: string | null;
};

/** Values may be added; accept unknown ones in answers. */
export type EvidenceKind = 'reading' | 'verdict' | 'job' | 'comeback' | 'consent' | 'given' | (string & {});

export type EvidenceLink = {
  /** What it is. */
  readonly kind: EvidenceKind;
  /** Its id. */
  readonly id: string;
};

/** Values may be added; accept unknown ones in answers. */
export type EvidenceTag = 'published' | 'memory' | 'commonPractice' | 'judgement' | 'maker' | 'shop' | (string & {});

export type ExactEvents = {
  /** Ages of the system at its events. */
  readonly eventAges: readonly number[];
  /** Age at the end of observation; may be left out where it ended with the last event. */
  readonly end?: number;
  /** Whether observation ended at a time fixed beforehand or with the last event. */
  readonly termination: Termination;
  /** which case this is */
  readonly kind: 'exact';
};

export type ExactlyDeterminedLine = {
  /** as many parameters as points: no scatter, no interval */
  readonly kind: 'exactlyDetermined';
  /** Slope. */
  readonly slope: number;
  /** Intercept. */
  readonly intercept: number;
};

export type ExpandedUncertainty = {
  /** which case this is */
  readonly kind: 'expandedUncertainty';
  /** Expanded uncertainty on the certificate. */
  readonly expanded: AnyQuantity;
  /** Coverage factor. */
  readonly coverageFactor: number;
  /** Degrees of freedom; null: as good as known. */
  readonly degreesOfFreedom: number | null;
};

export type ExpectationFinding = 'moreThanExpected' | 'fewerThanExpected' | 'withinChance';

export type ExpectedCostsRequest = {
  /** Prices common to all options, in one currency. */
  readonly rates: CostRates;
  /** The options. */
  readonly options: readonly CostOption[];
  /** Where two options cost the same. */
  readonly breakEven?: BreakEvenQuestion;
};

export type ExpectedCostsResponse = {
  /** Options with a cost, cheapest first. */
  readonly cheapestFirst: readonly CostedOption[];
  /** Options without a cost, by id. */
  readonly cannotBePriced: readonly UncostedOption[];
  /** Where the two options asked about cost the same; null: nobody asked. */
  readonly breakEven: BreakEvenAt | AlwaysCheaper | NeverCheaper | AlwaysEqual | BreakEvenUnpriced | null;
  /** How it was reckoned. */
  readonly method: string;
  /** Caution that goes with the answer. */
  readonly caution: string;
};

export type ExpectedRange = {
  /** Lowest plausible value. */
  readonly lowest: AnyQuantity;
  /** Highest plausible value. */
  readonly highest: AnyQuantity;
};

export type ExpectedRatio = {
  /** Comebacks over those expected for the same mix. */
  readonly value: number;
  /** How sure that is. */
  readonly interval: Interval;
  /** Whether 1 lies inside the interval. */
  readonly finding: ExpectationFinding;
};

export type ExpectedYear = {
  /** Running cost of the year. */
  readonly running: string;
};

export type FailedByAge = {
  /** The estimate. */
  readonly estimate: number;
  /** Lower Wald limit. */
  readonly lower: number;
  /** Upper Wald limit. */
  readonly upper: number;
  /** Standard error on the scale on which the limits are symmetric (the logarithm; for a share the standardised deviate). */
  readonly standardError: number;
  /** Two-sided confidence level of the limits. */
  readonly level: number;
  /** Age, in the unit. */
  readonly age: number;
};

export type FamilyWindow = {
  /** Family of symptoms, see GET /v1/symptoms. */
  readonly familyId: string;
  /** Days after release. */
  readonly days: number;
  /** Distance after release, in km. */
  readonly km: string;
};

export type FittedCondition = 'original' | 'new' | 'newOldStock' | 'remanufactured' | 'rebuilt' | 'reconditioned' | 'used' | 'repairedOwnPart';

export type FittedLives = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Shape of a Weibull distribution: above 1 parts wear; null for a lognormal one. */
  readonly shape: LifeLimits | null;
  /** Characteristic life of a Weibull distribution, median of a lognormal one. */
  readonly scale: LifeLimits;
  /** Mean life. */
  readonly mean: number;
  /** Lives by which shares have ended: B10, B50. */
  readonly bLives: readonly BLife[];
  /** Log-likelihood. */
  readonly logLikelihood: number;
  /** Akaike's criterion. */
  readonly akaike: number;
  /** Two-sided level of the limits. */
  readonly level: number;
  /** Lives that have ended. */
  readonly events: number;
  /** A B-life lies beyond the greatest age at which a part was seen. */
  readonly isBeyondData: boolean;
};

export type FittedPartEntry = {
  /** When it happened; null: before the shop knew the vehicle. */
  readonly happenedAt: string | null;
  /** The job it belongs to; null: none. */
  readonly jobId: string | null;
  /** which case this is */
  readonly kind: 'fittedPart';
  /** A part, from its fitting to its removal. */
  readonly record: FittedPartResponse;
  /** With `corrections=all`: the other revisions of the record, oldest first, later ones than the moment asked about as well. Empty otherwise. */
  readonly otherRevisions: readonly FittedPartResponse[];
};

export type FittedPartPage = {
  /** The items, in the order of the list. */
  readonly items: readonly FittedPartResponse[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type FittedPartResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** Kind of part. */
  readonly componentType: string;
  /** Where on the vehicle, as the kind of part names its places. */
  readonly position: string;
  /** Condition when fitted; `original`: on the vehicle when the shop first saw it. */
  readonly condition: FittedCondition;
  /** When it was fitted; null: before the shop knew the vehicle. */
  readonly fittedAt: string | null;
  /** Distance of the vehicle then, in km. */
  readonly fittedKm: string | null;
  /** When it was removed; null: it is fitted. */
  readonly removedAt: string | null;
  /** Distance of the vehicle then, in km. */
  readonly removedKm: string | null;
  /** Serial number. */
  readonly serial: string | null;
  /** Batch it came from. */
  readonly batch: string | null;
  /** Who supplied it. */
  readonly supplier: string | null;
  /** Number printed on it. */
  readonly partNumber: string | null;
  /** Why it was removed. */
  readonly removalReason: string | null;
  /** The vehicle it is or was on. */
  readonly vehicleId: string;
  /** The part it took the place of. */
  readonly replacesPartId: string | null;
  /** The work that fitted it. */
  readonly workLineId: string | null;
};

export type FleetComparisonResponse = {
  /** What recurs. */
  readonly of: FleetEventKind;
  /** First fleet. */
  readonly first: FleetCount;
  /** Second fleet. */
  readonly second: FleetCount;
  /** The test at the last common age, with the whole curve of differences, or why there is none. */
  readonly comparison: TestedFleets | FleetsNotComparable | FleetsWithoutSpread | CalculationNeedsMore;
  /** How it was computed. */
  readonly method: CalculationMethod;
};

export type FleetCostsPage = {
  /** The items, in the order of the list. */
  readonly items: readonly VehicleCosts[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
  /** Vehicles counted. */
  readonly vehicles: number;
  /** Vehicles whose distance is known: the cost of a km is theirs. */
  readonly vehiclesWithDistance: number;
  /** All vehicles together. */
  readonly together: CostSums;
  /** The time and the rate. */
  readonly terms: CostTerms;
};

export type FleetCount = {
  /** Vehicles observed. */
  readonly vehicles: number;
  /** Events of those vehicles, those outside their observation included. */
  readonly events: number;
};

export type FleetEventKind = 'replacements' | 'complaints' | 'comebacks';

export type FleetGrouping = 'customer' | 'application';

export type FleetLearned = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Inspections the fleet was learned from. */
  readonly points: number;
  /** Typical level of a part at fitting, in the unit. */
  readonly startMean: number;
  /** Standard deviation of it from part to part, in the unit. */
  readonly startSd: number;
  /** Median rate of wear, unit per 1000 km in the direction of wear. */
  readonly medianRatePerThousandKm: number;
  /** Standard deviation of the logarithm of the rate from part to part. */
  readonly logRateSd: number;
};

export type FleetPowerLaw = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Shape; above 1 events come ever faster. */
  readonly shape: number;
  /** Lower limit of the shape. */
  readonly shapeLower: number;
  /** Upper limit of the shape. */
  readonly shapeUpper: number;
  /** Expected events of one vehicle by an age in days are rate x age^shape. */
  readonly rate: number;
  /** Two-sided level of the limits. */
  readonly level: number;
};

export type FleetRecurrenceResponse = {
  /** What recurs. */
  readonly of: FleetEventKind;
  /** The curve, or why there is none. */
  readonly recurrence: EstimatedRecurrence | NoRecurrence | RecurrenceNeedsMore;
  /** Tests for a trend; null where nothing recurred. */
  readonly trend: RecurrenceTrend | null;
  /** Vehicles left out because nobody knows when they were first used. */
  readonly withoutFirstUse: number;
  /** Vehicles left out because they were not observed at all. */
  readonly neverWatched: number;
  /** What looks odd about the observation. */
  readonly oddities: readonly WatchOddity[];
};

export type FleetVehicle = {
  /** The vehicle. */
  readonly vehicleId: string;
  /** What the shop calls it. */
  readonly label: string | null;
  /** Plate. */
  readonly plate: string | null;
};

export type FleetWear = {
  /** Parts of the kind the shop knows. */
  readonly partsOfKind: number;
  /** Of these, the ones recorded last that were looked at; at most 100. */
  readonly partsLookedAt: number;
  /** Of these, parts with a point of a trend. */
  readonly partsWithPoints: number;
  /** What the fleet lends, fitted once for this request. */
  readonly model: FleetLearned | FleetWearTooSmall | CalculationNeedsMore | CalculationNotConverged;
};

export type FleetWearTooSmall = {
  /** the readings of the fleet do not tell wear from none: nothing is lent */
  readonly kind: 'wearWithinUncertainty';
  /** Parts. */
  readonly parts: number;
  /** Inspections. */
  readonly points: number;
};

export type FleetsNotComparable = {
  /** no age at which both fleets were observed and something recurred */
  readonly kind: 'notComparable';
};

export type FleetsWithoutSpread = {
  /** every vehicle of each fleet recurred exactly alike */
  readonly kind: 'noSpread';
  /** Difference at the last age to which both were observed. */
  readonly difference: number;
};

/** Values may be added; accept unknown ones in answers. */
export type FlipQuantity = 'wearNow' | 'price' | 'leadTime' | 'downtimeCost' | 'comebackProbability' | (string & {});

export type FlipsAt = {
  /** What is varied. */
  readonly quantity: FlipQuantity;
  /** The option that is meant. */
  readonly optionId: string | null;
  /** Its value now. */
  readonly now: ReportedValue;
  /** The same in words. */
  readonly detail: string;
  /** which case this is */
  readonly kind: 'flipsAt';
  /** Value at which another option becomes the cheapest. */
  readonly at: ReportedValue;
  /** That option. */
  readonly toOptionId: string;
};

export type FoundBaseStock = {
  /** which case this is */
  readonly kind: 'found';
  /** Which service is meant. */
  readonly measure: ServiceMeasure;
  /** Smallest level that keeps the target, pieces. */
  readonly level: number;
  /** Service at that level. */
  readonly service: number;
  /** Expected backorders at that level, pieces. */
  readonly expectedBackorders: number;
  /** The same one piece below, pieces. */
  readonly backordersBelow: number;
};

export type FunctionalCriterion = {
  /** Characteristics whose numbers it outranks. */
  readonly outranks: readonly string[];
  /** Check that decides whether the answer counts. */
  readonly companionCheckId: string;
  /** A positive answer counts from this value of the companion on. */
  readonly conclusiveFrom: AnyQuantity;
  /** A negative answer is repeated once the companion is right. */
  readonly negativeRepeatedAfterCompanion: boolean;
};

export type FunctionalNegative = {
  /** Whether it was validly judged. */
  readonly isValid: boolean;
  /** Id that comes back with the reasons. */
  readonly id?: string;
  /** which case this is */
  readonly kind: 'negative';
};

export type FunctionalNotDone = {
  /** which case this is */
  readonly kind: 'notDone';
};

export type FunctionalPositive = {
  /** Whether it was validly judged. */
  readonly isValid: boolean;
  /** Id that comes back with the reasons. */
  readonly id?: string;
  /** which case this is */
  readonly kind: 'positive';
};

export type FunnelBand = {
  /** Share of like groups that lie inside. */
  readonly coverage: number;
  /** Lower limit of the rate. */
  readonly lower: number;
  /** Upper limit of the rate. */
  readonly upper: number;
};

export type FunnelFinding = 'aboveOuter' | 'aboveInner' | 'inside' | 'belowInner' | 'belowOuter';

export type FunnelLimit = {
  /** Lower limit. */
  readonly lower: number;
  /** Upper limit. */
  readonly upper: number;
  /** Trials. */
  readonly trials: number;
  /** Share of like groups that lie inside. */
  readonly coverage: number;
};

export type FunnelLimitsRequest = {
  /** Share aimed at. */
  readonly target: number;
  /** Numbers of trials. */
  readonly trials: readonly number[];
  /** Shares of like groups that lie inside. */
  readonly coverages?: readonly number[];
};

export type FunnelLimitsResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** Share aimed at. */
  readonly target: number;
  /** Limits, by coverage and trials. */
  readonly limits: readonly FunnelLimit[];
};

export type FurtherCheckNotWorthIt = {
  /** Row of the diagnosis tables to do now. */
  readonly diagnosticCheckId: string;
  /** What belongs together, in the order to do it; the last is what it is done for. */
  readonly chain: readonly string[];
  /** Minutes of all of it. */
  readonly minutes: number;
  /** What knowing the results saves on average. */
  readonly expectedSaving: Money;
  /** What the minutes cost. */
  readonly cost: Money;
  /** Saving less cost. */
  readonly net: Money;
  /** A safe and quick opening move: done first, whatever it saves. */
  readonly isOpeningMove: boolean;
  /** The inspection it goes on from. */
  readonly inspectionId: string;
  /** Version of the diagnosis tables. */
  readonly tablesVersion: string;
  /** SHA-256 of the diagnosis tables. */
  readonly tablesHash: string;
  /** In words. */
  readonly detail: string;
  /** which case this is */
  readonly kind: 'notWorthIt';
};

export type FurtherCheckUnknown = {
  /** which case this is */
  readonly kind: 'cannotBeSaid';
  /** Why. */
  readonly why: MoneyUnknownReason;
  /** In words. */
  readonly detail: string;
};

export type FurtherCheckWorthIt = {
  /** Row of the diagnosis tables to do now. */
  readonly diagnosticCheckId: string;
  /** What belongs together, in the order to do it; the last is what it is done for. */
  readonly chain: readonly string[];
  /** Minutes of all of it. */
  readonly minutes: number;
  /** What knowing the results saves on average. */
  readonly expectedSaving: Money;
  /** What the minutes cost. */
  readonly cost: Money;
  /** Saving less cost. */
  readonly net: Money;
  /** A safe and quick opening move: done first, whatever it saves. */
  readonly isOpeningMove: boolean;
  /** The inspection it goes on from. */
  readonly inspectionId: string;
  /** Version of the diagnosis tables. */
  readonly tablesVersion: string;
  /** SHA-256 of the diagnosis tables. */
  readonly tablesHash: string;
  /** In words. */
  readonly detail: string;
  /** which case this is */
  readonly kind: 'worthIt';
};

export type FurtherReadingCountRequest = {
  /** Unit of every value. */
  readonly unit?: AnyUnit;
  /** Mean of the readings so far. */
  readonly mean: number;
  /** Readings so far. */
  readonly count: number;
  /** Standard deviation of single readings. */
  readonly standardDeviation: number;
  /** Degrees of freedom of that standard deviation; left out or null: known. */
  readonly degreesOfFreedom?: number | null;
  /** Standard uncertainty that further readings do not lessen; 0 where left out. */
  readonly otherStandardUncertainty?: number;
  /** What is permitted. */
  readonly permitted: OpenLimits;
  /** Inside from this probability on. */
  readonly insideFrom?: number;
  /** Outside up to this probability. */
  readonly outsideTo?: number;
};

export type FurtherReadingCountResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** Unit of every value. */
  readonly unit: AnyUnit;
  /** How many more, or that none are needed or would help. */
  readonly result: NoFurtherReadings | FurtherReadingsNeeded | NoNumberSettles;
};

export type FurtherReadingsNeeded = {
  /** which case this is */
  readonly kind: 'needed';
  /** So many more would settle it if their mean stayed. */
  readonly count: number;
};

export type FurtherYear = {
  /** Running cost that is expected. */
  readonly expected: number;
  /** Lower limit for one such year, level 0.95; null where it was stated. */
  readonly lower: number | null;
  /** Upper limit. */
  readonly upper: number | null;
};

export type GammaPopulation = {
  /** which case this is */
  readonly kind: 'gamma';
  /** Shape of the true values. */
  readonly shape: number;
  /** Rate, per unit. */
  readonly rate: number;
};

export type GaugeDesign = 'crossed' | 'averageAndRange' | 'nested';

export type GaugeMeasurement = {
  /** The thing that was measured. */
  readonly object: string;
  /** Who or what measured it. */
  readonly appraiser: string;
  /** The reading. */
  readonly value: number;
};

export type GaugeStudyNeedsMore = {
  /** which case this is */
  readonly kind: 'insufficientData';
  /** What is needed. */
  readonly needed: string;
  /** How many there are. */
  readonly got: number;
};

export type GaugeStudyNotBalanced = {
  /** not every appraiser measured every object equally often */
  readonly kind: 'notBalanced';
  /** Object with another number of readings. */
  readonly object: string;
  /** Appraiser who has them. */
  readonly appraiser: string;
  /** How many. */
  readonly count: number;
};

export type GaugeStudyPage = {
  /** The items, in the order of the list. */
  readonly items: readonly StoredGaugeStudyResponse[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type GaugeStudyRequest = {
  /** Unit of the readings. */
  readonly unit?: AnyUnit;
  /** How the study is laid out and worked. */
  readonly design?: GaugeDesign;
  /** Every reading, any order. */
  readonly measurements: readonly GaugeMeasurement[];
  /** The interaction is pooled above this p-value (crossed). */
  readonly poolingLevel?: number;
  /** Width of the tolerance. */
  readonly tolerance?: number;
};

export type GaugeStudyResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** Unit of the readings. */
  readonly unit: AnyUnit;
  /** The study, or why there is none. */
  readonly result: CrossedGaugeStudy | AverageAndRangeStudy | NestedGaugeStudy | GaugeStudyNeedsMore | GaugeStudyNotBalanced;
};

export type GaugeStudyRevision = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** What was measured. */
  readonly characteristic: string;
  /** Kind of instrument it was measured with. */
  readonly instrumentKind: InstrumentKind;
  /** Day of the study. */
  readonly studiedOn: string;
  /** How it is laid out and worked. */
  readonly design: GaugeDesign;
  /** p-value above which the interaction of a crossed study is pooled; null: 0.25, or no crossed study. */
  readonly poolingLevel: number | null;
  /** Unit of the readings. */
  readonly unit: AnyUnit;
  /** Every reading, any order. */
  readonly measurements: readonly GaugeMeasurement[];
  /** False: it is kept and no longer used for the doubt about readings. */
  readonly inUse: boolean;
  /** Remark. */
  readonly note: string | null;
  /** What the study says, or why it says nothing. */
  readonly result: CrossedGaugeStudy | AverageAndRangeStudy | NestedGaugeStudy | GaugeStudyNeedsMore | GaugeStudyNotBalanced;
  /** Repeatability that budgets take over; null where the study says nothing. */
  readonly repeatability: StudiedRepeatability | null;
  /** How it is worked. */
  readonly method: CalculationMethod;
};

export type GaugeStudyRevisions = {
  /** Revisions, oldest first. */
  readonly items: readonly GaugeStudyRevision[];
};

export type GaugeVariation = {
  /** Repeatability (EV), standard deviation in the unit. */
  readonly repeatability: number;
  /** Reproducibility (AV), standard deviation in the unit. */
  readonly reproducibility: number;
  /** Both together (GRR), standard deviation in the unit. */
  readonly gauge: number;
  /** Objects (PV), standard deviation in the unit. */
  readonly objects: number;
  /** Total (TV), standard deviation in the unit. */
  readonly total: number;
  /** GRR as % of the total standard deviation. */
  readonly gaugePercentOfTotal: number;
  /** Shares of the variance. */
  readonly contributionPercent: ContributionPercent;
  /** Six sigma of the gauge as % of the tolerance; null without one. */
  readonly gaugePercentOfTolerance: number | null;
  /** Categories that can be told apart; null where the gauge shows no variation. */
  readonly distinctCategories: number | null;
};

export type GlobalRisk = {
  /** Share of true values that do not meet the limits. */
  readonly nonconforming: number;
  /** Share that is bad and accepted. */
  readonly consumerRisk: number;
  /** Share that is good and refused. */
  readonly producerRisk: number;
};

export type GlobalRiskRequest = {
  /** Unit of every value. */
  readonly unit?: AnyUnit;
  /** How the true values are spread. */
  readonly population: NormalPopulation | GammaPopulation;
  /** Standard uncertainty of a measurement. */
  readonly standardUncertainty: number;
  /** Limits that true values are to meet. */
  readonly permitted: OpenLimits;
  /** Limits that measured values are to meet; the same where left out. */
  readonly acceptance?: OpenLimits;
  /** Consumer risk whose acceptance limit is asked for (a single upper limit). */
  readonly wantedConsumerRisk?: number;
};

export type GlobalRiskResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** Unit of every value. */
  readonly unit: AnyUnit;
  /** The risks. */
  readonly result: GlobalRisk;
  /** Acceptance limit of the wanted risk; null where none was wanted. */
  readonly acceptanceLimit: EstimatedAcceptance | AcceptanceNotReachable | AcceptanceNotFound | null;
};

export type GradeResult = {
  /** which case this is */
  readonly kind: 'grade';
  /** Grade by the list of the limit. */
  readonly grade: string;
};

export type GroupOfLives = {
  /** Age of each unit at its event or at the end of its observation. */
  readonly ages: readonly number[];
  /** 1 where the age is that of an event. */
  readonly events: readonly number[];
  /** Age from which each unit was observed; 0 where left out. */
  readonly entryAges?: readonly number[];
  /** How many like units each row stands for; 1 where left out. */
  readonly weights?: readonly number[];
};

export type GroupProposal = {
  /** Kind of part. */
  readonly componentType: string;
  /** The number that is ordered now. */
  readonly partId: string;
  /** It. */
  readonly partNumber: string;
  /** All numbers that stand in for each other. */
  readonly partIds: readonly string[];
  /** What is ordered with it. */
  readonly alsoOrder: readonly string[];
  /** Pieces on the shelf. */
  readonly onHand: number;
  /** Of them kept for jobs. */
  readonly reserved: number;
  /** Pieces ordered and not yet there. */
  readonly onOrder: number;
  /** Of them, promised for a day that has passed. */
  readonly overdue: number;
  /** What lies there. */
  readonly stock: readonly PartStock[];
  /** Vans that it fits. */
  readonly vans: number;
  /** Of them, vans about which nothing can be said; they are not reckoned with. */
  readonly vansWithoutAnswer: number;
  /** What to order now. */
  readonly outcome: ProposedOrder | LeadTimeUnknown | CalculationNeedsMore;
};

export type GroupedEvents = {
  /** which case this is */
  readonly kind: 'grouped';
  /** Ages at which the intervals begin. */
  readonly starts: readonly number[];
  /** Ages at which they end. */
  readonly ends: readonly number[];
  /** Events in each. */
  readonly counts: readonly number[];
};

export type GroupsNotComparable = {
  /** at no age with an event are both groups at risk with a choice left */
  readonly kind: 'notComparable';
};

export type Guard = {
  /** Stable code. */
  readonly code: GuardCode;
  /** The option that is meant. */
  readonly optionId: string | null;
  /** Records it rests on. */
  readonly evidence: readonly EvidenceLink[];
  /** The same in words. */
  readonly detail: string;
};

export type GuardBandZone = 'pass' | 'conditionalPass' | 'conditionalFail' | 'fail';

export type GuardBandZones = {
  /** Width of the guard band, in the unit. */
  readonly guardBand: number;
  /** Zone at the lower limit; null without one. */
  readonly atLower: GuardBandZone | null;
  /** Zone at the upper limit; null without one. */
  readonly atUpper: GuardBandZone | null;
};

/** Values may be added; accept unknown ones in answers. */
export type GuardCode = 'safetyFindingNotCured' | 'functionalCriterionPositive' | 'customerDeclined' | 'undecidedReadingAlone' | 'consentNeeded' | (string & {});

export type HandOverUnrepairedRequest = {
  /** Id chosen by the client. */
  readonly id?: string;
  /** When. */
  readonly handedOverAt: string;
  /** To whom. Personal data. */
  readonly name: string;
  /** The warning that was given: not for the road, and why. */
  readonly warningGiven: string;
};

/** Values may be added; accept unknown ones in answers. */
export type Hazard = 'petrolVapour' | 'solventOnRunningEngine' | 'fuelVapourLines' | 'exhaustGas' | 'runningEngine' | 'hotParts' | 'hotPressureCap' | 'ignitionHighVoltage' | 'springLoadedPlate' | 'vehicleMovement' | 'vehicleRaised' | 'cranking' | 'batteryGas' | 'brakeDust' | 'wheelOff' | 'roadTest' | 'chemicals' | (string & {});

export type HeightToReach = {
  /** Height of the line that is asked for. */
  readonly y: number;
  /** Whether y is one new observation or the line itself. */
  readonly target?: InverseTarget;
};

export type HistoryCorrections = 'all' | 'none';

export type HistoryCut = {
  /** Kind of record, as in `kind` of the entries. */
  readonly kind: string;
  /** How many are told, the latest; older ones are left out. */
  readonly kept: number;
};

export type HoldingPeriod = {
  /** Running cost of the period, in any one currency. */
  readonly running: number;
  /** Value at its end. */
  readonly resale: number;
};

export type ImportFleetHistoryRequest = {
  /** Customer who owns the vehicles. */
  readonly customerId: string;
  /** Kind of part. */
  readonly componentType: string;
  /** Where on the vehicle. */
  readonly position: string;
  /** Vehicles with their histories: all are recorded, or none. */
  readonly vehicles: readonly VehicleHistoryEntry[];
};

export type ImportedFleetHistoryResponse = {
  /** Ids of the vehicles, in the order of the request. */
  readonly vehicleIds: readonly string[];
  /** How many fitted parts were recorded, first ones included. */
  readonly fittedParts: number;
};

export type ImpossibleFindings = {
  /** such findings cannot be under these numbers */
  readonly kind: 'impossibleFindings';
};

export type ImpossibleResult = {
  /** such a result cannot be under these numbers */
  readonly kind: 'impossibleResult';
};

export type InStock = {
  /** which case this is */
  readonly kind: 'inStock';
};

export type InspectionEntry = {
  /** When it happened; null: before the shop knew the vehicle. */
  readonly happenedAt: string | null;
  /** The job it belongs to; null: none. */
  readonly jobId: string | null;
  /** which case this is */
  readonly kind: 'inspection';
  /** An inspection was begun. */
  readonly record: InspectionResponse;
  /** With `corrections=all`: the other revisions of the record, oldest first, later ones than the moment asked about as well. Empty otherwise. */
  readonly otherRevisions: readonly InspectionResponse[];
};

export type InspectionPage = {
  /** The items, in the order of the list. */
  readonly items: readonly InspectionResponse[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type InspectionProgressResponse = {
  /** The inspection. */
  readonly inspectionId: string;
  /** Id of the sheet. */
  readonly checkSheetCode: string;
  /** Version of the sheet. */
  readonly checkSheetVersion: number;
  /** Checks in the order of the sheet. */
  readonly checks: readonly CheckProgress[];
  /** What comes before the sheet. */
  readonly precedence: string;
};

export type InspectionResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** When it was begun. */
  readonly startedAt: string;
  /** Technician. */
  readonly technicianId: string | null;
  /** Checks whose state before any work nobody can know any more. */
  readonly asFoundNotTaken: readonly CheckRemark[];
  /** Checks left out on purpose: not fitted, not possible today. */
  readonly notDone: readonly CheckRemark[];
  /** Remark. */
  readonly note: string | null;
  /** The vehicle. */
  readonly vehicleId: string;
  /** Its job. */
  readonly jobId: string | null;
  /** Version of the check sheet. */
  readonly checkSheetId: string;
};

export type InspectionRevisions = {
  /** Revisions, oldest first. */
  readonly items: readonly InspectionResponse[];
};

export type InstrumentBias = {
  /** The instrument. */
  readonly instrumentId: string;
  /** Points by it. */
  readonly points: number;
  /** What it is found to read too much, in the unit; the trend has allowed for it. */
  readonly bias: number;
  /** Its standard uncertainty, in the unit. */
  readonly standardUncertainty: number;
};

export type InstrumentConsequences = {
  /** Day of the last passed calibration; null: never, so all are listed. */
  readonly lastGoodCalibrationOn: string | null;
  /** Readings with it since, withdrawn ones among them. */
  readonly readings: number;
  /** Verdicts, latest first. */
  readonly verdicts: readonly InstrumentVerdict[];
  /** Assessments, latest first. */
  readonly assessments: readonly RestingAssessment[];
  /** Decisions, latest first. */
  readonly decisions: readonly RestingDecision[];
};

/** Values may be added; accept unknown ones in answers. */
export type InstrumentKind = 'none' | 'eyesAndHands' | 'tachometer' | 'codeReader' | 'multimeter' | 'ohmmeter' | 'vacuumGauge' | 'lowRangeVacuumGauge' | 'smokeGenerator' | 'hoseClamp' | 'thermometer' | 'strobeLamp' | 'rule' | 'dialIndicator' | 'feelerBlades' | 'paperStrip' | 'gasAnalyser' | 'treadDepthGauge' | 'liningGauge' | 'brakeTester' | 'compressionTester' | 'headlampTester' | 'refractometer' | 'caliper' | 'other' | (string & {});

export type InstrumentListItem = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** What is known about its error; unknown: its readings are compared at face value only. */
  readonly errorModel: MaximumPermissibleError | PercentOfReadingPlusDigits | AccuracyClassOfSpan | BladeSet | ExpandedUncertainty | UnknownError;
  /** Smallest step that can be read; null: not known. */
  readonly resolution: AnyQuantity | null;
  /** What it is. */
  readonly kind: InstrumentKind;
  /** Name in the shop. */
  readonly name: string;
  /** Serial number. */
  readonly serial: string | null;
  /** Day it was taken out of use. */
  readonly retiredOn: string | null;
  /** State of its calibration. */
  readonly standing: CalibrationStanding;
};

export type InstrumentOfReading = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** What it is. */
  readonly kind: InstrumentKind;
  /** Name in the shop. */
  readonly name: string;
  /** Serial number. */
  readonly serial: string | null;
  /** State of its calibration. */
  readonly standing: CalibrationStanding;
};

export type InstrumentPage = {
  /** The items, in the order of the list. */
  readonly items: readonly InstrumentListItem[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type InstrumentProperties = {
  /** What is known about its error; unknown: its readings are compared at face value only. */
  readonly errorModel: MaximumPermissibleError | PercentOfReadingPlusDigits | AccuracyClassOfSpan | BladeSet | ExpandedUncertainty | UnknownError;
  /** Smallest step that can be read; null: not known. */
  readonly resolution: AnyQuantity | null;
};

export type InstrumentResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** What is known about its error; unknown: its readings are compared at face value only. */
  readonly errorModel: MaximumPermissibleError | PercentOfReadingPlusDigits | AccuracyClassOfSpan | BladeSet | ExpandedUncertainty | UnknownError;
  /** Smallest step that can be read; null: not known. */
  readonly resolution: AnyQuantity | null;
  /** What it is. */
  readonly kind: InstrumentKind;
  /** Name in the shop. */
  readonly name: string;
  /** Serial number. */
  readonly serial: string | null;
  /** Day it was taken out of use. */
  readonly retiredOn: string | null;
};

export type InstrumentRevisions = {
  /** Revisions, oldest first. */
  readonly items: readonly InstrumentResponse[];
};

export type InstrumentUncertaintyRequest = {
  /** What is measured. */
  readonly quantityKind: QuantityKind;
  /** Reading at which the error is asked for. */
  readonly reading: AnyQuantity;
  /** What is known about the error. */
  readonly errorModel: MaximumPermissibleError | PercentOfReadingPlusDigits | AccuracyClassOfSpan | BladeSet | ExpandedUncertainty | UnknownError;
  /** Smallest step that can be read; left out or null: not counted. */
  readonly resolution?: AnyQuantity | null;
};

export type InstrumentUncertaintyResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** Unit of every figure: that of the reading. */
  readonly unit: AnyUnit;
  /** The uncertainty, or why it is not known. */
  readonly result: KnownInstrumentUncertainty | UnknownInstrumentUncertainty;
};

export type InstrumentUnknownReason = 'errorModelUnknown' | 'scaleNotLinear';

export type InstrumentVerdict = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why nothing was judged; null where it was. */
  readonly reason: NotJudgedReason | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** The limit in the edition that was used. */
  readonly limit: UsedLimit;
  /** What they say. */
  readonly outcome: VerdictOutcome;
  /** judged: with the doubt counted in; faceValue: bare numbers compared, because the doubt is not known. */
  readonly basis: VerdictKind;
  /** Probability that the true value meets the limit; null where the rule is none of probability. */
  readonly probabilityInside: number | null;
  /** How bad it is to be outside. */
  readonly severity: Severity;
  /** What is missing or in the way. */
  readonly details: readonly string[];
  /** Mean of the readings, canonical unit. */
  readonly value: ComputedQuantity | null;
  /** Standard uncertainty of the mean, in its unit. */
  readonly standardUncertainty: number | null;
  /** Effective degrees of freedom; null: as good as known, or none. */
  readonly effectiveDegreesOfFreedom: number | null;
  /** What the doubt is made of. */
  readonly contributions: readonly UncertaintyContribution[];
  /** Gauge study the repeatability was taken from; null: the default of the kind of part, the repeats alone, or no number. */
  readonly gaugeStudyId: string | null;
  /** What is missing for the doubt to be known: instrument, resolution, setUp, repeatability. */
  readonly missing: readonly string[];
  /** Readings it rests on. */
  readonly count: number;
  /** Edges compared with. */
  readonly bounds: AppliedBounds | null;
  /** Outcome against the advisory criterion, where the limit has one. */
  readonly advisory: VerdictOutcome | null;
  /** Readings still needed to decide. */
  readonly furtherReadings: NoFurtherReadings | FurtherReadingsNeeded | NoNumberSettles;
  /** Conditions the limit names that nobody stated. */
  readonly unstatedConditions: readonly string[];
  /** What a pair of blades says. */
  readonly grade: BladePairGrade | null;
  /** Class of the number. */
  readonly readingClass: ReadingClass | null;
  /** Method. */
  readonly method: string | null;
  /** The verdict in words. */
  readonly words: readonly string[];
  /** The inspection. */
  readonly inspectionId: string;
  /** The check. */
  readonly checkId: string;
  /** Before or after work. */
  readonly phase: ReadingPhase;
  /** Where on the vehicle. */
  readonly position: string;
  /** The worst of several like places. */
  readonly place: string | null;
  /** It may change without this item being read again, or has to be repeated. */
  readonly provisional: boolean;
  /** Check whose functional answer outranks this number, whatever it says. */
  readonly outrankedBy: string | null;
  /** Readings it rests on. */
  readonly readingIds: readonly string[];
  /** Instruments that were not in calibration on the day. */
  readonly overdueInstrumentIds: readonly string[];
  /** What being outside means; null where it is not outside. */
  readonly outsideMeans: string | null;
  /** What to do then. */
  readonly whatToDo: string | null;
  /** The vehicle. */
  readonly vehicleId: string;
};

export type InstrumentVerdictList = {
  /** Day of the last passed calibration; null: never, so all are listed. */
  readonly lastGoodCalibrationOn: string | null;
  /** Verdicts that rested on the instrument since, latest first. */
  readonly items: readonly InstrumentVerdict[];
};

export type InteractionTest = {
  /** F of the interaction. */
  readonly f: number;
  /** Its p-value. */
  readonly pValue: number;
};

export type IntermittentForecastRequest = {
  /** Demand of each period in order, pieces. */
  readonly series: readonly number[];
  /** Smoothing constant. */
  readonly smoothing: number;
  /** Plain, or corrected for bias. */
  readonly form?: IntermittentMethod;
};

export type IntermittentForecastResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** The forecast, or why there is none. */
  readonly result: EstimatedForecast | CalculationNeedsMore;
};

export type IntermittentMethod = 'croston' | 'syntetosBoylan';

export type IntermittentPreview = {
  /** Method. */
  readonly form: IntermittentMethod;
  /** Pieces a period. */
  readonly perPeriod: number;
  /** Smoothed size of a demand. */
  readonly size: number;
  /** Smoothed periods from one demand to the next. */
  readonly interval: number;
  /** Periods with a demand. */
  readonly demands: number;
};

export type Interval = {
  /** Lower end; null where it is open. */
  readonly low: number | null;
  /** Upper end; null where it is open. */
  readonly high: number | null;
  /** Level of the interval, such as 0.95. */
  readonly level: number;
  /** Name of the method. */
  readonly method: string;
};

export type IntervalsWithLateEntry = {
  /** lives between inspections together with late entries: the estimate need not exist */
  readonly kind: 'intervalsWithLateEntry';
};

export type InverseTarget = 'observation' | 'line';

export type JamesStein = {
  /** which case this is */
  readonly kind: 'jamesStein';
  /** Scale of the drawing in. */
  readonly form: JamesSteinForm;
  /** Centre on that scale. */
  readonly centre: number;
  /** Sum of squares about it. */
  readonly spread: number;
  /** Share of a distance from the centre that is kept. */
  readonly factor: number;
  /** Shares drawn in, in the order given. */
  readonly proportions: readonly number[];
};

export type JamesSteinForm = 'arcsine' | 'untransformed';

export type JobEntry = {
  /** When it happened; null: before the shop knew the vehicle. */
  readonly happenedAt: string | null;
  /** The job it belongs to; null: none. */
  readonly jobId: string | null;
  /** which case this is */
  readonly kind: 'job';
  /** A visit, with its state as known then. */
  readonly record: JobResponse;
  /** With `corrections=all`: the other revisions of the record, oldest first, later ones than the moment asked about as well. Empty otherwise. */
  readonly otherRevisions: readonly JobResponse[];
};

export type JobEventContent = {
  /** What happened to the job. */
  readonly kind: JobEventKind;
  /** When. */
  readonly happenedAt: string;
  /** Remark, e.g. which part is awaited. */
  readonly note: string | null;
};

export type JobEventEntry = {
  /** When it happened; null: before the shop knew the vehicle. */
  readonly happenedAt: string | null;
  /** The job it belongs to; null: none. */
  readonly jobId: string | null;
  /** which case this is */
  readonly kind: 'jobEvent';
  /** A job waited, went on, was finished or closed. */
  readonly record: JobEventResponse;
  /** With `corrections=all`: the other revisions of the record, oldest first, later ones than the moment asked about as well. Empty otherwise. */
  readonly otherRevisions: readonly JobEventResponse[];
};

export type JobEventKind = 'waitingForConsent' | 'waitingForPart' | 'waitingForBay' | 'resumed' | 'workFinished' | 'closed';

export type JobEventResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** What happened to the job. */
  readonly kind: JobEventKind;
  /** When. */
  readonly happenedAt: string;
  /** Remark, e.g. which part is awaited. */
  readonly note: string | null;
  /** The job. */
  readonly jobId: string;
};

export type JobOutcome = 'comeback' | 'noComeback' | 'pending' | 'notSeenSince' | 'notAttributed';

export type JobPage = {
  /** The items, in the order of the list. */
  readonly items: readonly JobResponse[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type JobResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** When the visit began. */
  readonly openedAt: string;
  /** User it is assigned to; null: nobody yet. */
  readonly assignedTo: string | null;
  /** Technician who diagnosed; who fitted stands on the work line. */
  readonly diagnosedBy: string | null;
  /** Cause established by a check and by the cure, by id of GET /v1/causes; null: not established. */
  readonly causeId: string | null;
  /** Remark. */
  readonly note: string | null;
  /** The vehicle. */
  readonly vehicleId: string;
  /** Where the job stands, derived from what happened. */
  readonly state: JobState;
  /** What happened to it, in order. */
  readonly events: readonly JobEventContent[];
  /** Complaints it deals with. */
  readonly complaintIds: readonly string[];
  /** Its inspections. */
  readonly inspectionIds: readonly string[];
};

export type JobState = 'open' | 'waitingForConsent' | 'waitingForPart' | 'waitingForBay' | 'workFinished' | 'released' | 'handedOverUnrepaired' | 'closed';

export type Judgement = {
  /** The limit in the edition that was used. */
  readonly limit: UsedLimit;
  /** What they say. */
  readonly outcome: VerdictOutcome;
  /** judged: with the doubt counted in; faceValue: bare numbers compared, because the doubt is not known. */
  readonly basis: VerdictKind;
  /** Probability that the true value meets the limit; null where the rule is none of probability. */
  readonly probabilityInside: number | null;
  /** How bad it is to be outside. */
  readonly severity: Severity;
  /** Why nothing was judged; null where it was. */
  readonly reason: NotJudgedReason | null;
  /** What is missing or in the way. */
  readonly details: readonly string[];
  /** Mean of the readings, canonical unit. */
  readonly value: ComputedQuantity | null;
  /** Standard uncertainty of the mean, in its unit. */
  readonly standardUncertainty: number | null;
  /** Effective degrees of freedom; null: as good as known, or none. */
  readonly effectiveDegreesOfFreedom: number | null;
  /** What the doubt is made of. */
  readonly contributions: readonly UncertaintyContribution[];
  /** Gauge study the repeatability was taken from; null: the default of the kind of part, the repeats alone, or no number. */
  readonly gaugeStudyId: string | null;
  /** What is missing for the doubt to be known: instrument, resolution, setUp, repeatability. */
  readonly missing: readonly string[];
  /** Readings it rests on. */
  readonly count: number;
  /** Edges compared with. */
  readonly bounds: AppliedBounds | null;
  /** Outcome against the advisory criterion, where the limit has one. */
  readonly advisory: VerdictOutcome | null;
  /** Readings still needed to decide. */
  readonly furtherReadings: NoFurtherReadings | FurtherReadingsNeeded | NoNumberSettles;
  /** Conditions the limit names that nobody stated. */
  readonly unstatedConditions: readonly string[];
  /** What a pair of blades says. */
  readonly grade: BladePairGrade | null;
  /** Class of the number. */
  readonly readingClass: ReadingClass | null;
  /** Method. */
  readonly method: string | null;
  /** The verdict in words. */
  readonly words: readonly string[];
};

export type JudgingState = 'allowed' | 'notUntilConfirmed';

export type KeepForPeriods = {
  /** Periods to hold. */
  readonly periods: number;
  /** Cost per period when held for 1, 2, ... periods. */
  readonly costs: readonly number[];
  /** Cost of each period alone. */
  readonly marginalCosts: readonly number[];
  /** which case this is */
  readonly kind: 'keep';
};

export type KeepThroughout = {
  /** Periods to hold. */
  readonly periods: number;
  /** Cost per period when held for 1, 2, ... periods. */
  readonly costs: readonly number[];
  /** Cost of each period alone. */
  readonly marginalCosts: readonly number[];
  /** which case this is */
  readonly kind: 'keepThroughout';
};

export type KeepingDecided = {
  /** which case this is */
  readonly kind: 'decided';
  /** Whether running costs were told from the own years of the vehicle or stated. */
  readonly basis: RunningBasis;
  /** `keepThroughout`: beyond the last year listed the figures cannot say. */
  readonly decision: KeepingDecision;
  /** Years to keep it; 0 when replaced now. */
  readonly keepYears: number;
  /** With every year at its lower limit; null where costs were stated. */
  readonly ifLower: KeepingDecision | null;
  /** With every year at its upper limit. */
  readonly ifUpper: KeepingDecision | null;
  /** The decision is the same at both limits; false also where there are none. */
  readonly isSettled: boolean;
  /** Running cost of the further years. */
  readonly running: readonly FurtherYear[];
  /** Cost a year of the vehicle if kept for 1, 2, ... years. */
  readonly costs: readonly YearCost[];
  /** Years after which the challenger is cheapest. */
  readonly challengerYears: number;
  /** Its cost a year over them. */
  readonly challengerCost: number;
  /** The list of its years ends before the cost has turned: its economic life may be longer. */
  readonly isChallengerOpen: boolean;
};

export type KeepingDecision = 'replaceNow' | 'keep' | 'keepThroughout';

export type KeepingNeedsMore = {
  /** which case this is */
  readonly kind: 'insufficientData';
  /** What there is too little of. */
  readonly of: string;
  /** How many are needed. */
  readonly needed: number;
  /** How many there are. */
  readonly got: number;
};

export type KeepingPreviewResponse = {
  /** Currency of all amounts. */
  readonly currency: string;
  /** Full years of the vehicle itself. */
  readonly ownYears: readonly OwnYear[];
  /** Keep or replace, or what is missing to tell. */
  readonly outcome: KeepingDecided | KeepingNeedsMore;
  /** How it was computed. */
  readonly method: CalculationMethod;
};

export type KnownInstrumentUncertainty = {
  /** which case this is */
  readonly kind: 'known';
  /** Standard uncertainty of error and resolution together. */
  readonly standardUncertainty: number;
  /** That of the error alone. */
  readonly ofError: number;
  /** That of the resolution; null where none was given. */
  readonly ofResolution: number | null;
  /** Half-width of the rectangular distribution; null for a certificate. */
  readonly halfWidth: number | null;
  /** Degrees of freedom of the error; null: as good as known. */
  readonly degreesOfFreedom: number | null;
};

export type LaplaceTest = {
  /** which case this is */
  readonly kind: 'tested';
  /** Standard normal under a steady rate; above 0 for deterioration. */
  readonly statistic: number;
  /** Two-sided p-value. */
  readonly pValue: number;
  /** Events that count. */
  readonly events: number;
};

export type LaplaceTrend = {
  /** which case this is */
  readonly kind: 'tested';
  /** Standard normal without a trend; above 0 events come ever faster. */
  readonly statistic: number;
  /** Two-sided p-value. */
  readonly pValue: number;
  /** Events that count. */
  readonly events: number;
};

export type LeadTimeCase = {
  /** Days from order to arrival. */
  readonly days: number;
  /** Share of the orders. */
  readonly share: number;
};

export type LeadTimeSource = 'delivered' | 'promisedOnly' | 'given';

export type LeadTimeUnknown = {
  /** which case this is */
  readonly kind: 'leadTimeUnknown';
};

export type LeadTimes = {
  /** `delivered`: as this supplier has delivered, each slip of the past counted the same. `promisedOnly`: nothing has come yet. `given`: by the question. */
  readonly source: LeadTimeSource;
  /** Mean, days. */
  readonly meanDays: number;
  /** Days that nine in ten orders keep. */
  readonly ninetiethDays: number;
  /** Deliveries behind it. */
  readonly deliveries: number;
  /** The lead times that occur. */
  readonly cases: readonly LeadTimeCase[];
};

export type LeadingCause = {
  /** The cause. */
  readonly causeId: string;
  /** Probability by the tables; more than one fault stays possible. */
  readonly probability: number;
};

export type LearnedDecisionResponse = {
  /** Version: the starting tables, and how many outcomes were counted. */
  readonly version: string;
  /** SHA-256 of the tables. */
  readonly hash: string;
  /** When they were learned; null: nothing has taught them yet, they are judgement. */
  readonly learnedAt: string | null;
  /** Method. */
  readonly method: string;
  /** How the fit of the comebacks ended: estimated, or notConverged: then judgement stays. */
  readonly fit: string;
  /** What taught them, by action. */
  readonly byAction: readonly ActionCounts[];
  /** Repairs that teach nothing, by reason. */
  readonly leftOut: readonly LeftOutOfLearning[];
  /** Observations behind them. */
  readonly counts: DecisionObservations;
  /** Coefficients of the comeback model. */
  readonly coefficients: readonly ComebackCoefficient[];
  /** The tables as an assessment takes them, every number of them. */
  readonly tables: { readonly [name: string]: unknown };
};

export type LearnedDiagnosisResponse = {
  /** Version: the starting tables, and how many outcomes were counted. */
  readonly version: string;
  /** SHA-256 of the tables. */
  readonly hash: string;
  /** When they were learned; null: nothing has taught them yet, they are judgement. */
  readonly learnedAt: string | null;
  /** Method. */
  readonly method: string;
  /** What taught them. */
  readonly jobs: TeachingJobs;
  /** Weight of each cause. */
  readonly causes: readonly LearnedNumber[];
  /** How often each symptom shows. */
  readonly symptoms: readonly LearnedRow[];
  /** How often each check is positive. */
  readonly checks: readonly LearnedRow[];
};

export type LearnedNumber = {
  /** The cause. */
  readonly causeId: string;
  /** Starting value, judgement. */
  readonly startingValue: number;
  /** Jobs the starting value is worth. */
  readonly startingWorthJobs: number;
  /** Jobs in which it was so. */
  readonly yes: number;
  /** Jobs in which it was asked or done and was not so. */
  readonly no: number;
  /** Current value. */
  readonly current: number;
  /** Lower end of its 90 % interval; null where start and counts leave no doubt to state. */
  readonly lower: number | null;
  /** Upper end. */
  readonly upper: number | null;
  /** Jobs counted in which the check was chosen because of earlier results. */
  readonly fromSelectedChecks: number;
  /** All counts come from checks chosen because of earlier results: a selected group of vans, the number may be biased. */
  readonly fedOnlyBySelectedChecks: boolean;
};

export type LearnedRow = {
  /** The symptom or check. */
  readonly id: string;
  /** Its number under each cause. */
  readonly cells: readonly LearnedNumber[];
};

export type LearnedSubject = 'diagnosis' | 'decision';

export type LearningRoundResponse = {
  /** Tables that changed; empty where everything was learned before. */
  readonly changed: readonly LearnedSubject[];
};

export type LeftOutOfLearning = {
  /** Stable code. */
  readonly reason: string;
  /** How many. */
  readonly count: number;
  /** In words. */
  readonly detail: string;
};

export type LifeAbove = {
  /** no event yet */
  readonly kind: 'lowerLimitOnly';
  /** The characteristic life is above this with one-sided confidence `level`, in the unit. */
  readonly lower: number;
  /** Shape that was taken as known. */
  readonly shape: number;
  /** One-sided confidence level. */
  readonly level: number;
};

export type LifeCounts = {
  /** Parts that say something. */
  readonly parts: number;
  /** Lives known exactly. */
  readonly exact: number;
  /** Lives that ended between two inspections, or before the first. */
  readonly betweenInspections: number;
  /** Parts that lasted still when last seen. */
  readonly lastingStill: number;
  /** Parts that were observed only from an age above 0 on. */
  readonly lateEntries: number;
  /** Parts that say nothing, by reason. */
  readonly leftOut: readonly LivesLeftOut[];
};

export type LifeEnd = 'replaced' | 'worn';

export type LifeFamily = 'weibull' | 'lognormal' | 'exponential';

export type LifeFitRequest = {
  /** Unit of the ages. */
  readonly unit?: AnyUnit;
  /** Distribution to fit. */
  readonly family: LifeFamily;
  /** Last age at which each unit was known to be good; the life itself where it is known. */
  readonly lower: readonly number[];
  /** First age at which it had failed: the same as lower for a known life, null while it is still good. */
  readonly upper: readonly (number | null)[];
  /** Age from which each unit was observed; 0 where left out. */
  readonly entryAges?: readonly number[];
  /** How many like units each row stands for; 1 where left out. */
  readonly weights?: readonly number[];
  /** Two-sided confidence level, between 0 and 1. */
  readonly level?: number;
  /** Shares failed whose life is asked for, such as 0.1 for B10. */
  readonly failedShares?: readonly number[];
  /** Ages at which the share failed is asked for. */
  readonly atAges?: readonly number[];
  /** Whether limits by the likelihood ratio are searched as well, up to 5000 rows. */
  readonly withProfileLimits?: boolean;
};

export type LifeFitResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** Unit of the ages. */
  readonly unit: AnyUnit;
  /** The fit, or why there is none. */
  readonly result: EstimatedLifeFit | NoLifeMaximum | ZeroLives | CalculationNeedsMore | CalculationNotConverged;
};

/** Values may be added; accept unknown ones in answers. */
export type LifeGap = 'fittedUnknown' | 'removedBeforeFitted' | 'neverWatched' | 'endedUnwatched' | 'neverInspected' | (string & {});

export type LifeGrouping = 'supplier' | 'condition' | 'customer' | 'application';

export type LifeLimits = {
  /** Estimate. */
  readonly estimate: number;
  /** Lower limit, Wald, on the logarithm. */
  readonly lower: number;
  /** Upper limit. */
  readonly upper: number;
};

export type LifeNotEstimated = {
  /** which case this is */
  readonly kind: 'notEstimated';
  /** Group whose distribution cannot be had. */
  readonly group: ComparedGroup;
};

export type LifeOfShare = {
  /** The estimate. */
  readonly estimate: number;
  /** Lower Wald limit. */
  readonly lower: number;
  /** Upper Wald limit. */
  readonly upper: number;
  /** Standard error on the scale on which the limits are symmetric (the logarithm; for a share the standardised deviate). */
  readonly standardError: number;
  /** Two-sided confidence level of the limits. */
  readonly level: number;
  /** Limits by the likelihood ratio; null where not asked for. */
  readonly profileLimits: OpenLimits | null;
  /** Share failed. */
  readonly failedShare: number;
};

export type LifeScale = 'days' | 'km';

export type LikeGroup = {
  /** Successes. */
  readonly successes: number;
  /** Trials. */
  readonly trials: number;
};

export type LikelihoodRatio = {
  /** which case this is */
  readonly kind: 'tested';
  /** Chi-square with 2 degrees of freedom: scale and shape. */
  readonly chiSquare: number;
  /** Degrees of freedom. */
  readonly degreesOfFreedom: number;
  /** p-value. */
  readonly pValue: number;
  /** Characteristic life of the first group over that of the second. */
  readonly scaleRatio: number;
};

export type Limit = {
  /** Id of the limit. */
  readonly id: string;
  /** What is limited. */
  readonly characteristic: string;
  /** Kind of the readings; null where the reading is no number. */
  readonly quantityKind: QuantityKind | null;
  /** Shape and figures, told apart by kind: minimum, maximum, band, ratioOfTwo, ratioToBest, ratioToMean, pair, grade, yesNo, tabulated, formula, classes. Bounds carry comparator, value and unit. */
  readonly criterion: { readonly [name: string]: unknown };
  /** A stricter criterion worth a note; null for none. */
  readonly advisory: { readonly [name: string]: unknown } | null;
  /** How bad it is to be outside. */
  readonly severity: Severity;
  /** Place whose rule it is; null for none. */
  readonly jurisdiction: string | null;
  /** What the vehicle must be for the limit to hold, by key. */
  readonly applicability: { readonly [name: string]: unknown };
  /** Conditions of the test, by key. */
  readonly conditions: { readonly [name: string]: unknown };
  /** Circumstances in which it does not judge. */
  readonly exclusions: readonly LimitExclusion[];
  /** Change of the limit with a circumstance, e.g. altitude. */
  readonly correction: { readonly [name: string]: unknown } | null;
  /** Edition of the text. */
  readonly edition: LimitEdition;
  /** Where it comes from. */
  readonly origin: LimitOrigin;
  /** Whether the shop may judge by it yet. */
  readonly judging: JudgingState;
  /** Probabilities at which it decides. */
  readonly thresholds: VerdictThresholds;
  /** In the words of its source. */
  readonly asWritten: string;
  /** Remark. */
  readonly note: string | null;
};

export type LimitEdition = {
  /** First day it holds; null: open. */
  readonly validFrom: string | null;
  /** First day it no longer holds; null: open. */
  readonly validTo: string | null;
  /** The text it was taken from. */
  readonly source: string;
  /** Where in that text. */
  readonly citation: string;
};

export type LimitExclusion = {
  /** Id of the exclusion. */
  readonly id: string;
  /** What is looked at. */
  readonly key: string;
  /** Rule it must meet for the limit not to judge. */
  readonly rule: { readonly [name: string]: unknown };
};

export type LimitListItem = {
  /** Record of the shop; null for a shipped limit it did not touch. */
  readonly recordId: string | null;
  /** Version of that record. */
  readonly recordVersion: number | null;
  /** The limit. */
  readonly limit: Limit;
};

/** Values may be added; accept unknown ones in answers. */
export type LimitOrigin = 'published' | 'maker' | 'shop' | 'commonPractice' | 'judgement' | 'memory' | (string & {});

export type LimitPage = {
  /** The items, in the order of the list. */
  readonly items: readonly LimitListItem[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type LineModel = 'interceptAndSlope' | 'throughOrigin';

export type LineOfUnit = {
  /** Height at x = 0, in the unit of y. */
  readonly intercept: number;
  /** Slope. */
  readonly slope: number;
  /** Standard error of the intercept. */
  readonly interceptStandardError: number;
  /** Standard error of the slope. */
  readonly slopeStandardError: number;
  /** Covariance of the two. */
  readonly covariance: number;
  /** Interval of the intercept. */
  readonly interceptInterval: CalculationLimits;
};

export type LinePrediction = {
  /** Where, in the unit of x. */
  readonly x: number;
  /** Height of the line. */
  readonly fitted: number;
  /** Its standard error. */
  readonly standardError: number;
  /** Interval of the line. */
  readonly confidenceInterval: CalculationLimits;
  /** Interval of one new observation. */
  readonly predictionInterval: CalculationLimits;
};

export type LinkComebackRequest = {
  /** Id chosen by the client. */
  readonly id?: string;
  /** The later complaint. */
  readonly complaintId: string;
  /** The earlier released job of the same vehicle. */
  readonly jobId: string;
  /** Remark. */
  readonly note: string | null;
};

export type LivesBehind = {
  /** Lives that ended. */
  readonly ended: number;
  /** Parts still running. */
  readonly running: number;
  /** Parts left out, because their age or their observation is not known. */
  readonly leftOut: number;
};

export type LivesComparisonResponse = {
  /** What ends a life. */
  readonly ends: LifeEnd;
  /** Unit of all ages. */
  readonly scale: LifeScale;
  /** Lives of the first group. */
  readonly first: ComponentLives;
  /** Lives of the second group. */
  readonly second: ComponentLives;
  /** Log-rank test of equal hazards. */
  readonly logRank: LogRank | LivesNotComparable | LogRankNotTaken | CalculationNeedsMore;
  /** Two Weibull distributions against one common to both. */
  readonly likelihoodRatio: LikelihoodRatio | LifeNotEstimated | CalculationNeedsMore;
  /** How it was computed. */
  readonly method: CalculationMethod;
};

export type LivesLeftOut = {
  /** Why parts say nothing. */
  readonly why: LifeGap;
  /** How many. */
  readonly parts: number;
};

export type LivesNotComparable = {
  /** no age at which a life ended with both groups at risk */
  readonly kind: 'notComparable';
};

export type LogRank = {
  /** which case this is */
  readonly kind: 'tested';
  /** Lives of the first group that ended. */
  readonly observedFirst: number;
  /** How many would have ended were the groups alike. */
  readonly expectedFirst: number;
  /** Chi-square with 1 degree of freedom. */
  readonly chiSquare: number;
  /** p-value. */
  readonly pValue: number;
};

export type LogRankNotTaken = {
  /** lives are known to intervals, which this test does not take */
  readonly kind: 'intervalsOnly';
};

export type LogRankTestRequest = {
  /** Unit of the ages. */
  readonly unit?: AnyUnit;
  /** First group. */
  readonly first: GroupOfLives;
  /** Second group. */
  readonly second: GroupOfLives;
};

export type LogRankTestResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** Unit of the ages. */
  readonly unit: AnyUnit;
  /** The test, or why there is none. */
  readonly result: TestedGroups | GroupsNotComparable | CalculationNeedsMore;
};

export type LowestAtLastPeriod = {
  /** Periods to hold. */
  readonly periods: number;
  /** Cost per period when held for 1, 2, ... periods. */
  readonly costs: readonly number[];
  /** the list ends before the cost has turned */
  readonly kind: 'lowestAtLastPeriod';
  /** Cost per period of the last. */
  readonly cost: number;
};

export type MannKendallMethod = 'exact' | 'normalWithContinuityCorrection';

export type MannKendallResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** Unit of x. */
  readonly xUnit: AnyUnit;
  /** Unit of y; slopes are in it per unit of x. */
  readonly yUnit: AnyUnit;
  /** The test, or why there is none. */
  readonly result: EstimatedMannKendall | AllTied | CalculationNeedsMore;
};

export type MaximumPermissibleError = {
  /** which case this is */
  readonly kind: 'maximumPermissibleError';
  /** The error is within plus or minus this. */
  readonly limit: AnyQuantity;
};

export type MeanAtAge = {
  /** Age asked for, in the unit. */
  readonly age: number;
  /** Mean events per unit by that age; null where nobody was observed. */
  readonly mean: number | null;
  /** Its robust standard error. */
  readonly standardError: number | null;
  /** Lower limit. */
  readonly lower: number | null;
  /** Upper limit. */
  readonly upper: number | null;
};

export type MeanCumulativeFunctionRequest = {
  /** Unit of the ages. */
  readonly unit?: AnyUnit;
  /** Number of the unit each event happened to, from 0. */
  readonly eventUnits: readonly number[];
  /** Age of the unit at each event. */
  readonly eventAges: readonly number[];
  /** Size of each event, such as its cost; 1 where left out. */
  readonly eventSizes?: readonly number[];
  /** Number of the unit each span of observation belongs to. */
  readonly spanUnits: readonly number[];
  /** Age at which each span begins; 0 where left out. */
  readonly spanStarts?: readonly number[];
  /** Age at which each span ends; an event at it counts. */
  readonly spanEnds: readonly number[];
  /** Form of the limits: plain, or on the logarithm. */
  readonly limitForm?: RecurrenceLimitForm;
  /** Two-sided confidence level, between 0 and 1. */
  readonly level?: number;
  /** Ages at which the curve is read off. */
  readonly atAges?: readonly number[];
};

export type MeanCumulativeFunctionResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** Unit of the ages. */
  readonly unit: AnyUnit;
  /** The curve, or why there is none. */
  readonly result: EstimatedMeanFunction | NoRecurrences | CalculationNeedsMore;
};

export type MeasureFirst = {
  /** which case this is */
  readonly kind: 'measureFirst';
  /** The option that is meant. */
  readonly optionId: string;
  /** Readings to take. */
  readonly readings: number;
  /** The same in words. */
  readonly detail: string;
};

export type MinimumInside = {
  /** Periods to hold. */
  readonly periods: number;
  /** Cost per period when held for 1, 2, ... periods. */
  readonly costs: readonly number[];
  /** which case this is */
  readonly kind: 'minimumInside';
  /** Cost per period of the best. */
  readonly cost: number;
};

export type MissingProofReason = 'notRecorded' | 'failed' | 'mandatoryNotTested' | 'noReason' | 'noRecheckDate';

export type MissingProofResponse = {
  /** The point. */
  readonly point: string;
  /** The point in words. */
  readonly title: string;
  /** What is missing. */
  readonly why: MissingProofReason;
};

export type MixedLineRequest = {
  /** Unit of x. */
  readonly xUnit?: AnyUnit;
  /** Unit of y. */
  readonly yUnit?: AnyUnit;
  /** Units, each with its points. */
  readonly units: readonly UnitPoints[];
  /** Two-sided confidence level, between 0 and 1. */
  readonly level?: number;
};

export type MixedLineResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** Unit of x. */
  readonly xUnit: AnyUnit;
  /** Unit of y; slopes are in it per unit of x. */
  readonly yUnit: AnyUnit;
  /** The lines, or why there are none. */
  readonly result: EstimatedMixedLine | NoResidualScatter | CalculationNeedsMore | CalculationNotConverged;
};

export type ModelYear = {
  /** which case this is */
  readonly kind: 'modelYear';
  /** Year by position 10, cycle by position 7. */
  readonly year: number;
  /** Year of the other cycle. */
  readonly otherCycleYear: number;
};

export type Money = {
  /** Amount as decimal text, with no more decimals than the currency has. */
  readonly amount: string;
  /** ISO 4217 code. */
  readonly currency: Currency;
};

export type MoneyInterval = {
  /** Lower end. */
  readonly lower: Money;
  /** Upper end. */
  readonly upper: Money;
  /** Level of the interval. */
  readonly level: number;
  /** Name of the method. */
  readonly method: string;
};

/** Values may be added; accept unknown ones in answers. */
export type MoneyUnknownReason = 'noJob' | 'noInspection' | 'sheetFeedsNoTables' | 'contradictoryEvidence' | 'allChecksDone' | (string & {});

export type MostProbableCauses = {
  /** 1 for each cause that holds. */
  readonly holds: readonly number[];
  /** Probability of that combination. */
  readonly probability: number;
};

export type NamedValue = {
  /** Decimal text. */
  readonly value: string;
  /** Unit (UCUM), a currency, or 1. */
  readonly unit: string;
  /** What it is a value of. */
  readonly name: string;
};

export type NeedEstimate = {
  /** which case this is */
  readonly kind: 'estimated';
  /** `chancesOfVans`: exact distribution of the sum of vans, each with its own chance (Poisson binomial). `pastUse`: Poisson with the Syntetos–Boylan mean of past use, where nothing better is known. */
  readonly method: DemandMethod;
  /** Pieces needed. */
  readonly pieces: DemandSummary;
  /** Chance of each number of pieces; numbers with less than 1e-9 are left out. */
  readonly points: readonly DemandPoint[];
};

export type NeedReason = {
  /** What makes the van need the part. */
  readonly source: NeedSource;
  /** Chance by this reason alone. */
  readonly chance: number;
  /** Characteristic and readings, or the job, behind it. */
  readonly about: { readonly [name: string]: string };
};

export type NeedSource = 'wear' | 'life' | 'openJob' | 'comeback';

export type NestedGaugeStudy = {
  /** What varies how much. */
  readonly variation: GaugeVariation;
  /** which case this is */
  readonly kind: 'nested';
  /** Table of the analysis of variance. */
  readonly sources: NestedSources;
};

export type NestedSources = {
  /** Between appraisers. */
  readonly appraisers: VarianceSource;
  /** Between objects of one appraiser. */
  readonly objectsWithinAppraisers: VarianceSource;
  /** Repeats. */
  readonly error: VarianceSource;
};

export type NeverCheaper = {
  /** dearer whatever its comeback probability */
  readonly kind: 'neverCheaper';
};

export type NewApiKeyResponse = {
  /** Whom the key speaks for. */
  readonly userId: string;
  /** What it is for. */
  readonly name: string;
  /** What the key may do at most; the roles of its user bound it further. */
  readonly roles: readonly ShopRole[];
  /** When the key ends by itself; null: when it is revoked. */
  readonly expiresAt: string | null;
  /** The key only reads: GET and HEAD. */
  readonly readOnly: boolean;
  /** The key whose place this one takes; null: none. */
  readonly replaces: string | null;
  /** When it was last used, to within a minute; null: it was not. */
  readonly lastUsedAt: string | null;
  /** Id of the key. */
  readonly id: string;
  /** When it was made. */
  readonly recordedAt: string;
  /** When it was revoked; null: it was not. */
  readonly revokedAt: string | null;
  /** The key itself, for the Authorization header. Shown this once; only a hash of it is kept. */
  readonly key: string;
};

export type NewWebhookEndpointResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** Where messages are sent: https, a name or address of the public internet, port 443 or 8443. */
  readonly url: string;
  /** What it is for. */
  readonly description: string;
  /** Types of events it is told of; null: all, also those to come. */
  readonly eventTypes: readonly string[] | null;
  /** Whether it is told of things; `gone`: it answered 410. */
  readonly state: WebhookEndpointState;
  /** What messages are signed with, shown this once; null where the endpoint was there already. */
  readonly secret: string | null;
};

export type NewWebhookSecretResponse = {
  /** Id of the secret. */
  readonly id: string;
  /** The endpoint it belongs to. */
  readonly endpointId: string;
  /** The secret, shown this once. */
  readonly secret: string;
  /** From when on it signs. */
  readonly recordedAt: string;
  /** Until when the earlier secret signs beside it. */
  readonly earlierEndsAt: string;
};

export type NewsvendorLevel = {
  /** Level to stock, pieces. */
  readonly level: number;
  /** Expected cost of that level. */
  readonly expectedCost: number;
  /** under / (under + over). */
  readonly criticalRatio: number;
};

export type NewsvendorRequest = {
  /** Cost of a piece too many, in any one currency. */
  readonly over: number;
  /** Cost of a piece too few, in the same currency. */
  readonly under: number;
  /** Demand of the period. */
  readonly demand: NormalDemand | PoissonDemand;
  /** Levels whose expected cost is asked for (Poisson demand). */
  readonly atLevels?: readonly number[];
};

export type NewsvendorResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** The level that costs least. */
  readonly result: NewsvendorLevel;
  /** Costs of the levels asked for. */
  readonly costs: readonly CostOfLevel[];
};

export type NextCheck = {
  /** which case this is */
  readonly kind: 'next';
  /** The check with its steps, instrument and cautions. */
  readonly check: Check;
  /** Why this one. */
  readonly why: NextCheckReason;
  /** Checks before it that no further reading would settle; the result stays provisional. */
  readonly unsettled: readonly string[];
};

export type NextCheckReason = {
  /** Stable code. */
  readonly code: string;
  /** In words. */
  readonly detail: string;
};

export type NextCheckResponse = {
  /** What to do next, in the order of the sheet. */
  readonly step: NextCheck | CorrectFirst | AllChecksDone;
  /** What comes before this answer. */
  readonly precedence: string;
  /** Checks most worth their minutes by the complaints of the job. */
  readonly worthwhile: readonly WorthwhileCheck[];
  /** Likeliest causes so far. */
  readonly leadingCauses: readonly LeadingCause[];
  /** Checks by the money they save, at the rates of the shop and the owner of the van. */
  readonly byMoney: ChecksByMoney | ChecksByMoneyUnknown;
  /** Tables the probabilities come from; null where the sheet feeds none. */
  readonly tablesVersion: string | null;
  /** Method of the ranking. */
  readonly method: string | null;
};

export type NoBestLife = {
  /** which case this is */
  readonly kind: 'noMaximum';
  /** Why no distribution fits best. */
  readonly reason: NoMaximumReason;
};

export type NoChartVariation = {
  /** the chart has no width at this centre */
  readonly kind: 'noVariation';
  /** Centre line. */
  readonly centre: number;
};

export type NoComebackChart = {
  /** no event, or nothing but events: the chart has no width */
  readonly kind: 'noVariation';
  /** Centre line. */
  readonly centre: number;
};

export type NoComebackCurve = {
  /** nothing came back: the curve stays at 1 */
  readonly kind: 'noEvents';
  /** Jobs observed. */
  readonly jobs: number;
  /** Longest observation in days. */
  readonly lastDay: number;
};

export type NoDearerQuantity = {
  /** So many pieces cost no more in all. */
  readonly quantity: number;
  /** A piece of them. */
  readonly unitPrice: Money;
  /** All of them. */
  readonly total: Money;
};

export type NoExtraVariation = {
  /** the groups differ no more than by chance */
  readonly kind: 'noExtraVariation';
  /** Common share. */
  readonly proportion: number;
};

export type NoFailures = {
  /** which case this is */
  readonly kind: 'noEvents';
  /** Units observed, by weight. */
  readonly units: number;
  /** Last age observed, in the unit. */
  readonly lastAge: number;
};

export type NoFlip = {
  /** What is varied. */
  readonly quantity: FlipQuantity;
  /** The option that is meant. */
  readonly optionId: string | null;
  /** Its value now. */
  readonly now: ReportedValue;
  /** The same in words. */
  readonly detail: string;
  /** which case this is */
  readonly kind: 'noFlipWithin';
  /** From here */
  readonly lower: ReportedValue;
  /** to here nothing changes. */
  readonly upper: ReportedValue;
};

export type NoFurtherReadings = {
  /** which case this is */
  readonly kind: 'none';
};

export type NoLifeEnded = {
  /** no life has ended */
  readonly kind: 'noEvents';
};

export type NoLifeMaximum = {
  /** which case this is */
  readonly kind: 'noMaximum';
  /** Why the likelihood has no maximum. */
  readonly reason: NoMaximumReason;
  /** Lives with a finite upper end, by weight. */
  readonly events: number;
};

export type NoLine = {
  /** which case this is */
  readonly kind: 'noLine';
};

export type NoMaximumReason = 'oneLifeFitsAll' | 'nothingOutlived' | 'flat';

export type NoNumberSettles = {
  /** which case this is */
  readonly kind: 'noNumberSettles';
  /** Why no number of further readings settles it. */
  readonly why: NoNumberSettlesReason;
};

/** Values may be added; accept unknown ones in answers. */
export type NoNumberSettlesReason = 'doubtThatDoesNotAverage' | 'moreThanPractical' | 'nothingAverages' | (string & {});

export type NoPowerLaw = {
  /** which case this is */
  readonly kind: 'noMaximum';
  /** Why no shape fits best. */
  readonly reason: string;
};

export type NoProcessMaximum = {
  /** which case this is */
  readonly kind: 'noMaximum';
  /** Why the likelihood has no maximum. */
  readonly reason: string;
};

export type NoRecommendation = {
  /** which case this is */
  readonly kind: 'none';
  /** Why. */
  readonly why: NoRecommendationReason;
  /** The same in words. */
  readonly detail: string;
};

/** Values may be added; accept unknown ones in answers. */
export type NoRecommendationReason = 'noOptions' | 'nothingPriced' | 'nothingAdmissible' | (string & {});

export type NoRecurrence = {
  /** Vehicles observed. */
  readonly vehicles: number;
  /** Days observed, all vehicles together. */
  readonly observedDays: number;
  /** Replacements outside the observation of their vehicle: left out, since others like them went unseen. */
  readonly unobservedEvents: number;
  /** which case this is */
  readonly kind: 'noEvents';
};

export type NoRecurrences = {
  /** which case this is */
  readonly kind: 'noEvents';
  /** Units observed. */
  readonly units: number;
  /** First age observed, in the unit. */
  readonly firstAge: number;
  /** Last age observed, in the unit. */
  readonly lastAge: number;
};

export type NoResidualScatter = {
  /** every point lies on its unit’s line: nothing to weigh by */
  readonly kind: 'noResidualScatter';
};

export type NoTrend = {
  /** there is no trend to ask */
  readonly kind: 'noTrend';
};

export type NoWearLimit = {
  /** no limit that may be judged by applies to this vehicle: set one, or confirm a published one */
  readonly kind: 'noWearLimit';
};

export type NoisyOrFinding = {
  /** Whether the finding is there. */
  readonly present: boolean;
  /** P(finding) by each cause alone, in the order of the priors. */
  readonly strengths: readonly number[];
  /** P(finding) without any of them. */
  readonly leak: number;
};

export type NoisyOrRequest = {
  /** Probability of each cause beforehand. */
  readonly priors: readonly number[];
  /** Findings, present or absent; those not looked for are left out. */
  readonly findings: readonly NoisyOrFinding[];
};

export type NoisyOrResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** The causes, or why nothing is said. */
  readonly result: EstimatedCauses | ImpossibleFindings;
  /** P(finding) where all causes hold, one a finding. */
  readonly whenAllHold: readonly number[];
};

export type NormalDemand = {
  /** which case this is */
  readonly kind: 'normal';
  /** Mean demand, pieces. */
  readonly mean: number;
  /** Standard deviation, pieces. */
  readonly standardDeviation: number;
};

export type NormalPopulation = {
  /** which case this is */
  readonly kind: 'normal';
  /** Mean of the true values. */
  readonly mean: number;
  /** Their standard deviation. */
  readonly standardDeviation: number;
};

export type NormalPrior = {
  /** Mean of the values beforehand. */
  readonly mean: number;
  /** Their standard deviation. */
  readonly standardDeviation: number;
};

export type NotAVin = {
  /** not a number of 17 characters of the alphabet; older chassis numbers are not */
  readonly kind: 'notAVin';
  /** Why. */
  readonly reason: NotAVinReason;
};

export type NotAVinReason = 'length' | 'alphabet';

/** Values may be added; accept unknown ones in answers. */
export type NotJudgedReason = 'valueToConfirm' | 'prerequisitesOpen' | 'limitNotConfirmed' | 'limitNotApplicable' | 'limitNotInForce' | 'instrumentUnknown' | 'excluded' | 'sourceUnclear' | 'wrongConditions' | 'wrongKindOfQuantity' | 'contextMissing' | 'notInTable' | 'makerValueZero' | 'ratioUndefined' | 'contradictsPhysicalBound' | 'contradictoryPair' | 'companionMissing' | 'companionNotConclusive' | 'gradeUnknown' | 'classOnly' | 'noReadings' | (string & {});

export type NotTrendableReason = 'asLeft' | 'awaitingConfirmation' | 'distanceUnknown' | 'instrumentUnknown' | 'uncertaintyUnknown' | 'withdrawn';

export type NothingExpected = {
  /** events where there could be none: no ratio */
  readonly kind: 'nothingExpected';
  /** Events that were seen. */
  readonly observed: number;
};

export type NumberResult = {
  /** which case this is */
  readonly kind: 'number';
  /** Exactly as read, e.g. 0.18, or 2/32 for inches. */
  readonly shown: string;
  /** Code of the unit as read (UCUM); never guessed. */
  readonly unit: UnitCode;
};

export type ObservationCounts = {
  /** Readings of the wear of this part. */
  readonly readings: number;
  /** Inspections the wear rate is drawn through. */
  readonly wearPoints: number;
  /** Deliveries behind the lead times. */
  readonly deliveries: number;
};

export type ObservedSpan = {
  /** From when on the shop would have seen what happened to the vehicle. */
  readonly from: string;
  /** Until when; null: it is still seen. */
  readonly until: string | null;
};

export type ObservedSystem = {
  /** Ages of the system at its events. */
  readonly eventAges: readonly number[];
  /** Age at the end of observation; may be left out where it ended with the last event. */
  readonly end?: number;
  /** Whether observation ended at a time fixed beforehand or with the last event. */
  readonly termination: Termination;
};

export type ObservedToExpectedRequest = {
  /** Events that were seen. */
  readonly observed: number;
  /** Events that were to be expected. */
  readonly expected: number;
  /** Two-sided confidence level, between 0 and 1. */
  readonly level?: number;
};

export type ObservedToExpectedResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** The ratio, or why there is none. */
  readonly result: EstimatedExpectationRatio | NothingExpected | CalculationNeedsMore;
};

export type OdometerEntryEntry = {
  /** When it happened; null: before the shop knew the vehicle. */
  readonly happenedAt: string | null;
  /** The job it belongs to; null: none. */
  readonly jobId: string | null;
  /** which case this is */
  readonly kind: 'odometerEntry';
  /** What the odometer showed. */
  readonly record: OdometerEntryResponse;
  /** With `corrections=all`: the other revisions of the record, oldest first, later ones than the moment asked about as well. Empty otherwise. */
  readonly otherRevisions: readonly OdometerEntryResponse[];
};

export type OdometerEntryPage = {
  /** The items, in the order of the list. */
  readonly items: readonly OdometerEntryResponse[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type OdometerEntryResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** Digits as displayed, with a point before tenths. */
  readonly shown: string;
  /** Unit of the display (UCUM). */
  readonly unit: OdometerUnit;
  /** When it was read. */
  readonly readAt: string;
  /** Who read it, where that is known. */
  readonly readBy?: string | null;
  /** Remark. */
  readonly note?: string | null;
  /** The vehicle. */
  readonly vehicleId: string;
  /** Distance by the segments, in km; null where it cannot be told. */
  readonly distanceKm: string | null;
  /** Operating hours, where the display counts them. */
  readonly operatingHours: string | null;
  /** Whether distances may rest on it. */
  readonly reliable: boolean;
  /** What looks odd. A warning never refuses. */
  readonly warnings: readonly OdometerWarningResponse[];
};

export type OdometerProposalResponse = {
  /** What is proposed: a segment, another unit, other digits, or to distrust the display. */
  readonly proposal: string;
  /** The proposal itself: for a segment the body of POST /v1/vehicles/{vehicleId}/odometer-segments, else the members to correct. */
  readonly values: { readonly [name: string]: unknown };
};

export type OdometerSegmentCause = 'firstSeen' | 'rollover' | 'displayReplaced' | 'unitChanged';

export type OdometerSegmentEntry = {
  /** When it happened; null: before the shop knew the vehicle. */
  readonly happenedAt: string | null;
  /** The job it belongs to; null: none. */
  readonly jobId: string | null;
  /** which case this is */
  readonly kind: 'odometerSegment';
  /** A stretch of the odometer began. */
  readonly record: OdometerSegmentResponse;
  /** With `corrections=all`: the other revisions of the record, oldest first, later ones than the moment asked about as well. Empty otherwise. */
  readonly otherRevisions: readonly OdometerSegmentResponse[];
};

export type OdometerSegmentList = {
  /** Stretches in order; distance = offset + factor x (shown - shown at its beginning). */
  readonly items: readonly OdometerSegmentResponse[];
};

export type OdometerSegmentResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** The vehicle. */
  readonly vehicleId: string;
  /** Why it began. */
  readonly cause: OdometerSegmentCause;
  /** When it began. */
  readonly startedAt: string;
  /** Distance at its beginning, in km. */
  readonly offsetKm: string;
  /** km per unit shown. */
  readonly factor: string;
  /** What the display showed then. */
  readonly rawAtStart: string;
  /** Unit of the display (UCUM). */
  readonly unit: OdometerUnit;
  /** Digits of the display. */
  readonly digits: number | null;
  /** Remark. */
  readonly note: string | null;
};

export type OdometerShown = {
  /** Digits as displayed, with a point before tenths. */
  readonly shown: string;
  /** Unit of the display (UCUM). */
  readonly unit: OdometerUnit;
  /** When it was read. */
  readonly readAt: string;
  /** Who read it, where that is known. */
  readonly readBy?: string | null;
  /** Remark. */
  readonly note?: string | null;
};

export type OdometerUnit = 'km' | '[mi_i]' | 'h';

export type OdometerWarningResponse = {
  /** Stable code of the warning. */
  readonly code: string;
  /** JSON Pointer to what looks odd. */
  readonly pointer: string;
  /** The warning in words. */
  readonly detail: string;
  /** What could set it right. */
  readonly proposals: readonly OdometerProposalResponse[];
};

export type OfferLeftOut = {
  /** The offer. */
  readonly offerId: string;
  /** Why. */
  readonly why: OfferOmission;
};

/** Values may be added; accept unknown ones in answers. */
export type OfferOmission = 'expired' | (string & {});

export type OfferPage = {
  /** The items, in the order of the list. */
  readonly items: readonly OfferResponse[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type OfferProposal = {
  /** The offer; null: the question named a lead time and there is no offer. */
  readonly offerId: string | null;
  /** Who offers it. */
  readonly supplier: string | null;
  /** In which condition. */
  readonly condition: PartCondition | null;
  /** Pieces to order now; 0: none. */
  readonly quantity: number;
  /** The proposal in one sentence. */
  readonly text: string;
  /** The level wanted. */
  readonly level: StockLevel | UnattainableLevel;
  /** Service over the lead time if nothing is ordered; null where the level is out of reach. */
  readonly serviceWithout: number | null;
  /** Pieces missing on average if nothing is ordered. */
  readonly shortWithout: number | null;
  /** Lead times. */
  readonly leadTimes: LeadTimes;
  /** Pieces asked for over the lead time. */
  readonly demand: DemandSummary;
  /** How the demand was worked out. */
  readonly method: DemandMethod;
  /** What it costs; null: nothing to order, or not quoted. */
  readonly price: OrderPrice | null;
  /** Why. */
  readonly reasons: readonly OrderReason[];
  /** Vans with their chances within the days that nine in ten orders keep, the likeliest first. */
  readonly vans: readonly VanChance[];
};

export type OfferResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** Kind of part offered. */
  readonly componentType: string;
  /** Condition, as it must be declared. `repairedOwnPart`: what is needed to repair the part of the vehicle itself, such as bushes. */
  readonly condition: PartCondition;
  /** Who offers it. */
  readonly supplier: string;
  /** Number of the part. */
  readonly partNumber: string | null;
  /** Price; null: not quoted, which is never taken for free. */
  readonly price: Money | null;
  /** Deposit held until the old part is accepted, in the currency of the price; null: none. */
  readonly coreDeposit: Money | null;
  /** Days from order to arrival as promised; 0: it is on the shelf; null: nothing was promised. */
  readonly promisedLeadDays: number | null;
  /** Months of warranty on the part; null: none. */
  readonly warrantyMonths: number | null;
  /** Last day it holds; null: until further notice. */
  readonly validUntil: string | null;
  /** Number of the shop’s list that is offered; null: it goes by the number of the part. */
  readonly partId?: string | null;
  /** Price of a piece from a number of pieces on; null: one price for any number. */
  readonly priceBreaks?: readonly PriceBreak[] | null;
  /** Kilometres of warranty on the part; null: not bound by distance. */
  readonly warrantyKm?: string | null;
  /** Days after arrival within which the old part has to be back; null: none were named. */
  readonly coreReturnDays?: number | null;
};

export type OfferRevisions = {
  /** Every revision, oldest first. */
  readonly items: readonly OfferResponse[];
};

export type OmittedDecisions = {
  /** Stable code. */
  readonly reason: string;
  /** How many. */
  readonly count: number;
  /** In words. */
  readonly detail: string;
};

export type OpenJobRequest = {
  /** When the visit began. */
  readonly openedAt: string;
  /** User it is assigned to; null: nobody yet. */
  readonly assignedTo: string | null;
  /** Technician who diagnosed; who fitted stands on the work line. */
  readonly diagnosedBy: string | null;
  /** Cause established by a check and by the cure, by id of GET /v1/causes; null: not established. */
  readonly causeId: string | null;
  /** Remark. */
  readonly note: string | null;
  /** Id chosen by the client. */
  readonly id?: string;
  /** The vehicle. */
  readonly vehicleId: string;
  /** Complaints this job deals with. */
  readonly complaintIds: readonly string[];
  /** What the odometer showed on arrival; null: not read. */
  readonly odometer: OdometerShown | null;
};

export type OpenLimits = {
  /** Lower limit; null where there is none. */
  readonly lower: number | null;
  /** Upper limit; null where there is none. */
  readonly upper: number | null;
};

export type OperatingCondition = {
  /** Id of the condition. */
  readonly id: string;
  /** In words. */
  readonly label: string;
  /** How it is recorded. */
  readonly kind: ConditionKind;
  /** For a choice. */
  readonly choices: readonly string[];
  /** For a quantity. */
  readonly quantityKind: QuantityKind | null;
};

export type OperatingConditionList = {
  /** Conditions. */
  readonly items: readonly OperatingCondition[];
};

export type OptimalAge = {
  /** which case this is */
  readonly kind: 'optimum';
  /** Age at which to replace, in the unit. */
  readonly age: number;
  /** Cost per unit of age there. */
  readonly costRate: number;
  /** Cost per unit of age when run to failure. */
  readonly runToFailureCostRate: number;
  /** Share saved against running to failure. */
  readonly saving: number;
  /** Mean age at replacement, in the unit. */
  readonly meanCycle: number;
  /** Share that fails before. */
  readonly failureShare: number;
};

export type OptionAction = 'leave' | 'adjust' | 'reBush' | 'fitUsed' | 'fitRemanufactured' | 'fitNew';

export type OptionWear = {
  /** Mean size just after the work. */
  readonly startSize: ReportedValue;
  /** Mean wear rate. */
  readonly meanRate: ReportedValue;
  /** Chance that the criterion is reached within the plan, nothing more being done. */
  readonly probabilityOfReachingCriterion: number;
};

export type OptionWish = {
  /** What is to be considered. */
  readonly action: OptionAction;
  /** Hours of work; absent: the usual ones of this kind of part. */
  readonly labourHours?: string;
  /** Days in the workshop, waiting for the part not counted; absent: the usual ones. */
  readonly workshopDays?: string;
};

export type OrderPrice = {
  /** A piece, at that number. */
  readonly unitPrice: Money;
  /** All of them. */
  readonly total: Money;
  /** The largest number beyond it that costs no more in all; null: none. */
  readonly noDearer: NoDearerQuantity | null;
};

export type OrderProposalList = {
  /** Today in the shop. */
  readonly today: string;
  /** The measure used. */
  readonly measure: StockServiceMeasure;
  /** The service wanted. */
  readonly target: number;
  /** The most pieces first. */
  readonly items: readonly GroupProposal[];
  /** Vans that no recorded number fits. */
  readonly unfitted: readonly UnfittedVans[];
};

export type OrderReason = {
  /** Stable code. */
  readonly code: OrderReasonCode;
  /** Values of the reason. */
  readonly values: { readonly [name: string]: string };
  /** The reason in words. */
  readonly text: string;
};

export type OrderReasonCode = 'vansReachLimit' | 'vansEndLife' | 'jobsPlanned' | 'comebacksExpected' | 'pastUse' | 'stockAndOrders' | 'levelForService' | 'orderOverdue' | 'leadTimePromisedOnly';

export type OutcomeSpread = {
  /** Standard deviation around the expected cost. */
  readonly standardDeviation: Money;
  /** Mean cost where it holds. */
  readonly withoutComeback: Money;
  /** Mean cost where it comes back. */
  readonly withComeback: Money;
};

export type OwnYear = {
  /** Calendar year (UTC). */
  readonly year: number;
  /** Work, parts and days off the road, at present rates. */
  readonly running: number;
};

export type OwnerResponse = {
  /** The customer. */
  readonly customerId: string;
  /** Owner since. */
  readonly fromAt: string;
};

export type OwnershipEntry = {
  /** When it happened; null: before the shop knew the vehicle. */
  readonly happenedAt: string | null;
  /** The job it belongs to; null: none. */
  readonly jobId: string | null;
  /** which case this is */
  readonly kind: 'ownership';
  /** Who owned it from then on. */
  readonly record: OwnershipResponse;
  /** With `corrections=all`: the other revisions of the record, oldest first, later ones than the moment asked about as well. Empty otherwise. */
  readonly otherRevisions: readonly OwnershipResponse[];
};

export type OwnershipList = {
  /** Owners, latest first. */
  readonly items: readonly OwnershipResponse[];
};

export type OwnershipResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** The vehicle. */
  readonly vehicleId: string;
  /** The customer. */
  readonly customerId: string;
  /** Owner from this moment on. */
  readonly fromAt: string;
};

export type PairedPointsRequest = {
  /** Unit of x. */
  readonly xUnit?: AnyUnit;
  /** Unit of y. */
  readonly yUnit?: AnyUnit;
  /** Where each point lies, such as its time. */
  readonly x: readonly number[];
  /** Its value. */
  readonly y: readonly number[];
};

export type PartBelief = {
  /** Its wear. */
  readonly wearNow: WearNowBelief;
  /** Chance that it is beyond the criterion. */
  readonly probabilityBeyondCriterion: number;
  /** Mean wear rate. */
  readonly ratePerThousandKm: ReportedValue;
};

export type PartCondition = 'new' | 'newOldStock' | 'remanufactured' | 'rebuilt' | 'reconditioned' | 'used' | 'repairedOwnPart';

export type PartDetailsResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** Kind of part. */
  readonly componentType: string;
  /** Number under which it is ordered; once for a kind of part. */
  readonly partNumber: string;
  /** What it is, in words. */
  readonly title: string;
  /** Applications it fits, in the words that the vehicles of the shop carry; empty: it fits every vehicle with such a part. */
  readonly applications: readonly string[];
  /** The part that took its place; null: none. */
  readonly supersededById: string | null;
  /** Parts that fit the same; said of one of two it holds for both. */
  readonly interchangesWith: readonly string[];
  /** What else is ordered with it, such as a gasket. */
  readonly alsoOrder: readonly string[];
  /** Anything else worth knowing. */
  readonly note: string | null;
  /** The number that is ordered now: the end of the chain of successors. */
  readonly currentPartId: string;
  /** The part and its successors, in order. */
  readonly successionIds: readonly string[];
  /** All parts that may be fitted in its stead. */
  readonly substituteIds: readonly string[];
  /** What lies of it and of its substitutes. */
  readonly stock: readonly PartStock[];
};

export type PartNeed = {
  /** Kind of part. */
  readonly componentType: string;
  /** Today in the shop. */
  readonly today: string;
  /** How far ahead. */
  readonly horizon: DaysAhead | DistanceAhead;
  /** How many will be needed. */
  readonly outcome: NeedEstimate | CalculationNeedsMore;
  /** The vans, the likeliest first. */
  readonly vans: readonly VanChance[];
  /** Vans about which neither wear nor lives nor jobs say anything; they are not in the number. */
  readonly vansWithoutAnswer: number;
  /** Lives of such parts in the shop. */
  readonly lives: LivesBehind;
  /** Planned replacements that are done in the end. */
  readonly planned: CountedChance;
  /** Repairs without a new part that come back and get one. */
  readonly comebacks: CountedChance;
  /** What was used in the past. */
  readonly pastUse: PastUse | CalculationNeedsMore;
};

export type PartNeedList = {
  /** One a kind of part. */
  readonly items: readonly PartNeed[];
};

export type PartPage = {
  /** The items, in the order of the list. */
  readonly items: readonly PartResponse[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type PartResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** Kind of part. */
  readonly componentType: string;
  /** Number under which it is ordered; once for a kind of part. */
  readonly partNumber: string;
  /** What it is, in words. */
  readonly title: string;
  /** Applications it fits, in the words that the vehicles of the shop carry; empty: it fits every vehicle with such a part. */
  readonly applications: readonly string[];
  /** The part that took its place; null: none. */
  readonly supersededById: string | null;
  /** Parts that fit the same; said of one of two it holds for both. */
  readonly interchangesWith: readonly string[];
  /** What else is ordered with it, such as a gasket. */
  readonly alsoOrder: readonly string[];
  /** Anything else worth knowing. */
  readonly note: string | null;
};

export type PartRevisions = {
  /** Every revision, oldest first. */
  readonly items: readonly PartResponse[];
};

export type PartStock = {
  /** The part. */
  readonly partId: string;
  /** In which condition. */
  readonly condition: PartCondition;
  /** Pieces on the shelf. */
  readonly onHand: number;
  /** Of them, or of what was there before a count, kept for jobs. */
  readonly reserved: number;
  /** Pieces that are kept for nobody. */
  readonly available: number;
};

export type PartUsed = {
  /** Condition, as it must be declared on the estimate. */
  readonly condition: PartCondition;
  /** Supplier. */
  readonly supplier: string | null;
  /** Number printed on it. */
  readonly partNumber: string | null;
  /** Serial number. */
  readonly serial: string | null;
  /** Batch. */
  readonly batch: string | null;
  /** What it cost. */
  readonly price: Money | null;
  /** Number of the shop’s list that is taken from the shelf when the work is done; null: it came from elsewhere. */
  readonly partId?: string | null;
};

export type PartWearResponse = {
  /** The fitted part. */
  readonly fittedPartId: string;
  /** The vehicle it is or was on. */
  readonly vehicleId: string;
  /** Kind of part. */
  readonly componentType: string;
  /** Where on the vehicle. */
  readonly position: string;
  /** What of it wears and can be measured. */
  readonly characteristics: readonly CharacteristicWear[];
};

export type PartsCostClass = 'noPart' | 'smallPart' | 'mediumPart' | 'majorPart';

export type PastUse = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Pieces a day. */
  readonly perDay: number;
  /** Whole months looked at. */
  readonly months: number;
  /** Of them, months in which one was used. */
  readonly monthsWithUse: number;
};

export type PercentOfReadingPlusDigits = {
  /** which case this is */
  readonly kind: 'percentOfReadingPlusDigits';
  /** Per cent of the reading. */
  readonly percent: string;
  /** Number of last digits. */
  readonly digits: number;
  /** What one last digit is. */
  readonly digit: AnyQuantity;
};

export type PersonInHistory = {
  /** Id of the user. */
  readonly userId: string;
  /** Name as shown on records then. */
  readonly displayName: string;
};

export type PhaseProgress = {
  /** Before or after work. */
  readonly phase: ReadingPhase;
  /** Where on the vehicle. */
  readonly position: string;
  /** Where it stands. */
  readonly state: CheckState;
  /** Readings, by the time they were taken. */
  readonly readingIds: readonly string[];
  /** When the last was taken. */
  readonly lastTakenAt: string;
  /** Verdicts, one for each limit. */
  readonly verdicts: readonly VerdictResponse[];
};

export type PlausibleRange = {
  /** Lowest plausible value. */
  readonly lowest: AnyQuantity;
  /** Highest plausible value. */
  readonly highest: AnyQuantity;
};

export type PoissonDemand = {
  /** which case this is */
  readonly kind: 'poisson';
  /** Mean demand, pieces. */
  readonly mean: number;
};

export type PowerLawProcessRequest = {
  /** Unit of the ages. */
  readonly unit?: AnyUnit;
  /** Exact ages of one system, or counts in intervals. */
  readonly data: ExactEvents | GroupedEvents;
  /** Two-sided confidence level, between 0 and 1. */
  readonly level?: number;
};

export type PowerLawProcessResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** Unit of the ages. */
  readonly unit: AnyUnit;
  /** The fit, or why there is none. */
  readonly result: ProcessFromAges | ProcessFromCounts | ZeroAgeEvents | NoProcessMaximum | CalculationNeedsMore | CalculationNotConverged;
};

export type PowerLawTrend = {
  /** which case this is */
  readonly kind: 'tested';
  /** Chi-square; small values mean deterioration, great ones improvement. */
  readonly chiSquare: number;
  /** Degrees of freedom. */
  readonly degreesOfFreedom: number;
  /** Two-sided p-value. */
  readonly pValue: number;
};

export type PreventiveAdvice = {
  /** What is advised. */
  readonly kind: AdviceKind;
  /** Whether the readings of this part show how it wears, or what is known of such parts had to do; null: no forecast. */
  readonly basis: AdviceBasis | null;
  /** Further km until then; null: no distance belongs to it. */
  readonly withinKm: number | null;
  /** Chance of having reached the criterion by then; for a renewal, of being beyond it now. */
  readonly chance: number | null;
  /** Option that renews the part; null: it stays in. */
  readonly optionId: string | null;
  /** Inspections needed to say more; null: enough is known. */
  readonly needed: number | null;
  /** Inspections with distance and uncertainty that it rests on. */
  readonly got: number;
  /** Method and thresholds. */
  readonly method: string;
  /** In words. */
  readonly detail: string;
};

export type PreviewAssessmentRequest = {
  /** The characteristic that wears. */
  readonly characteristic: PreviewCharacteristic;
  /** Why it is asked. */
  readonly occasion: AssessmentOccasion;
  /** Currency reckoned in; a price in another one cannot be priced. */
  readonly currency: Currency;
  /** Distance the owner still wants, in km; 0: the present repair only. */
  readonly planningDistanceKm: string;
  /** Distance without comeback after which a repair has held, in km. */
  readonly watchWindowKm: string;
  /** Distance between planned visits, in km; null: none. */
  readonly serviceIntervalKm: string | null;
  /** Whether the vehicle can be used until the part has come. */
  readonly isUsableWhileWaiting: boolean;
  /** The whole history of readings of the part fitted now, oldest first. */
  readonly inspections: readonly PreviewInspection[];
  /** The behaviour that outranks any number. */
  readonly functionalCriterion: FunctionalPositive | FunctionalNegative | FunctionalNotDone;
  /** Earlier comebacks of this complaint on this part. */
  readonly earlierComebacks: number;
  /** Open dangerous findings. */
  readonly safetyFindings: readonly PreviewSafetyFinding[];
  /** Prices common to all options. */
  readonly rates: PreviewRates;
  /** Options with their offers. */
  readonly options: readonly PreviewOption[];
  /** One more set of readings; null: none can be had. */
  readonly furtherReadings: PreviewFurtherReadings | null;
  /** What the customer has said no to. */
  readonly declinedActions: readonly OptionAction[];
  /** Amount agreed, not to be exceeded; null: none. */
  readonly consentCeiling: Money | null;
  /** Leave out where the answer would flip: everything else is the same, some ten times faster. */
  readonly omitFlipPoints?: boolean;
  /** Tables to reckon with: judgement, before anything was learned, or those the shop decides by; absent: judgement. */
  readonly tables?: PreviewTables;
  /** Start of the draws behind intervals; absent: 1. */
  readonly seed?: number;
};

export type PreviewCharacteristic = {
  /** Its id. */
  readonly characteristicId: string;
  /** Unit of all sizes in the request. */
  readonly unit: UnitCode;
  /** Which way it goes as it wears. */
  readonly direction: DecisionWearDirection;
  /** Size without wear. */
  readonly unwornSize: string;
  /** Size at which the part no longer does its work. */
  readonly criterionSize: string;
};

export type PreviewCore = {
  /** Deposit held until the old part is accepted. */
  readonly deposit: Money;
  /** Chance of losing it, 0 to 1. */
  readonly probabilityOfLosing: string;
};

export type PreviewFurtherReadings = {
  /** Readings in the set. */
  readonly count: number;
  /** Minutes they take. */
  readonly minutes: number;
  /** They were offered already. */
  readonly wereOffered: boolean;
  /** Doubt of readings on a part that was not measured yet; null: not known. */
  readonly doubt: ReadingDoubt | null;
};

export type PreviewInspection = {
  /** Distance since the part was fitted, in km; null: not reliable. */
  readonly kmSinceFitted: string | null;
  /** Which instrument. */
  readonly instrument: string;
  /** As-found readings. */
  readonly values: readonly string[];
  /** Their doubt; null: not known. Such readings are never taken for exact. */
  readonly doubt: ReadingDoubt | null;
  /** Id that comes back with the reasons. */
  readonly id?: string;
};

export type PreviewKeepingRequest = {
  /** What selling the vehicle now would bring. */
  readonly resaleNow: Money;
  /** Share of its value that it loses in a year, 0 to 1. */
  readonly resaleFallPerYear: string;
  /** Further years to look at. */
  readonly furtherYears: number;
  /** Running cost of each further year as you expect it; null: told from the full calendar years of the vehicle itself, three or more. */
  readonly expectedRunning: readonly ExpectedYear[] | null;
  /** What would take its place. */
  readonly challenger: Challenger;
  /** Interest a year as a share, such as 0.05; null: none. */
  readonly discountRate: string | null;
};

export type PreviewOffer = {
  /** Id of the offer. */
  readonly offerId: string;
  /** Supplier. */
  readonly supplier: string;
  /** Condition. */
  readonly condition: PartCondition;
  /** Price; null: not quoted. */
  readonly price: Money | null;
  /** When the part is here. */
  readonly leadTime: InStock | ToOrder;
  /** Deposit; absent: none. */
  readonly core?: PreviewCore;
  /** Wear as measured on arrival; absent: not measured. */
  readonly arrivalWear?: ArrivalWear;
  /** Its giver replaces the part in the watch window. */
  readonly warrantyCoversPart?: boolean;
  /** Its giver pays the labour too. */
  readonly warrantyCoversLabour?: boolean;
};

export type PreviewOption = {
  /** Id of the option. */
  readonly optionId: string;
  /** What is done. */
  readonly action: OptionAction;
  /** Hours of work. */
  readonly labourHours: string;
  /** Days in the workshop, waiting not counted. */
  readonly workshopDays: string;
  /** Offers; none for leaving and adjusting. */
  readonly offers: readonly PreviewOffer[];
};

export type PreviewRates = {
  /** An hour of labour; null: not known. */
  readonly labourPerHour: Money | null;
  /** A day off the road; null: not known. */
  readonly downtimePerDay: Money | null;
  /** Handling of any comeback; null: not known. */
  readonly comebackHandling: Money | null;
  /** Hours of a later complaint, before anything is repaired. */
  readonly laterComplaintHours: string;
  /** Days it takes. */
  readonly laterComplaintDays: string;
};

export type PreviewSafetyFinding = {
  /** Id that comes back with the guards. */
  readonly findingId: string;
  /** What removes it. */
  readonly curedBy: readonly OptionAction[];
};

export type PreviewTables = 'judgement' | 'ofShop';

export type PriceBreak = {
  /** From so many pieces on. */
  readonly fromQuantity: number;
  /** A piece costs this, in the currency of the price. */
  readonly price: Money;
};

export type PricedOption = {
  /** Id of the option. */
  readonly optionId: string;
  /** What is done. */
  readonly action: OptionAction;
  /** The same in words. */
  readonly title: string;
  /** Guards that take it out of the offer, whatever it costs. */
  readonly removedBy: readonly GuardCode[];
  /** which case this is */
  readonly kind: 'priced';
  /** False where a guard removes it; its cost is shown all the same. */
  readonly isAdmissible: boolean;
  /** The offer taken, the cheapest in the end; null: no part. */
  readonly offerId: string | null;
  /** Expected cost to the end of the plan, comebacks included. */
  readonly expectedCost: Money;
  /** What it is made of. */
  readonly components: CostComponents;
  /** Doubt about the expected cost. */
  readonly expectedCostInterval: MoneyInterval;
  /** Chance of having the least expected cost of the admissible ones; null where it is not admissible. */
  readonly probabilityOfBeingCheapest: number | null;
  /** Spread of outcomes. */
  readonly outcomes: OutcomeSpread;
  /** Comeback inside the watch window. */
  readonly comeback: ComebackChance;
  /** Mean days from order to arrival; null where nothing is ordered. */
  readonly leadTime: ReportedValue | null;
  /** Wear after the work. */
  readonly wear: OptionWear;
  /** Other offers of the same option. */
  readonly otherOffers: readonly (PricedOtherOffer | UnpricedOtherOffer)[];
};

export type PricedOtherOffer = {
  /** which case this is */
  readonly kind: 'priced';
  /** Id of the offer. */
  readonly offerId: string;
  /** Expected cost with it. */
  readonly expectedCost: Money;
};

export type PricingProblem = {
  /** What is missing or wrong. */
  readonly code: PricingProblemCode;
  /** Offer or member it was found in; null: the option itself. */
  readonly at: string | null;
  /** The same in words. */
  readonly detail: string;
};

/** Values may be added; accept unknown ones in answers. */
export type PricingProblemCode = 'noOffers' | 'priceMissing' | 'priceNegative' | 'priceAbsurd' | 'currencyDiffers' | 'leadTimeUnknown' | 'labourRateMissing' | 'downtimeCostMissing' | 'comebackHandlingMissing' | 'rateNegative' | 'rateAbsurd' | 'depositNegative' | 'repairAfterComebackCannotBePriced' | (string & {});

export type PriorSource = 'fittedToGroups' | 'judgement';

export type Problem = {
  /** Address of the page that explains this type; stable. */
  readonly type: string;
  /** The type in words. */
  readonly title: string;
  /** The HTTP status. */
  readonly status: number;
  /** Exact reason within the type; stable. */
  readonly code: string;
  /** This occurrence in words. */
  readonly detail?: string;
  /** The path that was asked. */
  readonly instance: string;
  /** Names the line in the log of the service (W3C Trace Context). */
  readonly traceId: string;
  /** What is wrong, member by member. */
  readonly errors?: readonly ProblemFault[];
};

export type ProblemFault = {
  /** JSON Pointer (RFC 6901) into the body; a parameter is named as `/name`. */
  readonly pointer: string;
  /** Name of the rule that was broken; stable. */
  readonly rule: string;
  /** What the rule asks for, in words. */
  readonly detail: string;
};

export type ProcessFromAges = {
  /** which case this is */
  readonly kind: 'estimatedFromAges';
  /** Above 1 the events come ever faster, below 1 ever slower. */
  readonly shape: number;
  /** Exact limits of the shape. */
  readonly shapeLimits: CalculationLimits;
  /** Rate: events expected by age t are rate x t^shape, t in the unit. */
  readonly rate: number;
  /** Shape without bias; null with too few events. */
  readonly unbiasedShape: number | null;
  /** Rate that goes with it. */
  readonly unbiasedRate: number | null;
  /** Events per unit of age at the end. */
  readonly intensityAtEnd: number;
  /** Its inverse, in the unit. */
  readonly meanTimeAtEnd: number;
  /** The same by the unbiased shape, with limits. */
  readonly unbiasedMeanTime: UnbiasedMeanTime | null;
  /** Cramer-von Mises statistic; grows with lack of fit. */
  readonly cramerVonMises: number | null;
  /** Events. */
  readonly events: number;
  /** Age at the end of observation, in the unit. */
  readonly end: number;
  /** Whether observation ended at a time fixed beforehand or with the last event. */
  readonly termination: Termination;
  /** Two-sided confidence level of the limits. */
  readonly level: number;
};

export type ProcessFromCounts = {
  /** which case this is */
  readonly kind: 'estimatedFromCounts';
  /** Above 1 the events come ever faster, below 1 ever slower. */
  readonly shape: number;
  /** Wald limits of the shape. */
  readonly shapeLimits: CalculationLimits;
  /** Rate: events expected by age t are rate x t^shape, t in the unit. */
  readonly rate: number;
  /** Logarithm of the likelihood. */
  readonly logLikelihood: number;
  /** Events. */
  readonly events: number;
  /** Two-sided confidence level of the limits. */
  readonly level: number;
};

export type ProofOutcome = 'passed' | 'failed' | 'notTested' | 'notFitted';

export type ProofPointDefinition = {
  /** Id of the point. */
  readonly id: string;
  /** What it belongs to. */
  readonly kind: ProofPointKind;
  /** In words. */
  readonly title: string;
  /** When it is passed. */
  readonly passWhen: string;
  /** Due only after this work; null: always. */
  readonly dueAfter: RefitOccasion | null;
};

export type ProofPointDefinitionList = {
  /** Points. */
  readonly items: readonly ProofPointDefinition[];
};

export type ProofPointEntry = {
  /** When it happened; null: before the shop knew the vehicle. */
  readonly happenedAt: string | null;
  /** The job it belongs to; null: none. */
  readonly jobId: string | null;
  /** which case this is */
  readonly kind: 'proofPoint';
  /** A point of the proof was tested. */
  readonly record: ProofPointResponse;
  /** With `corrections=all`: the other revisions of the record, oldest first, later ones than the moment asked about as well. Empty otherwise. */
  readonly otherRevisions: readonly ProofPointResponse[];
};

/** Values may be added; accept unknown ones in answers. */
export type ProofPointKind = 'linkageAndPedal' | 'visual' | 'refit' | 'roadTest' | (string & {});

export type ProofPointResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** Point by id of GET /v1/proof-points. */
  readonly point: string;
  /** Result. A point not driven is "notTested", never "passed". */
  readonly outcome: ProofOutcome;
  /** When. */
  readonly testedAt: string;
  /** Who tested. */
  readonly testedBy: string;
  /** Why it was not tested. */
  readonly notTestedBecause: string | null;
  /** When it will be looked at again. */
  readonly recheckOn: string | null;
  /** What was seen: speeds, settling time. */
  readonly note: string | null;
  /** The job. */
  readonly jobId: string;
};

export type ProofResponse = {
  /** What was tested; the latest of each point counts. */
  readonly points: readonly ProofPointResponse[];
  /** Points this job wants before release. */
  readonly wanted: readonly string[];
  /** Points still missing. */
  readonly missing: readonly MissingProofResponse[];
};

export type ProportionDifferenceRequest = {
  /** First group. */
  readonly first: BinomialCount;
  /** Second group, of other units. */
  readonly second: BinomialCount;
  /** Two-sided confidence level, between 0 and 1. */
  readonly level?: number;
};

export type ProportionDifferenceResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** The difference, or why there is none. */
  readonly result: EstimatedProportionDifference | CalculationNeedsMore;
};

export type ProportionIntervalMethod = 'wilson' | 'clopperPearson' | 'jeffreys' | 'modifiedJeffreys';

export type ProportionRequest = {
  /** Successes. */
  readonly successes: number;
  /** Trials. */
  readonly trials: number;
  /** Which interval. */
  readonly interval?: ProportionIntervalMethod;
  /** Two-sided confidence level, between 0 and 1. */
  readonly level?: number;
};

export type ProportionResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** The share, or why there is none. */
  readonly result: EstimatedProportion | CalculationNeedsMore;
};

export type Proportions = {
  /** which case this is */
  readonly kind: 'proportions';
  /** Successes out of trials of each place (p chart). */
  readonly samples: readonly BinomialCount[];
};

export type ProposalProbability = {
  /** That a person would confirm it. */
  readonly value: number;
  /** How sure that is. */
  readonly interval: Interval;
  /** Prior mean: the likeness; judgement. */
  readonly priorMean: number;
  /** Settled proposals that the prior is worth; judgement. */
  readonly priorWeight: number;
  /** Proposals of the same ground that the shop had confirmed. */
  readonly confirmed: number;
  /** Proposals of the same ground that the shop had refused. */
  readonly refused: number;
};

export type ProposeEstimateRequest = {
  /** Id chosen by the client. */
  readonly id?: string;
  /** Lines. */
  readonly lines: readonly EstimateLineEntry[];
  /** Amount not to be exceeded without new consent; null: the total. */
  readonly ceilingAmount: string | null;
};

export type ProposedOrder = {
  /** which case this is */
  readonly kind: 'proposed';
  /** By the offer with the cheapest piece in the currency of the shop; of equal ones the quicker. */
  readonly best: OfferProposal;
  /** By the other offers. */
  readonly others: readonly OfferProposal[];
};

export type ProtectedPurpose = 'movedByOthers' | 'vacuumAtPort' | 'afterOverhaul' | 'toSetSwitch' | 'toSetIdle';

export type PublishedCase = {
  /** Id of the case. */
  readonly id: string;
  /** What it is about. */
  readonly title: string;
  /** Where it stands. */
  readonly source: string;
  /** Where the expected figures were seen: in the source, by another library, remembered, or worked out by hand. */
  readonly provenance: readonly CaseProvenance[];
  /** The input in words. */
  readonly input: string;
  /** Whether every figure was reproduced at this request. */
  readonly isReproduced: boolean;
  /** Its figures, computed anew. */
  readonly figures: readonly CaseFigure[];
};

/** Values may be added; accept unknown ones in answers. */
export type QuantityKind = 'length' | 'distance' | 'gaugePressure' | 'absolutePressure' | 'vacuum' | 'mass' | 'force' | 'torque' | 'resistance' | 'voltage' | 'current' | 'electricCharge' | 'rotationalSpeed' | 'angle' | 'ratio' | 'volumeFraction' | 'temperature' | 'temperatureDifference' | 'volume' | 'fuelConsumption' | 'speed' | 'duration' | 'count' | (string & {});

export type QuantityKindList = {
  /** Kinds of quantity with their units. */
  readonly items: readonly QuantityKindUnits[];
};

export type QuantityKindUnits = {
  /** The kind. */
  readonly kind: QuantityKind;
  /** Unit in which values are compared. */
  readonly canonicalUnit: UnitCode;
  /** Units a value may be entered in; units of another kind are refused. */
  readonly units: readonly UnitCode[];
  /** Lowest value that can exist, in the canonical unit; null where there is none. */
  readonly lowest: string | null;
};

export type RateDemand = {
  /** which case this is */
  readonly kind: 'rate';
  /** Pieces a day, Poisson. */
  readonly perDay: number;
};

export type RateDimension = 'symptom' | 'symptomFamily' | 'action' | 'partCondition' | 'supplier' | 'component' | 'customer' | 'fleet' | 'vehicleAge' | 'diagnosedBy' | 'fittedBy' | 'month' | 'quarter' | 'year';

export type RateNeedsMore = {
  /** which case this is */
  readonly kind: 'insufficientData';
  /** How many events were seen. */
  readonly events: number;
  /** How many could have had one. */
  readonly atRisk: number;
  /** How many at risk are needed before a rate is given. */
  readonly needed: number;
};

export type Rates = {
  /** which case this is */
  readonly kind: 'rates';
  /** Events over exposure of each place (u chart). */
  readonly samples: readonly EventCount[];
};

export type ReachedFirst = 'date' | 'distance';

export type ReachedHeight = {
  /** Height asked for. */
  readonly y: number;
  /** What is at the height. */
  readonly target: InverseTarget;
  /** Where, or why nothing is said. */
  readonly outcome: EstimatedInverse | SlopeNotSignificant;
};

export type ReadingClass = {
  /** Class of the bare value. */
  readonly name: string;
  /** Classes that are possible, highest first. */
  readonly possible: readonly string[];
};

export type ReadingDoubt = {
  /** Of one reading by repeats; averages out. */
  readonly repeat: string;
  /** Shared by repeats of one inspection: set-up, resolution. */
  readonly setUp: string;
  /** Of the instrument's bias, common to all its readings. */
  readonly bias: string;
};

export type ReadingEntry = {
  /** When it happened; null: before the shop knew the vehicle. */
  readonly happenedAt: string | null;
  /** The job it belongs to; null: none. */
  readonly jobId: string | null;
  /** which case this is */
  readonly kind: 'reading';
  /** Who measured what, when, with which instrument. */
  readonly record: ReadingInHistory;
  /** With `corrections=all`: the other revisions of the record, oldest first, later ones than the moment asked about as well. Empty otherwise. */
  readonly otherRevisions: readonly ReadingInHistory[];
};

export type ReadingInHistory = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** Check of the sheet. */
  readonly checkId: string;
  /** As found: before anything was adjusted. As left: after. */
  readonly phase: ReadingPhase;
  /** Where on the vehicle; null where this kind of part has one place only. */
  readonly position: string | null;
  /** One of several like places of one part, e.g. cylinder-1 or left; null where there is one. */
  readonly place: string | null;
  /** The result, as the check asks for it. */
  readonly result: NumberResult | BladePairResult | YesNoResult | GradeResult;
  /** Instrument; null: its doubt is unknown. */
  readonly instrumentId: string | null;
  /** Person who measured. */
  readonly measuredBy: string;
  /** When it was taken. */
  readonly takenAt: string;
  /** Conditions as met, e.g. engineState: hotIdling, airConditioning: off. */
  readonly conditions: { readonly [name: string]: string };
  /** Remark. */
  readonly note: string | null;
  /** The inspection. */
  readonly inspectionId: string;
  /** What was measured. */
  readonly characteristic: string | null;
  /** The part it was taken on. */
  readonly fittedPartId: string | null;
  /** Value in the canonical unit. */
  readonly canonical: ComputedQuantity | null;
  /** Distance of the vehicle by its last reliable odometer entry, in km. */
  readonly distanceKm: string | null;
  /** False: it looked unlikely and waits to be confirmed; it counts for nothing yet. */
  readonly valueConfirmed: boolean;
  /** What was expected; set while the value waits to be confirmed. */
  readonly expectedRange: ExpectedRange | null;
  /** Taken back, e.g. read on the wrong van or part: it stays in the history and counts for nothing; the revision says why. */
  readonly withdrawn: boolean;
  /** Belongs into the series of its part: as found, confirmed, of something that wears or drifts. */
  readonly trendWorthy: boolean;
  /** Oddities; they refuse nothing. */
  readonly warnings: readonly WarningResponse[];
  /** What the readings of this check say now. On answers to writes only. */
  readonly judgement?: ReadingJudgement;
  /** The instrument, and whether it was in calibration on that day; null: none was named. */
  readonly instrument: InstrumentOfReading | null;
};

export type ReadingJudgement = {
  /** Verdicts, one for each limit. */
  readonly verdicts: readonly VerdictResponse[];
  /** Readings that are advised for this check and not there yet. */
  readonly advisedReadingsLeft: number;
};

export type ReadingLeftOut = {
  /** The reading. */
  readonly readingId: string;
  /** Why it is kept out of the trend. */
  readonly reason: NotTrendableReason;
};

export type ReadingPage = {
  /** The items, in the order of the list. */
  readonly items: readonly ReadingResponse[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type ReadingPhase = 'asFound' | 'asLeft';

export type ReadingResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** Check of the sheet. */
  readonly checkId: string;
  /** As found: before anything was adjusted. As left: after. */
  readonly phase: ReadingPhase;
  /** Where on the vehicle; null where this kind of part has one place only. */
  readonly position: string | null;
  /** One of several like places of one part, e.g. cylinder-1 or left; null where there is one. */
  readonly place: string | null;
  /** The result, as the check asks for it. */
  readonly result: NumberResult | BladePairResult | YesNoResult | GradeResult;
  /** Instrument; null: its doubt is unknown. */
  readonly instrumentId: string | null;
  /** Person who measured. */
  readonly measuredBy: string;
  /** When it was taken. */
  readonly takenAt: string;
  /** Conditions as met, e.g. engineState: hotIdling, airConditioning: off. */
  readonly conditions: { readonly [name: string]: string };
  /** Remark. */
  readonly note: string | null;
  /** The inspection. */
  readonly inspectionId: string;
  /** What was measured. */
  readonly characteristic: string | null;
  /** The part it was taken on. */
  readonly fittedPartId: string | null;
  /** Value in the canonical unit. */
  readonly canonical: ComputedQuantity | null;
  /** Distance of the vehicle by its last reliable odometer entry, in km. */
  readonly distanceKm: string | null;
  /** False: it looked unlikely and waits to be confirmed; it counts for nothing yet. */
  readonly valueConfirmed: boolean;
  /** What was expected; set while the value waits to be confirmed. */
  readonly expectedRange: ExpectedRange | null;
  /** Taken back, e.g. read on the wrong van or part: it stays in the history and counts for nothing; the revision says why. */
  readonly withdrawn: boolean;
  /** Belongs into the series of its part: as found, confirmed, of something that wears or drifts. */
  readonly trendWorthy: boolean;
  /** Oddities; they refuse nothing. */
  readonly warnings: readonly WarningResponse[];
  /** What the readings of this check say now. On answers to writes only. */
  readonly judgement?: ReadingJudgement;
};

export type ReadingRevisions = {
  /** Revisions, oldest first. */
  readonly items: readonly ReadingResponse[];
};

export type ReadingSetResponse = {
  /** The readings, in the order sent. */
  readonly readings: readonly ReadingResponse[];
  /** Verdicts of the checks they belong to. */
  readonly verdicts: readonly VerdictResponse[];
};

export type ReadingVerdicts = {
  /** Verdicts, one for each limit. */
  readonly verdicts: readonly VerdictResponse[];
  /** Readings that are advised for this check and not there yet. */
  readonly advisedReadingsLeft: number;
};

export type ReadingsNotWorthIt = {
  /** Expected saving by one more set of readings. */
  readonly expectedGain: Money;
  /** What it costs. */
  readonly cost: Money;
  /** Readings in the set. */
  readonly readings: number;
  /** The same in words. */
  readonly detail: string;
  /** which case this is */
  readonly kind: 'notWorthIt';
};

export type ReadingsValueUnknown = {
  /** which case this is */
  readonly kind: 'cannotBeSaid';
  /** Why. */
  readonly why: ReadingsValueUnknownReason;
  /** The same in words. */
  readonly detail: string;
};

/** Values may be added; accept unknown ones in answers. */
export type ReadingsValueUnknownReason = 'notAvailable' | 'labourRateMissing' | 'fewerThanTwoOptions' | (string & {});

export type ReadingsWorthIt = {
  /** Expected saving by one more set of readings. */
  readonly expectedGain: Money;
  /** What it costs. */
  readonly cost: Money;
  /** Readings in the set. */
  readonly readings: number;
  /** The same in words. */
  readonly detail: string;
  /** which case this is */
  readonly kind: 'worthIt';
};

/** Values may be added; accept unknown ones in answers. */
export type ReasonCode = 'cheapestInTheEnd' | 'runnerUp' | 'onlyOptionLeft' | 'onlyOptionPriced' | 'functionalCriterionPositive' | 'functionalCriterionNegative' | 'functionalCriterionNotDone' | 'functionalCriterionNotValid' | 'wearLikelyBeyondCriterion' | 'wearLikelyWithinCriterion' | 'wearOnEitherSideOfCriterion' | 'wearNotMeasured' | 'readingsContradict' | 'wearBeyondModel' | 'rateFromReadings' | 'rateFromPopulation' | 'criterionReachedWithinPlan' | 'criterionNotReachedWithinPlan' | 'earlierComebacks' | 'comebackRisk' | 'leadTimeAsDelivered' | 'leadTimeAsPromisedOnly' | 'waitOutweighsPrice' | 'coreDepositAtRisk' | 'judgementNumbersOnly' | 'safetyFinding' | 'furtherReadingsWorthTheirCost' | 'replaceAtNextVisit' | (string & {});

export type Recommended = {
  /** which case this is */
  readonly kind: 'recommended';
  /** The option that is meant. */
  readonly optionId: string;
  /** Whether the customer has still to consent to the amount. */
  readonly consentNeeded: boolean;
  /** The same in words. */
  readonly detail: string;
};

export type RecordArrivalInspectionRequest = {
  /** When it was looked at. */
  readonly inspectedAt: string;
  /** As what it was bought. */
  readonly condition: PartCondition;
  /** Serial of the piece. */
  readonly serial: string | null;
  /** Anything else worth knowing. */
  readonly note: string | null;
  /** What was read. */
  readonly readings: readonly ArrivalReadingEntry[];
  /** Id chosen by the client. */
  readonly id?: string;
  /** The part. */
  readonly partId: string;
  /** The version of the check sheet it follows: the one it is checked by on a vehicle. */
  readonly checkSheetId: string;
  /** The receipt it came in by. */
  readonly stockMoveId: string | null;
};

export type RecordCalibrationRequest = {
  /** Day it was calibrated. */
  readonly calibratedOn: string;
  /** Day the next one is due; null: no interval is set. */
  readonly dueOn: string | null;
  /** The instrument was found good, or was made good. */
  readonly passed: boolean;
  /** Number of the certificate. */
  readonly certificate: string | null;
  /** Remark. */
  readonly note: string | null;
  /** Id chosen by the client. */
  readonly id?: string;
};

export type RecordCheckSheetRequest = {
  /** Id chosen by the client. */
  readonly id?: string;
  /** The sheet: id, title, componentTypeIds and checks, optionally proofPointIds and precedence. Its edition is given by the server: the same id again makes the next version. Checked as a whole; findings point into it. */
  readonly checkSheet: { readonly [name: string]: unknown };
};

export type RecordComponentTypeRequest = {
  /** Id chosen by the client. */
  readonly id?: string;
  /** The kind of part: id, name, edition, positions, and characteristics with id, name, resultKind, quantityKind, canonicalUnit, wearDirection, trend, and optionally plausible, lowestPossible, doubt, readingsAdvised. Checked as a whole; findings point into it. */
  readonly componentType: { readonly [name: string]: unknown };
};

export type RecordConsentRequest = {
  /** The version of the estimate it answers. */
  readonly estimateId: string;
  /** The answer. */
  readonly answer: ConsentAnswer;
  /** When. */
  readonly answeredAt: string;
  /** How. */
  readonly way: ConsentWay;
  /** Recommended work the customer declined, so that it can be said again. */
  readonly declinedWork: string | null;
  /** Id chosen by the client. */
  readonly id?: string;
  /** Who answered. Personal data. */
  readonly name: string | null;
};

export type RecordCoreRequest = {
  /** Who wants it back. */
  readonly supplier: string;
  /** Kind of part. */
  readonly componentType: string;
  /** Day since which it is owed. */
  readonly owedSince: string;
  /** Last day to send it back; null: none was named. */
  readonly returnBy: string | null;
  /** Deposit that is paid back for it. */
  readonly deposit: Money | null;
  /** Serial of the old part. */
  readonly serial: string | null;
  /** Anything else worth knowing. */
  readonly note: string | null;
  /** Id chosen by the client. */
  readonly id?: string;
  /** Number of the shop’s list it belongs to. */
  readonly partId: string | null;
  /** The job it came off on: it stays until that job is released, or a reason is given. */
  readonly jobId: string | null;
};

export type RecordCoreStepRequest = {
  /** What was done. */
  readonly kind: CoreStepKind;
  /** On which day. */
  readonly on: string;
  /** Why it was refused, or why it went back before the road test. */
  readonly reason: string | null;
  /** What was credited. */
  readonly amount: Money | null;
};

export type RecordCustomerRequest = {
  /** A person, or an operator of a fleet. */
  readonly kind: CustomerKind;
  /** What a day off the road costs this customer, in the shop's currency; null: the shop's setting. */
  readonly downtimeCostPerDay: string | null;
  /** Distance this owner plans to keep a van for, in km; null: the shop's setting. */
  readonly planningDistanceKm: string | null;
  /** How to reach the customer. */
  readonly contact: Contact;
  /** Id chosen by the client. */
  readonly id?: string;
};

export type RecordDecisionRequest = {
  /** The option chosen, or `handOverUnrepaired`: the van goes back unrepaired and not for the road. An option that a guard removed cannot be chosen. */
  readonly chosen: DecisionChoice;
  /** When it was decided. */
  readonly decidedAt: string;
  /** Who decided. */
  readonly decidedBy: string;
  /** Why this was chosen; required when it differs from the recommendation. */
  readonly choiceReason: string | null;
  /** Id chosen by the client. */
  readonly id?: string;
};

export type RecordDeliveryRequest = {
  /** Day it was ordered. */
  readonly orderedOn: string;
  /** Day it was promised for; null: none was named. */
  readonly promisedOn: string | null;
  /** Day it arrived; null: not yet. */
  readonly arrivedOn: string | null;
  /** Pieces ordered; null: one. */
  readonly quantity?: number | null;
  /** Id chosen by the client. */
  readonly id?: string;
};

export type RecordFittedPartRequest = {
  /** Kind of part. */
  readonly componentType: string;
  /** Where on the vehicle, as the kind of part names its places. */
  readonly position: string;
  /** Condition when fitted; `original`: on the vehicle when the shop first saw it. */
  readonly condition: FittedCondition;
  /** When it was fitted; null: before the shop knew the vehicle. */
  readonly fittedAt: string | null;
  /** Distance of the vehicle then, in km. */
  readonly fittedKm: string | null;
  /** When it was removed; null: it is fitted. */
  readonly removedAt: string | null;
  /** Distance of the vehicle then, in km. */
  readonly removedKm: string | null;
  /** Serial number. */
  readonly serial: string | null;
  /** Batch it came from. */
  readonly batch: string | null;
  /** Who supplied it. */
  readonly supplier: string | null;
  /** Number printed on it. */
  readonly partNumber: string | null;
  /** Why it was removed. */
  readonly removalReason: string | null;
  /** Id chosen by the client. */
  readonly id?: string;
  /** The vehicle it is on. */
  readonly vehicleId: string;
};

export type RecordGaugeStudyRequest = {
  /** What was measured. */
  readonly characteristic: string;
  /** Kind of instrument it was measured with. */
  readonly instrumentKind: InstrumentKind;
  /** Day of the study. */
  readonly studiedOn: string;
  /** How it is laid out and worked. */
  readonly design: GaugeDesign;
  /** p-value above which the interaction of a crossed study is pooled; null: 0.25, or no crossed study. */
  readonly poolingLevel: number | null;
  /** Unit of the readings. */
  readonly unit: AnyUnit;
  /** Every reading, any order. */
  readonly measurements: readonly GaugeMeasurement[];
  /** False: it is kept and no longer used for the doubt about readings. */
  readonly inUse: boolean;
  /** Remark. */
  readonly note: string | null;
  /** Id chosen by the client. */
  readonly id?: string;
};

export type RecordInspectionRequest = {
  /** Id chosen by the client. */
  readonly id?: string;
  /** The vehicle. */
  readonly vehicleId: string;
  /** Job it belongs to; null: none. */
  readonly jobId: string | null;
  /** Version of the check sheet it follows. */
  readonly checkSheetId: string;
  /** When it was begun. */
  readonly startedAt: string;
  /** Technician. */
  readonly technicianId: string | null;
  /** Checks whose state before any work nobody can know any more; none where absent. */
  readonly asFoundNotTaken?: readonly CheckRemark[];
  /** Checks left out on purpose; none where absent. */
  readonly notDone?: readonly CheckRemark[];
  /** Remark. */
  readonly note?: string | null;
};

export type RecordInstrumentRequest = {
  /** What is known about its error; unknown: its readings are compared at face value only. */
  readonly errorModel: MaximumPermissibleError | PercentOfReadingPlusDigits | AccuracyClassOfSpan | BladeSet | ExpandedUncertainty | UnknownError;
  /** Smallest step that can be read; null: not known. */
  readonly resolution: AnyQuantity | null;
  /** What it is. */
  readonly kind: InstrumentKind;
  /** Name in the shop. */
  readonly name: string;
  /** Serial number. */
  readonly serial: string | null;
  /** Day it was taken out of use. */
  readonly retiredOn: string | null;
  /** Id chosen by the client. */
  readonly id?: string;
};

export type RecordJobEventRequest = {
  /** What happened to the job. */
  readonly kind: JobEventKind;
  /** When. */
  readonly happenedAt: string;
  /** Remark, e.g. which part is awaited. */
  readonly note: string | null;
  /** Id chosen by the client. */
  readonly id?: string;
};

export type RecordLimitRequest = {
  /** Id chosen by the client. */
  readonly id?: string;
  /** The whole limit, with the members of Limit. The id of a shipped limit with `judging: allowed` confirms that one for judging. Checked as a whole; findings point into it. */
  readonly limit: { readonly [name: string]: unknown };
};

export type RecordOdometerEntryRequest = {
  /** Digits as displayed, with a point before tenths. */
  readonly shown: string;
  /** Unit of the display (UCUM). */
  readonly unit: OdometerUnit;
  /** When it was read. */
  readonly readAt: string;
  /** Who read it, where that is known. */
  readonly readBy?: string | null;
  /** Remark. */
  readonly note?: string | null;
  /** Id chosen by the client. */
  readonly id?: string;
};

export type RecordOfferRequest = {
  /** Kind of part offered. */
  readonly componentType: string;
  /** Condition, as it must be declared. `repairedOwnPart`: what is needed to repair the part of the vehicle itself, such as bushes. */
  readonly condition: PartCondition;
  /** Who offers it. */
  readonly supplier: string;
  /** Number of the part. */
  readonly partNumber: string | null;
  /** Price; null: not quoted, which is never taken for free. */
  readonly price: Money | null;
  /** Deposit held until the old part is accepted, in the currency of the price; null: none. */
  readonly coreDeposit: Money | null;
  /** Days from order to arrival as promised; 0: it is on the shelf; null: nothing was promised. */
  readonly promisedLeadDays: number | null;
  /** Months of warranty on the part; null: none. */
  readonly warrantyMonths: number | null;
  /** Last day it holds; null: until further notice. */
  readonly validUntil: string | null;
  /** Number of the shop’s list that is offered; null: it goes by the number of the part. */
  readonly partId?: string | null;
  /** Price of a piece from a number of pieces on; null: one price for any number. */
  readonly priceBreaks?: readonly PriceBreak[] | null;
  /** Kilometres of warranty on the part; null: not bound by distance. */
  readonly warrantyKm?: string | null;
  /** Days after arrival within which the old part has to be back; null: none were named. */
  readonly coreReturnDays?: number | null;
  /** Id chosen by the client. */
  readonly id?: string;
};

export type RecordPartRequest = {
  /** Kind of part. */
  readonly componentType: string;
  /** Number under which it is ordered; once for a kind of part. */
  readonly partNumber: string;
  /** What it is, in words. */
  readonly title: string;
  /** Applications it fits, in the words that the vehicles of the shop carry; empty: it fits every vehicle with such a part. */
  readonly applications: readonly string[];
  /** The part that took its place; null: none. */
  readonly supersededById: string | null;
  /** Parts that fit the same; said of one of two it holds for both. */
  readonly interchangesWith: readonly string[];
  /** What else is ordered with it, such as a gasket. */
  readonly alsoOrder: readonly string[];
  /** Anything else worth knowing. */
  readonly note: string | null;
  /** Id chosen by the client. */
  readonly id?: string;
};

export type RecordProofPointRequest = {
  /** Point by id of GET /v1/proof-points. */
  readonly point: string;
  /** Result. A point not driven is "notTested", never "passed". */
  readonly outcome: ProofOutcome;
  /** When. */
  readonly testedAt: string;
  /** Who tested. */
  readonly testedBy: string;
  /** Why it was not tested. */
  readonly notTestedBecause: string | null;
  /** When it will be looked at again. */
  readonly recheckOn: string | null;
  /** What was seen: speeds, settling time. */
  readonly note: string | null;
  /** Id chosen by the client. */
  readonly id?: string;
};

export type RecordReadingRequest = {
  /** Check of the sheet. */
  readonly checkId: string;
  /** As found: before anything was adjusted. As left: after. */
  readonly phase: ReadingPhase;
  /** Where on the vehicle; null where this kind of part has one place only. */
  readonly position: string | null;
  /** One of several like places of one part, e.g. cylinder-1 or left; null where there is one. */
  readonly place: string | null;
  /** The result, as the check asks for it. */
  readonly result: NumberResult | BladePairResult | YesNoResult | GradeResult;
  /** Instrument; null: its doubt is unknown. */
  readonly instrumentId: string | null;
  /** Person who measured; the caller where absent. */
  readonly measuredBy?: string;
  /** When it was taken. */
  readonly takenAt: string;
  /** Conditions as met, e.g. engineState: hotIdling, airConditioning: off. */
  readonly conditions: { readonly [name: string]: string };
  /** Remark. */
  readonly note: string | null;
  /** Id chosen by the client, so that a telephone can send again safely. */
  readonly id?: string;
};

export type RecordReadingSetRequest = {
  /** All are recorded or none. */
  readonly readings: readonly RecordReadingRequest[];
};

export type RecordServicePlanItemRequest = {
  /** What is to be done. */
  readonly name: string;
  /** Kind of part it is done to; null: the vehicle as a whole. A part newly fitted counts as done. */
  readonly componentType: string | null;
  /** Work on such a part that counts as done. */
  readonly actions: readonly WorkAction[];
  /** Days after which it is due again; null: by distance only. */
  readonly everyDays: number | null;
  /** Distance in km after which it is due again; null: by days only. */
  readonly everyKm: string | null;
  /** The one vehicle it is for; null: several. */
  readonly vehicleId: string | null;
  /** Vehicles with this application, the shop's own word; null: all, or the one named. */
  readonly application: string | null;
  /** Whether it is still done; false: it is kept and never due. */
  readonly inUse: boolean;
  /** Id chosen by the client. */
  readonly id?: string;
};

export type RecordServiceRequest = {
  /** When it was done. */
  readonly doneAt: string;
  /** Distance in km then; null: told from the odometer entries before and after, where there are some. */
  readonly distanceKm: string | null;
  /** Note. */
  readonly note: string | null;
  /** Id chosen by the client. */
  readonly id?: string;
  /** The vehicle. */
  readonly vehicleId: string;
  /** The item of the plan that was done. */
  readonly planItemId: string;
};

export type RecordStockMoveRequest = {
  /** The part. */
  readonly partId: string;
  /** In which condition. */
  readonly condition: PartCondition;
  /** What happened. `receive`: it came in. `reserve`, `unreserve`: it is kept for a job, or no longer. `use`: it went into a job. `return`: it came back from a job. `remove`: it left for another reason. `count`: so many lie there. `reversal`: an earlier move was a mistake. */
  readonly kind: StockMoveKind;
  /** Pieces; for a count, how many lay there; for a reversal it is not looked at. */
  readonly quantity: number;
  /** When it happened. */
  readonly happenedAt: string;
  /** The job it is kept for, used in, or came back from. */
  readonly jobId?: string | null;
  /** The move that was recorded by mistake. */
  readonly reversesId?: string | null;
  /** Serial of the piece. */
  readonly serial?: string | null;
  /** Batch. */
  readonly batch?: string | null;
  /** From whom it came. */
  readonly supplier?: string | null;
  /** The offer it was ordered on; one with a deposit makes an old part owed for each piece. */
  readonly offerId?: string | null;
  /** The delivery it came by; it is recorded as arrived. */
  readonly deliveryId?: string | null;
  /** What a piece cost. */
  readonly unitCost?: Money | null;
  /** Where it lies. */
  readonly place?: string | null;
  /** Why, where that must be said. */
  readonly note?: string | null;
  /** Id chosen by the client. */
  readonly id?: string;
};

export type RecordUserRequest = {
  /** Name as shown on records. */
  readonly displayName: string;
  /** What the person does here. */
  readonly roles: readonly ShopRole[];
  /** For a fleet manager: the customer whose vehicles they see. Null for the shop's own people. */
  readonly customerId: string | null;
  /** Whether the person may still work here; keys of others are void. */
  readonly active: boolean;
  /** Id chosen by the client. */
  readonly id?: string;
};

export type RecordVehicleRequest = {
  /** Vehicle identification or chassis number as read; null when none is legible. Oddities warn and never refuse. */
  readonly chassisNumber: string | null;
  /** Registration plate as read. */
  readonly plate: string | null;
  /** What the shop calls it. */
  readonly label: string | null;
  /** Day of first use: it decides which limits apply. */
  readonly firstUsedOn: string | null;
  /** Which housing, switch window and so on apply: the shop's own word. A limit of another application is a wrong limit. */
  readonly application: string | null;
  /** What limits ask for, e.g. jurisdiction, category, grossMass, steeringType. */
  readonly attributes: { readonly [name: string]: string };
  /** Distance a year the owner expects, in km. */
  readonly expectedKmPerYear: string | null;
  /** Stretches of time in which the shop would have seen what happened to the vehicle; empty: since it was recorded. */
  readonly observedSpans: readonly ObservedSpan[];
  /** Day it left the road for good. */
  readonly retiredOn: string | null;
  /** Id chosen by the client (UUID version 7), so that the request can be sent again safely. */
  readonly id?: string;
  /** Customer who owns it. */
  readonly customerId: string;
  /** Owner since; now where absent. */
  readonly ownedFrom?: string;
};

export type RecordWarrantyClaimRequest = {
  /** On whom it is claimed. */
  readonly supplier: string;
  /** Which promise: part and labour are different ones, with different givers and limits. */
  readonly giver: WarrantyGiver;
  /** Day it is claimed. */
  readonly claimedOn: string;
  /** Day the fault showed. */
  readonly foundOn: string;
  /** Months of the promise; null: not bound by time. */
  readonly months: number | null;
  /** Kilometres of the promise; null: not bound by distance. */
  readonly km: string | null;
  /** What is claimed. */
  readonly amount: Money | null;
  /** What is wrong with it. */
  readonly description: string;
  /** Id chosen by the client. */
  readonly id?: string;
  /** Number of the shop’s list. */
  readonly partId: string | null;
  /** The part on the vehicle; its day of fitting and distance tell whether the promise still held. */
  readonly fittedPartId: string | null;
  /** The job on which the fault showed. */
  readonly jobId: string | null;
};

export type RecordWarrantyClaimStepRequest = {
  /** What was done. */
  readonly kind: ClaimStepKind;
  /** On which day. */
  readonly on: string;
  /** Why it was refused or withdrawn. */
  readonly reason: string | null;
  /** What was accepted or paid. */
  readonly amount: Money | null;
};

export type RecordWebhookEndpointRequest = {
  /** Where messages are sent: https, a name or address of the public internet, port 443 or 8443. */
  readonly url: string;
  /** What it is for. */
  readonly description: string;
  /** Types of events it is told of; null: all, also those to come. */
  readonly eventTypes: readonly string[] | null;
  /** Id chosen by the client. */
  readonly id?: string;
};

export type RecordWorkLineRequest = {
  /** What is done. */
  readonly action: WorkAction;
  /** Kind of part it is done to. */
  readonly componentType: string;
  /** Where on the vehicle. */
  readonly position: string;
  /** Planned, done or dropped. */
  readonly state: WorkLineState;
  /** Who does or did it. */
  readonly technicianId: string | null;
  /** When it was done. */
  readonly doneAt: string | null;
  /** Minutes worked. */
  readonly minutes: number | null;
  /** Description for the customer. */
  readonly description: string | null;
  /** An adjustment: from what. */
  readonly from: string | null;
  /** An adjustment: to what. */
  readonly to: string | null;
  /** What a protected item, such as the plate stop, is touched for. It is never used to set the switch or the idle: those two are refused. */
  readonly protectedPurpose: ProtectedPurpose | null;
  /** Why a protected item is touched. */
  readonly protectedReason: string | null;
  /** The part that went in. */
  readonly part: PartUsed | null;
  /** Id chosen by the client. */
  readonly id?: string;
};

export type RecurrenceDifferencePoint = {
  /** Age in days since first use. */
  readonly ageDays: number;
  /** Mean of the first fleet less that of the second, events per vehicle. */
  readonly difference: number;
  /** Standard error; null where a fleet is a single vehicle. */
  readonly standardError: number | null;
  /** Lower limit, pointwise. */
  readonly lower: number | null;
  /** Upper limit, pointwise. */
  readonly upper: number | null;
};

export type RecurrenceLimitForm = 'plain' | 'log';

export type RecurrenceLimits = {
  /** Lower limit. */
  readonly lower: number;
  /** Upper limit. */
  readonly upper: number;
};

export type RecurrenceNeedsMore = {
  /** which case this is */
  readonly kind: 'insufficientData';
  /** Observed vehicles needed. */
  readonly needed: number;
  /** Observed vehicles there are. */
  readonly got: number;
};

export type RecurrencePoint = {
  /** Age in days since first use. */
  readonly ageDays: number;
  /** Vehicles observed at that age; one that ends exactly then still counts. */
  readonly atRisk: number;
  /** Replacements at that age. */
  readonly events: number;
  /** Mean number of replacements per vehicle up to that age. */
  readonly mean: number;
  /** Robust standard error of the mean; null for a single vehicle. */
  readonly standardError: number | null;
  /** Mean -/+ z standard errors; can reach below zero. */
  readonly plainLimits: RecurrenceLimits | null;
  /** Limits on the log scale. */
  readonly logLimits: RecurrenceLimits | null;
};

export type RecurrenceTrend = {
  /** Laplace's test, each stretch of observation taken as a system of its own. */
  readonly laplace: LaplaceTrend | CalculationNeedsMore;
  /** Chi-square test of MIL-HDBK-189, each stretch of observation taken as a system of its own. */
  readonly powerLawTest: PowerLawTrend | EventsAtAgeZero | CalculationNeedsMore;
  /** Power-law process common to all vehicles. */
  readonly powerLaw: FleetPowerLaw | EventsAtAgeZero | NoPowerLaw | CalculationNeedsMore | CalculationNotConverged;
  /** How it was computed. */
  readonly method: CalculationMethod;
};

/** Values may be added; accept unknown ones in answers. */
export type RefitOccasion = 'connectorOpened' | 'housingRemoved' | 'coolantOpened' | 'cableTouched' | 'valuesLearned' | (string & {});

export type ReleaseEntry = {
  /** When it happened; null: before the shop knew the vehicle. */
  readonly happenedAt: string | null;
  /** The job it belongs to; null: none. */
  readonly jobId: string | null;
  /** which case this is */
  readonly kind: 'release';
  /** The van was released. */
  readonly record: ReleaseResponse;
  /** With `corrections=all`: the other revisions of the record, oldest first, later ones than the moment asked about as well. Empty otherwise. */
  readonly otherRevisions: readonly ReleaseResponse[];
};

export type ReleaseJobRequest = {
  /** Id chosen by the client. */
  readonly id?: string;
  /** When. */
  readonly releasedAt: string;
  /** Who signs. */
  readonly releasedBy: string;
  /** The signed statement. */
  readonly statement: string;
};

export type ReleaseResponse = {
  /** Id chosen by the client. */
  readonly id?: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** When. */
  readonly releasedAt: string;
  /** Who signs. */
  readonly releasedBy: string;
  /** The signed statement. */
  readonly statement: string;
  /** The job. */
  readonly jobId: string;
  /** Days the job is watched for comebacks. */
  readonly windowDays: number;
  /** Distance it is watched for, in km; whichever is reached first. */
  readonly windowKm: string;
  /** Distance of the vehicle at release, in km; null where it cannot be relied on. */
  readonly distanceKm: string | null;
};

export type ReliabilityClass = {
  /** Predicted chances from here. */
  readonly from: number;
  /** To there. */
  readonly to: number;
  /** Decisions. */
  readonly decisions: number;
  /** Came back. */
  readonly comebacks: number;
  /** Mean predicted chance; null in an empty class. */
  readonly meanPredicted: number | null;
  /** Share that came back; null in an empty class. */
  readonly observed: number | null;
  /** Interval of that share. */
  readonly interval: Interval | null;
  /** How the prediction stands to the interval. */
  readonly finding: ReliabilityFinding | null;
};

/** Values may be added; accept unknown ones in answers. */
export type ReliabilityFinding = 'withinInterval' | 'statedTooLow' | 'statedTooHigh' | (string & {});

export type ReliabilityTable = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Classes of predicted chance. */
  readonly classes: readonly ReliabilityClass[];
};

export type ReplaceNow = {
  /** Periods to hold. */
  readonly periods: number;
  /** Cost per period when held for 1, 2, ... periods. */
  readonly costs: readonly number[];
  /** Cost of each period alone. */
  readonly marginalCosts: readonly number[];
  /** which case this is */
  readonly kind: 'replaceNow';
};

export type ReplacementEntry = {
  /** When the part before was removed and this one fitted. */
  readonly at: string;
  /** Condition of the part that went in. */
  readonly condition: FittedCondition;
  /** Supplier. */
  readonly supplier: string | null;
};

export type ReplayResponse = {
  /** The assessment. */
  readonly assessmentId: string;
  /** Whether every reported digit is the one of then. */
  readonly isEqual: boolean;
  /** Whether the stored input still has the hash of then. */
  readonly isInputUnchanged: boolean;
  /** SHA-256 of the stored input. */
  readonly inputHash: string;
  /** Version of the model then. */
  readonly modelVersion: string;
  /** Version of the model that ran it again. */
  readonly replayedModelVersion: string;
  /** The answer as it comes out now. */
  readonly answer: AssessmentAnswer;
};

export type ReportedValue = {
  /** Decimal text. */
  readonly value: string;
  /** Unit (UCUM), a currency, or 1. */
  readonly unit: string;
};

/** Values may be added; accept unknown ones in answers. */
export type RequiredState = 'engineOff' | 'ignitionOff' | 'engineCold' | 'engineHot' | 'idling' | 'raisedIdle' | 'airConditioningOff' | 'electricalLoadsOff' | 'electricalLoadsOn' | 'radiatorFanHasCycled' | 'purgeHoseOffAndPlugged' | 'idleSwitchReadsClosed' | 'connectorUnplugged' | 'plateAtStop' | 'plateSlightlyOpen' | 'batteryRested' | 'vehicleRaised' | 'wheelOff' | 'wheelsStraightAhead' | 'fuelAndIgnitionDisabled' | 'cranking' | 'coolingSystemOpen' | 'driving' | (string & {});

export type RestingAssessment = {
  /** The vehicle. */
  readonly vehicleId: string;
  /** The job; null: outside one. */
  readonly jobId: string | null;
  /** The assessment. */
  readonly assessmentId: string;
  /** Readings by the instrument that it read. */
  readonly readingIds: readonly string[];
  /** When it was made. */
  readonly recordedAt: string;
};

export type RestingDecision = {
  /** The vehicle. */
  readonly vehicleId: string;
  /** The job; null: outside one. */
  readonly jobId: string | null;
  /** The assessment. */
  readonly assessmentId: string;
  /** Readings by the instrument that it read. */
  readonly readingIds: readonly string[];
  /** The decision. */
  readonly decisionId: string;
  /** What was chosen. */
  readonly chosen: DecisionChoice;
  /** When. */
  readonly decidedAt: string;
  /** Who decided. */
  readonly decidedBy: string;
};

export type ResultKind = 'number' | 'bladePair' | 'yesNo' | 'grade';

export type ReverseArrangements = {
  /** which case this is */
  readonly kind: 'tested';
  /** Gaps of which a later one is longer. */
  readonly reversals: number;
  /** The most there can be. */
  readonly greatest: number;
  /** Expected at a steady rate. */
  readonly expected: number;
  /** Standard normal at a steady rate. */
  readonly statistic: number;
};

export type RiseWithinUncertainty = {
  /** the points differ by less than their doubt, and no fleet lends strength */
  readonly kind: 'riseWithinUncertainty';
  /** Greatest difference of two points, in the unit. */
  readonly rise: number;
  /** Expanded uncertainty (k = 2) of that difference, in the unit. */
  readonly expandedUncertainty: number;
};

export type RotateApiKeyRequest = {
  /** Minutes for which the earlier key works beside its successor; 0 ends it at once. */
  readonly overlapMinutes: number;
  /** When the successor ends by itself; null: when it is revoked. */
  readonly expiresAt: string | null;
};

export type RuleCosts = {
  /** Stable code. */
  readonly rule: string;
  /** In words. */
  readonly title: string;
  /** Decisions in which it could be priced. */
  readonly decisions: number;
  /** Mean expected cost by the model of then; null without a decision. */
  readonly meanExpectedCost: Money | null;
  /** Rule less chosen, decision by decision. */
  readonly dearerThanChosen: CostDifference | TooFewDecisions;
  /** Decisions in which it would have done the same: only there its outcome was seen. */
  readonly sameAsChosen: number;
  /** Decisions in which a guard or a missing price turned it to the cheapest option left. */
  readonly turnedAside: number;
};

export type RunToFailure = {
  /** no finite age is cheaper */
  readonly kind: 'runToFailure';
  /** Why. */
  readonly reason: RunToFailureReason;
  /** Cost per unit of age when run to failure. */
  readonly costRate: number;
  /** Mean life, in the unit. */
  readonly meanLife: number;
};

export type RunToFailureReason = 'failureCostsNoMore' | 'hazardDoesNotRiseEnough' | 'optimumBeyondAnyLife';

export type RunningBasis = 'ownYears' | 'stated';

export type SampleQuantile = {
  /** Share of the values at or below. */
  readonly probability: number;
  /** Quantile, in the unit. */
  readonly quantile: number;
};

export type SampleSummaryRequest = {
  /** Unit of the values. */
  readonly unit?: AnyUnit;
  /** Values, in any order. */
  readonly values: readonly number[];
  /** Shares whose quantiles are asked for. */
  readonly probabilities?: readonly number[];
  /** Two-sided confidence level, between 0 and 1. */
  readonly level?: number;
};

export type SampleSummaryResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** Unit of the values. */
  readonly unit: AnyUnit;
  /** The values in short, or why there is nothing to say. */
  readonly result: EstimatedSummary | CalculationNeedsMore;
};

export type ScatterSource = 'estimated' | 'known';

export type SeriesDemand = {
  /** which case this is */
  readonly kind: 'series';
  /** Pieces used in each period, in order. */
  readonly pieces: readonly number[];
  /** Days of a period. */
  readonly periodDays: number;
  /** Weight of the latest demand. */
  readonly smoothing: number;
  /** Croston’s forecast, or the one without its bias. */
  readonly form: IntermittentMethod;
};

export type ServiceAim = {
  /** which case this is */
  readonly kind: 'service';
  /** What is promised. */
  readonly measure: StockServiceMeasure;
  /** The service wanted. */
  readonly target: number;
};

export type ServiceMeasure = 'cycleService' | 'readyRate';

export type ServicePlanItemPage = {
  /** The items, in the order of the list. */
  readonly items: readonly ServicePlanItemResponse[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type ServicePlanItemResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** What is to be done. */
  readonly name: string;
  /** Kind of part it is done to; null: the vehicle as a whole. A part newly fitted counts as done. */
  readonly componentType: string | null;
  /** Work on such a part that counts as done. */
  readonly actions: readonly WorkAction[];
  /** Days after which it is due again; null: by distance only. */
  readonly everyDays: number | null;
  /** Distance in km after which it is due again; null: by days only. */
  readonly everyKm: string | null;
  /** The one vehicle it is for; null: several. */
  readonly vehicleId: string | null;
  /** Vehicles with this application, the shop's own word; null: all, or the one named. */
  readonly application: string | null;
  /** Whether it is still done; false: it is kept and never due. */
  readonly inUse: boolean;
};

export type ServicePlanItemRevisions = {
  /** Every revision, oldest first. */
  readonly items: readonly ServicePlanItemResponse[];
};

export type ServiceRecordPage = {
  /** The items, in the order of the list. */
  readonly items: readonly ServiceRecordResponse[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type ServiceRecordResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** When it was done. */
  readonly doneAt: string;
  /** Distance in km then; null: told from the odometer entries before and after, where there are some. */
  readonly distanceKm: string | null;
  /** Note. */
  readonly note: string | null;
  /** The vehicle. */
  readonly vehicleId: string;
  /** The item of the plan that was done. */
  readonly planItemId: string;
};

export type ServiceRecordRevisions = {
  /** Every revision, oldest first. */
  readonly items: readonly ServiceRecordResponse[];
};

export type SettingsPatch = {
  /** Name of the shop. */
  readonly name?: string;
  /** IANA time zone of the shop. */
  readonly timeZone?: string;
  /** ISO 4217 code of the currency the shop calculates in. */
  readonly currency?: string;
  /** Full door rate of labour per hour, in the shop's currency. */
  readonly labourRatePerHour?: string;
  /** What a day off the road costs a customer who has not said otherwise, in the shop's currency. */
  readonly downtimeCostPerDay?: string;
  /** What any comeback costs before its repair: taking in, looking again, in the shop's currency. */
  readonly comebackHandling?: string;
  /** Days after release in which a comeback counts. */
  readonly comebackWindowDays?: number;
  /** Distance after release in which a comeback counts, in km. */
  readonly comebackWindowKm?: string;
  /** Families of symptoms whose window differs from the one above. A job is watched for the longest of its complaints. */
  readonly comebackFamilyWindows?: readonly FamilyWindow[];
  /** Distance an owner still wants from a van when nothing else is known, in km. */
  readonly planningDistanceKm?: string;
  /** No ranking of people, parts or suppliers under this number of closed jobs. */
  readonly rankingMinimumJobs?: number;
};

export type SettingsResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** Name of the shop. */
  readonly name: string;
  /** IANA time zone of the shop. */
  readonly timeZone: string;
  /** ISO 4217 code of the currency the shop calculates in. */
  readonly currency: string;
  /** Full door rate of labour per hour, in the shop's currency. */
  readonly labourRatePerHour: string;
  /** What a day off the road costs a customer who has not said otherwise, in the shop's currency. */
  readonly downtimeCostPerDay: string;
  /** What any comeback costs before its repair: taking in, looking again, in the shop's currency. */
  readonly comebackHandling: string;
  /** Days after release in which a comeback counts. */
  readonly comebackWindowDays: number;
  /** Distance after release in which a comeback counts, in km. */
  readonly comebackWindowKm: string;
  /** Families of symptoms whose window differs from the one above. A job is watched for the longest of its complaints. */
  readonly comebackFamilyWindows: readonly FamilyWindow[];
  /** Distance an owner still wants from a van when nothing else is known, in km. */
  readonly planningDistanceKm: string;
  /** No ranking of people, parts or suppliers under this number of closed jobs. */
  readonly rankingMinimumJobs: number;
};

export type SettleComebackRequest = {
  /** The word of a person. */
  readonly state: SettledComebackState;
  /** What a confirmed comeback is put down to; null: later. */
  readonly attribution: ComebackAttribution | null;
  /** Remark. */
  readonly note: string | null;
  /** Why the record is corrected; kept with the correction. */
  readonly reason: string;
};

export type SettledComebackState = 'confirmed' | 'refused';

export type Severity = 'notClassed' | 'advisory' | 'minor' | 'major' | 'dangerous';

export type ShopLimitResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** The limit. */
  readonly limit: Limit;
};

export type ShopLimitRevisions = {
  /** Revisions, oldest first. */
  readonly items: readonly ShopLimitResponse[];
};

export type ShopRole = 'owner' | 'desk' | 'technician' | 'parts' | 'fleetManager' | 'developer' | 'auditor';

export type ShrinkageForm = 'betaBinomial' | 'arcsine' | 'untransformed';

export type ShrinkageRequest = {
  /** How the shares are drawn together. */
  readonly form?: ShrinkageForm;
  /** Like groups. */
  readonly groups: readonly LikeGroup[];
  /** Two-sided confidence level, between 0 and 1. */
  readonly level?: number;
};

export type ShrinkageResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** Shares drawn together, or why they are not. */
  readonly result: BetaBinomial | JamesStein | NoExtraVariation | AllOrNothing | AllAlike | UnequalTrials | CalculationNeedsMore | CalculationNotConverged;
};

export type ShrunkenGroup = {
  /** Successes. */
  readonly successes: number;
  /** Trials. */
  readonly trials: number;
  /** Share drawn towards the others. */
  readonly mean: number;
  /** Equal-tailed interval of it. */
  readonly interval: CalculationLimits;
};

export type ShrunkenRate = {
  /** Rate drawn towards what the mix leads to expect. */
  readonly value: number;
  /** How sure that is. */
  readonly interval: Interval;
};

export type SlopeInterval = {
  /** Lower limit. */
  readonly lower: number;
  /** Upper limit. */
  readonly upper: number;
  /** Two-sided p-value of a slope of 0. */
  readonly pValue: number;
};

export type SlopeNotSignificant = {
  /** the slope may be 0 at this level */
  readonly kind: 'slopeNotSignificant';
  /** (t x standard error / slope)^2; null for a slope of 0. */
  readonly g: number | null;
};

export type StockLevel = {
  /** which case this is */
  readonly kind: 'found';
  /** Pieces on hand and on order that keep the promise. */
  readonly level: number;
  /** What is promised over one lead time. `cycleService`: chance that nobody waits, P(D ≤ S). `readyRate`: chance that a piece is left, P(D ≤ S − 1). `fillRate`: share of the pieces that is there, 1 − E(D − S)⁺/E(D). */
  readonly measure: StockServiceMeasure;
  /** The service wanted. */
  readonly target: number;
  /** The service at that level. */
  readonly service: number;
  /** The service with one piece less; null at level 0. */
  readonly serviceBelow: number | null;
  /** Pieces missing in a lead time on average, at that level. */
  readonly expectedShort: number;
};

export type StockLevelPreview = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Pieces asked for over the lead time. */
  readonly demand: DemandSummary;
  /** Chance of each number of pieces. */
  readonly points: readonly DemandPoint[];
  /** Forecast from a series; null without one. */
  readonly forecast: IntermittentPreview | null;
  /** The level for the service; null where costs were named. */
  readonly level: StockLevel | UnattainableLevel | null;
  /** The cheapest level; null where a service was named. */
  readonly cheapest: CheapestLevel | null;
};

export type StockLevelPreviewRequest = {
  /** What is asked for. */
  readonly demand: RateDemand | ChancesDemand | SeriesDemand;
  /** Lead times that occur, days, each as often as the others; empty with chances. */
  readonly leadTimeDays: readonly number[];
  /** A service to keep, or costs to keep low. */
  readonly aim: ServiceAim | CostAim;
};

export type StockLevelPreviewResponse = {
  /** The level, or what is missing. */
  readonly outcome: StockLevelPreview | CalculationNeedsMore;
};

export type StockLineList = {
  /** One line a part and condition, by kind and number. */
  readonly items: readonly StockLineResponse[];
};

export type StockLineResponse = {
  /** The part. */
  readonly partId: string;
  /** In which condition. */
  readonly condition: PartCondition;
  /** Pieces on the shelf. */
  readonly onHand: number;
  /** Of them, or of what was there before a count, kept for jobs. */
  readonly reserved: number;
  /** Pieces that are kept for nobody. */
  readonly available: number;
  /** Kind of part. */
  readonly componentType: string;
  /** Number of the part. */
  readonly partNumber: string;
  /** What it is. */
  readonly title: string;
  /** Moves on its ledger. */
  readonly moves: number;
  /** When the last move was recorded. */
  readonly lastMovedAt: string;
};

export type StockMoveKind = 'receive' | 'reserve' | 'unreserve' | 'use' | 'return' | 'remove' | 'count' | 'reversal';

export type StockMovePage = {
  /** The items, in the order of the list. */
  readonly items: readonly StockMoveResponse[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type StockMoveResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** The part. */
  readonly partId: string;
  /** In which condition. */
  readonly condition: PartCondition;
  /** What happened. `receive`: it came in. `reserve`, `unreserve`: it is kept for a job, or no longer. `use`: it went into a job. `return`: it came back from a job. `remove`: it left for another reason. `count`: so many lie there. `reversal`: an earlier move was a mistake. */
  readonly kind: StockMoveKind;
  /** Pieces; for a count, how many lay there; for a reversal it is not looked at. */
  readonly quantity: number;
  /** When it happened. */
  readonly happenedAt: string;
  /** The job it is kept for, used in, or came back from. */
  readonly jobId?: string | null;
  /** The move that was recorded by mistake. */
  readonly reversesId?: string | null;
  /** Serial of the piece. */
  readonly serial?: string | null;
  /** Batch. */
  readonly batch?: string | null;
  /** From whom it came. */
  readonly supplier?: string | null;
  /** The offer it was ordered on; one with a deposit makes an old part owed for each piece. */
  readonly offerId?: string | null;
  /** The delivery it came by; it is recorded as arrived. */
  readonly deliveryId?: string | null;
  /** What a piece cost. */
  readonly unitCost?: Money | null;
  /** Where it lies. */
  readonly place?: string | null;
  /** Why, where that must be said. */
  readonly note?: string | null;
  /** The work line that used it. */
  readonly workLineId: string | null;
  /** Place in the ledger of the part in that condition, from 1. */
  readonly position: number;
  /** Pieces more or fewer on the shelf. */
  readonly onHandChange: number;
  /** Pieces more or fewer kept for jobs. */
  readonly reservedChange: number;
  /** Pieces on the shelf after it. */
  readonly onHandAfter: number;
  /** Pieces kept for jobs after it. */
  readonly reservedAfter: number;
  /** What looked odd; it was recorded all the same. */
  readonly warnings: readonly WarningResponse[];
};

export type StockServiceMeasure = 'cycleService' | 'readyRate' | 'fillRate';

export type StoredGaugeStudyResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** What was measured. */
  readonly characteristic: string;
  /** Kind of instrument it was measured with. */
  readonly instrumentKind: InstrumentKind;
  /** Day of the study. */
  readonly studiedOn: string;
  /** How it is laid out and worked. */
  readonly design: GaugeDesign;
  /** p-value above which the interaction of a crossed study is pooled; null: 0.25, or no crossed study. */
  readonly poolingLevel: number | null;
  /** Unit of the readings. */
  readonly unit: AnyUnit;
  /** Every reading, any order. */
  readonly measurements: readonly GaugeMeasurement[];
  /** False: it is kept and no longer used for the doubt about readings. */
  readonly inUse: boolean;
  /** Remark. */
  readonly note: string | null;
  /** What the study says, or why it says nothing. */
  readonly result: CrossedGaugeStudy | AverageAndRangeStudy | NestedGaugeStudy | GaugeStudyNeedsMore | GaugeStudyNotBalanced;
  /** Repeatability that budgets take over; null where the study says nothing. */
  readonly repeatability: StudiedRepeatability | null;
  /** How it is worked. */
  readonly method: CalculationMethod;
  /** The doubt about new readings of this characteristic with this kind of instrument is taken from it: the latest study in use that says anything. */
  readonly feedsBudgets: boolean;
};

export type StraightLineRequest = {
  /** Unit of x. */
  readonly xUnit?: AnyUnit;
  /** Unit of y. */
  readonly yUnit?: AnyUnit;
  /** Where each point lies. */
  readonly x: readonly number[];
  /** Its height. */
  readonly y: readonly number[];
  /** Weights, each 1 / variance where the scatter is known; equal where left out. */
  readonly weights?: readonly number[];
  /** With an intercept, or through the origin. */
  readonly model?: LineModel;
  /** Scatter estimated from the residuals, or known through the weights. */
  readonly scatter?: ScatterSource;
  /** Two-sided confidence level, between 0 and 1. */
  readonly level?: number;
  /** Where the line is to be predicted. */
  readonly predictAt?: readonly number[];
  /** Heights whose x is asked for. */
  readonly reach?: readonly HeightToReach[];
};

export type StraightLineResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** Unit of x. */
  readonly xUnit: AnyUnit;
  /** Unit of y; slopes are in it per unit of x. */
  readonly yUnit: AnyUnit;
  /** The line, or why there is none. */
  readonly result: EstimatedLine | ExactlyDeterminedLine | CalculationNeedsMore;
};

export type StudiedRepeatability = {
  /** Standard deviation of single readings, in the unit of the study. */
  readonly standardDeviation: number;
  /** Its degrees of freedom; null: as good as known. */
  readonly degreesOfFreedom: number | null;
};

export type SummaryOption = {
  /** The option. */
  readonly optionId: string;
  /** What is done. */
  readonly action: OptionAction;
  /** In words. */
  readonly title: string;
  /** Whether it could be priced, so that it could be weighed. */
  readonly isPriced: boolean;
  /** Guards that take it out of the offer. */
  readonly removedBy: readonly GuardCode[];
  /** Chance of a comeback; null: not weighed. */
  readonly comeback: ComebackChance | null;
  /** Days until the part is here; null: no part is ordered, or not weighed. */
  readonly leadTime: ReportedValue | null;
};

export type SurvivalAtAge = {
  /** Age asked for, in the unit. */
  readonly age: number;
  /** Share surviving; null beyond the last age observed. */
  readonly survival: number | null;
  /** Lower limit of the share. */
  readonly lower: number | null;
  /** Upper limit of the share. */
  readonly upper: number | null;
};

export type SurvivalCurveRequest = {
  /** Unit of the ages. */
  readonly unit?: AnyUnit;
  /** Age of each unit at its event or at the end of its observation. */
  readonly ages: readonly number[];
  /** 1 where the age is that of an event, 0 where observation ended without one. */
  readonly events: readonly number[];
  /** Age from which each unit was observed; 0 where left out. */
  readonly entryAges?: readonly number[];
  /** How many like units each row stands for; 1 where left out. */
  readonly weights?: readonly number[];
  /** Form of the limits: plain, on the logarithm, or on the logarithm of the logarithm. */
  readonly limitForm?: CurveLimitForm;
  /** Two-sided confidence level, between 0 and 1. */
  readonly level?: number;
  /** Ages at which the curve is read off. */
  readonly atAges?: readonly number[];
  /** Shares failed whose age is asked for. */
  readonly failedShares?: readonly number[];
};

export type SurvivalCurveResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** Unit of the ages. */
  readonly unit: AnyUnit;
  /** The curve, or why there is none. */
  readonly result: EstimatedSurvival | NoFailures | CalculationNeedsMore;
};

export type SurvivalQuantile = {
  /** Share failed that was asked for. */
  readonly failedShare: number;
  /** Age by which so many have failed, in the unit; null where the curve does not get there. */
  readonly age: number | null;
  /** Lower limit of the age. */
  readonly lower: number | null;
  /** Upper limit of the age. */
  readonly upper: number | null;
};

export type SurvivorPoint = {
  /** Age from which on the share holds, in the unit of the answer. */
  readonly age: number;
  /** Where the age is known to an interval only, its beginning; else the age. */
  readonly fromAge: number;
  /** Share that lasts beyond the age. */
  readonly surviving: number;
  /** Standard error; null where it cannot be had. */
  readonly standardError: number | null;
  /** Lower limit, pointwise, on the log-log scale. */
  readonly lower: number | null;
  /** Upper limit. */
  readonly upper: number | null;
  /** Parts at risk just before; null for intervals. */
  readonly atRisk: number | null;
};

export type Symptom = {
  /** Id of the symptom. */
  readonly id: string;
  /** In words. */
  readonly name: string;
  /** Family of like symptoms. */
  readonly familyId: string;
  /** As a customer might say it. */
  readonly customerSays: readonly string[];
  /** What the desk asks. */
  readonly ask: readonly string[];
};

export type SymptomAnswer = 'present' | 'absent';

export type SymptomList = {
  /** Symptoms. */
  readonly items: readonly Symptom[];
};

export type TakeComplaintRequest = {
  /** The job it is dealt with in; null until it is. */
  readonly jobId: string | null;
  /** When the customer said it. */
  readonly receivedAt: string;
  /** The customer's own words, unedited. Personal data. */
  readonly words: string | null;
  /** Symptoms by id: present or absent. One that is not in here was not asked; a cause is never coded here. */
  readonly symptoms: { readonly [name: string]: SymptomAnswer };
  /** Circumstances by field of GET /v1/operating-conditions. */
  readonly conditions: { readonly [name: string]: string };
  /** Stored trouble codes. */
  readonly troubleCodes: readonly TroubleCode[];
  /** Whether the fault was reproduced; null: not tried yet. */
  readonly reproduced: boolean | null;
  /** Whether somebody has moved the stop screw before; null: not known. */
  readonly stopScrewMovedByOthers: boolean | null;
  /** Whether it is a driver's defect report. */
  readonly reportedByDriver: boolean;
  /** Kinds of part it points to, as the desk was told. */
  readonly components: readonly string[];
  /** Whether the customer says that it began after a repair. */
  readonly beganAfterRepair: boolean;
  /** Distance of the vehicle then, in km, where it can be relied on. */
  readonly distanceKm: string | null;
  /** Id chosen by the client. */
  readonly id?: string;
  /** The vehicle. */
  readonly vehicleId: string;
};

export type TeachingJobs = {
  /** Released jobs looked at. */
  readonly released: number;
  /** Jobs that taught: cause confirmed, window elapsed, van seen afterwards. */
  readonly taught: number;
  /** Of these, jobs whose comeback established another cause, counted for that one. */
  readonly taughtByComeback: number;
  /** Jobs that teach nothing, by reason. */
  readonly notTaught: readonly LeftOutOfLearning[];
};

export type Termination = 'time' | 'failure';

export type TestedFleets = {
  /** which case this is */
  readonly kind: 'tested';
  /** Difference at the last age to which both were observed, events per vehicle. */
  readonly difference: number;
  /** Robust standard error of the difference. */
  readonly standardError: number;
  /** Difference over its standard error. */
  readonly statistic: number;
  /** Two-sided p-value, normal. */
  readonly pValue: number;
  /** Two-sided, pointwise level of the limits. */
  readonly level: number;
  /** The difference along the ages. */
  readonly points: readonly RecurrenceDifferencePoint[];
};

export type TestedGroups = {
  /** which case this is */
  readonly kind: 'tested';
  /** Events seen in the first and in the second group. */
  readonly observed: readonly number[];
  /** Events to be expected in each were the hazards equal. */
  readonly expected: readonly number[];
  /** Variance of observed minus expected. */
  readonly variance: number;
  /** Chi-square with 1 degree of freedom. */
  readonly chiSquare: number;
  /** Its upper tail. */
  readonly pValue: number;
};

export type TheilSenRequest = {
  /** Unit of x. */
  readonly xUnit?: AnyUnit;
  /** Unit of y. */
  readonly yUnit?: AnyUnit;
  /** Where each point lies, such as its time. */
  readonly x: readonly number[];
  /** Its value. */
  readonly y: readonly number[];
  /** Two-sided confidence level, between 0 and 1. */
  readonly level?: number;
};

export type TheilSenResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** Unit of x. */
  readonly xUnit: AnyUnit;
  /** Unit of y; slopes are in it per unit of x. */
  readonly yUnit: AnyUnit;
  /** The slope, or why there is none. */
  readonly result: EstimatedTheilSen | CalculationNeedsMore;
};

export type TimesBetween = {
  /** which case this is */
  readonly kind: 'timesBetween';
  /** Time or distance between events. */
  readonly times: readonly number[];
};

export type ToOrder = {
  /** which case this is */
  readonly kind: 'toOrder';
  /** Days promised; null: none. */
  readonly promisedDays: string | null;
  /** What this supplier delivered before. */
  readonly delivered: readonly Delivered[];
};

export type TooFewDecisions = {
  /** which case this is */
  readonly kind: 'insufficientData';
  /** Settled decisions needed. */
  readonly needed: number;
  /** Settled decisions there are. */
  readonly got: number;
};

export type TransferVehicleRequest = {
  /** Id chosen by the client. */
  readonly id?: string;
  /** The new owner. */
  readonly customerId: string;
  /** From when on. */
  readonly fromAt: string;
};

export type TrendDirection = 'rising' | 'falling';

export type TrendKind = 'wear' | 'drift' | 'state';

export type TrendTestRequest = {
  /** Unit of the ages. */
  readonly unit?: AnyUnit;
  /** Systems, each observed from age 0. */
  readonly systems: readonly ObservedSystem[];
};

export type TrendTestResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** Unit of the ages. */
  readonly unit: AnyUnit;
  /** Laplace test. */
  readonly laplace: LaplaceTest | CalculationNeedsMore;
  /** Chi-square test of MIL-HDBK-189. */
  readonly chiSquare: ChiSquareTrendTest | ZeroAgeEvents | CalculationNeedsMore;
  /** Reverse arrangements of the first system. */
  readonly reverseArrangements: ReverseArrangements | CalculationNeedsMore;
};

export type TroubleCode = {
  /** Whose list the code is from: generic, or the name the shop uses for another scheme. */
  readonly scheme: string;
  /** The code as read. */
  readonly code: string;
};

export type TurnbullEstimateRequest = {
  /** Unit of the ages. */
  readonly unit?: AnyUnit;
  /** Last age at which each unit was known to be good; 0 where it never was. */
  readonly lower: readonly number[];
  /** First age at which it was known to have failed; null while it is still good. */
  readonly upper: readonly (number | null)[];
  /** How many like units each row stands for; 1 where left out. */
  readonly weights?: readonly number[];
  /** Form of the limits: plain, on the logarithm, or on the logarithm of the logarithm. */
  readonly limitForm?: CurveLimitForm;
  /** Two-sided confidence level, between 0 and 1. */
  readonly level?: number;
};

export type TurnbullEstimateResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** Unit of the ages. */
  readonly unit: AnyUnit;
  /** The curve, or why there is none. */
  readonly result: EstimatedTurnbull | CalculationNeedsMore | CalculationNotConverged;
};

export type UnattainableLevel = {
  /** which case this is */
  readonly kind: 'unattainable';
  /** No finite stock is certain to do. */
  readonly target: number;
};

export type UnattainableService = {
  /** no finite level keeps it */
  readonly kind: 'unattainable';
  /** Service aimed at. */
  readonly target: number;
};

export type UnbiasedMeanTime = {
  /** Mean time between events at the end, in the unit. */
  readonly estimate: number;
  /** Lower limit, in the unit. */
  readonly lower: number;
  /** Upper limit, in the unit; null where the approximation has none. */
  readonly upper: number | null;
};

export type UncertaintyBudgetRequest = {
  /** Unit of the result. */
  readonly unit?: AnyUnit;
  /** Independent contributions. */
  readonly components: readonly BudgetComponent[];
  /** Coverage of the expanded uncertainty. */
  readonly level?: number;
};

export type UncertaintyBudgetResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** Unit of the result. */
  readonly unit: AnyUnit;
  /** The budget. */
  readonly result: CombinedUncertainty;
};

export type UncertaintyContribution = {
  /** Where this part of the doubt comes from. */
  readonly source: UncertaintySource;
  /** Standard uncertainty in the unit of the value. */
  readonly standardUncertainty: number;
  /** Degrees of freedom; null: as good as known. */
  readonly degreesOfFreedom: number | null;
  /** Share of the variance. */
  readonly share: number;
};

/** Values may be added; accept unknown ones in answers. */
export type UncertaintySource = 'instrument' | 'resolution' | 'setUp' | 'repeatability' | 'other' | (string & {});

export type UncostedOption = {
  /** Id of the option. */
  readonly optionId: string;
  /** Why it has no cost. */
  readonly reason: CostRefusal;
  /** Members it was found in. */
  readonly members: readonly string[];
};

export type UnequalTrials = {
  /** these forms hold for equal numbers of trials */
  readonly kind: 'unequalTrials';
  /** Fewest trials of a group. */
  readonly fewest: number;
  /** Most trials of a group. */
  readonly most: number;
};

export type UnfittedVans = {
  /** Kind of part. */
  readonly componentType: string;
  /** Vans for whose application no number is recorded. */
  readonly vehicleIds: readonly string[];
};

export type UniformLife = {
  /** which case this is */
  readonly kind: 'uniform';
  /** Least life, in the unit. */
  readonly from: number;
  /** Greatest life, in the unit. */
  readonly to: number;
};

/** Values may be added; accept unknown ones in answers. */
export type UnitCode = 'um' | 'mm' | 'cm' | 'm' | 'km' | '[in_i]' | '[mil_i]' | '[ft_i]' | '[mi_i]' | 'Pa' | 'kPa' | 'MPa' | 'mbar' | 'bar' | '[psi]' | 'kgf/cm2' | '[in_i\'Hg]' | '[in_i\'Hg_32degF]' | '[in_i\'Hg_60degF]' | 'mm[Hg]' | '[in_i\'H2O]' | 'mm[H2O]' | 'g' | 'kg' | 't' | '[lb_av]' | 'N' | 'kN' | 'kgf' | '[lbf_av]' | 'N.m' | 'kgf.m' | '[lbf_av].[ft_i]' | '[lbf_av].[in_i]' | 'mOhm' | 'Ohm' | 'kOhm' | 'MOhm' | 'mV' | 'V' | 'mA' | 'A' | 'mA.h' | 'A.h' | '/min' | '{rev}/min' | 'deg' | '\'' | '1' | '%' | '[ppm]' | 'Cel' | '[degF]' | 'K' | 'mL' | 'L' | '[gal_us]' | '[gal_br]' | 'L/(100.km)' | 'km/L' | '[mi_i]/[gal_us]' | '[mi_i]/[gal_br]' | 'm/s' | 'km/h' | '[mi_i]/h' | 'ms' | 's' | 'min' | 'h' | 'd' | (string & {});

export type UnitConversionRequest = {
  /** What is to be converted. */
  readonly quantity: AnyQuantity;
  /** What it is a quantity of. */
  readonly quantityKind: QuantityKind;
  /** Unit it is wanted in. */
  readonly unit: AnyUnit;
};

export type UnitConversionResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** The same quantity. */
  readonly result: ConvertedQuantity;
};

export type UnitPoints = {
  /** Where each point of the unit lies. */
  readonly x: readonly number[];
  /** Its height. */
  readonly y: readonly number[];
};

export type UnknownError = {
  /** which case this is */
  readonly kind: 'unknown';
};

export type UnknownInstrumentUncertainty = {
  /** which case this is */
  readonly kind: 'unknown';
  /** Why it is not known. */
  readonly why: InstrumentUnknownReason;
};

export type UnobservedAges = {
  /** Age from which nobody was observed, in the unit. */
  readonly from: number;
  /** Age to which nobody was observed, in the unit. */
  readonly to: number;
};

export type UnpricedOption = {
  /** Id of the option. */
  readonly optionId: string;
  /** What is done. */
  readonly action: OptionAction;
  /** The same in words. */
  readonly title: string;
  /** Guards that take it out of the offer, whatever it costs. */
  readonly removedBy: readonly GuardCode[];
  /** which case this is */
  readonly kind: 'cannotBePriced';
  /** Why. */
  readonly problems: readonly PricingProblem[];
};

export type UnpricedOtherOffer = {
  /** which case this is */
  readonly kind: 'cannotBePriced';
  /** Id of the offer. */
  readonly offerId: string;
  /** Why. */
  readonly problems: readonly PricingProblem[];
};

export type UnrepairedHandoverEntry = {
  /** When it happened; null: before the shop knew the vehicle. */
  readonly happenedAt: string | null;
  /** The job it belongs to; null: none. */
  readonly jobId: string | null;
  /** which case this is */
  readonly kind: 'unrepairedHandover';
  /** The van was handed over unrepaired, not for the road. */
  readonly record: UnrepairedHandoverResponse;
  /** With `corrections=all`: the other revisions of the record, oldest first, later ones than the moment asked about as well. Empty otherwise. */
  readonly otherRevisions: readonly UnrepairedHandoverResponse[];
};

export type UnrepairedHandoverResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** The job. */
  readonly jobId: string;
  /** When. */
  readonly handedOverAt: string;
  /** Dangerous findings open at that moment. */
  readonly dangerousFindings: readonly string[];
  /** The warning that was given. */
  readonly warningGiven: string;
};

export type UsedLimit = {
  /** First day it holds; null: open. */
  readonly validFrom: string | null;
  /** First day it no longer holds; null: open. */
  readonly validTo: string | null;
  /** The text it was taken from. */
  readonly source: string;
  /** Where in that text. */
  readonly citation: string;
  /** Id of the limit. */
  readonly id: string;
  /** Where it comes from. */
  readonly origin: LimitOrigin;
  /** In the words of its source. */
  readonly asWritten: string;
};

export type UserPage = {
  /** The items, in the order of the list. */
  readonly items: readonly UserResponse[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type UserPatch = {
  /** Name as shown on records. */
  readonly displayName?: string;
  /** What the person does here. */
  readonly roles?: readonly ShopRole[];
  /** For a fleet manager: the customer whose vehicles they see. Null for the shop's own people. */
  readonly customerId?: string | null;
  /** Whether the person may still work here; keys of others are void. */
  readonly active?: boolean;
};

export type UserResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** Name as shown on records. */
  readonly displayName: string;
  /** What the person does here. */
  readonly roles: readonly ShopRole[];
  /** For a fleet manager: the customer whose vehicles they see. Null for the shop's own people. */
  readonly customerId: string | null;
  /** Whether the person may still work here; keys of others are void. */
  readonly active: boolean;
};

export type VanChance = {
  /** The van. */
  readonly vehicleId: string;
  /** What the shop calls it. */
  readonly label: string | null;
  /** Where the part sits. */
  readonly position: string;
  /** Chance that it needs one. */
  readonly chance: number;
  /** Why; the reasons are taken as independent. */
  readonly reasons: readonly NeedReason[];
};

export type VarianceSource = {
  /** Sum of squares. */
  readonly sumOfSquares: number;
  /** Degrees of freedom. */
  readonly degreesOfFreedom: number;
  /** Mean square. */
  readonly meanSquare: number;
};

export type VehicleCosts = {
  /** Labour: minutes of work done at the present rate. */
  readonly labour: Money;
  /** Parts that went in, at the price recorded. */
  readonly parts: Money;
  /** Days in the workshop at what a day off the road costs the owner. */
  readonly downtimeCost: Money;
  /** All of it. */
  readonly total: Money;
  /** Days in the workshop by reason. */
  readonly downtime: Downtime;
  /** Cost of a km, or why it is not known. */
  readonly perKm: CostPerKm | DistanceNotKnown;
  /** The vehicle. */
  readonly vehicle: FleetVehicle;
  /** Work lines done. */
  readonly lines: number;
  /** Hours of work. */
  readonly hours: number;
  /** Work lines whose minutes nobody recorded: they cost nothing here. */
  readonly linesWithoutMinutes: number;
  /** Parts that went in without a price: they cost nothing here. */
  readonly partsWithoutPrice: number;
  /** Parts priced in other currencies; they are in no sum. */
  readonly otherCurrencies: readonly Money[];
  /** Year by year. */
  readonly years: readonly YearOfCosts[];
};

export type VehicleCostsResponse = {
  /** Labour: minutes of work done at the present rate. */
  readonly labour: Money;
  /** Parts that went in, at the price recorded. */
  readonly parts: Money;
  /** Days in the workshop at what a day off the road costs the owner. */
  readonly downtimeCost: Money;
  /** All of it. */
  readonly total: Money;
  /** Days in the workshop by reason. */
  readonly downtime: Downtime;
  /** Cost of a km, or why it is not known. */
  readonly perKm: CostPerKm | DistanceNotKnown;
  /** The vehicle. */
  readonly vehicle: FleetVehicle;
  /** Work lines done. */
  readonly lines: number;
  /** Hours of work. */
  readonly hours: number;
  /** Work lines whose minutes nobody recorded: they cost nothing here. */
  readonly linesWithoutMinutes: number;
  /** Parts that went in without a price: they cost nothing here. */
  readonly partsWithoutPrice: number;
  /** Parts priced in other currencies; they are in no sum. */
  readonly otherCurrencies: readonly Money[];
  /** Year by year. */
  readonly years: readonly YearOfCosts[];
  /** The time and the rate. */
  readonly terms: CostTerms;
};

export type VehicleHistoryEntry = {
  /** Id chosen by the client. */
  readonly id?: string;
  /** What the fleet calls the vehicle. */
  readonly label: string;
  /** Chassis number as read. */
  readonly chassisNumber: string | null;
  /** Plate. */
  readonly plate: string | null;
  /** Day of first use; ages are counted from its midnight (UTC). */
  readonly firstUsedOn: string;
  /** From when on a replacement would have been seen. */
  readonly observedFrom: string;
  /** Until when. */
  readonly observedUntil: string;
  /** Replacements, any order; two on one day are two. */
  readonly replacements: readonly ReplacementEntry[];
};

export type VehicleHistoryResponse = {
  /** The vehicle. */
  readonly vehicleId: string;
  /** Everything is told as it was known at this moment. */
  readonly asOf: string;
  /** The vehicle itself. */
  readonly vehicle: VehicleInHistory;
  /** What happened, in the order in which it happened. */
  readonly entries: readonly (OwnershipEntry | OdometerSegmentEntry | OdometerEntryEntry | FittedPartEntry | ComplaintEntry | JobEntry | JobEventEntry | InspectionEntry | ReadingEntry | VerdictEntry | EstimateEntry | ConsentEntry | WorkLineEntry | ProofPointEntry | ReleaseEntry | UnrepairedHandoverEntry | ComebackEntry | AssessmentEntry | DecisionEntry)[];
  /** Names of the people of the shop who stand in it. Empty for a customer's user. */
  readonly people: readonly PersonInHistory[];
  /** Kinds of record that are too many to be told in full. Empty: nothing is left out. */
  readonly cut: readonly HistoryCut[];
  /** True: not every corrected record has its other revisions beside it. */
  readonly areRevisionsCut: boolean;
};

export type VehicleInHistory = {
  /** The vehicle as known then. */
  readonly record: VehicleResponse;
  /** With `corrections=all`: the other revisions of the record, oldest first, later ones than the moment asked about as well. Empty otherwise. */
  readonly otherRevisions: readonly VehicleResponse[];
};

export type VehicleMarket = 'northAmerica' | 'elsewhere';

export type VehicleNumberKind = 'vin' | 'chassisNumber';

export type VehicleNumberRequest = {
  /** Number as read. */
  readonly number: string;
  /** Market it was built for; a check digit is mandatory in North America only. */
  readonly market?: VehicleMarket;
};

export type VehicleNumberResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** The number without separators, in capitals. */
  readonly normalised: string;
  /** What it is. */
  readonly numberKind: VehicleNumberKind;
  /** Its check digit. */
  readonly checkDigit: CheckDigit | NotAVin;
  /** Its model year. */
  readonly modelYear: ModelYear | YearNotCoded;
  /** What looks odd; nothing is refused for it. */
  readonly warnings: readonly VehicleNumberWarning[];
};

export type VehicleNumberWarning = 'numberMissing' | 'illegibleCharacters' | 'unusualCharacters' | 'lettersNotUsed' | 'lengthNot17' | 'checkDigitDiffers';

export type VehicleOutlookPage = {
  /** The items, in the order of the list. */
  readonly items: readonly VehicleOutlookResponse[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
  /** Days back over which complaints and comebacks count. */
  readonly lookBackDays: number;
  /** How the order is made. */
  readonly method: string;
};

export type VehicleOutlookResponse = {
  /** The vehicle. */
  readonly vehicleId: string;
  /** What the shop calls it. */
  readonly label: string | null;
  /** Plate. */
  readonly plate: string | null;
  /** Place in the order, from 1. */
  readonly rank: number;
  /** Reasons in order of urgency. */
  readonly reasons: readonly Attention[];
  /** Days until the next service by the plan is expected to be due, below 0 when past. */
  readonly daysToService: number | null;
};

export type VehiclePage = {
  /** The items, in the order of the list. */
  readonly items: readonly VehicleResponse[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type VehicleResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** Vehicle identification or chassis number as read; null when none is legible. Oddities warn and never refuse. */
  readonly chassisNumber: string | null;
  /** Registration plate as read. */
  readonly plate: string | null;
  /** What the shop calls it. */
  readonly label: string | null;
  /** Day of first use: it decides which limits apply. */
  readonly firstUsedOn: string | null;
  /** Which housing, switch window and so on apply: the shop's own word. A limit of another application is a wrong limit. */
  readonly application: string | null;
  /** What limits ask for, e.g. jurisdiction, category, grossMass, steeringType. */
  readonly attributes: { readonly [name: string]: string };
  /** Distance a year the owner expects, in km. */
  readonly expectedKmPerYear: string | null;
  /** Stretches of time in which the shop would have seen what happened to the vehicle; empty: since it was recorded. */
  readonly observedSpans: readonly ObservedSpan[];
  /** Day it left the road for good. */
  readonly retiredOn: string | null;
  /** Its owner; null where none is known. On single vehicles only. */
  readonly owner?: OwnerResponse | null;
  /** Oddities noticed when it was written. */
  readonly warnings?: readonly WarningResponse[];
};

export type VehicleRevisions = {
  /** Revisions, oldest first. */
  readonly items: readonly VehicleResponse[];
};

export type VehicleWearResponse = {
  /** The vehicle. */
  readonly vehicleId: string;
  /** Its parts that are fitted. */
  readonly parts: readonly PartWearResponse[];
};

export type VerdictEntry = {
  /** When it happened; null: before the shop knew the vehicle. */
  readonly happenedAt: string | null;
  /** The job it belongs to; null: none. */
  readonly jobId: string | null;
  /** which case this is */
  readonly kind: 'verdict';
  /** What readings said against one limit, in its edition; stands at the last of its readings. */
  readonly record: VerdictResponse;
  /** With `corrections=all`: the other revisions of the record, oldest first, later ones than the moment asked about as well. Empty otherwise. */
  readonly otherRevisions: readonly VerdictResponse[];
};

export type VerdictKind = 'judged' | 'faceValue' | 'notJudged';

export type VerdictOutcome = 'inside' | 'outside' | 'undecided' | 'notJudged';

export type VerdictResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why nothing was judged; null where it was. */
  readonly reason: NotJudgedReason | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** The limit in the edition that was used. */
  readonly limit: UsedLimit;
  /** What they say. */
  readonly outcome: VerdictOutcome;
  /** judged: with the doubt counted in; faceValue: bare numbers compared, because the doubt is not known. */
  readonly basis: VerdictKind;
  /** Probability that the true value meets the limit; null where the rule is none of probability. */
  readonly probabilityInside: number | null;
  /** How bad it is to be outside. */
  readonly severity: Severity;
  /** What is missing or in the way. */
  readonly details: readonly string[];
  /** Mean of the readings, canonical unit. */
  readonly value: ComputedQuantity | null;
  /** Standard uncertainty of the mean, in its unit. */
  readonly standardUncertainty: number | null;
  /** Effective degrees of freedom; null: as good as known, or none. */
  readonly effectiveDegreesOfFreedom: number | null;
  /** What the doubt is made of. */
  readonly contributions: readonly UncertaintyContribution[];
  /** Gauge study the repeatability was taken from; null: the default of the kind of part, the repeats alone, or no number. */
  readonly gaugeStudyId: string | null;
  /** What is missing for the doubt to be known: instrument, resolution, setUp, repeatability. */
  readonly missing: readonly string[];
  /** Readings it rests on. */
  readonly count: number;
  /** Edges compared with. */
  readonly bounds: AppliedBounds | null;
  /** Outcome against the advisory criterion, where the limit has one. */
  readonly advisory: VerdictOutcome | null;
  /** Readings still needed to decide. */
  readonly furtherReadings: NoFurtherReadings | FurtherReadingsNeeded | NoNumberSettles;
  /** Conditions the limit names that nobody stated. */
  readonly unstatedConditions: readonly string[];
  /** What a pair of blades says. */
  readonly grade: BladePairGrade | null;
  /** Class of the number. */
  readonly readingClass: ReadingClass | null;
  /** Method. */
  readonly method: string | null;
  /** The verdict in words. */
  readonly words: readonly string[];
  /** The inspection. */
  readonly inspectionId: string;
  /** The check. */
  readonly checkId: string;
  /** Before or after work. */
  readonly phase: ReadingPhase;
  /** Where on the vehicle. */
  readonly position: string;
  /** The worst of several like places. */
  readonly place: string | null;
  /** It may change without this item being read again, or has to be repeated. */
  readonly provisional: boolean;
  /** Check whose functional answer outranks this number, whatever it says. */
  readonly outrankedBy: string | null;
  /** Readings it rests on. */
  readonly readingIds: readonly string[];
  /** Instruments that were not in calibration on the day. */
  readonly overdueInstrumentIds: readonly string[];
  /** What being outside means; null where it is not outside. */
  readonly outsideMeans: string | null;
  /** What to do then. */
  readonly whatToDo: string | null;
};

export type VerdictThresholds = {
  /** Inside from this probability on. */
  readonly inside: number;
  /** Outside up to this probability. */
  readonly outside: number;
};

export type WaldEstimate = {
  /** The estimate. */
  readonly estimate: number;
  /** Lower Wald limit. */
  readonly lower: number;
  /** Upper Wald limit. */
  readonly upper: number;
  /** Standard error on the scale on which the limits are symmetric (the logarithm; for a share the standardised deviate). */
  readonly standardError: number;
  /** Two-sided confidence level of the limits. */
  readonly level: number;
};

export type WarningResponse = {
  /** Stable code of the warning. */
  readonly code: string;
  /** JSON Pointer to what looks odd. */
  readonly pointer: string;
  /** The warning in words. */
  readonly detail: string;
};

export type WarrantyClaimPage = {
  /** The items, in the order of the list. */
  readonly items: readonly WarrantyClaimResponse[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type WarrantyClaimResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** On whom it is claimed. */
  readonly supplier: string;
  /** Which promise: part and labour are different ones, with different givers and limits. */
  readonly giver: WarrantyGiver;
  /** Day it is claimed. */
  readonly claimedOn: string;
  /** Day the fault showed. */
  readonly foundOn: string;
  /** Months of the promise; null: not bound by time. */
  readonly months: number | null;
  /** Kilometres of the promise; null: not bound by distance. */
  readonly km: string | null;
  /** What is claimed. */
  readonly amount: Money | null;
  /** What is wrong with it. */
  readonly description: string;
  /** Number of the shop’s list. */
  readonly partId: string | null;
  /** The part on the vehicle. */
  readonly fittedPartId: string | null;
  /** The job on which the fault showed. */
  readonly jobId: string | null;
  /** Where it stands. */
  readonly state: ClaimState;
  /** What may come next. */
  readonly next: readonly ClaimStepKind[];
  /** Whether the promise held when the fault showed, by the records of that day. */
  readonly cover: WarrantyCover;
  /** What was done, in order. */
  readonly steps: readonly WarrantyClaimStep[];
  /** What looked odd; it was recorded all the same. */
  readonly warnings: readonly WarningResponse[];
};

export type WarrantyClaimRevisions = {
  /** Every revision, oldest first. */
  readonly items: readonly WarrantyClaimResponse[];
};

export type WarrantyClaimStep = {
  /** What was done. */
  readonly kind: ClaimStepKind;
  /** On which day. */
  readonly on: string;
  /** Why it was refused or withdrawn. */
  readonly reason: string | null;
  /** What was accepted or paid. */
  readonly amount: Money | null;
};

export type WarrantyCover = 'covered' | 'endedByMonths' | 'endedByDistance' | 'unknown';

export type WarrantyGiver = 'part' | 'labour';

export type WatchOddity = {
  /** What looks odd about when vehicles were observed; nothing is refused for it. */
  readonly code: WatchWarning;
  /** The vehicles. */
  readonly vehicleIds: readonly string[];
};

/** Values may be added; accept unknown ones in answers. */
export type WatchWarning = 'spansOverlap' | 'spanBeforeFirstUse' | 'spanAfterRetirement' | (string & {});

export type WearChance = {
  /** which case this is */
  readonly kind: 'estimated';
  /** Probability that the limit is reached before then. */
  readonly probability: number;
  /** Distance from now that was asked about, km; null where a day was. */
  readonly withinKm: number | null;
  /** Day that was asked about; null where a distance was. */
  readonly until: string | null;
  /** Distance a year the day stands for; null where a distance was asked about. */
  readonly yearlyDistance: YearlyDistance | null;
};

export type WearDirection = 'up' | 'down' | 'none';

export type WearHandChecks = {
  /** Weighted least squares; an interval from it would cover too little. */
  readonly leastSquares: CheckedLine | ExactlyDeterminedLine | CalculationNeedsMore;
  /** Where that line meets the limit, km from now. */
  readonly leastSquaresToLimit: EstimatedInverse | SlopeNotSignificant | NoLine;
  /** Theil-Sen slope, unit per km. */
  readonly theilSen: EstimatedTheilSen | CalculationNeedsMore;
  /** Mann-Kendall test. */
  readonly mannKendall: EstimatedMannKendall | AllTied | CalculationNeedsMore;
};

export type WearLevel = {
  /** Level now, in the unit. */
  readonly value: number;
  /** Its standard uncertainty, in the unit. */
  readonly standardUncertainty: number;
};

export type WearLimit = {
  /** Id of the limit. */
  readonly limitId: string;
  /** Its value, in the unit of the series. */
  readonly value: number;
  /** Unit of the value. */
  readonly unit: AnyUnit;
  /** Where it comes from. */
  readonly origin: string;
  /** Its source in words. */
  readonly source: string;
};

export type WearNowBelief = {
  /** Mean. */
  readonly mean: ReportedValue;
  /** 5 % point. */
  readonly lower: ReportedValue;
  /** 95 % point. */
  readonly upper: ReportedValue;
};

/** Values may be added; accept unknown ones in answers. */
export type WearOmission = 'noReadings' | 'uncertaintyUnknown' | 'awaitingConfirmation' | (string & {});

export type WearOutlook = {
  /** The fitted part. */
  readonly fittedPartId: string;
  /** One of several like places of the part; null where there is only one. */
  readonly place: string | null;
  /** Id of the characteristic. */
  readonly characteristic: string;
  /** Unit of every level of the series. */
  readonly unit: AnyUnit;
  /** Which way it goes as the part wears. */
  readonly direction: TrendDirection;
  /** The limit distance is counted to; null where none applies. */
  readonly limit: WearLimit | null;
  /** How the trend is made. */
  readonly method: CalculationMethod;
  /** As-found readings behind the points. */
  readonly readings: number;
  /** Gauge studies the repeatability of the readings was taken from. */
  readonly gaugeStudyIds: readonly string[];
  /** Points, by distance. */
  readonly points: readonly WearPoint[];
  /** Readings that are kept out, with the reason. */
  readonly leftOut: readonly ReadingLeftOut[];
  /** The trend, or why there is none. */
  readonly trend: EstimatedWear | RiseWithinUncertainty | NoWearLimit | CalculationNeedsMore;
  /** Chance of reaching the limit before the distance or day asked about; null where none was. */
  readonly chance: WearChance | YearlyDistanceUnknown | NoTrend | null;
  /** The vehicle. */
  readonly vehicleId: string;
  /** What the shop calls it. */
  readonly label: string | null;
  /** Its plate. */
  readonly plate: string | null;
  /** Where on the vehicle the part is. */
  readonly position: string;
};

export type WearOutlookPage = {
  /** The items, in the order of the list. */
  readonly items: readonly WearOutlook[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
  /** The parts of the kind in the shop, whose strength is lent. */
  readonly fleet: FleetWear;
  /** Fitted parts that were left out because more than 4000 were asked about: the ones recorded first. */
  readonly partsLeftOut: number;
};

export type WearPoint = {
  /** Distance since fitting, km. */
  readonly km: number;
  /** Mean of the inspection's as-found readings by one instrument, in the unit. */
  readonly value: number;
  /** Its standard uncertainty without the bias of the instrument, in the unit. */
  readonly standardUncertainty: number;
  /** The instrument. */
  readonly instrumentId: string;
  /** Standard uncertainty of its bias, common to all its readings, in the unit. */
  readonly biasStandardUncertainty: number;
  /** The calibration of the instrument had run out, failed or never happened on that day, as known: the point is told so and used all the same. */
  readonly isInstrumentOverdue: boolean;
  /** By another instrument than most points of the series: its bias is a term of its own, so that the change does not look like wear. */
  readonly isOtherInstrument: boolean;
};

export type WearRate = {
  /** Lower limit. */
  readonly lower: number;
  /** Upper limit. */
  readonly upper: number;
  /** Wear, unit per 1000 km in the direction of wear. */
  readonly perThousandKm: number;
};

export type WearSeries = {
  /** The fitted part. */
  readonly fittedPartId: string;
  /** One of several like places of the part; null where there is only one. */
  readonly place: string | null;
  /** Id of the characteristic. */
  readonly characteristic: string;
  /** Unit of every level of the series. */
  readonly unit: AnyUnit;
  /** Which way it goes as the part wears. */
  readonly direction: TrendDirection;
  /** The limit distance is counted to; null where none applies. */
  readonly limit: WearLimit | null;
  /** How the trend is made. */
  readonly method: CalculationMethod;
  /** As-found readings behind the points. */
  readonly readings: number;
  /** Gauge studies the repeatability of the readings was taken from. */
  readonly gaugeStudyIds: readonly string[];
  /** Points, by distance. */
  readonly points: readonly WearPoint[];
  /** Readings that are kept out, with the reason. */
  readonly leftOut: readonly ReadingLeftOut[];
  /** The trend, or why there is none. */
  readonly trend: EstimatedWear | RiseWithinUncertainty | NoWearLimit | CalculationNeedsMore;
  /** Chance of reaching the limit before the distance or day asked about; null where none was. */
  readonly chance: WearChance | YearlyDistanceUnknown | NoTrend | null;
};

export type WebhookAttempt = {
  /** Its number, from 1; a number that is missing was begun and never concluded. */
  readonly number: number;
  /** When it was begun. */
  readonly startedAt: string;
  /** When its end was noted. */
  readonly endedAt: string;
  /** How it went. */
  readonly outcome: WebhookAttemptOutcome;
  /** HTTP status of the receiver; null where there was none. */
  readonly status: number | null;
};

/** Values may be added; accept unknown ones in answers. */
export type WebhookAttemptOutcome = 'accepted' | 'refused' | 'redirected' | 'gone' | 'timedOut' | 'notReached' | 'addressNotAllowed' | (string & {});

export type WebhookDeliveryDetail = {
  /** Id of the delivery. */
  readonly id: string;
  /** The endpoint. */
  readonly endpointId: string;
  /** Id of the event; it is the `webhook-id` of every attempt. */
  readonly eventId: string;
  /** What happened. */
  readonly eventType: string;
  /** The record it happened to. */
  readonly subject: string;
  /** `failed`: given up; `withdrawn`: the endpoint was paused or gone before. */
  readonly state: WebhookDeliveryState;
  /** Attempts that were begun. */
  readonly attempts: number;
  /** When it is tried next; null once it is settled. */
  readonly nextAttemptAt: string | null;
  /** When it was to be told first. */
  readonly recordedAt: string;
  /** When it was delivered, given up or withdrawn; null while it waits. */
  readonly settledAt: string | null;
  /** Every attempt that was concluded. */
  readonly log: readonly WebhookAttempt[];
};

export type WebhookDeliveryPage = {
  /** The items, in the order of the list. */
  readonly items: readonly WebhookDeliveryResponse[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type WebhookDeliveryResponse = {
  /** Id of the delivery. */
  readonly id: string;
  /** The endpoint. */
  readonly endpointId: string;
  /** Id of the event; it is the `webhook-id` of every attempt. */
  readonly eventId: string;
  /** What happened. */
  readonly eventType: string;
  /** The record it happened to. */
  readonly subject: string;
  /** `failed`: given up; `withdrawn`: the endpoint was paused or gone before. */
  readonly state: WebhookDeliveryState;
  /** Attempts that were begun. */
  readonly attempts: number;
  /** When it is tried next; null once it is settled. */
  readonly nextAttemptAt: string | null;
  /** When it was to be told first. */
  readonly recordedAt: string;
  /** When it was delivered, given up or withdrawn; null while it waits. */
  readonly settledAt: string | null;
};

export type WebhookDeliveryState = 'waiting' | 'delivered' | 'failed' | 'withdrawn';

export type WebhookEndpointPage = {
  /** The items, in the order of the list. */
  readonly items: readonly WebhookEndpointResponse[];
  /** Where the next page begins; null on the last page. */
  readonly nextCursor: string | null;
};

export type WebhookEndpointPatch = {
  /** Where messages are sent: https, a name or address of the public internet, port 443 or 8443. */
  readonly url?: string;
  /** What it is for. */
  readonly description?: string;
  /** Types of events it is told of; null: all, also those to come. */
  readonly eventTypes?: readonly string[] | null;
  /** `paused` takes back what still waits; `active` begins anew, also after `gone`. */
  readonly state?: ChosenEndpointState;
};

export type WebhookEndpointResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** Where messages are sent: https, a name or address of the public internet, port 443 or 8443. */
  readonly url: string;
  /** What it is for. */
  readonly description: string;
  /** Types of events it is told of; null: all, also those to come. */
  readonly eventTypes: readonly string[] | null;
  /** Whether it is told of things; `gone`: it answered 410. */
  readonly state: WebhookEndpointState;
};

/** Values may be added; accept unknown ones in answers. */
export type WebhookEndpointState = 'active' | 'paused' | 'gone' | (string & {});

export type WeibayesRequest = {
  /** Unit of the ages. */
  readonly unit?: AnyUnit;
  /** Age of each unit at its event or at the end of its observation. */
  readonly ages: readonly number[];
  /** 1 where the age is that of an event. */
  readonly events: readonly number[];
  /** How many like units each row stands for; 1 where left out. */
  readonly weights?: readonly number[];
  /** Weibull shape, known from before. */
  readonly shape: number;
  /** Two-sided confidence level, between 0 and 1. */
  readonly level?: number;
};

export type WeibayesResponse = {
  /** How it was computed. */
  readonly method: CalculationMethod;
  /** Rows, trials or events the result rests on; 0 where nothing was observed. */
  readonly observations: number;
  /** Unit of the ages. */
  readonly unit: AnyUnit;
  /** The life, a lower limit, or why there is neither. */
  readonly result: EstimatedWeibayes | LifeAbove | CalculationNeedsMore;
};

export type WeibullLife = {
  /** which case this is */
  readonly kind: 'weibull';
  /** Shape. */
  readonly shape: number;
  /** Characteristic life, in the unit. */
  readonly scale: number;
};

export type WeibullShape = {
  /** The estimate. */
  readonly estimate: number;
  /** Lower Wald limit. */
  readonly lower: number;
  /** Upper Wald limit. */
  readonly upper: number;
  /** Standard error on the scale on which the limits are symmetric (the logarithm; for a share the standardised deviate). */
  readonly standardError: number;
  /** Two-sided confidence level of the limits. */
  readonly level: number;
  /** Limits by the likelihood ratio; null where not asked for. */
  readonly profileLimits: OpenLimits | null;
};

export type WindowClosing = 'days' | 'distance';

export type WithdrawReadingRequest = {
  /** Why the record is corrected; kept with the correction. */
  readonly reason: string;
};

export type WorkAction = 'clean' | 'freeLinkage' | 'adjustStop' | 'adjustSwitch' | 'replaceSwitch' | 'reBush' | 'replace' | 'repairWiring' | 'other';

export type WorkLineEntry = {
  /** When it happened; null: before the shop knew the vehicle. */
  readonly happenedAt: string | null;
  /** The job it belongs to; null: none. */
  readonly jobId: string | null;
  /** which case this is */
  readonly kind: 'workLine';
  /** Work on one component; stands at its doing, or at its planning. */
  readonly record: WorkLineResponse;
  /** With `corrections=all`: the other revisions of the record, oldest first, later ones than the moment asked about as well. Empty otherwise. */
  readonly otherRevisions: readonly WorkLineResponse[];
};

export type WorkLineList = {
  /** Lines, newest first. */
  readonly items: readonly WorkLineResponse[];
};

export type WorkLineResponse = {
  /** Id of the record. */
  readonly id: string;
  /** Number of this revision, from 1; the ETag is made from it. */
  readonly version: number;
  /** When this revision was recorded. */
  readonly recordedAt: string;
  /** User whose key recorded this revision. */
  readonly recordedBy: string;
  /** Why the record was corrected; null for the first revision. */
  readonly reason: string | null;
  /** When a later revision replaced this one; null for the current one. */
  readonly replacedAt: string | null;
  /** What is done. */
  readonly action: WorkAction;
  /** Kind of part it is done to. */
  readonly componentType: string;
  /** Where on the vehicle. */
  readonly position: string;
  /** Planned, done or dropped. */
  readonly state: WorkLineState;
  /** Who does or did it. */
  readonly technicianId: string | null;
  /** When it was done. */
  readonly doneAt: string | null;
  /** Minutes worked. */
  readonly minutes: number | null;
  /** Description for the customer. */
  readonly description: string | null;
  /** An adjustment: from what. */
  readonly from: string | null;
  /** An adjustment: to what. */
  readonly to: string | null;
  /** What a protected item, such as the plate stop, is touched for. It is never used to set the switch or the idle: those two are refused. */
  readonly protectedPurpose: ProtectedPurpose | null;
  /** Why a protected item is touched. */
  readonly protectedReason: string | null;
  /** The part that went in. */
  readonly part: PartUsed | null;
  /** The job. */
  readonly jobId: string;
  /** The part it was done to, or the part that went in. */
  readonly fittedPartId: string | null;
};

export type WorkLineState = 'planned' | 'done' | 'dropped';

export type WorthwhileCheck = {
  /** Row of the diagnosis tables. */
  readonly diagnosticCheckId: string;
  /** Checks of the sheet that answer it. */
  readonly checkIds: readonly string[];
  /** Minutes. */
  readonly minutes: number;
  /** Why. */
  readonly reasons: readonly NextCheckReason[];
};

export type YearCost = {
  /** Years kept. */
  readonly years: number;
  /** Cost a year over them. */
  readonly cost: number;
  /** Cost of the last of them alone. */
  readonly marginalCost: number;
};

export type YearNotCoded = {
  /** which case this is */
  readonly kind: 'notCoded';
  /** Why. */
  readonly reason: YearNotCodedReason;
};

export type YearNotCodedReason = 'length' | 'code';

export type YearOfCosts = {
  /** Calendar year (UTC). */
  readonly year: number;
  /** Labour at the present rate. */
  readonly labour: Money;
  /** Parts. */
  readonly parts: Money;
  /** Work lines done. */
  readonly lines: number;
};

export type YearlyDistance = {
  /** Distance a year, km. */
  readonly kmPerYear: number;
  /** Its standard uncertainty, km (a fifth of it: judgement). */
  readonly standardUncertainty: number;
  /** What the owner expects, or what the odometer shows. */
  readonly basis: YearlyDistanceBasis;
};

export type YearlyDistanceBasis = 'stated' | 'odometer';

export type YearlyDistanceUnknown = {
  /** a day cannot be turned into a distance: state expectedKmPerYear, or read the odometer over 90 days */
  readonly kind: 'yearlyDistanceUnknown';
};

export type YesNoResult = {
  /** which case this is */
  readonly kind: 'yesNo';
  /** Answer to the question of the check. */
  readonly answer: boolean;
};

export type ZeroAgeEvents = {
  /** events at age 0, which the process does not allow */
  readonly kind: 'zeroAgeEvents';
  /** How many. */
  readonly count: number;
};

export type ZeroLives = {
  /** lives of exactly 0, which no such distribution allows */
  readonly kind: 'zeroLives';
  /** How many; give them as failed before the first age anybody looked. */
  readonly count: number;
};
