import {
  demandOfChances,
  poissonDemand,
  summariseDemand,
  type DemandDistribution,
  type DemandSummary,
} from '@endfloat/stock';
import { componentTypesOf } from '../bench/component-types-of.js';
import { invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { dayAfter } from './local-days.js';
import { vanChance, type NeedHorizon, type VanChance } from './gather-needs.js';
import { needsOfKind, type CountedChance } from './needs-of-kind.js';
import { useForecast, type UseForecast } from './use-forecast.js';

export interface PartNeedsQuery {
  /** one kind of part; undefined: every kind in the shop's list of parts */
  readonly componentType?: string | undefined;
  readonly horizon: NeedHorizon;
  readonly confidence: number;
  readonly asOf?: string | undefined;
}

/** How many of a kind will be needed. */
export type NeedOutcome =
  | {
      readonly kind: 'estimated';
      readonly method: 'chancesOfVans' | 'pastUse';
      readonly demand: DemandDistribution;
      readonly summary: DemandSummary;
    }
  | { readonly kind: 'insufficientData'; readonly of: string; readonly needed: number; readonly got: number };

export interface PartNeed {
  readonly componentType: string;
  readonly today: string;
  readonly horizon: NeedHorizon;
  readonly outcome: NeedOutcome;
  /** the likeliest first */
  readonly vans: readonly VanChance[];
  /** vans about which neither wear nor lives nor jobs say anything; they are not in the number */
  readonly vansWithoutAnswer: number;
  readonly lives: { readonly ended: number; readonly running: number; readonly leftOut: number };
  readonly planned: CountedChance;
  readonly comebacks: CountedChance;
  readonly use: UseForecast;
}

/** Months of use that are looked back on. */
const monthsOfUse = 60;

/** What will be needed in the next days or km: of wear, lives, planned work and comebacks, with an interval. */
export class ListPartNeedsUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async execute(caller: Caller, query: PartNeedsQuery): Promise<readonly PartNeed[]> {
    const asOf = query.asOf ?? this.clock.now();
    const kinds = await this.work.read(caller.shopId, (tx) => kindsAskedFor(tx, query.componentType, asOf));
    const needs: PartNeed[] = [];
    for (const componentType of kinds) needs.push(await this.needOf(caller, componentType, query, asOf));
    return needs;
  }

  private async needOf(
    caller: Caller,
    componentType: string,
    { horizon, confidence }: PartNeedsQuery,
    asOf: string,
  ): Promise<PartNeed> {
    const ports = { work: this.work, clock: this.clock };
    const found = await needsOfKind(ports, caller, componentType, asOf);
    const use = await this.work.read(caller.shopId, (tx) => useOfKind(tx, componentType, found.today, asOf));
    const answers = found.vans.map((van) => vanChance(van, horizon));
    const vans = answers.flatMap((each) => each ?? []).sort(byChance);
    return {
      componentType,
      today: found.today,
      horizon,
      outcome: outcomeOf(vans, use, horizon, confidence),
      vans,
      vansWithoutAnswer: answers.length - vans.length,
      lives: found.lives,
      planned: found.planned,
      comebacks: found.comebacks,
      use,
    };
  }
}

const byChance = (a: VanChance, b: VanChance): number =>
  b.chance - a.chance || (a.vehicleId < b.vehicleId ? -1 : 1);

function outcomeOf(
  vans: readonly VanChance[],
  use: UseForecast,
  horizon: NeedHorizon,
  confidence: number,
): NeedOutcome {
  const estimated = (method: 'chancesOfVans' | 'pastUse', demand: DemandDistribution): NeedOutcome => ({
    kind: 'estimated',
    method,
    demand,
    summary: summariseDemand(demand, confidence),
  });
  if (vans.length > 0) return estimated('chancesOfVans', demandOfChances(vans.map(({ chance }) => chance)));
  if (horizon.kind === 'distance')
    return { kind: 'insufficientData', of: 'vansWithWearOrLives', needed: 1, got: 0 };
  return use.kind === 'estimated' ? estimated('pastUse', poissonDemand(use.perDay * horizon.days)) : use;
}

/** One kind that the shop knows, or every kind in its list of parts. */
export async function kindsAskedFor(
  tx: ShopTransaction,
  componentType: string | undefined,
  asOf: string,
): Promise<readonly string[]> {
  if (componentType === undefined) {
    const parts = await tx.parts.all({}, asOf);
    return [...new Set(parts.map(({ content }) => content.componentType))].sort();
  }
  const known = (await componentTypesOf(tx, asOf)).some(({ id }) => id === componentType);
  if (!known)
    throw invalidInput('/componentType', 'reference', `This shop knows no kind of part "${componentType}".`);
  return [componentType];
}

/** Past use of the parts of a kind. */
export async function useOfKind(
  tx: ShopTransaction,
  componentType: string,
  today: string,
  asOf: string,
  only?: ReadonlySet<string>,
): Promise<UseForecast> {
  const parts = await tx.parts.all({ componentType }, asOf);
  const partIds = parts.map(({ id }) => id).filter((id) => only?.has(id) ?? true);
  const from = dayAfter(today, -Math.round((monthsOfUse * 365.25) / 12));
  return useForecast(partIds.length === 0 ? [] : await tx.stock.useByMonth({ partIds, from, asOf }), today);
}
