import type { PrintedValue } from './limit-criterion.js';

/** Reasons for which a limit has no edge to compare with. */
export type BoundsRefusal = {
  readonly kind: 'notResolved';
  readonly reason: 'contextMissing' | 'notInTable' | 'makerValueZero' | 'classOnly' | 'wrongKindOfQuantity';
  readonly details: readonly string[];
};

/** A single edge found by table or formula, in whatever unit it was printed. */
export type EdgeResult = { readonly kind: 'edge'; readonly value: PrintedValue } | BoundsRefusal;
