import type { Severity } from '../limits/severity.js';
import type { DegreesOfFreedom } from '../instruments/instrument.js';
import type { Quantity } from '../quantities/quantity.js';

/** What a verdict can say about a value and a limit. */
export const verdictOutcomes = ['inside', 'outside', 'undecided'] as const;

/** An outcome of `verdictOutcomes`. */
export type VerdictOutcome = (typeof verdictOutcomes)[number];

/** Kinds of verdict. */
export const verdictKinds = ['judged', 'faceValue', 'notJudged'] as const;

/** A kind of `verdictKinds`. */
export type VerdictKind = (typeof verdictKinds)[number];

/** Why a reading was not judged; stable codes. */
export const notJudgedReasons = [
  'valueToConfirm',
  'prerequisitesOpen',
  'limitNotConfirmed',
  'limitNotApplicable',
  'limitNotInForce',
  'instrumentUnknown',
  'excluded',
  'sourceUnclear',
  'wrongConditions',
  'wrongKindOfQuantity',
  'contextMissing',
  'notInTable',
  'makerValueZero',
  'ratioUndefined',
  'contradictsPhysicalBound',
  'contradictoryPair',
  'companionMissing',
  'companionNotConclusive',
  'gradeUnknown',
  'classOnly',
] as const;

/** A reason of `notJudgedReasons`. */
export type NotJudgedReason = (typeof notJudgedReasons)[number];

/** What more readings of the same kind would bring, if their mean stayed where it is. */
export type FurtherReadings =
  | { readonly kind: 'none' }
  | { readonly kind: 'needed'; readonly count: number }
  | { readonly kind: 'noNumberSettles'; readonly why: NoNumberSettlesReason };

/** Why no number of readings settles it. */
export const noNumberSettlesReasons = [
  'doubtThatDoesNotAverage',
  'moreThanPractical',
  'nothingAverages',
] as const;

/** A reason of `noNumberSettlesReasons`. */
export type NoNumberSettlesReason = (typeof noNumberSettlesReasons)[number];

/** The edges a value was compared with, canonical unit, after table, formula and correction. */
export interface AppliedBounds {
  readonly lower: (Quantity & { readonly isInclusive: boolean }) | null;
  readonly upper: (Quantity & { readonly isInclusive: boolean }) | null;
}

/** Parts common to all verdicts. */
export interface VerdictHead {
  readonly limitId: string;
  readonly severity: Severity;
}

/** Conformance was decided by probability, or by a rule that needs none (pair, grade, yes/no). */
export interface JudgedVerdict extends VerdictHead {
  readonly kind: 'judged';
  readonly outcome: VerdictOutcome;
  /** Probability that the true value meets the limit; null where the rule is not a probability. */
  readonly probabilityInside: number | null;
  /** Mean of the readings, canonical unit; null where the reading is no number. */
  readonly value: Quantity | null;
  readonly standardUncertainty: Quantity | null;
  readonly effectiveDegreesOfFreedom: DegreesOfFreedom | null;
  readonly count: number;
  readonly bounds: AppliedBounds | null;
  /** Outcome against the advisory criterion, where the limit has one. */
  readonly advisory: VerdictOutcome | null;
  readonly furtherReadings: FurtherReadings;
  /** Conditions the limit names that nobody stated. */
  readonly unstatedConditions: readonly string[];
  readonly method: string;
}

/** The uncertainty is not known: the bare numbers were compared, and the verdict says so. Never undecided, never proof. */
export interface FaceValueVerdict extends VerdictHead {
  readonly kind: 'faceValue';
  readonly outcome: 'inside' | 'outside';
  readonly value: Quantity;
  readonly count: number;
  readonly bounds: AppliedBounds;
  readonly advisory: 'inside' | 'outside' | null;
  readonly missing: readonly string[];
  readonly unstatedConditions: readonly string[];
  readonly method: string;
}

/** No verdict, and why. */
export interface NotJudgedVerdict extends VerdictHead {
  readonly kind: 'notJudged';
  readonly reason: NotJudgedReason;
  /** What is missing or in the way: context keys, ids of exclusions or prerequisites. */
  readonly details: readonly string[];
}

/** Verdict of one reading (or mean) against one limit. */
export type Verdict = JudgedVerdict | FaceValueVerdict | NotJudgedVerdict;
