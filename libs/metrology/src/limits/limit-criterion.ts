import type { Quantity } from '../quantities/quantity.js';
import type { QuantityKind } from '../quantities/quantity-kind.js';
import type { UnitCode } from '../quantities/unit-code.js';
import type { Severity } from './severity.js';

/** How a good value stands to the limit. `unclear`: the source can be read both ways; the strict reading is used. */
export const comparators = ['lessThan', 'atMost', 'greaterThan', 'atLeast', 'unclear'] as const;

/** A comparator of `comparators`. */
export type Comparator = (typeof comparators)[number];

/** Shapes of a limit. */
export const limitCriterionKinds = [
  'minimum',
  'maximum',
  'band',
  'ratioOfTwo',
  'ratioToBest',
  'ratioToMean',
  'pair',
  'grade',
  'yesNo',
  'tabulated',
  'formula',
  'classes',
] as const;

/** A kind of `limitCriterionKinds`. */
export type LimitCriterionKind = (typeof limitCriterionKinds)[number];

/**
 * A figure as the source prints it. Where it prints the same limit in two units that differ by rounding, `alsoPrinted`
 * holds the others: a reading is compared with the figure of its own unit.
 */
export interface PrintedValue extends Quantity {
  readonly alsoPrinted?: readonly Quantity[];
}

/** One edge of what is permitted. */
export interface LimitBound {
  readonly comparator: Comparator;
  readonly value: PrintedValue;
}

/** Two readings made into one ratio. */
export const ratioOfTwoForms = ['lesserOverGreater', 'differenceOverGreater', 'firstOverSecond'] as const;

/** A form of `ratioOfTwoForms`. */
export type RatioOfTwoForm = (typeof ratioOfTwoForms)[number];

/** Several readings made into one ratio: the worst (lowest) against the best (highest) or the mean. */
export const ratioOfManyForms = ['lowestOverReference', 'differenceOverReference'] as const;

/** A form of `ratioOfManyForms`. */
export type RatioOfManyForm = (typeof ratioOfManyForms)[number];

/** A row of a table: the permitted value for one input value, or for all inputs up to it. */
export interface TabulatedRow {
  readonly match: 'equals' | 'upTo';
  readonly key: PrintedValue;
  readonly value: PrintedValue;
}

/**
 * What holds for an input the table does not list: nothing; the nearest row; or the travel at the rim of a wheel turned
 * by an angle (angle x diameter / 2).
 */
export type OutsideTable =
  | { readonly kind: 'none' }
  | { readonly kind: 'clamp' }
  | { readonly kind: 'angleAtRim'; readonly angle: Quantity };

/** A direction a single number is limited in. */
export type BoundSide = 'minimum' | 'maximum';

/** The shape of a limit with its figures. */
export type LimitCriterion =
  | { readonly kind: 'minimum'; readonly bound: LimitBound }
  | { readonly kind: 'maximum'; readonly bound: LimitBound }
  | { readonly kind: 'band'; readonly lower: LimitBound; readonly upper: LimitBound }
  | {
      readonly kind: 'ratioOfTwo';
      readonly form: RatioOfTwoForm;
      readonly side: BoundSide;
      readonly bound: LimitBound;
    }
  | {
      readonly kind: 'ratioToBest' | 'ratioToMean';
      readonly form: RatioOfManyForm;
      readonly side: BoundSide;
      readonly bound: LimitBound;
      /** The lowest reading must reach this too, where the source asks for it. */
      readonly floor: Quantity | null;
    }
  /** Go/no-go: the size lies between the largest blade that fits one way and the smallest that fits the other. */
  | { readonly kind: 'pair'; readonly lower: Quantity; readonly upper: Quantity }
  | {
      readonly kind: 'grade';
      readonly accepted: readonly string[];
      readonly rejected: readonly { readonly grade: string; readonly severity: Severity }[];
    }
  | { readonly kind: 'yesNo'; readonly accepted: 'yes' | 'no' }
  | {
      readonly kind: 'tabulated';
      /** Context key of the input, and its kind. */
      readonly by: string;
      readonly byKind: QuantityKind;
      readonly side: BoundSide;
      readonly comparator: Comparator;
      readonly rows: readonly TabulatedRow[];
      readonly outside: OutsideTable;
    }
  | {
      readonly kind: 'formula';
      /** Permitted: factor x the maker's value, found in the context under `makerValueKey`. */
      readonly form: 'factorTimesMakerValue';
      readonly factor: string;
      readonly makerValueKey: string;
      /** The size counts, not the sign (toe-in or toe-out). */
      readonly isAbsolute: boolean;
      readonly side: BoundSide;
      readonly comparator: Comparator;
    }
  /** A number that gives a class, not a verdict; classes from the highest threshold down, the last without one. */
  | {
      readonly kind: 'classes';
      readonly unit: UnitCode;
      readonly steps: readonly { readonly name: string; readonly from: string | null }[];
    };
