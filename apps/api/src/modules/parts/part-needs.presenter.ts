import type {
  DemandPointDto,
  DemandSummaryDto,
  PartNeedDto,
  PartNeedList,
  VanChanceDto,
} from '@endfloat/contracts';
import type { PartNeed, VanChance } from '@endfloat/workshop';

type Demand = Extract<PartNeed['outcome'], { kind: 'estimated' }>;

/** Chances below this are left out of the points. */
const leastChance = 1e-9;

export function presentPoints({ probabilities }: Demand['demand']): DemandPointDto[] {
  return probabilities.flatMap((chance, pieces) =>
    chance < leastChance ? [] : [{ pieces, chance: Math.min(1, chance) }],
  );
}

export function presentSummary(summary: Demand['summary']): DemandSummaryDto {
  const { mean, standardDeviation, median, lower, upper, confidence } = summary;
  return { mean, standardDeviation, median, lower, upper, confidence };
}

export function presentVan({ vehicleId, label, position, chance, reasons }: VanChance): VanChanceDto {
  return {
    vehicleId,
    label,
    position,
    chance,
    reasons: reasons.map(({ source, chance: each, about }) => ({
      source,
      chance: each,
      about: { ...about },
    })),
  };
}

function presentNeed(need: PartNeed): PartNeedDto {
  const { componentType, today, horizon, outcome, vansWithoutAnswer, lives, planned, comebacks, use } = need;
  return {
    componentType,
    today,
    horizon: { ...horizon },
    outcome:
      outcome.kind === 'estimated'
        ? {
            kind: outcome.kind,
            method: outcome.method,
            pieces: presentSummary(outcome.summary),
            points: presentPoints(outcome.demand),
          }
        : { ...outcome },
    vans: need.vans.map(presentVan),
    vansWithoutAnswer,
    lives: { ended: lives.ended, running: lives.running, leftOut: lives.leftOut },
    planned: { chance: planned.chance, events: planned.events, of: planned.of },
    comebacks: { chance: comebacks.chance, events: comebacks.events, of: comebacks.of },
    pastUse: { ...use },
  };
}

export function presentNeeds(needs: readonly PartNeed[]): PartNeedList {
  return { items: needs.map(presentNeed) };
}
