import { hatWeights } from '../grid/hat-weights.js';
import { gammaShortfall } from '../grid/shortfall.js';
import { exp, log } from '../portable/elementary.js';
import type { SeededDraws } from '../random/seeded-draws.js';
import type { WearLaw } from './fleet-parameters.js';
import { gammaDraw } from './keyed-draws.js';

const power = (x: number, exponent: number): number => (x <= 0 ? 0 : exp(exponent * log(x)));

/** Mean of the smooth rise over a distance, and chance and mean size of a blow. */
function rise(law: WearLaw, rate: number, wear: number, km: number) {
  const distance = km / 100_000;
  switch (law.kind) {
    case 'gamma':
      return { smooth: rate * distance, chance: 0, blow: 0 };
    case 'accelerating':
      return {
        smooth: rate * distance * (law.atStart + law.gain * power(wear, law.exponent)),
        chance: 0,
        blow: 0,
      };
    case 'shocks':
      return {
        smooth: rate * distance * (1 - law.share),
        chance: 1 - exp(-law.blows * distance),
        blow: (rate * law.share) / law.blows,
      };
  }
}

/**
 * How much wear grows over a distance.
 *
 * @param law    of the fleet
 * @param rate   of the part, shares per 100,000 km
 * @param wear   now
 * @param km     distance, short against what changes the rate
 * @param draws  stream
 * @returns increment, 0 or more
 */
export function drawIncrement(
  law: WearLaw,
  rate: number,
  wear: number,
  km: number,
  draws: SeededDraws,
): number {
  const { smooth, chance, blow } = rise(law, rate, wear, km);
  const steady = gammaDraw(draws, smooth / law.incrementScale, law.incrementScale);
  return chance > 0 && draws.uniform() < chance ? steady - blow * log(draws.uniform()) : steady;
}

/**
 * The same as weights over steps of a grid.
 *
 * @param law    of the fleet
 * @param rate   of the part
 * @param wear   now
 * @param km     distance
 * @param nodes  0, h, 2h, ...
 * @returns weights that add up to one; what lies beyond the last node is on it
 */
export function incrementWeights(
  law: WearLaw,
  rate: number,
  wear: number,
  km: number,
  nodes: Float64Array,
): Float64Array {
  const { smooth, chance, blow } = rise(law, rate, wear, km);
  const steady = hatWeights(nodes, gammaShortfall(smooth, law.incrementScale));
  if (chance === 0 || blow === 0) return steady;
  const blows = hatWeights(nodes, gammaShortfall(blow, blow));
  const both = steady.map((weight) => weight * (1 - chance));
  steady.forEach((first, i) => {
    if (first < 1e-12) return;
    blows.forEach((second, j) => {
      const at = Math.min(nodes.length - 1, i + j);
      both[at] = both[at]! + chance * first * second;
    });
  });
  return both;
}
