import { chanceAtStep, comebackChance } from '../comeback/comeback-predictor.js';
import { drawCoefficients } from '../comeback/coefficient-draws.js';
import { comebackFeatures } from '../comeback/comeback-predictor.js';
import { stepsAtNodes, wearNodes } from '../belief/wear-grid.js';
import { recalled } from '../memo/recalled.js';
import { meanDays } from '../pricing/expected-lead-time.js';
import type { RepairCandidate } from '../pricing/repair-candidate.js';
import { seededDraws } from '../random/seeded-draws.js';
import type { SeededDraws } from '../random/seeded-draws.js';
import type { PartBelief } from '../belief/part-belief.js';
import { keptLogOdds } from './decision-beliefs.js';
import type { DecisionModel } from './decision-model.js';
import { immediateCost, keptProspect, renewedProspect } from './evaluate-candidate.js';

const PAIRS = 120;
/** Tells the stream of states from that of coefficients. */
const OTHER_STREAM = 0x5bd1e995;

/** Number of draws behind the intervals. */
export const drawCount = 2 * PAIRS;

/** Expected costs and comeback chances of one candidate, one a draw; the same draw for all candidates. */
export interface CandidateDraws {
  readonly candidate: RepairCandidate;
  readonly costs: Float64Array;
  readonly chances: Float64Array;
}

interface StateDraw {
  readonly coefficients: Float64Array;
  readonly node: number;
  readonly rate: number;
}

/** Rate x node indices of any weight, by node and then by rate, so that strata of wear stay strata of cost. */
function ordered(places: Float64Array): { readonly index: Int32Array; readonly weights: Float64Array } {
  const nodes = wearNodes.length;
  const index = Array.from(places, (_, k) => k)
    .filter((k) => places[k]! > 0)
    .sort((a, b) => (a % nodes) - (b % nodes) || a - b);
  return { index: Int32Array.from(index), weights: Float64Array.from(index, (k) => places[k]!) };
}

/** Place of a uniform draw in weights that add up to one. */
function place(weights: Float64Array, uniform: number): number {
  let left = uniform;
  for (let i = 0; i < weights.length - 1; i += 1) {
    left -= weights[i]!;
    if (left < 0) return i;
  }
  return weights.length - 1;
}

/** Difference that a drawn lead time makes to the cost now; single deliveries stay averaged. */
function leadTimeDifferences(
  model: DecisionModel,
  candidate: RepairCandidate,
  draws: SeededDraws,
): Float64Array {
  const { prices, beliefs } = model;
  const differences = new Float64Array(drawCount);
  const { leadTime } = candidate;
  if (leadTime === null || leadTime.logMedianSd === 0) return differences;
  for (let pair = 0; pair < PAIRS; pair += 1) {
    const z = draws.normal();
    if (prices.isUsableWhileWaiting || beliefs.input.occasion === 'serviceVisit') continue;
    for (const [k, sign] of [1, -1].entries()) {
      const days = meanDays(leadTime.logMedian + sign * z * leadTime.logMedianSd, leadTime.deliverySd);
      differences[2 * pair + k] = (days - leadTime.meanDays) * prices.downtimePerDay;
    }
  }
  return differences;
}

function keptDraws(
  model: DecisionModel,
  candidate: RepairCandidate,
  action: 'leave' | 'adjust',
  states: readonly StateDraw[],
): CandidateDraws {
  const { beliefs } = model;
  const context = {
    action,
    condition: null,
    arrivalStep: 0,
    functional: beliefs.functional,
    earlierComebacks: beliefs.input.evidence.earlierComebacks.count,
  };
  const immediate = immediateCost(model, candidate);
  const logOdds = keptLogOdds(beliefs.input.tables, action, context.earlierComebacks);
  const features = comebackFeatures(context, [0, 0, 0]);
  const costs = new Float64Array(drawCount);
  const chances = new Float64Array(drawCount);
  states.forEach(({ coefficients, node, rate }, d) => {
    const { held, failed } = keptProspect(model, action, rate, node);
    const chance =
      beliefs.input.occasion === 'serviceVisit'
        ? 0
        : chanceAtStep(coefficients, features, stepsAtNodes[node]!, logOdds[node]!);
    chances[d] = chance;
    costs[d] = immediate + chance * failed.mean + (1 - chance) * held.mean;
  });
  return { candidate, costs, chances };
}

/**
 * Draws of every candidate's expected cost over the doubt about parameters: comeback coefficients, wear now, rate now, mean
 * lead time. What single vehicles will do around the expected cost is not in here, and the costs of later repairs stay at
 * their expectation.
 *
 * @param model  the solved model
 * @param part   what is believed of the part now fitted
 * @returns draws, in the order of the model's candidates
 */
export function drawExpectedCosts(model: DecisionModel, part: PartBelief): readonly CandidateDraws[] {
  const { beliefs } = model;
  const { tables, seed } = beliefs.input;
  const draws = seededDraws((seed ^ OTHER_STREAM) >>> 0);
  const { index, weights } = ordered(part.places);
  const coefficients = recalled(tables, `draws ${seed}`, () =>
    drawCoefficients(tables.comeback, PAIRS, seededDraws(seed)),
  );
  const states = coefficients.map((vector, d): StateDraw => {
    // Strata: draw d takes its wear from the d-th of as many equal shares, in an order that does not go with the pairs.
    const stratum = (d * 181) % drawCount;
    const at = index[place(weights, (stratum + draws.uniform()) / drawCount)]!;
    const rate = Math.floor(at / wearNodes.length);
    return { coefficients: vector, node: at - rate * wearNodes.length, rate };
  });
  const { occasion, evidence } = beliefs.input;
  const earlierNow = occasion === 'serviceVisit' ? 0 : evidence.earlierComebacks.count;
  return model.candidates.map((candidate): CandidateDraws => {
    if (candidate.action === 'leave' || candidate.action === 'adjust') {
      return keptDraws(model, candidate, candidate.action, states);
    }
    const renewal = model.renewals.find((known) => known.candidate === candidate)!;
    const { held, failed } = renewedProspect(model, renewal);
    const features = renewal.fitted.features(earlierNow);
    const immediate = immediateCost(model, candidate);
    const chances = recalled(tables, `drawn ${seed} ${earlierNow} ${renewal.fitted.key}`, () =>
      Float64Array.from(coefficients, (vector) => comebackChance(vector, features)),
    );
    const waits = leadTimeDifferences(model, candidate, draws);
    const costs = chances.map(
      (chance, d) => immediate + waits[d]! + chance * failed.mean + (1 - chance) * held.mean,
    );
    return { candidate, costs, chances };
  });
}

/**
 * Empirical quantile, linear between order statistics.
 *
 * @param sorted  one or more, rising
 * @param share   0 to 1
 * @returns quantile; type 7 of Hyndman & Fan (1996)
 */
export function sortedQuantile(sorted: Float64Array, share: number): number {
  const at = share * (sorted.length - 1);
  const low = Math.floor(at);
  const high = Math.min(sorted.length - 1, low + 1);
  return sorted[low]! + (at - low) * (sorted[high]! - sorted[low]!);
}
