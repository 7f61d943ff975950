import type { Limit, Quantity } from '@endfloat/metrology';
import type { Caution, Hazard } from '../cautions/hazard.js';
import type { ResultKind } from '../component-types/component-type.js';

/** What an instrument must be to take a reading. */
export const instrumentKinds = [
  'none',
  'eyesAndHands',
  'tachometer',
  'codeReader',
  'multimeter',
  'ohmmeter',
  'vacuumGauge',
  'lowRangeVacuumGauge',
  'smokeGenerator',
  'hoseClamp',
  'thermometer',
  'strobeLamp',
  'rule',
  'dialIndicator',
  'feelerBlades',
  'paperStrip',
  'gasAnalyser',
  'treadDepthGauge',
  'liningGauge',
  'brakeTester',
  'compressionTester',
  'headlampTester',
  'refractometer',
  'caliper',
  'other',
] as const;
export type InstrumentKind = (typeof instrumentKinds)[number];

/** State the van must be in while the check is done. */
export const requiredStates = [
  'engineOff',
  'ignitionOff',
  'engineCold',
  'engineHot',
  'idling',
  'raisedIdle',
  'airConditioningOff',
  'electricalLoadsOff',
  'electricalLoadsOn',
  'radiatorFanHasCycled',
  'purgeHoseOffAndPlugged',
  'idleSwitchReadsClosed',
  'connectorUnplugged',
  'plateAtStop',
  'plateSlightlyOpen',
  'batteryRested',
  'vehicleRaised',
  'wheelOff',
  'wheelsStraightAhead',
  'fuelAndIgnitionDisabled',
  'cranking',
  'coolingSystemOpen',
  'driving',
] as const;
export type RequiredState = (typeof requiredStates)[number];

/** Whether the item may be adjusted. A protected item ('no' or 'byProcedureOnly') needs a reason. */
export const adjustabilities = ['no', 'byProcedureOnly', 'yes'] as const;
export type Adjustability = (typeof adjustabilities)[number];

/** Part of the job a check belongs to. */
export const checkSections = ['intake', 'opening', 'search', 'housing', 'final', 'proof'] as const;
export type CheckSection = (typeof checkSections)[number];

/** A yes/no behaviour that decides without a number and outranks the numbers named here. */
export interface FunctionalCriterion {
  /** characteristics whose verdicts it outranks once it is validly judged */
  readonly outranks: readonly string[];
  /** check whose reading decides whether the answer counts */
  readonly companionCheckId: string;
  /** a "yes" is conclusive only with the companion at this value or more */
  readonly conclusiveFrom: Quantity;
  /** a "no" is final only with the companion inside its own limit; before that it is provisional and repeated */
  readonly negativeRepeatedAfterCompanion: boolean;
}

/** One thing to observe or measure. */
export interface Check {
  /** kebab-case, unique in the sheet, stable between editions */
  readonly id: string;
  readonly title: string;
  readonly section: CheckSection;
  /** what to do, in short steps */
  readonly steps: readonly string[];
  /** the question a yes/no check answers; null for the others */
  readonly question: string | null;
  readonly componentTypeId: string;
  readonly characteristicId: string;
  readonly resultKind: ResultKind;
  /** the row of the diagnosis tables this result feeds; null for none */
  readonly diagnosticCheckId: string | null;
  /** a safe and cheap check that is done anyway, before any ranking */
  readonly openingMove: boolean;
  /** hard: not judged before these are passed, or failed, corrected and passed again */
  readonly prerequisites: readonly string[];
  /** order only */
  readonly advisedAfter: readonly string[];
  /** checks to be read again after this item was adjusted, besides those that have it as a prerequisite */
  readonly alsoRemeasure: readonly string[];
  readonly requiredStates: readonly RequiredState[];
  readonly instrumentKind: InstrumentKind;
  readonly minutes: number;
  readonly hazards: readonly Hazard[];
  readonly cautions: readonly Caution[];
  readonly limits: readonly Limit[];
  readonly adjustable: Adjustability;
  readonly outsideMeans: string;
  readonly whatToDo: string;
  readonly targetCauses: readonly string[];
  readonly functional: FunctionalCriterion | null;
  /** skipped without a reason where the vehicle has no such item */
  readonly whereFitted: boolean;
}

/** Ordered, versioned list of checks; immutable once used. */
export interface CheckSheet {
  /** kebab-case */
  readonly id: string;
  readonly edition: number;
  readonly title: string;
  readonly componentTypeIds: readonly string[];
  readonly checks: readonly Check[];
  /** ids of the proof points that close a job done by this sheet; empty for a plain inspection */
  readonly proofPointIds: readonly string[];
  /** standing reminder shown with the sheet */
  readonly precedence: string;
}
