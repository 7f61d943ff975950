import { quantityKinds, quantityKindTable, type QuantityKind, type UnitCode } from '@endfloat/metrology';

/** Lists of the catalogue that a front end offers at intake, on the bench and at the proof. */
export { causes, operatingConditions, proofPoints, symptoms } from '@endfloat/catalogue';

export interface QuantityKindUnits {
  readonly kind: QuantityKind;
  readonly canonicalUnit: UnitCode;
  readonly units: readonly UnitCode[];
  readonly lowest: string | null;
}

/** Every kind of quantity with the units a value may be entered in. */
export const quantityKindUnits: readonly QuantityKindUnits[] = quantityKinds.map((kind) => {
  const { canonical, units, lowest } = quantityKindTable[kind];
  return { kind, canonicalUnit: canonical, units, lowest };
});

/** Units of one kind; none where there is no number. */
export function unitsOf(kind: QuantityKind | null): readonly UnitCode[] {
  return kind === null ? [] : quantityKindTable[kind].units;
}
