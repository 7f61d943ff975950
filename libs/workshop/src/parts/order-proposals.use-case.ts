import type { PartCondition } from '@endfloat/catalogue';
import {
  demandOfChances,
  givenLeadTime,
  leadTimesOf,
  mixtureOfDemands,
  poissonDemand,
  priceOfQuantity,
  proposeOrder,
  summariseDemand,
  type DemandSummary,
  type LeadTimes,
  type OrderProposalOutcome,
  type QuantityPrice,
  type StockServiceMeasure,
} from '@endfloat/stock';
import type { OfferRecord } from '../decide/offers.use-case.js';
import type { Clock } from '../ports/clock.port.js';
import type { Caller } from '../ports/roles.js';
import type { UnitOfWork } from '../ports/unit-of-work.port.js';
import { vanChance, type VanChance } from './gather-needs.js';
import { needsOfKind } from './needs-of-kind.js';
import { gatherSupply, type Supply } from './gather-supply.js';
import { orderReasons, type OrderReason } from './order-reasons.js';
import { fewerCases } from './fewer-cases.js';
import { partGroups, type PartGroup } from './part-groups.js';
import { kindsAskedFor, useOfKind } from './part-needs.use-case.js';
import type { PartRecord } from './parts.use-case.js';
import type { UseForecast } from './use-forecast.js';

export interface OrderProposalsQuery {
  readonly componentType?: string | undefined;
  readonly condition?: PartCondition | undefined;
  readonly measure: StockServiceMeasure;
  readonly target: number;
  /** what if an order took so many days, whoever delivers */
  readonly leadTimeDays?: number | undefined;
  readonly asOf?: string | undefined;
}

/** What one offer would need on the shelf, by its own lead time. */
export interface OfferProposal {
  readonly offer: OfferRecord | null;
  readonly leadTimes: Extract<LeadTimes, { kind: 'known' }>;
  /** demand over the lead time */
  readonly summary: DemandSummary;
  readonly method: 'chancesOfVans' | 'pastUse';
  readonly proposal: OrderProposalOutcome;
  /** null: nothing to order, or not quoted */
  readonly price: QuantityPrice | null;
  readonly reasons: readonly OrderReason[];
  /** within the lead time that nine in ten orders keep, the likeliest first */
  readonly vans: readonly VanChance[];
}

export type GroupOutcome =
  | { readonly kind: 'proposed'; readonly best: OfferProposal; readonly others: readonly OfferProposal[] }
  | { readonly kind: 'leadTimeUnknown' }
  | { readonly kind: 'insufficientData'; readonly of: string; readonly needed: number; readonly got: number };

/** A part, or parts that stand in for each other, with what to order now. */
export interface GroupProposal {
  readonly componentType: string;
  readonly part: PartRecord;
  readonly parts: readonly PartRecord[];
  readonly supply: Supply;
  readonly vans: number;
  readonly vansWithoutAnswer: number;
  readonly outcome: GroupOutcome;
}

export interface OrderProposals {
  readonly today: string;
  readonly items: readonly GroupProposal[];
  /** vans for whose application no part is recorded, by kind of part */
  readonly unfitted: readonly { readonly componentType: string; readonly vehicleIds: readonly string[] }[];
}

/** What to order now, so that a named service is kept over lead times as delivered, and why. Nothing is stored. */
export class ListOrderProposalsUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async execute(caller: Caller, query: OrderProposalsQuery): Promise<OrderProposals> {
    const asOf = query.asOf ?? this.clock.now();
    const kinds = await this.work.read(caller.shopId, (tx) => kindsAskedFor(tx, query.componentType, asOf));
    const items: GroupProposal[] = [];
    const unfitted: { componentType: string; vehicleIds: string[] }[] = [];
    let today = asOf.slice(0, 10);
    const ports = { work: this.work, clock: this.clock };
    for (const componentType of kinds) {
      const needs = await needsOfKind(ports, caller, componentType, asOf);
      today = needs.today;
      const parts = await this.work.read(caller.shopId, (tx) => tx.parts.all({ componentType }, asOf));
      const { groups, unfitted: without } = partGroups(parts, needs.vans);
      for (const group of groups) items.push(await this.proposalFor(caller, group, today, query, asOf));
      if (without.length > 0 && parts.length > 0)
        unfitted.push({
          componentType,
          vehicleIds: [...new Set(without.map(({ vehicleId }) => vehicleId))].sort(),
        });
    }
    return { today, items: items.sort(byUrgency), unfitted };
  }

  private async proposalFor(
    caller: Caller,
    group: PartGroup,
    today: string,
    query: OrderProposalsQuery,
    asOf: string,
  ): Promise<GroupProposal> {
    const { componentType } = group.current.content;
    const ids = new Set(group.parts.map(({ id }) => id));
    const { supply, use } = await this.work.read(caller.shopId, async (tx) => ({
      supply: await gatherSupply(tx, group, { today, condition: query.condition, asOf }),
      use: await useOfKind(tx, componentType, today, asOf, ids),
    }));
    const asked = new ChancesOfVans(group);
    return {
      componentType,
      part: group.current,
      parts: group.parts,
      supply,
      vans: group.vans.length,
      vansWithoutAnswer: group.vans.length - asked.within(1).length,
      outcome: outcomeOf(asked, supply, use, query),
    };
  }
}

/** Chances of the vans of a group by days ahead, worked out once for each number of days. */
class ChancesOfVans {
  private readonly known = new Map<number, readonly VanChance[]>();

  constructor(private readonly group: PartGroup) {}

  within(days: number): readonly VanChance[] {
    const before = this.known.get(days);
    if (before !== undefined) return before;
    const found = this.group.vans
      .flatMap((van) => vanChance(van, { kind: 'days', days }) ?? [])
      .sort((a, b) => b.chance - a.chance || (a.vehicleId < b.vehicleId ? -1 : 1));
    this.known.set(days, found);
    return found;
  }
}

function outcomeOf(
  asked: ChancesOfVans,
  supply: Supply,
  use: UseForecast,
  query: OrderProposalsQuery,
): GroupOutcome {
  const hasVans = asked.within(1).length > 0;
  if (!hasVans && use.kind !== 'estimated') return use;
  const perDay = use.kind === 'estimated' ? use.perDay : 0;
  const ways: { offer: OfferRecord | null; leadTimes: LeadTimes }[] =
    query.leadTimeDays === undefined
      ? supply.offers.map(({ offer, delivered }) => ({
          offer,
          leadTimes: leadTimesOf(offer.content.promisedLeadDays, delivered),
        }))
      : [null, ...supply.offers.map(({ offer }) => offer)]
          .filter((offer) => offer !== null || supply.offers.length === 0)
          .map((offer) => ({ offer, leadTimes: givenLeadTime(query.leadTimeDays ?? 0) }));
  const proposals = ways.flatMap(({ offer, leadTimes }): OfferProposal[] => {
    if (leadTimes.kind !== 'known') return [];
    const cases = fewerCases(leadTimes.cases).map(({ days, weight }) => ({
      weight,
      demand: hasVans
        ? demandOfChances(asked.within(days).map(({ chance }) => chance))
        : poissonDemand(perDay * days),
    }));
    const demand = mixtureOfDemands(cases);
    const { onHand, onOrder } = supply;
    const { measure, target } = query;
    const proposal = proposeOrder({ demand, onHand, onOrder, measure, target });
    const quantity = proposal.kind === 'proposed' ? proposal.quantity : 0;
    const price = offer?.content.price ?? null;
    const vans = hasVans ? asked.within(leadTimes.ninetiethDays) : [];
    return [
      {
        offer,
        leadTimes,
        summary: summariseDemand(demand),
        method: hasVans ? 'chancesOfVans' : 'pastUse',
        proposal,
        price:
          price === null || quantity === 0
            ? null
            : priceOfQuantity(price, offer?.content.priceBreaks ?? [], quantity),
        reasons: orderReasons({ proposal, leadTimes, vans, supply, perDay: hasVans ? null : perDay }),
        vans,
      },
    ];
  });
  const [best, ...others] = [...proposals].sort(byPrice(supply.currency));
  return best === undefined ? { kind: 'leadTimeUnknown' } : { kind: 'proposed', best, others };
}

/** The cheapest piece in the currency of the shop first, then the quicker one; what is not quoted last. */
const byPrice =
  (currency: string) =>
  (a: OfferProposal, b: OfferProposal): number => {
    const priceOf = ({ offer }: OfferProposal): number => {
      const price = offer?.content.price ?? null;
      return price === null || price.currency !== currency ? Infinity : Number(price.amount);
    };
    const [one, other] = [priceOf(a), priceOf(b)];
    if (one !== other) return one < other ? -1 : 1;
    return (
      a.leadTimes.meanDays - b.leadTimes.meanDays || ((a.offer?.id ?? '') < (b.offer?.id ?? '') ? -1 : 1)
    );
  };

const quantityOf = ({ outcome }: GroupProposal): number =>
  outcome.kind === 'proposed' && outcome.best.proposal.kind === 'proposed'
    ? outcome.best.proposal.quantity
    : 0;

const byUrgency = (a: GroupProposal, b: GroupProposal): number =>
  quantityOf(b) - quantityOf(a) ||
  (a.componentType < b.componentType ? -1 : a.componentType > b.componentType ? 1 : 0) ||
  (a.part.content.partNumber < b.part.content.partNumber ? -1 : 1);
