import type { NotConverged } from '../descriptive/outcomes.js';
import { findRoot } from '../optimise/find-root.js';
import { integrate } from './integrate.js';
import { requireLifeDistribution, survivalAt, type LifeDistribution } from './life-distribution.js';
import {
  requireReplacementCosts,
  type OptimalAge,
  type ReplacementCosts,
  type RunToFailure,
} from './replacement-costs.js';

/** Survival below which a life counts as over. */
const OVER = 1e-13;
const CELLS = 400;

/** Search mesh: an age and the integral of survival up to it. */
interface Node {
  readonly age: number;
  readonly cycle: number;
}

/** Age by which all but 1e-13 of the lives have ended, or null when no such age is found. */
function lastAge(life: LifeDistribution): number | null {
  if (life.end < Infinity) return life.end;
  let age = life.typical;
  for (let doubling = 0; doubling < 200; doubling += 1) {
    if (survivalAt(life, age) < OVER) return age;
    age *= 2;
  }
  return null;
}

/** Ages from 0 to the last one: even steps where the lives have an end, growing steps where they have none. */
function meshOf(life: LifeDistribution, last: number): readonly Node[] {
  const first = life.typical * 1e-4;
  const growth = Math.pow(last / first, 1 / CELLS);
  const ages = Array.from({ length: CELLS + 1 }, (_, i) =>
    life.end < Infinity ? (last * i) / CELLS : i === CELLS ? last : first * Math.pow(growth, i),
  ).filter((age) => age > 0);
  const nodes: Node[] = [{ age: 0, cycle: 0 }];
  for (const age of ages) {
    const before = nodes[nodes.length - 1]!;
    nodes.push({ age, cycle: cycleUntil(life, before, age) });
  }
  return nodes;
}

/** Integral of survival from a node of the mesh to a later age. */
function cycleUntil(life: LifeDistribution, from: Node, age: number): number {
  return from.cycle + integrate((t) => survivalAt(life, t), from.age, age, 1e-15 * life.typical);
}

/** What a little more age gains minus what it costs: below 0 waiting still pays, above 0 it no longer does. */
function balanceAt(life: LifeDistribution, ratio: number, from: Node, age: number): number {
  const survival = survivalAt(life, age);
  if (survival === 0) return Infinity;
  const cycle = cycleUntil(life, from, age);
  return (life.density(age) / survival) * cycle - (1 - survival) - ratio;
}

/**
 * Age of planned replacement with the lowest long-run cost, for any continuous life. All ages where waiting stops paying
 * are found on a mesh of 400 steps and refined to machine precision; the cheapest of them is compared with running to
 * failure. (A hazard that rises and falls several times within one step of the mesh could hide an optimum.)
 *
 * @param life  survival, density, end and a typical age
 * @param costs  planned (positive) and failure cost
 * @returns the optimum; `runToFailure` when a failure costs no more or no finite age is cheaper; `notConverged` when the
 *   survival is not below 1e-13 after 200 doublings of the typical age. A life without a mean has no cost rate; where
 *   its survival falls that far all the same, it counts as ended there
 * @throws RangeError on a survival that is not 1 at age 0 or leaves [0, 1], a typical age that is not positive or lies
 *   beyond the end, a planned cost that is not positive, a negative failure cost
 * @complexity 400 integrals of survival, some 15 to 100 evaluations each
 * @source Barlow & Hunter (1960), Operations Research 8:90–100, policy I
 * @oracle Jardine & Tsang ch. 2 problem 2 and Ross's renewal example in the spec; Weibull against the closed form
 * @example ageReplacement({ survival: (t) => Math.exp(-t), density: (t) => Math.exp(-t), end: Infinity, typical: 1 }, { planned: 1, failure: 3 }).kind // => 'runToFailure'
 */
export function ageReplacement(
  life: LifeDistribution,
  costs: ReplacementCosts,
): OptimalAge | RunToFailure | NotConverged {
  requireLifeDistribution(life);
  requireReplacementCosts(costs);
  const last = lastAge(life);
  if (last === null) return { kind: 'notConverged', iterations: 200, reason: 'survival does not go to 0' };
  const mesh = meshOf(life, last);
  const meanLife = mesh[mesh.length - 1]!.cycle;
  const { planned, failure } = costs;
  const runToFailureCostRate = failure / meanLife;
  const runOn = (reason: RunToFailure['reason']): RunToFailure => ({
    kind: 'runToFailure',
    reason,
    costRate: runToFailureCostRate,
    meanLife,
  });
  if (failure <= planned) return runOn('failureCostsNoMore');

  const best = cheapestStop(life, costs, mesh);
  // The integral is good to about 1e-12; a smaller saving is none.
  if (best === null || !(best.costRate < runToFailureCostRate * (1 - 1e-11))) {
    return runOn('hazardDoesNotRiseEnough');
  }
  return {
    kind: 'optimum',
    ...best,
    runToFailureCostRate,
    saving: 1 - best.costRate / runToFailureCostRate,
  };
}

type Stop = Pick<OptimalAge, 'age' | 'costRate' | 'meanCycle' | 'failureShare'>;

function cheapestStop(life: LifeDistribution, costs: ReplacementCosts, mesh: readonly Node[]): Stop | null {
  const ratio = costs.planned / (costs.failure - costs.planned);
  let best: Stop | null = null;
  let before = -ratio;
  for (let i = 1; i < mesh.length; i += 1) {
    const from = mesh[i - 1]!;
    const to = mesh[i]!;
    const after = balanceAt(life, ratio, to, to.age);
    if (before < 0 && after >= 0) {
      const balance = (age: number): number => (age === 0 ? -ratio : balanceAt(life, ratio, from, age));
      const root = findRoot(balance, from.age, to.age);
      if (root.kind === 'found') {
        const failureShare = 1 - survivalAt(life, root.root);
        const meanCycle = cycleUntil(life, from, root.root);
        const costRate = (costs.planned + (costs.failure - costs.planned) * failureShare) / meanCycle;
        if (best === null || costRate < best.costRate)
          best = { age: root.root, costRate, meanCycle, failureShare };
      }
    }
    before = after;
  }
  return best;
}
