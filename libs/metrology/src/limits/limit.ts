import type { Quantity } from '../quantities/quantity.js';
import type { QuantityKind } from '../quantities/quantity-kind.js';
import type { ApplicabilityRule } from './applicability.js';
import type { LimitCriterion } from './limit-criterion.js';
import type { Severity } from './severity.js';

/** Where a limit comes from; a number from memory is a published one whose text was not read again. */
export const limitOrigins = ['published', 'maker', 'shop', 'commonPractice', 'judgement', 'memory'] as const;

/** An origin of `limitOrigins`. */
export type LimitOrigin = (typeof limitOrigins)[number];

/** Whether a limit may be used for a verdict yet. */
export const judgingStates = ['allowed', 'notUntilConfirmed'] as const;

/** A state of `judgingStates`. */
export type JudgingState = (typeof judgingStates)[number];

/** The edition of the text a limit was taken from; dates are local dates, `validTo` is the first day it no longer holds. */
export interface LimitEdition {
  readonly validFrom: string | null;
  readonly validTo: string | null;
  readonly source: string;
  readonly citation: string;
}

/** Probability at or above which a value is inside, and at or below which it is outside. */
export interface VerdictThresholds {
  readonly inside: number;
  readonly outside: number;
}

/** Inside at 0.95 or more, outside at 0.05 or less. */
export const defaultThresholds: VerdictThresholds = { inside: 0.95, outside: 0.05 };

/** The limit moves by `change` for every `per` of the context value `by` (vacuum: minus 1 inHg per 1000 ft). */
export interface CorrectionTerm {
  readonly by: string;
  readonly byKind: QuantityKind;
  readonly per: Quantity;
  /** Signed change of the limit, a difference in a unit of the limit's kind. */
  readonly change: Quantity;
}

/** A circumstance in which the limit does not judge at all. */
export interface LimitExclusion {
  readonly id: string;
  /** Context value looked at; `greaterReading` and `lesserReading` are filled in for ratios of readings. */
  readonly key: string;
  readonly rule: ApplicabilityRule;
}

/** A permitted value with everything needed to know when it holds and how far to trust it. Plain data. */
export interface Limit {
  readonly id: string;
  /** What is judged; limits of one characteristic compete by precedence. */
  readonly characteristic: string;
  /** Kind of the readings; null where the reading is no number. */
  readonly quantityKind: QuantityKind | null;
  readonly criterion: LimitCriterion;
  /** A stricter criterion of the same shape: outside it, but inside the limit, is worth a note. */
  readonly advisory: LimitCriterion | null;
  readonly severity: Severity;
  /** Place whose rule this is; null for rules that belong to no place. Limits of different places are never merged. */
  readonly jurisdiction: string | null;
  /** Every entry must be met: category, grossMass, axle, wheelDiameter, steeringType, firstUsedOn, ... */
  readonly applicability: Readonly<Record<string, ApplicabilityRule>>;
  /** Test conditions: a stated one that is not met bars the verdict; one that was not stated is reported. */
  readonly conditions: Readonly<Record<string, ApplicabilityRule>>;
  readonly exclusions: readonly LimitExclusion[];
  readonly correction: CorrectionTerm | null;
  readonly edition: LimitEdition;
  readonly origin: LimitOrigin;
  readonly judging: JudgingState;
  readonly thresholds: VerdictThresholds;
  readonly asWritten: string;
  readonly note: string | null;
}
