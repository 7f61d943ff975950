import type { RenewingAction } from '../terms/option-actions.js';
import type { SimulatedFleet } from './fleet-parameters.js';
import { simulatedWorld } from './fleet-parameters.js';
import { adjustComeback, complaintHazard, criterionChance } from './hazards.js';
import { adjustCost, complaintCost, furtherSetCost, renewalCost, renews } from './money.js';
import type { Choice, ComplaintCause, Decider, SimulatedInspection, Situation } from './situation.js';
import type { SimulatedVan } from './simulated-van.js';
import { deliveryDays, fittedPart } from './simulated-van.js';
import { drawIncrement } from './wear-law.js';

/** A repair on a complaint, what was predicted and what came of it. */
export interface PlayedRepair {
  readonly situation: Situation;
  readonly action: 'adjust' | RenewingAction | 'leave';
  readonly predicted: number | null;
  readonly cameBack: boolean;
}

/** A planned visit and what was done there. */
export interface PlayedVisit {
  readonly situation: Situation;
  readonly action: 'adjust' | RenewingAction | 'leave';
}

/** What became of a van under a policy. */
export interface PlayedVan {
  readonly cost: number;
  readonly complaints: number;
  readonly repairs: readonly PlayedRepair[];
  readonly visits: readonly PlayedVisit[];
  /** whether the interval of the distance to the criterion that was named at a planned visit held the true distance */
  readonly intervalsHeld: readonly boolean[];
  /** days that parts took, by action, in the order they were ordered */
  readonly deliveries: readonly { readonly action: RenewingAction; readonly actualDays: number }[];
  /** the last part: distance since fitted at the end, complaints about it */
  readonly parts: readonly PlayedPart[];
}

/** One part from fitting to removal or to the end of the plan. */
export interface PlayedPart {
  /** null: it was in the van from the start */
  readonly action: RenewingAction | null;
  readonly inspections: readonly SimulatedInspection[];
  readonly criterion: readonly { readonly kmSinceFitted: number; readonly isPositive: boolean }[];
  readonly complaintsKm: readonly number[];
  readonly km: number;
}

const MOST_COMEBACKS = 10;

/** The van on the road; what changes as it goes. */
class VanOnTheRoad {
  cost = 0;
  complaints = 0;
  readonly repairs: PlayedRepair[] = [];
  readonly visits: PlayedVisit[] = [];
  readonly intervalsHeld: boolean[] = [];
  readonly deliveries: { action: RenewingAction; actualDays: number }[] = [];
  readonly parts: PlayedPart[] = [];
  private wear: number;
  private rate: number;
  private fittedAt = 0;
  private partAction: RenewingAction | null = null;
  private inspections: SimulatedInspection[] = [];
  private criterion: { kmSinceFitted: number; isPositive: boolean }[] = [];
  private complaintsKm: number[] = [];
  private inspectionCount = 0;
  private comebacksOfAdjusting = 0;

  constructor(
    private readonly fleet: SimulatedFleet,
    private readonly van: SimulatedVan,
    private readonly decider: Decider,
  ) {
    this.wear = van.start;
    this.rate = van.rate;
  }

  drive(position: number): void {
    const { fleet, van, rate } = this;
    this.wear += drawIncrement(
      fleet.law,
      rate,
      this.wear,
      simulatedWorld.stepKm,
      van.draws('wear', position),
    );
  }

  complain(position: number): boolean {
    const draws = this.van.draws('complaint', position);
    const { chance, otherShare } = complaintHazard(this.fleet, this.wear);
    if (draws.uniform() >= chance) return false;
    this.cost += complaintCost(this.fleet);
    this.complaints += 1;
    this.repair(position, draws.uniform() < otherShare ? 'other' : 'worn');
    return true;
  }

  visit(position: number): void {
    const { situation, choice } = this.asked(position, 'serviceVisit', null, 0, null);
    this.visits.push({ situation, action: choice.action });
    if (choice.distance !== undefined && this.wear < 1) this.holdInterval(situation, choice.distance);
    if (!renews(choice.action)) return;
    this.cost += renewalCost(this.fleet, choice.action, 0, false);
    const { action } = choice;
    this.fit(position, action);
    const draws = this.van.draws('comeback', position, 99);
    if (draws.uniform() >= this.fleet.renewals[action].comeback) return;
    this.cost += this.fleet.comebackHandling;
    this.repair(position, 'fitting', action, 1);
  }

  end(position: number): PlayedVan {
    this.keepPart(position);
    const { cost, complaints, repairs, visits, intervalsHeld, deliveries, parts } = this;
    return { cost, complaints, repairs, visits, intervalsHeld, deliveries, parts };
  }

  private repair(
    position: number,
    firstCause: ComplaintCause,
    firstWarranty: RenewingAction | null = null,
    firstCount = 0,
  ): void {
    const { fleet, van } = this;
    let cause = firstCause;
    this.comebacksOfAdjusting = 0;
    let lastFitted = firstWarranty;
    for (let comebacks = firstCount; comebacks < MOST_COMEBACKS; comebacks += 1) {
      const warranty = lastFitted !== null && fleet.renewals[lastFitted].coversPart ? lastFitted : null;
      const { situation, choice } = this.asked(position, 'complaint', cause, comebacks, warranty);
      const { action, predicted } = choice;
      if (comebacks === 0) this.complaintsKm.push(situation.partKm);
      const draws = van.draws('comeback', position, comebacks);
      let chance: number;
      if (renews(action)) {
        const days = deliveryDays(fleet, action, van.draws('delivery', position, comebacks).normal());
        if (fleet.renewals[action].promisedDays > 0) this.deliveries.push({ action, actualDays: days });
        this.cost += renewalCost(fleet, action, days, warranty === action);
        chance = fleet.renewals[action].comeback;
        this.fit(position, action);
        lastFitted = action;
      } else {
        this.cost += action === 'adjust' ? adjustCost(fleet) : 0;
        chance = action === 'adjust' ? adjustComeback(fleet, cause) : 1;
      }
      const cameBack = draws.uniform() < chance;
      this.repairs.push({ situation, action, predicted, cameBack });
      if (!cameBack) return;
      this.cost += fleet.comebackHandling;
      if (renews(action)) cause = 'fitting';
      else this.comebacksOfAdjusting += 1;
    }
  }

  /** Drives the part on in thought, nothing being done, and sees whether the interval holds. */
  private holdInterval(
    { remainingKm, position }: Situation,
    { lowerKm, upperKm }: { readonly lowerKm: number | null; readonly upperKm: number | null },
  ): void {
    const { fleet, rate } = this;
    const { stepKm } = simulatedWorld;
    let wear = this.wear;
    let reached = Infinity;
    for (let km = stepKm; km <= remainingKm && reached === Infinity; km += stepKm) {
      const draws = this.van.draws('crossing', position, km / stepKm);
      const grown = drawIncrement(fleet.law, rate, wear, stepKm, draws);
      if (wear + grown >= 1) reached = km - stepKm + (stepKm * (1 - wear)) / grown;
      wear += grown;
    }
    // Beyond the plan is one place: an end that lies there holds whatever lies there.
    const isAbove = reached >= (lowerKm ?? remainingKm);
    this.intervalsHeld.push(isAbove && (upperKm === null || reached <= upperKm));
  }

  private fit(position: number, action: RenewingAction): void {
    this.keepPart(position);
    const part = fittedPart(this.fleet, this.van, action, this.parts.length);
    this.wear = part.wear;
    this.rate = part.rate;
    this.fittedAt = position;
    this.partAction = action;
    this.comebacksOfAdjusting = 0;
    this.inspections = [];
    this.criterion = [];
    this.complaintsKm = [];
  }

  private keepPart(position: number): void {
    const { partAction: action, inspections, criterion, complaintsKm } = this;
    this.parts.push({ action, inspections, criterion, complaintsKm, km: this.partKm(position) });
  }

  private partKm = (position: number): number => (position - this.fittedAt) * simulatedWorld.stepKm;

  private inspect(position: number): void {
    const { van, fleet } = this;
    const draws = van.draws('reading', position, this.inspectionCount);
    this.inspectionCount += 1;
    const { repeat, setUp } = fleet.readings;
    const centre = this.wear * simulatedWorld.criterionMm + van.bias + setUp * draws.normal();
    this.inspections.push({
      kmSinceFitted: this.partKm(position),
      values: Array.from({ length: simulatedWorld.readingsInSet }, () =>
        Math.max(0, centre + repeat * draws.normal()),
      ),
    });
  }

  private asked(
    position: number,
    occasion: Situation['occasion'],
    cause: ComplaintCause | null,
    comebacks: number,
    underWarranty: RenewingAction | null,
  ): { readonly situation: Situation; readonly choice: Extract<Choice, { kind: 'act' }> } {
    const { van, fleet } = this;
    const draws = van.draws('functional', position, comebacks);
    const isCriterionPositive = draws.uniform() < criterionChance(fleet, this.wear);
    this.criterion.push({ kmSinceFitted: this.partKm(position), isPositive: isCriterionPositive });
    this.inspectionCount = comebacks * 2;
    const truth = { wear: this.wear, rate: this.rate, cause };
    for (const furtherSetTaken of [false, true]) {
      this.inspect(position);
      const situation: Situation = {
        occasion,
        position,
        remainingKm: simulatedWorld.planningDistanceKm - position * simulatedWorld.stepKm,
        serviceIntervalKm: van.serviceIntervalKm,
        comebacks,
        comebacksOfAdjusting: this.comebacksOfAdjusting,
        inspections: [...this.inspections],
        isCriterionPositive,
        partKm: this.partKm(position),
        underWarranty,
        furtherSetTaken,
        earlierComplaintsKm: [...this.complaintsKm],
      };
      const choice = this.decider.decide(situation, truth);
      if (choice.kind === 'act') return { situation, choice };
      if (furtherSetTaken) break;
      this.cost += furtherSetCost(fleet);
    }
    throw new RangeError('a policy asked for further readings twice');
  }
}

/**
 * Drives a van through its plan under a policy.
 *
 * Step by step: wear grows; a complaint may be made, and is dealt with until it no longer comes back; else, where a planned
 * visit falls on the position, the policy may renew the part. The draws are the van's, the same for every policy. Comebacks
 * come at once, at no distance.
 *
 * @param fleet    parameters
 * @param van      one of its vans
 * @param decider  the policy, for this van
 * @returns money spent, repairs, visits and parts
 */
export function playVan(fleet: SimulatedFleet, van: SimulatedVan, decider: Decider): PlayedVan {
  const { stepKm, planningDistanceKm } = simulatedWorld;
  const steps = planningDistanceKm / stepKm;
  const visitEvery = van.serviceIntervalKm / stepKm;
  const road = new VanOnTheRoad(fleet, van, decider);
  for (let position = 0; position < steps; position += 1) {
    if (position > 0) road.drive(position);
    if (position > 0 && road.complain(position)) continue;
    if (position % visitEvery === 0) road.visit(position);
  }
  return road.end(steps);
}
