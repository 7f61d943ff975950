import type { Characteristic, CheckSheet, ComponentType } from '@endfloat/catalogue';
import {
  canonicalNumber,
  selectApplicableLimits,
  type Limit,
  type QuantityKind,
  type UnitCode,
} from '@endfloat/metrology';
import type { WearDirection } from '@endfloat/wear';
import { componentTypesOf } from '../bench/component-types-of.js';
import { contextOfVehicle } from '../bench/judging/limit-context.js';
import { wearBound } from '../decide/component-case.js';
import { invalidInput, type DomainError } from '../errors/domain.errors.js';
import type { Vehicle } from '../ports/records/vehicles.records.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import { latestSheets } from '../recording/latest-sheets.js';

/** A characteristic that wears and is read as a number, with every limit that may apply to it. */
export interface WearCase {
  readonly type: ComponentType;
  readonly characteristic: Characteristic;
  readonly quantityKind: QuantityKind;
  readonly unit: UnitCode;
  readonly direction: WearDirection;
  readonly limits: readonly Limit[];
}

/** The limit that distance is counted to, in the characteristic's unit. */
export interface WearLimit {
  readonly limitId: string;
  readonly value: number;
  readonly source: string;
  readonly origin: string;
}

/**
 * What of a kind of part wears and can be measured.
 *
 * @param characteristicId  one of them, or all where left out
 * @returns empty where nothing does, or where it has no such characteristic
 * @throws DomainError `input.invalid` where the shop knows no such kind of part
 */
export async function wearCasesOf(
  tx: ShopTransaction,
  componentTypeId: string,
  characteristicId: string | undefined,
  asOf: string | undefined,
): Promise<readonly WearCase[]> {
  const found = await wearCasesIfKnown(tx, componentTypeId, characteristicId, asOf);
  if (found !== null) return found;
  throw invalidInput('/componentType', 'reference', `This shop knows no kind of part "${componentTypeId}".`);
}

/** The same; null where the shop has recorded parts of that kind without saying what can be measured on them. */
export async function wearCasesIfKnown(
  tx: ShopTransaction,
  componentTypeId: string,
  characteristicId: string | undefined,
  asOf: string | undefined,
): Promise<readonly WearCase[] | null> {
  const type = (await componentTypesOf(tx, asOf)).findLast(({ id }) => id === componentTypeId);
  if (type === undefined) return null;
  const sheets = await latestSheets(tx, asOf);
  const shopLimits = (await tx.shopLimits.all({}, asOf)).map(({ content }) => content.limit);
  return type.characteristics
    .filter(({ id }) => characteristicId === undefined || id === characteristicId)
    .flatMap((characteristic) => wearCase(type, characteristic, sheets, shopLimits));
}

/** Nothing that was asked about has a characteristic of that id. */
export function unknownCharacteristic(characteristic: string): DomainError {
  return invalidInput(
    '/characteristic',
    'reference',
    `"${characteristic}" is no characteristic here that wears and is read as a number.`,
  );
}

const isWearing = ({ trend, wearDirection, resultKind }: Characteristic): boolean =>
  trend === 'wear' && wearDirection !== 'none' && resultKind === 'number';

function wearCase(
  type: ComponentType,
  characteristic: Characteristic,
  sheets: readonly CheckSheet[],
  shopLimits: readonly Limit[],
): WearCase[] {
  const { quantityKind, canonicalUnit, wearDirection } = characteristic;
  if (!isWearing(characteristic) || quantityKind === null || canonicalUnit === null) return [];
  const own = shopLimits.filter((limit) => limit.characteristic === characteristic.id);
  const shipped = sheets
    .flatMap(({ checks }) => checks)
    .filter((check) => check.componentTypeId === type.id && check.characteristicId === characteristic.id)
    .flatMap(({ limits }) => limits)
    .filter(({ id }) => !own.some((limit) => limit.id === id));
  const byId = new Map([...shipped, ...own].map((limit) => [limit.id, limit]));
  return [
    {
      type,
      characteristic,
      quantityKind,
      unit: canonicalUnit,
      direction: wearDirection === 'up' ? 'rising' : 'falling',
      limits: [...byId.values()],
    },
  ];
}

/**
 * The wear limit of a vehicle on a day: of those that apply and may be judged by, the one that is reached first. An
 * advisory limit is none.
 */
export function wearLimitOf(found: WearCase, vehicle: Vehicle, day: string): WearLimit | null {
  const { applicable } = selectApplicableLimits(found.limits, contextOfVehicle(vehicle), day);
  const sign = found.direction === 'rising' ? 1 : -1;
  const bounds = applicable.flatMap((limit) => {
    const bound = wearBound(limit, found.direction === 'rising' ? 'up' : 'down');
    if (bound === null) return [];
    const value = canonicalNumber(bound.value, found.quantityKind);
    return [
      {
        limitId: limit.id,
        value,
        source: limit.edition.citation || limit.edition.source,
        origin: limit.origin,
      },
    ];
  });
  return bounds.sort((a, b) => sign * (a.value - b.value))[0] ?? null;
}
