import type { Quantity } from '../quantities/quantity.js';
import type { QuantityKind } from '../quantities/quantity-kind.js';

/**
 * Keys that limits use today. The record is open: a catalogue may add keys, and a context that lacks a key leaves the
 * limit undetermined, never applied.
 */
export const knownApplicabilityKeys = [
  'scope',
  'category',
  'vehicleType',
  'firstUsedOn',
  'grossMass',
  'axle',
  'position',
  'wheelDiameter',
  'rimDiameter',
  'steeringType',
  'brakeType',
  'liningType',
  'actuatorType',
  'catalyst',
  'fuel',
  'coolantType',
  'batteryType',
  'centreHeight',
  'application',
] as const;

/** What a context value must be. */
export type ApplicabilityRule =
  | { readonly kind: 'oneOf'; readonly values: readonly string[] }
  | { readonly kind: 'noneOf'; readonly values: readonly string[] }
  | {
      readonly kind: 'range';
      readonly quantityKind: QuantityKind;
      readonly over?: Quantity;
      readonly from?: Quantity;
      readonly under?: Quantity;
      readonly upTo?: Quantity;
    }
  /** Local dates; `from` is the first day, `before` the first day after. */
  | { readonly kind: 'dates'; readonly from?: string; readonly before?: string };

/** A value known about the vehicle, the part or the test: text, one of several texts, or a quantity. Dates are text. */
export type ContextValue = string | readonly string[] | Quantity;

/** Everything known that a limit may ask for, by key. */
export type LimitContext = Readonly<Record<string, ContextValue>>;
