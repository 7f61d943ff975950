import type { ComebackAttribution, PartCondition } from '@endfloat/catalogue';
import type { Money } from '@endfloat/metrology';

export interface OfJob {
  readonly jobId: string;
}

export interface Job {
  readonly openedAt: string;
  readonly assignedTo: string | null;
  /** the technician who diagnosed; the one who fitted stands on the work line */
  readonly diagnosedBy: string | null;
  /** confirmed cause, or null: not established */
  readonly causeId: string | null;
  readonly note: string | null;
}

export const jobEventKinds = [
  'waitingForConsent',
  'waitingForPart',
  'waitingForBay',
  'resumed',
  'workFinished',
  'closed',
] as const;
export type JobEventKind = (typeof jobEventKinds)[number];
export interface JobEvent {
  readonly kind: JobEventKind;
  readonly happenedAt: string;
  readonly note: string | null;
}

export const jobStates = [
  'open',
  'waitingForConsent',
  'waitingForPart',
  'waitingForBay',
  'workFinished',
  'released',
  'handedOverUnrepaired',
  'closed',
] as const;
export type JobState = (typeof jobStates)[number];

export const symptomAnswers = ['present', 'absent'] as const;
export type SymptomAnswer = (typeof symptomAnswers)[number];

export interface TroubleCode {
  readonly scheme: string;
  readonly code: string;
}

export interface Complaint {
  readonly jobId: string | null;
  readonly receivedAt: string;
  /** the customer's own words */
  readonly personalRecordId: string | null;
  /** symptom id -> answer; a symptom that is not in here was not asked */
  readonly symptoms: Readonly<Record<string, SymptomAnswer>>;
  readonly conditions: Readonly<Record<string, string>>;
  readonly troubleCodes: readonly TroubleCode[];
  readonly reproduced: boolean | null;
  readonly stopScrewMovedByOthers: boolean | null;
  readonly reportedByDriver: boolean;
  /** component types the complaint points to, as the desk was told; may be empty */
  readonly components: readonly string[];
  /** the customer says that it began after a repair */
  readonly beganAfterRepair: boolean;
  /** distance then, where the odometer could be relied on */
  readonly distanceKm: string | null;
}

export const workActions = [
  'clean',
  'freeLinkage',
  'adjustStop',
  'adjustSwitch',
  'replaceSwitch',
  'reBush',
  'replace',
  'repairWiring',
  'other',
] as const;
export type WorkAction = (typeof workActions)[number];
/** What somebody may want to turn a protected stop for; the last two are never allowed. */
export const protectedPurposes = [
  'movedByOthers',
  'vacuumAtPort',
  'afterOverhaul',
  'toSetSwitch',
  'toSetIdle',
] as const;
export type ProtectedPurpose = (typeof protectedPurposes)[number];
export const workLineStates = ['planned', 'done', 'dropped'] as const;
export type WorkLineState = (typeof workLineStates)[number];

export interface PartUsed {
  /** the number of the shop's list that was taken from the shelf; absent or null: it came from elsewhere */
  readonly partId?: string | null;
  readonly condition: PartCondition;
  readonly supplier: string | null;
  readonly partNumber: string | null;
  readonly serial: string | null;
  readonly batch: string | null;
  readonly price: Money | null;
}

export interface WorkLine {
  readonly action: WorkAction;
  readonly componentType: string;
  readonly position: string;
  readonly fittedPartId: string | null;
  readonly state: WorkLineState;
  /** who did it */
  readonly technicianId: string | null;
  readonly doneAt: string | null;
  readonly minutes: number | null;
  readonly description: string | null;
  /** an adjustment: from what, to what */
  readonly from: string | null;
  readonly to: string | null;
  /** what a protected item was touched for, and why */
  readonly protectedPurpose: ProtectedPurpose | null;
  readonly protectedReason: string | null;
  readonly part: PartUsed | null;
}

export interface EstimateIdentity {
  readonly jobId: string;
  readonly estimateVersion: number;
}
export interface EstimateLine {
  readonly workLineId: string | null;
  readonly description: string;
  readonly partsAmount: string;
  readonly labourHours: string;
  readonly labourAmount: string;
  readonly partCondition: PartCondition | null;
}
export interface Estimate {
  readonly currency: string;
  readonly lines: readonly EstimateLine[];
  readonly totalAmount: string;
  /** amount not to be exceeded without new consent */
  readonly ceilingAmount: string;
}

export interface ConsentIdentity {
  readonly jobId: string;
  readonly estimateId: string;
}
export const consentAnswers = ['given', 'refused'] as const;
export type ConsentAnswer = (typeof consentAnswers)[number];
export const consentWays = ['inWriting', 'inPerson', 'byTelephone', 'byMessage'] as const;
export type ConsentWay = (typeof consentWays)[number];
export interface Consent {
  readonly answer: ConsentAnswer;
  readonly answeredAt: string;
  readonly way: ConsentWay;
  readonly personalRecordId: string | null;
  readonly declinedWork: string | null;
}

export const proofOutcomes = ['passed', 'failed', 'notTested', 'notFitted'] as const;
export type ProofOutcome = (typeof proofOutcomes)[number];
export interface ProofPoint {
  /** id of the catalogue's proof points: linkage and pedal, visual, and the points of the road test */
  readonly point: string;
  readonly outcome: ProofOutcome;
  readonly testedAt: string;
  readonly testedBy: string;
  /** why it was not tested, and when it will be looked at again */
  readonly notTestedBecause: string | null;
  readonly recheckOn: string | null;
  readonly note: string | null;
}

export interface Release {
  readonly releasedAt: string;
  readonly windowDays: number;
  readonly windowKm: string;
  /** distance at release where the odometer is reliable */
  readonly distanceKm: string | null;
  readonly releasedBy: string;
  readonly statement: string;
}

export interface UnsafeHandover {
  readonly handedOverAt: string;
  readonly personalRecordId: string | null;
  readonly dangerousFindings: readonly string[];
  readonly warningGiven: string;
}

export interface ComebackIdentity {
  /** the later complaint */
  readonly complaintId: string;
  /** the earlier released job */
  readonly jobId: string;
}
export const comebackStates = ['proposed', 'confirmed', 'refused'] as const;
export type ComebackState = (typeof comebackStates)[number];
export interface ComebackReason {
  readonly code: string;
  readonly values: Readonly<Record<string, string>>;
}
export interface Comeback {
  readonly state: ComebackState;
  /** class of the catalogue's attribution list, once a person has attributed it */
  readonly attribution: ComebackAttribution | null;
  readonly reasons: readonly ComebackReason[];
  /** 0 to 1: an order of likelihood, not a probability */
  readonly likeness: string;
  readonly daysSinceRelease: number;
  /** null where distance is unreliable */
  readonly kmSinceRelease: string | null;
  readonly insideWindow: boolean;
  readonly note: string | null;
  /** what a proposal rests on, and on which side of the window: proposals like it are counted by this */
  readonly ground?: string | null;
  /** that a person would confirm it, by what was known when it was proposed; null: linked by a person */
  readonly probability?: ProposalProbability | null;
}

/** Shares as decimal text. */
export interface ProposalProbability {
  readonly value: string;
  readonly lower: string;
  readonly upper: string;
  readonly confidence: string;
  readonly priorMean: string;
  readonly priorWeight: number;
  /** proposals like it that persons had settled */
  readonly confirmed: number;
  readonly refused: number;
}
