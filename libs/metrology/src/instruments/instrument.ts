import type { Quantity } from '../quantities/quantity.js';

/** Ways in which the error of an instrument is stated. */
export const instrumentErrorModelKinds = [
  'maximumPermissibleError',
  'percentOfReadingPlusDigits',
  'accuracyClassOfSpan',
  'bladeSet',
  'expandedUncertainty',
  'unknown',
] as const;

/** A kind of error model. */
export type InstrumentErrorModelKind = (typeof instrumentErrorModelKinds)[number];

/** Degrees of freedom; a bound stated by a maker or a standard counts as known, so infinite. */
export type DegreesOfFreedom = number | 'infinite';

/**
 * What is known about the error of an instrument.
 * - `maximumPermissibleError`: the error is within plus or minus `limit`, all values alike (rectangular)
 * - `percentOfReadingPlusDigits`: within plus or minus (`percent` of the reading + `digits` last digits of `digit` each)
 * - `accuracyClassOfSpan`: within `accuracyClass` per cent of the *span*, wherever the needle is
 * - `bladeSet`: thickness gauges; each blade within plus or minus `permissibleError` of its marking
 * - `expandedUncertainty`: from a certificate, with its coverage factor
 * - `unknown`: a reading taken with it gets a face-value verdict only
 */
export type InstrumentErrorModel =
  | { readonly kind: 'maximumPermissibleError'; readonly limit: Quantity }
  | {
      readonly kind: 'percentOfReadingPlusDigits';
      readonly percent: string;
      readonly digits: number;
      readonly digit: Quantity;
    }
  | { readonly kind: 'accuracyClassOfSpan'; readonly accuracyClass: string; readonly span: Quantity }
  | { readonly kind: 'bladeSet'; readonly blades: readonly Quantity[]; readonly permissibleError: Quantity }
  | {
      readonly kind: 'expandedUncertainty';
      readonly expanded: Quantity;
      readonly coverageFactor: number;
      readonly degreesOfFreedom: DegreesOfFreedom;
    }
  | { readonly kind: 'unknown' };

/** What computing needs to know about an instrument. */
export interface InstrumentProperties {
  readonly errorModel: InstrumentErrorModel;
  /** Smallest step that can be read; null where it is not known. */
  readonly resolution: Quantity | null;
}
