import type { CharacteristicDto, ComponentTypeResponse } from '@endfloat/contracts';
import type { ComponentTypeView } from '@endfloat/workshop';

type Characteristic = ComponentTypeView['definition']['characteristics'][number];

export function presentComponentType({ definition, record }: ComponentTypeView): ComponentTypeResponse {
  return {
    code: definition.id,
    origin: record === null ? 'shipped' : 'shop',
    recordId: record?.id ?? null,
    recordedAt: record?.recordedAt ?? null,
    name: definition.name,
    edition: definition.edition,
    positions: [...definition.positions],
    characteristics: definition.characteristics.map(presentCharacteristic),
  };
}

export function presentCharacteristic(characteristic: Characteristic): CharacteristicDto {
  const { doubt, plausible } = characteristic;
  return {
    id: characteristic.id,
    name: characteristic.name,
    resultKind: characteristic.resultKind,
    quantityKind: characteristic.quantityKind,
    canonicalUnit: characteristic.canonicalUnit,
    wearDirection: characteristic.wearDirection,
    trend: characteristic.trend,
    plausible: plausible === null ? null : { lowest: plausible.lowest, highest: plausible.highest },
    lowestPossible: characteristic.lowestPossible,
    doubt:
      doubt === null
        ? null
        : {
            repeatability: doubt.repeatability,
            repeatabilityDegreesOfFreedom: doubt.repeatabilityDegreesOfFreedom,
            setUp: doubt.setUp,
            evidence: { tag: doubt.evidence.tag, citation: doubt.evidence.citation },
          },
    readingsAdvised: characteristic.readingsAdvised,
  };
}
