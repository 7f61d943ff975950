import type { Quantity, QuantityKind } from '@endfloat/metrology';
import { quantityKindTable } from '@endfloat/metrology';
import type { EvidenceTag } from '../evidence/evidence-tag.js';
import type { Characteristic, DefaultDoubt, TrendKind, WearDirection } from './component-type.js';

/** Degrees of freedom of a judged standard deviation that may be wrong by a quarter: 1/2 x 0.25^-2 (JCGM 100, G.4.2). */
const JUDGED_DEGREES_OF_FREEDOM = 8;

export const doubt = (
  repeatability: Quantity | null,
  setUp: Quantity | null,
  tag: EvidenceTag = 'judgement',
): DefaultDoubt => ({
  repeatability,
  repeatabilityDegreesOfFreedom: repeatability === null ? null : JUDGED_DEGREES_OF_FREEDOM,
  setUp,
  evidence: { tag, citation: null },
});

interface NumberGiven {
  readonly wears: WearDirection;
  readonly trend: TrendKind;
  readonly lowest: string;
  readonly highest: string;
  readonly doubt?: DefaultDoubt;
  readonly readingsAdvised?: number;
  readonly resultKind?: 'number' | 'bladePair';
}

/**
 * A measured characteristic; the plausible range is in the canonical unit of its kind. Where the range begins at zero the
 * quantity cannot be negative.
 */
export function measured(
  id: string,
  name: string,
  quantityKind: QuantityKind,
  given: NumberGiven,
): Characteristic {
  const unit = quantityKindTable[quantityKind].canonical;
  return {
    id,
    name,
    resultKind: given.resultKind ?? 'number',
    quantityKind,
    canonicalUnit: unit,
    wearDirection: given.wears,
    trend: given.trend,
    plausible: { lowest: { value: given.lowest, unit }, highest: { value: given.highest, unit } },
    lowestPossible: given.lowest === '0' ? { value: '0', unit } : null,
    doubt: given.doubt ?? null,
    readingsAdvised: given.readingsAdvised ?? 1,
  };
}

/** A characteristic answered by yes or no, or by a grade. */
export function observed(id: string, name: string, resultKind: 'yesNo' | 'grade' = 'yesNo'): Characteristic {
  return {
    id,
    name,
    resultKind,
    quantityKind: null,
    canonicalUnit: null,
    wearDirection: 'none',
    trend: 'state',
    plausible: null,
    lowestPossible: null,
    doubt: null,
    readingsAdvised: 1,
  };
}
