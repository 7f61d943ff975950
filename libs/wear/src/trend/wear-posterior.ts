import type { OrientedPart, Workspace } from './level-given-rate.js';
import { givenRate, workspaceFor } from './level-given-rate.js';
import type { RatePrior, WearPrior, WearVariant } from './wear-model.js';

/** One possible rate of a part with its probability. */
export interface WeightedRate {
  /** units per km */
  readonly rate: number;
  readonly scale: number;
  readonly weight: number;
}

/** Possible rates of a part, given its readings. */
export interface WearPosterior {
  readonly nodes: readonly WeightedRate[];
  /** log of the probability density of the readings, rate and scale averaged out */
  readonly logEvidence: number;
}

/** How finely rates are summed over. */
export interface Fineness {
  /** possible rates a variant */
  readonly nodes: number;
  /** what lies this many logarithms below the greatest mass is left out */
  readonly negligible: number;
}

/** Six digits of a probability: more than any answer shows. */
export const fineForAnswers: Fineness = { nodes: 15, negligible: 14 };
/** Smooth to the precision of the machine, for climbing. */
export const fineForFitting: Fineness = { nodes: 33, negligible: 32 };

/** Rates are summed over in equal steps: of the logarithm under a lognormal prior, of the rate itself under a flat one. */
interface RateAxis {
  readonly from: number;
  readonly to: number;
  readonly rateAt: (place: number) => number;
  readonly logDensity: (place: number) => number;
}

function rateAxis(prior: RatePrior): RateAxis {
  if (prior.kind === 'flat') {
    const logDensity = -Math.log(prior.greatest);
    return { from: 0, to: prior.greatest, rateAt: (place) => place, logDensity: () => logDensity };
  }
  const { mean, sd } = prior;
  const constant = -Math.log(sd) - 0.5 * Math.log(2 * Math.PI);
  const logDensity = (place: number) => constant - 0.5 * ((place - mean) / sd) ** 2;
  return { from: mean - 7 * sd, to: mean + 7 * sd, rateAt: Math.exp, logDensity };
}

/** Narrows the axis to what is not negligible; the mid-point rule is then exact to many digits. */
function concentrated(
  part: OrientedPart,
  start: WearPrior['start'],
  { rate: prior, scale }: WearVariant,
  workspace: Workspace,
  fineness: Fineness,
): { rate: number; logMass: number }[] {
  const axis = rateAxis(prior);
  const { nodes: count } = fineness;
  let { from, to } = axis;
  for (;;) {
    const [begin, step] = [from, (to - from) / count];
    const nodes = Array.from({ length: count }, (_, index) => {
      const place = begin + (index + 0.5) * step;
      const rate = axis.rateAt(place);
      const { logLikelihood } = givenRate(part, start, rate, scale, workspace);
      return { rate, logMass: logLikelihood + axis.logDensity(place) + Math.log(step) };
    });
    const floor = Math.max(...nodes.map(({ logMass }) => logMass)) - fineness.negligible;
    const first = Math.max(0, nodes.findIndex(({ logMass }) => logMass > floor) - 1);
    const last = Math.min(count, nodes.findLastIndex(({ logMass }) => logMass > floor) + 2);
    if (last - first > 0.6 * count) return nodes;
    [from, to] = [begin + first * step, begin + last * step];
  }
}

/**
 * Possible rates of one part, weighed by its readings: the rate (and, where it is not known, the scale) is summed over
 * numerically, everything else is normal and exact.
 *
 * @param part   oriented points, one at least
 * @param prior  of start, rate and scale
 * @param fineness   how finely rates are summed over
 * @param workspace  arrays to work in
 * @returns nodes with weights that add up to 1, and the log evidence
 */
export function wearPosterior(
  part: OrientedPart,
  prior: WearPrior,
  fineness: Fineness = fineForAnswers,
  workspace: Workspace = workspaceFor(part),
): WearPosterior {
  const variants = prior.variants.map((variant) => {
    const nodes = concentrated(part, prior.start, variant, workspace, fineness);
    return { variant, nodes, logEvidence: logSum(nodes.map(({ logMass }) => logMass)) };
  });
  const total = logSum(variants.map(({ variant, logEvidence }) => Math.log(variant.weight) + logEvidence));
  const nodes = variants.flatMap(({ variant, nodes: ofVariant, logEvidence }) => {
    const logShare = Math.log(variant.weight) - (prior.weighing === 'asGiven' ? logEvidence : total);
    return ofVariant.map(({ rate, logMass }) => ({
      rate,
      scale: variant.scale,
      weight: Math.exp(logMass + logShare),
    }));
  });
  const kept = nodes.filter(({ weight }) => weight > 0.1 * Math.exp(-fineness.negligible));
  const sum = kept.reduce((all, { weight }) => all + weight, 0);
  return { logEvidence: total, nodes: kept.map((node) => ({ ...node, weight: node.weight / sum })) };
}

/** Logarithm of a sum of exponentials. */
function logSum(logarithms: readonly number[]): number {
  const top = Math.max(...logarithms);
  return top + Math.log(logarithms.reduce((sum, one) => sum + Math.exp(one - top), 0));
}

/** Mean over the nodes. */
export const averaged = (posterior: WearPosterior, of: (node: WeightedRate) => number): number =>
  posterior.nodes.reduce((sum, node) => sum + node.weight * of(node), 0);
