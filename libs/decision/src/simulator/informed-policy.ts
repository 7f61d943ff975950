import { exp, logistic } from '../portable/elementary.js';
import type { OptionAction } from '../terms/option-actions.js';
import type { ExactPosition } from './exact-values.js';
import { adjustingCost } from './exact-values.js';
import type { ExactWorld } from './exact-world.js';
import { exactNodes, weightsAfterStep } from './exact-world.js';
import type { exactTables } from './clairvoyant.js';
import { cheapestOf, renewalCosts } from './clairvoyant.js';
import { lastMean } from './fixed-rules.js';
import { simulatedWorld } from './fleet-parameters.js';
import { adjustComeback } from './hazards.js';
import { renews } from './money.js';
import type { Choice, ComplaintCause, Decider, Situation } from './situation.js';

function scaled(weights: Float64Array, factor: (node: number) => number): Float64Array {
  const nodes = exactNodes.length;
  return weights.map((weight, index) => (weight === 0 ? 0 : weight * factor(index % nodes)));
}

function normalised(weights: Float64Array): Float64Array {
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return weights.map((weight) => weight / sum);
}

/**
 * The policy that knows the fleet's parameters and its wear law but sees only what the workshop sees: a belief over wear,
 * rate and cause by Bayes' rule, and then the option with the least expected cost, later decisions being taken as if
 * everything were known by then. A functional criterion that is met binds it as it binds the workshop.
 */
export class InformedPolicy implements Decider {
  private position = 0;
  private weights: Float64Array;
  /** chance of each cause, by rate x node, of the complaint that is open */
  private open: ReadonlyMap<ComplaintCause, Float64Array> | null = null;
  private last: OptionAction | null = null;

  constructor(
    private readonly world: ExactWorld,
    private readonly tables: ReturnType<typeof exactTables>,
  ) {
    this.weights = world.start;
  }

  decide(situation: Situation): Choice {
    if (situation.comebacks > 0) this.heardComeback();
    else this.drove(situation);
    this.sawReading(situation);
    const { action, predicted } = this.cheapest(situation);
    this.last = action;
    if (renews(action)) {
      this.weights = this.world.renewals.find((renewal) => renewal.action === action)!.start;
      this.open = null;
    }
    return { kind: 'act', action, predicted };
  }

  /** Quiet steps up to the one that ends here, which brought a complaint or not. */
  private drove({ position, occasion }: Situation): void {
    this.closeComplaint();
    const { world } = this;
    const quiet = (node: number) => 1 - world.hazard[node]!;
    for (; this.position < position; this.position += 1) {
      const next = weightsAfterStep(world, this.weights);
      const isLast = this.position + 1 === position;
      this.weights = normalised(isLast && occasion === 'complaint' ? next : scaled(next, quiet));
    }
    if (occasion === 'serviceVisit') return;
    const share = (node: number) => world.hazard[node]! * world.otherShare[node]!;
    const rest = (node: number) => world.hazard[node]! * (1 - world.otherShare[node]!);
    this.open = new Map([
      ['other', scaled(this.weights, share)],
      ['worn', scaled(this.weights, rest)],
    ]);
  }

  private closeComplaint(): void {
    if (this.open === null) return;
    const held = new Float64Array(this.weights.length);
    for (const [cause, weights] of this.open) {
      const chance = 1 - adjustComeback(this.world.fleet, cause);
      weights.forEach((weight, i) => (held[i] = held[i]! + chance * weight));
    }
    this.weights = normalised(held);
    this.open = null;
  }

  private heardComeback(): void {
    if (this.last !== null && renews(this.last)) {
      this.open = new Map([['fitting', this.weights]]);
      return;
    }
    this.open = new Map(
      [...(this.open ?? [])].map(([cause, weights]) => [
        cause,
        scaled(weights, () => adjustComeback(this.world.fleet, cause)),
      ]),
    );
  }

  private sawReading(situation: Situation): void {
    const { repeat, setUp, bias } = this.world.fleet.readings;
    const { criterionMm, readingsInSet } = simulatedWorld;
    const u = Math.sqrt((repeat * repeat) / readingsInSet + setUp * setUp + bias * bias);
    const mean = lastMean(situation);
    const likelihood = exactNodes.map((wear) => {
      const z = (mean - wear * criterionMm) / u;
      const positive = logistic((wear - 1) / this.world.fleet.functionalWidth);
      return (exp(-0.5 * z * z) + 1e-12) * (situation.isCriterionPositive ? positive : 1 - positive);
    });
    const told = (weights: Float64Array) => scaled(weights, (node) => likelihood[node]!);
    if (this.open === null) this.weights = normalised(told(this.weights));
    else this.open = new Map([...this.open].map(([cause, weights]) => [cause, told(weights)]));
  }

  private cheapest(situation: Situation): { readonly action: OptionAction; readonly predicted: number } {
    const { world, open } = this;
    const here = this.tables(situation.serviceIntervalKm)[situation.position]!;
    const renewing = renewalCosts(here, situation);
    const options = [...renewing];
    const keeping = open === null ? this.leaving(here) : this.adjusting(here, situation, renewing);
    if (!situation.isCriterionPositive) options.push([open === null ? 'leave' : 'adjust', keeping.cost]);
    const action = cheapestOf(options);
    const renewal = world.renewals.find((each) => each.action === action);
    return { action, predicted: renewal?.comeback ?? keeping.comeback };
  }

  private leaving({ goOn }: ExactPosition) {
    return { cost: this.weights.reduce((sum, weight, i) => sum + weight * goOn[i]!, 0), comeback: 0 };
  }

  private adjusting(
    { goOn }: ExactPosition,
    _situation: Situation,
    renewing: readonly (readonly [OptionAction, number])[],
  ) {
    const renew = Math.min(...renewing.map(([, cost]) => cost));
    let [cost, comeback, total] = [0, 0, 0];
    for (const [cause, weights] of this.open ?? []) {
      const chance = adjustComeback(this.world.fleet, cause);
      weights.forEach((weight, i) => {
        if (weight === 0) return;
        total += weight;
        comeback += weight * chance;
        cost += weight * adjustingCost(this.world, cause, goOn[i]!, renew);
      });
    }
    return { cost: cost / total, comeback: comeback / total };
  }
}
