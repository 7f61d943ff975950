import { criterionWear, sizeAtShare, wearNodes } from '../belief/wear-grid.js';
import type { Assessment } from '../terms/assessment.js';
import type { PartBelief } from '../belief/part-belief.js';
import type { DecisionBeliefs } from './decision-beliefs.js';
import { chanceBeyondCriterion } from './reasons.js';
import { chancesOfCrossing } from './parts-to-come.js';
import { reported, reportedShare } from './reported.js';

/** Quantile of weights over nodes, each weight spread evenly over the half spacings around its node. */
function quantile(weights: Float64Array, share: number): number {
  const spacing = wearNodes[1]!;
  let before = 0;
  for (let i = 0; i < weights.length; i += 1) {
    const weight = weights[i]!;
    if (weight > 0 && before + weight >= share) {
      return Math.max(0, wearNodes[i]! + spacing * ((share - before) / weight - 0.5));
    }
    before += weight;
  }
  return wearNodes[weights.length - 1]!;
}

/** Distance at which the chance of having crossed reaches a share, straight between steps; null beyond the plan. */
function distanceAt(crossed: readonly number[], stepKm: number, share: number): number | null {
  if (crossed[0]! >= share) return 0;
  const k = crossed.findIndex((chance) => chance >= share);
  if (k < 0) return null;
  return stepKm * (k - 1 + (share - crossed[k - 1]!) / (crossed[k]! - crossed[k - 1]!));
}

function reportDistance(
  beliefs: DecisionBeliefs,
  places: Float64Array,
): Assessment['belief']['distanceToCriterion'] {
  const crossed = chancesOfCrossing(beliefs, places);
  const at = (share: number) => {
    const km = distanceAt(crossed, beliefs.stepKm, share);
    return km === null ? null : reported(km, 'km');
  };
  return {
    lower: at(0.05),
    median: at(0.5),
    upper: at(0.95),
    within: reported(beliefs.input.planningDistanceKm, 'km'),
  };
}

/**
 * What is believed about the part now fitted, in the characteristic's sizes.
 *
 * @param beliefs  of the assessment
 * @param part     what is believed of it
 * @returns mean, 90 % interval, chance beyond the criterion, mean rate
 */
export function reportBelief(
  beliefs: DecisionBeliefs,
  { wear, rates, places }: PartBelief,
): Assessment['belief'] {
  const { characteristic } = beliefs.input;
  const size = (share: number) => reported(sizeAtShare(share, characteristic), characteristic.unit);
  const mean = wear.reduce((sum, weight, i) => sum + weight * wearNodes[i]!, 0);
  const rate = rates.reduce((sum, weight, r) => sum + weight * beliefs.rates[r]!, 0);
  const ends = [quantile(wear, 0.05), quantile(wear, 0.95)] as const;
  const [lower, upper] = characteristic.direction === 'up' ? ends : [ends[1], ends[0]];
  return {
    wearNow: { mean: size(mean), lower: size(lower), upper: size(upper) },
    probabilityBeyondCriterion: reportedShare(chanceBeyondCriterion(wear)),
    ratePerThousandKm: reported(
      (rate * criterionWear(characteristic)) / 100,
      `${characteristic.unit}/1000.km`,
    ),
    distanceToCriterion: reportDistance(beliefs, places),
  };
}
