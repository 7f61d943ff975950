import type { WearingCharacteristic } from '../terms/assessment-input.js';
import { wearSteps } from '../comeback/comeback-predictor.js';

const PER_CRITERION = 24;
const COUNT = 2 * PER_CRITERION + 1;

/** Wear nodes, shares of the criterion: 0 to 2 in steps of 1/24. Wear beyond twice the criterion counts as twice. */
export const wearNodes: Float64Array = Float64Array.from({ length: COUNT }, (_, i) => i / PER_CRITERION);

/** Comeback steps at each wear node. */
export const stepsAtNodes: readonly (readonly [number, number, number])[] = Array.from(wearNodes, wearSteps);

/** Greatest wear on the nodes. */
export const greatestWear = wearNodes[COUNT - 1]!;

function requireCharacteristic({ unwornSize, criterionSize, direction }: WearingCharacteristic): void {
  if (!Number.isFinite(unwornSize) || !Number.isFinite(criterionSize)) {
    throw new RangeError('sizes of a characteristic are finite numbers');
  }
  const isOrdered = direction === 'up' ? criterionSize > unwornSize : criterionSize < unwornSize;
  if (!isOrdered)
    throw new RangeError(
      `a characteristic that goes ${direction} has its criterion on that side of the unworn size`,
    );
}

/**
 * A size as share of the wear at the criterion: 0 unworn, 1 at the criterion, in either direction.
 *
 * @param size  in the characteristic's unit
 * @param characteristic  unworn size, criterion and direction
 * @returns share; negative for a size better than unworn
 * @throws RangeError on sizes that are not finite or not in the direction of wear
 * @example wearShare(0.1, { characteristicId: 'radial-play', unit: 'mm', direction: 'up', unwornSize: 0, criterionSize: 0.2 }) // => 0.5
 */
export function wearShare(size: number, characteristic: WearingCharacteristic): number {
  requireCharacteristic(characteristic);
  if (!Number.isFinite(size)) throw new RangeError(`a size is a finite number, got ${size}`);
  return (size - characteristic.unwornSize) / (characteristic.criterionSize - characteristic.unwornSize);
}

/**
 * Wear at the criterion, a positive length of scale in the characteristic's unit.
 *
 * @param characteristic  unworn size, criterion and direction
 * @returns |criterion - unworn|
 * @throws RangeError as `wearShare`
 */
export function criterionWear(characteristic: WearingCharacteristic): number {
  requireCharacteristic(characteristic);
  return Math.abs(characteristic.criterionSize - characteristic.unwornSize);
}

/**
 * The size that belongs to a share of the wear at the criterion.
 *
 * @param share  0 unworn, 1 at the criterion
 * @param characteristic  unworn size, criterion and direction
 * @returns size in the characteristic's unit
 * @throws RangeError as `wearShare`
 */
export function sizeAtShare(share: number, characteristic: WearingCharacteristic): number {
  requireCharacteristic(characteristic);
  return characteristic.unwornSize + share * (characteristic.criterionSize - characteristic.unwornSize);
}
