import type { CheckSheet, ComponentType, ResultKind, TrendKind } from '@endfloat/catalogue';
import type {
  BladePairGrade,
  InstrumentProperties,
  Limit,
  LimitEdition,
  LimitOrigin,
  ReadingClass,
  UncertaintyBudget,
  UnitCode,
  Verdict as Judgement,
} from '@endfloat/metrology';
import type { Warning } from './vehicles.records.js';

/** A kind of part the shop added; `definition` passed the catalogue's validator. */
export interface ShopComponentType {
  readonly definition: ComponentType;
}
export interface ByCode {
  readonly code: string;
}

export interface Instrument {
  readonly kind: string;
  readonly name: string;
  readonly serial: string | null;
  /** error model, resolution and range */
  readonly properties: InstrumentProperties;
  readonly retiredOn: string | null;
}

export interface OfInstrument {
  readonly instrumentId: string;
}
export interface Calibration {
  readonly calibratedOn: string;
  /** null: no interval set */
  readonly dueOn: string | null;
  readonly passed: boolean;
  readonly certificate: string | null;
  readonly note: string | null;
}

/** How a gauge study is laid out and worked. */
export const gaugeStudyLayouts = ['crossed', 'averageAndRange', 'nested'] as const;
export type GaugeStudyLayout = (typeof gaugeStudyLayouts)[number];

/** One value of a gauge study, in the unit of the study. */
export interface GaugeStudyValue {
  readonly object: string;
  readonly appraiser: string;
  readonly value: number;
}

/** How much readings of one characteristic vary with one kind of instrument, as people of the shop tried it. */
export interface GaugeStudy {
  readonly characteristic: string;
  readonly instrumentKind: string;
  readonly studiedOn: string;
  readonly design: GaugeStudyLayout;
  /** p-value above which the interaction is pooled; of a crossed study only */
  readonly poolingLevel: number | null;
  readonly unit: UnitCode;
  readonly measurements: readonly GaugeStudyValue[];
  /** false: kept, and no longer used for the doubt about readings */
  readonly inUse: boolean;
  readonly note: string | null;
}

/** A limit the shop set itself, or a published one it confirmed for judging. */
export interface ShopLimit {
  readonly characteristic: string;
  readonly limit: Limit;
}

export interface CheckSheetIdentity {
  readonly code: string;
  readonly sheetVersion: number;
}
/** `definition` passed the catalogue's validator; a version is never changed. */
export interface CheckSheetContent {
  readonly definition: CheckSheet;
}

export interface InspectionIdentity {
  readonly vehicleId: string;
  readonly jobId: string | null;
  readonly checkSheetId: string;
}
export interface Inspection {
  readonly startedAt: string;
  readonly technicianId: string | null;
  /** checks whose state before any work nobody can know any more, e.g. because somebody had turned the screw */
  readonly asFoundNotTaken: readonly CheckRemark[];
  /** checks that are left out on purpose: not fitted, not possible today */
  readonly notDone: readonly CheckRemark[];
  readonly note: string | null;
}

/** Something said about one check of an inspection, and why. */
export interface CheckRemark {
  readonly checkId: string;
  readonly reason: string;
}

export interface OfInspection {
  readonly inspectionId: string;
}

export const readingPhases = ['asFound', 'asLeft'] as const;
export type ReadingPhase = (typeof readingPhases)[number];

export interface Reading {
  readonly checkId: string;
  readonly characteristic: string | null;
  /** what a series of such readings shows: wear, slow drift, or nothing */
  readonly trend: TrendKind;
  /** the part it was taken on; null for checks of the whole vehicle */
  readonly fittedPartId: string | null;
  readonly phase: ReadingPhase;
  /** where on the vehicle, as the kind of part names its places */
  readonly position: string;
  /** one of several like places of one part, e.g. a cylinder or a side of an axle; null where there is only one */
  readonly place: string | null;
  readonly resultKind: ResultKind;
  /** the number exactly as entered, in the unit as entered */
  readonly shown: string | null;
  readonly unit: string | null;
  readonly canonicalValue: string | null;
  readonly canonicalUnit: string | null;
  readonly takenAt: string;
  readonly distanceKm: string | null;
  readonly instrumentId: string | null;
  /** the person who measured, apart from the key that recorded */
  readonly measuredBy: string;
  /** an implausible value stays out of verdicts and trends until somebody confirms it */
  readonly valueConfirmed: boolean;
  /** largest blade at which the switch is still closed, smallest at which it is open; text as entered, canonical in `unit` */
  readonly pair: { readonly largestClosed: string | null; readonly smallestOpen: string | null } | null;
  readonly answer: boolean | null;
  readonly grade: string | null;
  /** as met: engine hot, loads off, ... */
  readonly conditions: Readonly<Record<string, string>>;
  readonly note: string | null;
  readonly warnings: readonly Warning[];
  /** taken on the wrong van or part, or of nothing: it stays in the history and counts for nothing; absent: it counts */
  readonly isWithdrawn?: boolean;
}

export interface VerdictIdentity {
  readonly inspectionId: string;
  readonly checkId: string;
  readonly phase: ReadingPhase;
  readonly limitId: string;
}
export const verdictOutcomes = ['inside', 'outside', 'undecided', 'notJudged'] as const;
export type VerdictOutcome = (typeof verdictOutcomes)[number];

export interface Verdict {
  readonly outcome: VerdictOutcome;
  readonly probabilityInside: string | null;
  /** prerequisites were not passed when it was judged: it is repeated later */
  readonly provisional: boolean;
  readonly severity: string | null;
  /** the readings it rests on, and the instruments that were overdue */
  readonly readingIds: readonly string[];
  readonly overdueInstrumentIds: readonly string[];
  /** the whole result of the judging room: method, uncertainty budget, readings still needed */
  readonly detail: VerdictDetail;
}

/** What was said of readings that were all corrected away from the check. */
export interface NoReadingsJudgement {
  readonly kind: 'notJudged';
  readonly limitId: string;
  readonly severity: Judgement['severity'];
  readonly reason: 'noReadings';
  readonly details: readonly string[];
}

export interface VerdictDetail {
  readonly judgement: Judgement | NoReadingsJudgement;
  /** null where no number was judged */
  readonly uncertainty: UncertaintyBudget | null;
  /** for a pair of blades */
  readonly grade: BladePairGrade | null;
  /** for a number that gives a class and no verdict */
  readonly readingClass: ReadingClass | null;
  /** check whose functional answer outranks this number */
  readonly outrankedBy: string | null;
  readonly position: string;
  /** the worst of several like places, where there are several */
  readonly place: string | null;
  /** the edition of the limit that was used */
  readonly limit: LimitEdition & { readonly origin: LimitOrigin; readonly asWritten: string };
  /** study the repeatability was taken from; absent: the default of the kind of part, or none */
  readonly gaugeStudyId?: string;
}

/**
 * Where a check stands. `recorded`: read, and no limit judges it. `provisional`: read before it could be judged, or a
 * negative functional answer that is repeated later. `notDone`: left out on purpose.
 */
export const checkStates = [
  'open',
  'passed',
  'failed',
  'undecided',
  'provisional',
  'recorded',
  'notDone',
] as const;
export type CheckState = (typeof checkStates)[number];

export const calibrationStandingKinds = [
  'inCalibration',
  'due',
  'overdue',
  'neverCalibrated',
  'noInterval',
  'failed',
] as const;
export type CalibrationStandingKind = (typeof calibrationStandingKinds)[number];
